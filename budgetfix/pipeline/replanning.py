"""The walk over the rest of a job: the rooms as they stand, the same candidates less what is done, the same chooser."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date

from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.make import before as sums_before
from budgetfix.outcome.remembering import as_typed
from budgetfix.outcome.since import Since
from budgetfix.outcome.so_far import SoFar
from budgetfix.pipeline.inputs import with_inputs
from budgetfix.pipeline.inspecting import Inspected, inspected, seen_on
from budgetfix.pipeline.planning import Walked, Wish, booked, chooser_of, fairly, know_musts, with_reasons
from budgetfix.pipeline.rest import Left, rest_of
from budgetfix.pipeline.rest_notes import notes_of, typed_notes, unused_notes
from budgetfix.pipeline.rest_offer import rest_offer
from budgetfix.pipeline.rest_since import knowing, since
from budgetfix.pipeline.rest_unended import ended_if_possible, unended


@dataclass(frozen=True)
class Replanned:
    """The book of the rest, what is left of the job it was made of, and what changed since."""

    book: PlanBook
    left: Left
    walked: Walked
    since: Since


@dataclass(frozen=True)
class NoRest:
    """No plan for the rest keeps every wish."""

    why: NoPlan
    left: Left


def replanned(job: Job, so_far: SoFar, day: date, wish: Wish) -> Replanned | NoRest:
    """The best plan for the rest of a job, or that none keeps every wish. Errors: FilesRefused.

    What is begun must be ended; where that cannot be, the rest is planned without it, and that is said.
    """
    whole = rest_of(job, so_far, day)
    barred = (id for id in whole.done.begun_ids if id not in whole.rest.begun)
    left, found = ended_if_possible(unended(whole, barred), lambda one: walked_on(one, wish))
    if isinstance(found, NoPlan):
        return NoRest(found, whole)
    earlier = as_typed(so_far, left.so_far) if left.rest.told else None
    book = knowing(with_inputs(booked(left.job, found, wish, earlier), job), left)
    paces = left.paces if left.paces.learnt else book.paces
    budget = left.brief.budget_minor if left.rest.told else None
    told = since(left, found, wish, left.rest.unended)
    typed = (*notes_of(left.paid), *typed_notes(so_far, job.brief.currency), *unused_notes(told))
    book = replace(book, paces=paces, whole_budget_minor=budget, notes=(*book.notes, *typed))
    return Replanned(book, left, found, told)


def walked_on(left: Left, wish: Wish) -> Walked | NoPlan:
    """The best plan of the rest, not yet a book. What is begun must be ended."""
    before = inspected(left.first)
    if wish.report is not None:
        wish.report("Taking off what is done")
    seen = _now(left, before)
    rested = rest_offer(before.base, seen.base, left, wish.report)
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
