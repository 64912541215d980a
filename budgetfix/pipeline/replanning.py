"""The walk over the rest of a job: the rooms as they stand, the same candidates less what is done, the same chooser."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.make import before as sums_before
from budgetfix.outcome.so_far import SoFar
from budgetfix.pipeline.inspecting import Inspected, inspected, seen_on
from budgetfix.pipeline.planning import Walked, Wish, booked, chooser_of, fairly, know_musts, with_reasons
from budgetfix.pipeline.rest import Left, rest_of
from budgetfix.pipeline.rest_offer import rest_offer


@dataclass(frozen=True)
class Replanned:
    """The book of the rest, and what is left of the job it was made of. `unended`: begun, and cannot be ended."""

    book: PlanBook
    left: Left
    walked: Walked
    unended: tuple[str, ...] = ()


def replanned(job: Job, so_far: SoFar, day: date, wish: Wish) -> Replanned | NoPlan:
    """The best plan for the rest of a job, or that none keeps every wish. Errors: FilesRefused."""
    left = rest_of(job, so_far, day)
    found = walked_on(left, wish)
    unended: tuple[str, ...] = ()
    if isinstance(found, NoPlan) and left.rest.begun:
        given_up = replace(left, rest=replace(left.rest, begun=()))
        found = walked_on(given_up, wish)
        unended = left.rest.begun
    if isinstance(found, NoPlan):
        return found
    return Replanned(booked(left.job, found, wish, left.so_far), left, found, unended)


def walked_on(left: Left, wish: Wish) -> Walked | NoPlan:
    """The best plan of the rest, not yet a book. What is begun must be ended."""
    before = inspected(left.first)
    if wish.report is not None:
        wish.report("Taking off what is done")
    seen = _now(left, before)
    rested = rest_offer(before.base, seen.base, left)
    know_musts(left.job, rested.first, left.rest.begun)
    seen = replace(seen, base=rested.base)
    chooser = chooser_of(seen, rested.offer, wish)
    started = wish.clock()
    answer = chooser.best(wish.seconds)
    if isinstance(answer, NoPlan):
        return with_reasons(rested.offer, answer)
    answer, fair = fairly(chooser, answer, wish.seconds - (wish.clock() - started))
    return Walked(seen, rested.offer, chooser, answer, wish.clock() - started, fair)


def _now(left: Left, before: Inspected) -> Inspected:
    """The rooms as they stand; what was taken away since the beginning keeps its points where nothing stands for it."""
    job, base = left.job, before.base
    rest = replace(left.rest, first=base.seen if left.rest.origin is not None else ())
    now = replace(base, survey=job.survey, brief=job.brief, catalog=job.catalog, faults=job.faults, rest=rest)
    if left.rest.origin is None or job.survey is None:
        return replace(before, base=now, points=sums_before(now)[2])
    seen = tuple(now.again(at, job.survey) for at in range(len(now.blocks)))
    return seen_on(job, replace(now, seen=seen))
