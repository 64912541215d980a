"""Rows that tie what is bought when to the sessions: no step before its goods, no goods before their round."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts, ending
from budgetfix.optimize.phase_rows import by
from budgetfix.optimize.place_rows import Kind
from budgetfix.optimize.solver import Row, Terms


def bought_in_time(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """What begins before the goods of the next phase could be there is bought by this phase."""
    for kind in found:
        id = kind.ids[0]
        for phase in range(facts.last_phases.get(id, 0)):
            ready = facts.by_id[id].arrivals[phase + 1]
            early = tuple((1, name) for t, _, name in kind.cells[0] if t < ready)
            if early:
                yield Row(f"bought_{id}_{phase}", (*early, (-1, by(facts, id, phase))), "<=", 0)


def in_phase(facts: Facts, id: str, phase: int) -> Terms:
    """1 where an option is bought in just this phase."""
    mine = ((1, by(facts, id, phase)),)
    return (*mine, (-1, by(facts, id, phase - 1))) if phase else mine


def rounds_are_run(facts: Facts) -> Iterator[Row]:
    """Whatever is bought in a phase has a round of that phase, or of a later one, run for each errand."""
    for id, number, phase, rounds in _fetched(facts):
        there = tuple((-1, x(one)) for one in rounds)
        yield Row(f"round_{id}_{number}_{phase}", (*in_phase(facts, id, phase), *there), "<=", 0)


def _fetched(facts: Facts) -> Iterator[tuple[str, int, int, tuple[str, ...]]]:
    """(option, number of its errand, phase, rounds that would do) of whatever an errand fetches."""
    for id, last in facts.last_phases.items():
        for number, wanted in enumerate(facts.by_id[id].rounds):
            for phase in range(last + 1):
                yield id, number, phase, tuple(one for one in wanted[phase:] if one in facts.by_id)


def after_its_round(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """The first step of what is bought in a phase comes after a round that fetches it, waits and crews kept."""
    alone = {kind.ids[0]: kind for kind in found}
    for id, number, phase, rounds in _fetched(facts):
        if id in alone:
            kinds = tuple(alone[one] for one in rounds if one in alone)
            yield from _after(facts, f"after_{id}_{number}_{phase}", kinds, alone[id], in_phase(facts, id, phase))


def _after(facts: Facts, name: str, rounds: tuple[Kind, ...], then: Kind, bought: Terms) -> Iterator[Row]:
    """By every session no more is begun than was fetched; a crew that was not at the round begins later."""
    step = then.steps[0]
    ends = [(kind.steps[-1], t, team, cell) for kind in rounds for t, team, cell in kind.cells[-1]]
    ready = [(facts.next_session(before, step, t), t, ending(before, team), cell) for before, t, team, cell in ends]
    for t in sorted({t for t, _, _ in then.cells[0]}):
        begun = tuple((1, cell) for session, _, cell in then.cells[0] if session <= t)
        fetched = tuple((-1, cell) for first, _, _, cell in ready if first <= t)
        yield Row(f"{name}_{t}", (*begun, *bought, *fetched), "<=", 1)
        for session, crew, mine in then.cells[0]:
            known = tuple(
                (-1, cell) for first, at, team, cell in ready if first <= t and (at < t or set(crew) <= set(team))
            )
            if session == t and len(known) < len(fetched):
                yield Row(f"{name}_{t}_{'_'.join(map(str, crew))}", ((1, mine), *bought, *known), "<=", 1)
