"""Rows about hours that need no session for any step: cheap, true of every placing, so they only help the proof."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Step
from budgetfix.optimize.solver import Row, Terms
from budgetfix.optimize.windows import Key, Window

LONGEST_LENGTHS = 12
"""Step lengths for which whole steps are counted; more rows cost more than they help."""


def somewhere(facts: Facts, found: dict[Key, Window]) -> Iterator[Row]:
    """An option with a step that fits into no session is not chosen."""
    if not facts.horizon:
        if facts.problem.sessions:
            yield from (Row(f"nowhere_{one.id}", ((1, x(one.id)),), "=", 0) for one in facts.options if one.steps)
        return
    late = sorted({id for (id, _), (first, last) in found.items() if first >= facts.horizon or last < first})
    for id in late:
        yield Row(f"nowhere_{id}", ((1, x(id)),), "=", 0)


def enough_minutes(facts: Facts, found: dict[Key, Window]) -> Iterator[Row]:
    """Work that can only stand between two sessions fits into the minutes there, for each person and for all."""
    steps = [((id, index), facts.by_id[id].steps[index], window) for (id, index), window in found.items()]
    starts = sorted({window[0] for _, _, window in steps})
    ends = sorted({window[1] for _, _, window in steps})
    for team in _teams(facts):
        for start in starts:
            for end in ends:
                if not 0 <= start <= end < facts.horizon:
                    continue
                work: dict[str, int] = {}
                for (id, _), step, (first, last) in steps:
                    if start <= first <= last <= end:
                        work[id] = work.get(id, 0) + _share(facts, step, team)
                there = sum(facts.minutes[t][one] for t in range(start, end + 1) for one in team)
                name = f"minutes_{start}_{end}_{'_'.join(map(str, team))}"
                yield from _binding(facts, name, work, there)


def joint_minutes(facts: Facts, found: dict[Key, Window]) -> Iterator[Row]:
    """Work for everybody at once fits into what the person with least time has in each session."""
    everybody = len(facts.problem.people)
    if everybody < 2 or not facts.horizon:
        return
    work: dict[str, int] = {}
    for id, index in found:
        step = facts.by_id[id].steps[index]
        if step.hands == everybody:
            work[id] = work.get(id, 0) + step.joint_minutes
    yield from _binding(facts, "joint", work, sum(min(row) for row in facts.minutes))


def enough_places(facts: Facts, found: dict[Key, Window]) -> Iterator[Row]:
    """Steps of some length and more are no more than the sessions have room for, long steps counting several times."""
    if not facts.horizon:
        return
    lengths = sorted({facts.by_id[id].steps[index].minutes for id, index in found} - {0}, reverse=True)
    for length in lengths[:LONGEST_LENGTHS]:
        work: dict[str, int] = {}
        for id, index in found:
            step = facts.by_id[id].steps[index]
            work[id] = work.get(id, 0) + step.minutes // length * step.people + step.help // length
        there = sum(minutes // length for row in facts.minutes for minutes in row)
        yield from _binding(facts, f"places_{length}", work, there)


def _teams(facts: Facts) -> tuple[tuple[int, ...], ...]:
    everybody = tuple(range(len(facts.problem.people)))
    return (everybody,) if len(everybody) == 1 else (everybody, *((one,) for one in everybody))


def _share(facts: Facts, step: Step, team: tuple[int, ...]) -> int:
    """Minutes of a team's people that a step takes in any case."""
    return min(
        (sum(step.minutes_in(place) for place, one in enumerate(crew) if one in team) for crew in facts.crews(step)),
        default=0,
    )


def _binding(facts: Facts, name: str, work: dict[str, int], there: int) -> Iterator[Row]:
    """The row, where some choice could break it."""
    terms: Terms = tuple((minutes, x(id)) for id, minutes in sorted(work.items()) if minutes)
    most: dict[str, int] = {}
    for minutes, name_ in terms:
        id = name_[2:-1]
        group = facts.by_id[id].group
        key = f"alone {id}" if group is None else f"group {group}"
        most[key] = max(most.get(key, 0), minutes)
    if sum(most.values()) > there:
        yield Row(name, terms, "<=", there)
