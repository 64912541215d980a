"""Rows of a timetable: how many steps of each kind stand in which session, done by whom.

Options whose steps are alike share one count (a kind); alike means minutes, people, waits, goods, hired tools.
`y[kind,step,session,crew]` is how many of them stand there; `u[tool,session]` whether a tool is hired then.
What is counted can always be given out again: first in, first out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Crew, Facts, ending
from budgetfix.optimize.money_rows import b, v
from budgetfix.optimize.problem import Step
from budgetfix.optimize.solver import Program, Row
from budgetfix.optimize.windows import Key, Window

Cell = tuple[int, Crew, str]
"""(session, crew, name of the variable)."""


@dataclass(frozen=True, slots=True)
class Kind:
    """Options alike in time. `cells[k]`: where step k can stand."""

    ids: tuple[str, ...]
    steps: tuple[Step, ...]
    tools: tuple[str, ...]
    cells: tuple[tuple[Cell, ...], ...]
    one_day: bool = False


def kinds(facts: Facts, found: dict[Key, Window], *, grouped: bool = True) -> tuple[Kind, ...]:
    """The options with steps, alike ones together where `grouped`."""
    linked = {id for id, wanted in facts.needs.items() if wanted} | {
        need for ids in facts.needs.values() for need in ids
    }
    alike: dict[object, list[str]] = {}
    for one in facts.options:
        if not one.steps or not facts.horizon:
            continue
        own = not grouped or one.id in linked or _crew_matters(facts, one.steps)
        hired = tuple(tool for tool in sorted(set(one.tools)) if tool in facts.hirable)
        places = tuple(found[one.id, index] for index in range(len(one.steps)))
        key = one.id if own else (one.steps, one.first_session, one.last_session, hired, places, one.one_day)
        alike.setdefault(key, []).append(one.id)
    return tuple(_kind(facts, number, tuple(ids), found) for number, ids in enumerate(alike.values()))


def _crew_matters(facts: Facts, steps: tuple[Step, ...]) -> bool:
    """Whether two steps may share a session and there is a choice of people: then chains cannot be mixed."""
    return any(
        step.wait_sessions <= 0
        and step.wait_minutes <= 0
        and facts.may_share(before, step)
        and max(len(facts.crews(before)), len(facts.crews(step))) > 1
        for before, step in pairwise(steps)
    )


def _kind(facts: Facts, number: int, ids: tuple[str, ...], found: dict[Key, Window]) -> Kind:
    option = facts.by_id[ids[0]]
    hired = tuple(tool for tool in sorted(set(option.tools)) if tool in facts.hirable)
    cells = []
    for index, step in enumerate(option.steps):
        first, last = found[option.id, index]
        cells.append(
            tuple(
                (t, crew, f"y[{number},{index},{t},{'_'.join(map(str, crew))}]")
                for t in range(max(first, 0), min(last, facts.horizon - 1) + 1)
                for crew in facts.fitting(step, t)
            )
        )
    return Kind(ids, option.steps, hired, tuple(cells), option.one_day)


def timetable_variables(facts: Facts, found: tuple[Kind, ...], program: Program) -> None:
    """Counts, and sessions of hire."""
    for kind in found:
        for cells in kind.cells:
            for _, _, name in cells:
                program.integer(name, len(kind.ids))
    for tool in sorted({tool for kind in found for tool in kind.tools}):
        for number in sorted(set(facts.whole)):
            program.binary(u(tool, number))


def u(tool: str, session: int) -> str:
    """Name of whether a tool is hired in a whole session."""
    return f"u[{tool},{session}]"


def every_step_stands(found: tuple[Kind, ...]) -> Iterator[Row]:
    """Each step of each chosen option stands in one session."""
    for number, kind in enumerate(found):
        for index, cells in enumerate(kind.cells):
            chosen = tuple((-1, x(id)) for id in kind.ids)
            yield Row(f"stands_{number}_{index}", (*((1, name) for _, _, name in cells), *chosen), "=", 0)


def within_minutes(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """Nobody works longer in a session than there are minutes."""
    for t in range(facts.horizon):
        for person in range(len(facts.problem.people)):
            terms = tuple(
                (minutes, name)
                for kind in found
                for index, cells in enumerate(kind.cells)
                for session, crew, name in cells
                if session == t and person in crew and (minutes := kind.steps[index].minutes_in(crew.index(person)))
            )
            if terms:
                yield Row(f"hours_{t}_{person}", terms, "<=", facts.minutes[t][person])


def joint_within_session(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """Among three or more people, all joint work of a session fits one after the other."""
    if len(facts.problem.people) < 3:
        return
    for t in range(facts.horizon):
        terms = tuple(
            (kind.steps[index].joint_minutes, name)
            for kind in found
            for index, cells in enumerate(kind.cells)
            for session, _, name in cells
            if session == t and kind.steps[index].joint_minutes
        )
        if terms:
            yield Row(f"joint_{t}", terms, "<=", max(facts.minutes[t]))


def after_the_step_before(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """A step comes after the step before it, waits kept: by every session no more are done than could follow."""
    for number, kind in enumerate(found):
        for index in range(1, len(kind.steps)):
            before, step = kind.steps[index - 1], kind.steps[index]
            yield from _prefix(
                facts, f"after_{number}_{index}", (before, kind.cells[index - 1]), (step, kind.cells[index])
            )


def after_what_is_needed(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """The first step of an option comes after the last step of whatever it needs, waits kept."""
    alone = {kind.ids[0]: kind for kind in found if len(kind.ids) == 1}
    for id, wanted in facts.needs.items():
        for need in wanted:
            if id in alone and need in alone:
                first = (alone[need].steps[-1], alone[need].cells[-1])
                yield from _prefix(facts, f"after_{id}_{need}", first, (alone[id].steps[0], alone[id].cells[0]))


def finished_the_same_day(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """Where a room is not left half done, as many of a later step stand on a day as of the step before it."""
    for number, kind in enumerate(found):
        for index in range(1, len(kind.steps) if kind.one_day else 0):
            for day in sorted(set(facts.days)):
                begun = tuple((-1, name) for t, _, name in kind.cells[index - 1] if facts.days[t] == day)
                done = tuple((1, name) for t, _, name in kind.cells[index] if facts.days[t] == day)
                if begun or done:
                    yield Row(f"day_{number}_{index}_{day}", (*done, *begun), "=", 0)


Stage = tuple[Step, tuple[Cell, ...]]


def _prefix(facts: Facts, name: str, first: Stage, then: Stage) -> Iterator[Row]:
    """By every session, no more of the later step than of the earlier one in time; crews kept within one session."""
    ready = {t: facts.next_session(first[0], then[0], t) for t, _, _ in first[1]}
    for t in sorted({t for t, _, _ in then[1]}):
        later = tuple((1, cell) for session, _, cell in then[1] if session <= t)
        earlier = tuple((-1, cell) for session, _, cell in first[1] if ready[session] <= t)
        yield Row(f"{name}_{t}", (*later, *earlier), "<=", 0)
        if ready.get(t) == t:
            yield from _same_crew(f"{name}_{t}", t, first, then)


def _same_crew(name: str, t: int, first: Stage, then: Stage) -> Iterator[Row]:
    """In one session the crew of the later step lies within those who end the earlier one."""
    for session, crew, cell in then[1]:
        if session == t:
            others = tuple(
                (1, other)
                for there, team, other in first[1]
                if there == t and not set(crew) <= set(ending(first[0], team))
            )
            if others:
                yield Row(f"{name}_{'_'.join(map(str, crew))}", ((1, cell), *others), "<=", 1)


def hired_when_used(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """A step with a tool stands only in a session for which that tool is hired, unless the tool is bought."""
    for kind in found:
        most = len(kind.ids)
        for tool in kind.tools:
            bought = ((-most, b(tool)),) if facts.tools[tool].buy_minor is not None else ()
            for cells in kind.cells:
                for t, _, name in cells:
                    yield Row(f"hired_{tool}_{name}", ((1, name), (-most, u(tool, facts.whole[t])), *bought), "<=", 0)


def hire_is_paid(facts: Facts, found: tuple[Kind, ...]) -> Iterator[Row]:
    """No more sessions of hire than are paid for, besides those for which a tool is hired anyhow."""
    for tool in sorted({tool for kind in found for tool in kind.tools}):
        held = facts.tools[tool].held
        hired = tuple((1, u(tool, number)) for number in sorted(set(facts.whole) - set(held)))
        paid = tuple((-1, v(tool, count)) for count in range(len(held) + 1, facts.hirable[tool] + 1))
        yield Row(f"paid_{tool}", (*hired, *paid), "<=", 0)


def worth_in(found: tuple[Kind, ...], worth: Mapping[str, int], session: int, name: str) -> Row:
    """A session is worth no more than the options whose last step stands in it."""
    done = tuple(
        (-worth[kind.ids[0]], cell)
        for kind in found
        if kind.ids[0] in worth
        for t, _, cell in kind.cells[-1]
        if t == session
    )
    return Row(f"worth_in_{session}", ((1, name), *done), "<=", 0)
