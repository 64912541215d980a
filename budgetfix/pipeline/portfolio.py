"""All jobs of a folder planned together, each piece of the stock in one house at a time.

Jobs share what their one catalog has in stock; those whose stays do not meet share nothing. `seconds` is for each
job: once for its plan with every piece, and once more, put together, for who goes without which piece.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from budgetfix.base.problems import FilesRefused
from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.optimize.sharing import Answered, Memory, NoShare, Shared, settled, share
from budgetfix.optimize.stock import Conflict, Packs, Stock
from budgetfix.pipeline.handing_on import handed_on
from budgetfix.pipeline.lanes import Ask, FairPieces, Lanes, Made, Refit, Sit, Undo, Write
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.portfolio_reading import within
from budgetfix.pipeline.seat import Place
from budgetfix.pipeline.standing import Holding, elsewhere, stay_of, undated, without_it

REFITS = 2
"""How often jobs that go without a piece are fitted anew."""
SHARING = "Who gets which piece"


@dataclass(frozen=True)
class NoPlans:
    """Jobs without a plan of their own, by place."""

    alone: tuple[tuple[int, NoPlan], ...]


@dataclass(frozen=True)
class NotTogether:
    """Each job has a plan, but not all at once. `wanted`: pieces, in words, and the places of the jobs that must have
    them; `proven` False: the clock ended before that was known.
    """

    proven: bool
    wanted: tuple[Conflict, ...] = ()


@dataclass(frozen=True)
class Group:
    """Jobs that share a stock: their places among all jobs, and what they share."""

    places: tuple[int, ...]
    stock: Stock


@dataclass(frozen=True)
class Chosen:
    """What was found for one job: the answer, and the most that the others leave to it of each piece."""

    answer: Answered
    ceilings: Packs = ()


@dataclass(frozen=True)
class Together:
    """Every job planned, in order, and how the stock was shared."""

    made: tuple[Made, ...]
    chosen: tuple[Chosen, ...]
    groups: tuple[tuple[Group, Shared], ...]


def groups(jobs: Sequence[Job]) -> tuple[Group, ...]:
    """Jobs that may want one piece on one day, put together; each job is in one group, many in one of their own."""
    stays = tuple(stay_of(job) for job in jobs)
    found: list[list[int]] = []
    for at in range(len(jobs)):
        shared = [group for group in found if any(_share(jobs, stays, at, other) for other in group)]
        found = [group for group in found if group not in shared] + [sorted([at, *(one for g in shared for one in g)])]
    return tuple(
        Group(tuple(group), Stock(_packs(jobs[group[0]]), tuple(stays[at] for at in group))) for group in sorted(found)
    )


def _share(jobs: Sequence[Job], stays: Sequence[tuple[int, int] | None], one: int, other: int) -> bool:
    same = bool(jobs[one].catalog_file) and jobs[one].catalog_file == jobs[other].catalog_file
    return same and bool(_packs(jobs[one])) and Stock({}, tuple(stays)).together(one, other)


def _packs(job: Job) -> dict[str, int]:
    return {one.product: one.stock for one in job.catalog.products if one.stock is not None}


def planned_together(
    jobs: Sequence[Job], names: Sequence[str], wish: Wish, lanes: int
) -> Together | NoPlans | NotTogether:
    """Plan all jobs on so many processes. `names`: of the houses, as people read them.

    Errors: FilesRefused for musts that mean nothing; LaneEnded.
    """
    quiet = replace(wish, report=None)
    with Lanes(names, lanes, wish.report) as running:
        first = running.each([(at, Sit(job, quiet)) for at, job in enumerate(jobs)], "Planning")
        refused = [(at, one) for at, one in enumerate(first) if isinstance(one, FilesRefused)]
        if refused:
            raise FilesRefused(tuple(within(jobs[at].name, it) for at, one in refused for it in one.problems))
        alone = tuple((at, one) for at, one in enumerate(first) if isinstance(one, NoPlan))
        if alone:
            return NoPlans(alone)
        answers = [one for one in first if isinstance(one, Answered)]
        shared = []
        for group in groups(jobs):
            found = _shared(running, group, [answers[at] for at in group.places], quiet)
            if isinstance(found, NoShare):
                return NotTogether(found.proven, tuple(_placed(one, group) for one in found.conflicts))
            shared.append((group, found))
        return _written(running, jobs, names, tuple(shared), quiet)


def _placed(one: Conflict, group: Group) -> Conflict:
    """With the places of the jobs among all of them."""
    return replace(one, jobs=tuple(group.places[at] for at in one.jobs))


def _shared(running: Lanes, group: Group, first: list[Answered], wish: Wish) -> Shared | NoShare:
    """The best allocation. Jobs that go without a piece are fitted anew; where that brings something new to do, all is
    shared out once more, so that the proof is over the final lists. What was found before stays, unproven, where the
    clock ends before anything as good is found over these.
    """
    until = wish.clock() + wish.seconds * len(group.places)

    def ask(wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
        tasks = [(group.places[at], Ask(ceilings, wish, until)) for at, ceilings in wanted]
        return [one if isinstance(one, Answered) else None for one in running.each(tasks, SHARING)]

    def fair(wanted: Sequence[tuple[int, Packs]]) -> list[Packs | None]:
        tasks = [(group.places[at], FairPieces(under, wish)) for at, under in wanted]
        return [one if isinstance(one, tuple) else None for one in running.each(tasks, SHARING)]

    def stopped() -> bool:
        return wish.clock() > until

    memory = Memory(ask, {at: [((), one)] for at, one in enumerate(first)})
    found = share(group.stock, memory, stopped)
    for _ in range(REFITS):
        if isinstance(found, NoShare) or stopped():
            break
        grown = _fitted_anew(running, group, memory, found, wish, until)
        if not grown:
            break
        again = share(group.stock, memory, stopped)
        if _lost(again, found):
            running.each([(group.places[at], Undo(wish)) for at in grown], SHARING)
            found = replace(found, floor=tuple(0 for _ in found.left))
            break
        found = again
    if isinstance(found, NoShare):
        return found
    found = settled(group.stock, memory, found, stopped)
    return handed_on(group.stock, memory, found, fair, stopped) if len(group.places) > 1 else found


def _lost(again: Shared | NoShare, found: Shared) -> bool:
    """True where the clock ended with less than what was there before."""
    return not again.proven and (isinstance(again, NoShare) or again.left > found.left)


def _fitted_anew(running: Lanes, group: Group, memory: Memory, found: Shared, wish: Wish, until: float) -> list[int]:
    """Jobs for which something new came up; what is known of them is forgotten."""
    short = [at for at, one in enumerate(found.answers) if one.held != _alone(memory, at)]
    tasks = [(group.places[at], Refit(found.answers[at].under, wish, until)) for at in short]
    grown = [at for at, new in zip(short, running.each(tasks, SHARING) if tasks else (), strict=True) if new]
    for at in grown:
        memory.known.pop(at)
    return grown


def _alone(memory: Memory, at: int) -> Packs:
    one = memory.of([(at, ())])[0]
    return one.held if one is not None else ()


def _written(
    running: Lanes, jobs: Sequence[Job], names: Sequence[str], shared: tuple[tuple[Group, Shared], ...], wish: Wish
) -> Together:
    """The books and files of all jobs."""
    chosen, tasks = {}, []
    for group, found in shared:
        holdings = [
            Holding(names[at], jobs[at], found.answers[place].held, found.alone[place], found.ceilings[place])
            for place, at in enumerate(group.places)
        ]
        for place, at in enumerate(group.places):
            answer, ceilings = found.answers[place], found.ceilings[place]
            where = elsewhere(holdings, group.stock, place, ceilings)
            chosen[at] = Chosen(answer, ceilings)
            notes = (*without_it(holdings[place], where), *undated(holdings[place]))
            shares = len(group.places) > 1
            told = Place(answer.under, ceilings, tuple(sorted(where.items())), notes, shares)
            tasks.append((at, Write(told, wish)))
    made = running.each(sorted(tasks, key=lambda pair: pair[0]), "Writing the lists")
    return Together(
        tuple(one for one in made if isinstance(one, Made)), tuple(chosen[at] for at in range(len(jobs))), shared
    )
