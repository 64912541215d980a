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
    """Whatever is bought in a phase has the rounds of that phase run."""
    for id, last in facts.last_phases.items():
        for phase, wanted in enumerate(facts.by_id[id].rounds[: last + 1]):
            for one in wanted:
                there = ((-1, x(one)),) if one in facts.by_id else ()
                yield Row(f"round_{id}_{one}", (*in_phase(facts, id, phase), *there), "<=", 0)


def after_its_round(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """The first step of what is bought in a phase comes after that phase's round, waits kept."""
    alone = {kind.ids[0]: kind for kind in found}
    for id, last in facts.last_phases.items():
        for phase, wanted in enumerate(facts.by_id[id].rounds[: last + 1]):
            for one in wanted:
                if id in alone and one in alone:
                    yield from _after(facts, alone[one], alone[id], in_phase(facts, id, phase))


def _after(facts: Facts, first: Kind, then: Kind, bought: Terms) -> Iterator[Row]:
    """The rows of "after what is needed", with a way out where it is not bought in this phase."""
    before, step, name = first.steps[-1], then.steps[0], f"after_{then.ids[0]}_{first.ids[0]}"
    ready = {t: facts.next_session(before, step, t) for t, _, _ in first.cells[-1]}
    for t in sorted({t for t, _, _ in then.cells[0]}):
        later = tuple((1, cell) for session, _, cell in then.cells[0] if session <= t)
        earlier = tuple((-1, cell) for session, _, cell in first.cells[-1] if ready[session] <= t)
        yield Row(f"{name}_{t}", (*later, *earlier, *bought), "<=", 1)
        for session, crew, cell in then.cells[0] if ready.get(t) == t else ():
            others = tuple(
                (1, other)
                for there, team, other in first.cells[-1]
                if there == t and session == t and not set(crew) <= set(ending(before, team))
            )
            if others:
                yield Row(f"{name}_{t}_{'_'.join(map(str, crew))}", ((1, cell), *others, *bought), "<=", 2)
