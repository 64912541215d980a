"""Rows about which options go together. `x[id]` is 1 where an option is chosen. One function a sentence."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Extra
from budgetfix.optimize.solver import Row, Terms


def x(id: str) -> str:
    """Name of the variable that says whether an option is chosen."""
    return f"x[{id}]"


def exclusions(facts: Facts) -> Iterator[Row]:
    """Of options that exclude each other, or stand in one group, at most one is chosen."""
    for index, clique in enumerate(cliques(facts)):
        yield Row(f"one_of_{index}", tuple((1, x(id)) for id in clique), "<=", 1)


def cliques(facts: Facts) -> tuple[tuple[str, ...], ...]:
    """Few sets of options, no two of which go together, that hold every such pair."""
    ids = [one.id for one in facts.options]
    place = {id: index for index, id in enumerate(ids)}
    near = [sum(1 << place[other] for other in facts.against[id]) for id in ids]
    left = list(near)
    found: list[tuple[str, ...]] = []
    for start in range(len(ids)):
        while left[start]:
            members = _grown_clique(start, near, left)
            mask = sum(1 << one for one in members)
            for one in members:
                left[one] &= ~mask
            found.append(tuple(ids[one] for one in sorted(members)))
    return tuple(found)


def _grown_clique(start: int, near: list[int], left: list[int]) -> list[int]:
    """A clique around an uncovered pair, uncovered neighbours first."""
    members = [start]
    common = near[start]
    wanted = left[start]
    while common:
        pick = wanted & common or common
        one = (pick & -pick).bit_length() - 1
        members.append(one)
        common &= near[one]
        wanted &= ~(1 << one)
    return members


def needs(facts: Facts) -> Iterator[Row]:
    """What an option needs is chosen too."""
    for id, wanted in facts.needs.items():
        for need in wanted:
            yield Row(f"needs_{id}_{need}", ((1, x(id)), (-1, x(need))), "<=", 0)


def musts(facts: Facts) -> Iterator[Row]:
    """Of each must at least one is chosen."""
    for index, must in enumerate(facts.problem.must):
        yield Row(f"must_{index}", tuple((1, x(id)) for id in must if id in facts.by_id), ">=", 1)


def limits(facts: Facts) -> Iterator[Row]:
    """What the chosen options spend of a limit stays within it."""
    for limit in facts.problem.limits:
        terms = tuple(
            (amount, x(one.id)) for one in facts.options for name, amount in one.spends if name == limit.id and amount
        )
        if terms:
            yield Row(f"limit_{limit.id}", terms, "<=", limit.most)
        elif limit.most < 0:
            yield Row(f"limit_{limit.id}", (), "<=", limit.most)


def forced(facts: Facts, extra: Extra) -> Iterator[Row]:
    """What is asked to be chosen is chosen, what is asked to be refused is not."""
    for id in extra.chosen:
        yield Row(f"chosen_{id}", ((1, x(id)),) if id in facts.by_id else (), "=", 1)
    for id in extra.refused:
        if id in facts.by_id:
            yield Row(f"refused_{id}", ((1, x(id)),), "=", 0)


def marks_terms(facts: Facts) -> Terms:
    """What the chosen options leave behind."""
    return tuple((one.marks, x(one.id)) for one in facts.options if one.marks)


def minutes_terms(facts: Facts) -> Terms:
    """Person-minutes of the chosen options."""
    return tuple(
        (minutes, x(one.id)) for one in facts.options if (minutes := sum(step.person_minutes for step in one.steps))
    )
