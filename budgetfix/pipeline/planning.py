"""The whole walk: inspect, match, frame, choose and place, fit again, check, and make the book."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from budgetfix.base.problems import FileProblem, FilesRefused, Place
from budgetfix.framing.frame import Framed, Ground
from budgetfix.intake.job import Job
from budgetfix.intake.raw_rows import close_to
from budgetfix.optimize import Growth
from budgetfix.optimize.fair import Fair
from budgetfix.optimize.problem import Answer, NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.check import Checked, checked
from budgetfix.outcome.costing import costing
from budgetfix.outcome.make import make_book
from budgetfix.outcome.quoting import is_quoted, quote
from budgetfix.outcome.so_far import SoFar
from budgetfix.pipeline.around import around
from budgetfix.pipeline.candidates import Offered, fitted_again, offered
from budgetfix.pipeline.fairness import fair_answer, fair_matters
from budgetfix.pipeline.inputs import with_inputs
from budgetfix.pipeline.inspecting import Inspected, inspected
from budgetfix.pipeline.offers import offers
from budgetfix.pipeline.plans import Chooser, Clock
from budgetfix.pipeline.telling import telling
from budgetfix.remedies.candidate import Candidate

LEAST_SECONDS = 10.0
"""The fair choice gets this long even where the household's plan has used up the seconds."""
ASKS = 300
"""Inspections before the first solve; the rest is asked along the sets that the chooser arrives at."""
OFFERS = 0.3
"""Share of the seconds for the options of a quote, after all else."""


@dataclass(frozen=True)
class Wish:
    """How long to choose, and where progress goes."""

    seconds: float
    clock: Clock
    report: Callable[[str], None] | None = None


@dataclass(frozen=True)
class Walked:
    """A job as far as its best plan: what was seen, what was on offer, the seconds that it took; `fair`: for two."""

    seen: Inspected
    offer: Offered
    chooser: Chooser
    answer: Answer
    taken: float
    fair: Fair | None = None


def planned(job: Job, wish: Wish) -> PlanBook | NoPlan:
    """The best plan of a job as a book, or that no plan keeps every wish."""
    found = walked(job, wish)
    return found if isinstance(found, NoPlan) else booked(job, found, wish)


def walked(job: Job, wish: Wish) -> Walked | NoPlan:
    """The best plan of a job, not yet a book."""
    seen = inspected(job)
    if wish.report is not None:
        wish.report("Fitting remedies to the faults found")
    first = offered(seen.base, report=wish.report)
    know_musts(job, first)
    chooser = chooser_of(seen, first, wish)
    started = wish.clock()
    answer = chooser.best(wish.seconds)
    if isinstance(answer, NoPlan):
        return with_reasons(first, answer)
    offer, chooser, answer = _once_more(seen, first, chooser, answer, wish, started)
    answer, fair = fairly(chooser, answer, wish.seconds - (wish.clock() - started))
    return Walked(seen, offer, chooser, answer, wish.clock() - started, fair)


def booked(job: Job, walked: Walked, wish: Wish, earlier: SoFar | None = None) -> PlanBook:
    """The book of a plan, with everything that stands beside it. `earlier`: what was paid and done before."""
    base, offer, answer = walked.seen.base, walked.offer, walked.answer
    found = checked(base, offer.framed, answer.plan)
    beside = around(job, offer, walked.chooser, answer, wish.seconds, walked.taken, walked.fair)
    book = make_book(base, offer.framed, answer, found, beside, earlier)
    book = with_inputs(book, job)
    if is_quoted(base) and not base.rest.told:
        book = replace(book, offers=offers(walked.chooser, answer, wish.seconds * OFFERS))
    return book if base.rest.told else _quoted(base, offer.framed, book)


def _quoted(base: Ground, framed: Framed, book: PlanBook) -> PlanBook:
    """The book with a quote, and the costing behind it, where somebody is paid."""
    offered_to = quote(base, framed, book)
    if offered_to is None:
        return book
    return replace(book, quote=offered_to, costing=costing(base, framed, book, offered_to))


def fairly(chooser: Chooser, answer: Answer, seconds: float) -> tuple[Answer, Fair | None]:
    """The fair plan where two people have priorities of their own; else, and where the clock ended, the household's."""
    if not fair_matters(chooser, answer):
        return answer, None
    found = fair_answer(chooser, answer, max(LEAST_SECONDS, seconds))
    return (replace(answer, proven=False), None) if found is None else found


def with_reasons(offer: Offered, found: NoPlan) -> NoPlan:
    """Adds why musts of the clash were never offered: what shares a spot, what the lease or the landlord rules out."""
    named = {id for wish in found.clash if wish.startswith("must:") for id in wish.removeprefix("must:").split(",")}
    out = tuple((one.id, why) for one, why in offer.blocked if not named.isdisjoint({one.id, one.pick_one}))
    return replace(found, hopeless=(*found.hopeless, *out))


def know_musts(job: Job, offer: Offered, also: tuple[str, ...] = ()) -> None:
    """Errors: FilesRefused for a must that names nothing here; what the brief also forbids is left to the chooser.

    `also`: what is known besides.
    """
    known = {*also, *offer.framed.candidates, *(one.id for one in offer.never), *(one.id for one, _ in offer.blocked)}
    known |= {one.pick_one for one in (*offer.framed.candidates.values(), *offer.never) if one.pick_one}
    unknown = [name for name in job.brief.must if name not in known]
    if unknown:
        wanted = "a remedy or a pick-one group of this job"
        place = Place("brief.yaml", label="must")
        raise FilesRefused(
            tuple(FileProblem(place, f"'{name}'", wanted, close_to(name, sorted(known))) for name in unknown)
        )


def chooser_of(seen: Inspected, offer: Offered, wish: Wish) -> Chooser:
    """A chooser over what is on offer."""
    report = telling(wish.report, seen.base.brief, seen.points)
    return Chooser(seen.base, offer.framed, wish.clock, report, Growth(offer.framed.problem, asks=ASKS))


def _once_more(
    seen: Inspected, first: Offered, chooser: Chooser, answer: Answer, wish: Wish, started: float
) -> tuple[Offered, Chooser, Answer]:
    """Fit the free moves again on the chosen room, and solve once more over the longer list."""
    if not answer.proven or wish.clock() - started >= wish.seconds:
        return first, chooser, answer
    found = checked(seen.base, first.framed, answer.plan)
    more = _fresh_moves(seen, first, found)
    left = wish.seconds - (wish.clock() - started)
    if not more or left <= 0:
        return first, chooser, answer
    second = offered(seen.base, more, first)
    again = chooser_of(seen, second, wish)
    better = again.best(left)
    if isinstance(better, NoPlan) or not better.proven:
        return first, chooser, answer
    return second, again, replace(better, rounds=better.rounds + answer.rounds)


def _fresh_moves(seen: Inspected, offer: Offered, found: Checked) -> tuple[Candidate, ...]:
    if found.room is None:
        return ()
    return fitted_again(seen.base, found.room, found.findings, offer.framed)
