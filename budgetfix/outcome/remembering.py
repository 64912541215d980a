"""What a workbook has to know of its own plan, so that it can be read back, with what an earlier one settled.

Carried on is what is settled: every line of which somebody said something (`SoFar.told`) and every step that is done.
Whatever else was paid already (a delivery, tax, pay for done work) has its sum typed in by whoever made the rest
of the job: a line without a word is not carried on.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import ERRAND
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import MoneyLine, SessionRow, Task
from budgetfix.outcome.check import Checked
from budgetfix.outcome.lists import Lists
from budgetfix.outcome.money_lines import ON_TOP, line_ids
from budgetfix.outcome.so_far import LineBack, Planned, PlannedLine, PlannedStep, Remembered, SoFar
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Item
from budgetfix.room.survey import Survey, Value

AGAIN = "~again"
"""How the ids of free moves end that were fitted to the room as a plan leaves it."""


def remembered(
    base: Ground, framed: Framed, plan: Plan, found: Checked, made: Lists, earlier: SoFar | None = None
) -> Remembered:
    """Everything about a checked plan that reading its workbook back asks for, settled rows of `earlier` first."""
    settled = SoFar(Remembered()) if earlier is None else carried_on(earlier, made.tasks)
    taken = [one.planned.id for one in settled.lines]
    products = {one.product: one for one in base.catalog.products}
    ids = line_ids(made.money, taken)
    lines = tuple(
        replace(_line(id, line, products, found.chosen, base, made.tasks), goods=_goods(line, ids, made))
        for id, line in zip(ids, made.money, strict=True)
    )
    return Remembered(
        lines=(*(one.planned for one in settled.lines), *lines),
        steps=(*(one.planned for one in settled.steps), *_steps(framed, plan, made)),
        candidates=_candidates(base, framed, found, earlier or SoFar(Remembered())),
        ordered=base.brief.ordered,
        spent_minor=plan.spent_minor + base.brief.fixed_minor + sum(map(counted_minor, settled.lines)),
        hazard_points_after=plan.hazards,
        points_after=plan.points,
    )


def carried_on(earlier: SoFar, tasks: tuple[Task, ...] = ()) -> SoFar:
    """Only what is settled: lines of which somebody said something, steps that are done, and their candidates.

    Minutes typed for a step that is not done stay with it where it is among `tasks` again; else it is carried on, too.
    """
    again = {step_id(task) for task in tasks}
    steps = tuple(
        one for one in earlier.steps if one.done or (one.real_minutes is not None and one.planned.id not in again)
    )
    begun = {one.planned.task.candidate for one in earlier.done}
    candidates = tuple(one for one in earlier.remembered.candidates if one.candidate.id in begun)
    lines = earlier.told
    kept = replace(
        earlier.remembered,
        lines=tuple(one.planned for one in lines),
        steps=tuple(one.planned for one in steps),
        candidates=candidates,
    )
    return SoFar(kept, lines, steps)


def as_typed(typed: SoFar, counted: SoFar) -> SoFar:
    """What counts, told as it was typed wherever that counts the same: nobody sees a sum that nobody wrote.

    Both hold the same lines; `counted` has a sum for each that was paid.
    """
    lines = tuple(
        was if was.state is not None and counted_minor(was) == counted_minor(one) else one
        for was, one in zip(typed.lines, counted.lines, strict=True)
    )
    return replace(counted, lines=lines)


def counted_minor(line: LineBack) -> int:
    """What a line has cost so far: as typed, else as planned where it was bought and not given back; else nothing."""
    if line.paid_minor is not None:
        return line.paid_minor
    return line.planned.line.line_minor if line.state == "bought" else 0


def numbered_on(tasks: tuple[Task, ...], earlier: SoFar | None) -> tuple[Task, ...]:
    """The steps of what is left numbered after those of the same remedy that are done: step 2 of 2, not 1 of 1."""
    done: dict[str, set[int]] = {}
    for one in earlier.done if earlier is not None else ():
        done.setdefault(one.planned.task.candidate, set()).add(one.planned.task.step)
    return tuple(_numbered(task, done[task.candidate]) if task.candidate in done else task for task in tasks)


def _numbered(task: Task, done: set[int]) -> Task:
    """Steps that are left take the numbers that the done ones leave free, in their order.

    A round of shops that is made again is no part of the first one.
    """
    if not task.step:
        return task
    steps = task.steps + len(done - {0})
    free = [number for number in range(1, steps + 1) if number not in done]
    if task.candidate.startswith(ERRAND):
        return replace(task, step=free[task.step - 1])
    return replace(task, step=free[task.step - 1], steps=steps)


def step_id(task: Task) -> str:
    """The name of a row on Do."""
    return f"{task.candidate}#{task.step}"


def _line(
    id: str,
    line: MoneyLine,
    products: dict[str, Product],
    chosen: tuple[Candidate, ...],
    base: Ground,
    tasks: tuple[Task, ...],
) -> PlannedLine:
    pack = products[line.product].pack if line.product is not None else Fraction(0)
    users = tuple(_users(line, chosen))
    steps = tuple(_steps_of(line, users, tasks))
    ordered = line.buy_on or base.brief.ordered
    units = (line.packs or 0) * pack
    return PlannedLine(id, line, units, users, ordered, steps, ordered_day=_ordered_day(line, base))


def _goods(line: MoneyLine, ids: list[str], made: Lists) -> tuple[str, ...]:
    """The lines of goods that a delivery or a tax comes with: those of its shop and its day of money."""
    if line.kind not in ON_TOP:
        return ()
    return tuple(
        id
        for id, other in zip(ids, made.money, strict=True)
        if other.product is not None and (other.shop, other.phase) == (line.shop, line.phase)
    )


def _steps_of(line: MoneyLine, users: tuple[str, ...], tasks: tuple[Task, ...]) -> list[str]:
    """The steps that pay, a tool or a fixed cost is for, by the ids of their rows."""
    if line.kind == "fixed":
        return [step_id(task) for task in tasks]
    of = (line.of,) if line.kind == "labour" else users if line.kind in ("tool", "hire") else ()
    return [step_id(task) for task in tasks if task.candidate in of]


def _ordered_day(line: MoneyLine, base: Ground) -> int:
    """The day of the order among sessions without dates: that of the session whose money pays it, else of the plan."""
    hours = base.brief.hours or ()
    if line.buy_session and line.buy_session <= len(hours):
        return max(base.rest.day, hours[line.buy_session - 1].day)
    return base.rest.day


def _users(line: MoneyLine, chosen: Iterable[Candidate]) -> list[str]:
    """The chosen candidates that a line is for, by id."""
    if line.product is not None:
        dated = line.buy_on is not None or line.buy_session
        mine = [one for one in chosen if line.product in dict(one.goods)]
        return sorted(one.id for one in mine if not dated or one.name in line.tasks)
    if line.kind in ("tool", "hire"):
        return sorted(one.id for one in chosen if line.of in one.tools)
    return sorted(one.id for one in chosen if line.kind in ("remedy", "labour") and line.of == one.id)


def _steps(framed: Framed, plan: Plan, made: Lists) -> tuple[PlannedStep, ...]:
    sessions = {row.number: row for row in made.sessions or ()}
    placed: dict[str, list[tuple[str, ...]]] = {}
    for one in sorted(plan.placed, key=lambda one: (one.option, one.step)):
        placed.setdefault(one.option, []).append(one.people)
    places = _places(made.tasks)
    return tuple(
        _step(framed, task, places[task.candidate, task.step], placed.get(task.candidate, []), sessions)
        for task in made.tasks
    )


def _places(tasks: tuple[Task, ...]) -> dict[tuple[str, int], int]:
    """Where each step stands among those of its remedy that are left, from 0, by candidate and number."""
    numbers: dict[str, list[int]] = {}
    for task in sorted(tasks, key=lambda task: task.step):
        numbers.setdefault(task.candidate, []).append(task.step)
    return {(id, number): place for id, mine in numbers.items() for place, number in enumerate(mine)}


def _step(
    framed: Framed, task: Task, place: int, placed: list[tuple[str, ...]], sessions: dict[int, SessionRow]
) -> PlannedStep:
    """`placed`: who does the steps of its remedy that are left."""
    session = sessions.get(task.session or 0)
    one = framed.candidates.get(task.candidate)
    return PlannedStep(
        step_id(task),
        task,
        "errand" if one is None else one.kind,
        task.base_minutes or task.minutes,
        placed[place] if placed else (),
        session.on if session is not None else None,
        session.start_minute if session is not None else 0,
    )


def _candidates(base: Ground, framed: Framed, found: Checked, earlier: SoFar) -> tuple[Planned, ...]:
    """What was begun keeps what was remembered of it; beside it all that is chosen, and the free moves on offer.

    Free moves of the earlier plan stay, also those that are out for now.
    """
    chosen = {one.id for one in found.chosen}
    fresh = {
        id: Planned(one, id in chosen, was_of(base.survey, one))
        for id, one in framed.candidates.items()
        if id in chosen or id.endswith(AGAIN)
    }
    known = {one.candidate.id: one for one in earlier.remembered.candidates}
    begun = {one.planned.task.candidate for one in earlier.done}
    every = {
        **{id: replace(one, chosen=False) for id, one in known.items() if id.endswith(AGAIN)},
        **fresh,
        **{id: replace(one, chosen=True) for id, one in known.items() if id in begun},
    }
    return tuple(every[id] for id in sorted(every))


def was_of(survey: Survey | None, candidate: Candidate) -> tuple[tuple[str, str, Value], ...]:
    """(thing, field, value) of all that a candidate changes, as the survey has it.

    Of a thing that it replaces or takes away, every field; of a thing that is not there yet, nothing.
    """
    found: dict[tuple[str, str], Value] = {}
    for change in candidate.changes if survey is not None else ():
        name = change.add.name if change.add is not None else change.item
        thing = survey.named[name][1] if survey is not None and name in survey.named else None
        if thing is not None:
            fields = dict(change.set) if change.add is None and not change.remove else dict(thing)
            found |= {(name, field): _value(thing, field) for field in fields}
    return tuple((name, field, value) for (name, field), value in sorted(found.items(), key=lambda pair: pair[0]))


def _value(thing: Item, field: str) -> Value:
    value: Value = getattr(thing, field)
    return value
