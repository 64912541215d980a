"""The whole walk: inspect, match, frame, choose and place, fit again, check, and make the book."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from budgetfix.base.problems import FileProblem, FilesRefused, Place
from budgetfix.framing.crumbs import WHOLE
from budgetfix.framing.options import ERRAND
from budgetfix.intake.job import Job
from budgetfix.intake.raw_rows import close_to
from budgetfix.optimize import Growth, impossible
from budgetfix.optimize.problem import Answer, NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.check import Checked, checked
from budgetfix.outcome.left_out import left_out
from budgetfix.outcome.make import Around, make_book
from budgetfix.outcome.worth import Worth
from budgetfix.pipeline.candidates import Offered, fitted_again, offered
from budgetfix.pipeline.inspecting import Inspected, inspected, room_words, title
from budgetfix.pipeline.plans import Chooser, Clock, free, more_plans, recommended
from budgetfix.remedies.candidate import Candidate

ASKS = 300
"""Inspections before the first solve; the rest is asked along the sets that the chooser arrives at."""
BESIDE = 0.5
"""Share of the seconds that the two other plans may take after the best one."""
CURVE = 1 / 3
"""Share of the seconds for what more or less money would buy; marks that are not reached by then are left out."""


@dataclass(frozen=True)
class Wish:
    """How long to choose, and where progress goes."""

    seconds: float
    clock: Clock
    report: Callable[[str], None] | None = None


def planned(job: Job, wish: Wish) -> PlanBook | NoPlan:
    """The best plan of a job as a book, or that no plan keeps every wish."""
    seen = inspected(job)
    first = offered(seen.base)
    _know_musts(job, first)
    chooser = _chooser(seen, first, wish)
    started = wish.clock()
    answer = chooser.best(wish.seconds)
    if isinstance(answer, NoPlan):
        return answer
    offer, chooser, answer = _once_more(seen, first, chooser, answer, wish, started)
    found = checked(seen.base, offer.framed, answer.plan)
    return make_book(seen.base, offer.framed, answer, found, _around(job, offer, chooser, answer, wish))


def _know_musts(job: Job, offer: Offered) -> None:
    """Errors: FilesRefused for a must that names nothing here; what the brief also forbids is left to the chooser."""
    known = {*offer.framed.candidates, *(one.id for one in offer.never), *(one.id for one, _ in offer.blocked)}
    known |= {one.pick_one for one in (*offer.framed.candidates.values(), *offer.never) if one.pick_one}
    unknown = [name for name in job.brief.must if name not in known]
    if unknown:
        wanted = "a remedy or a pick-one group of this job"
        place = Place("brief.yaml", label="must")
        raise FilesRefused(
            tuple(FileProblem(place, f"'{name}'", wanted, close_to(name, sorted(known))) for name in unknown)
        )


def _chooser(seen: Inspected, offer: Offered, wish: Wish) -> Chooser:
    return Chooser(seen.base, offer.framed, wish.clock, wish.report, Growth(offer.framed.problem, asks=ASKS))


def _once_more(
    seen: Inspected, first: Offered, chooser: Chooser, answer: Answer, wish: Wish, started: float
) -> tuple[Offered, Chooser, Answer]:
    """Fit the free moves again on the chosen room, and solve once more over the longer list."""
    found = checked(seen.base, first.framed, answer.plan)
    more = _fresh_moves(seen, first, found)
    left = wish.seconds - (wish.clock() - started)
    if not more or left <= 0 or not answer.proven:
        return first, chooser, answer
    second = offered(seen.base, more, first)
    again = _chooser(seen, second, wish)
    better = again.best(left)
    if isinstance(better, NoPlan) or not better.proven:
        return first, chooser, answer
    rounds = replace(
        better.rounds,
        inspections=better.rounds.inspections + answer.rounds.inspections,
        placings=better.rounds.placings + answer.rounds.placings,
    )
    return second, again, replace(better, rounds=rounds)


def _fresh_moves(seen: Inspected, offer: Offered, found: Checked) -> tuple[Candidate, ...]:
    if found.room is None:
        return ()
    return fitted_again(seen.base, found.room, found.findings, offer.framed)


def _around(job: Job, offer: Offered, chooser: Chooser, answer: Answer, wish: Wish) -> Around:
    until = wish.clock() + wish.seconds * BESIDE
    cheaper = recommended(chooser, answer, max(0.0, until - wish.clock()))
    nothing = free(chooser, max(0.0, until - wish.clock()))
    more = more_plans(chooser, answer, min(until, wish.clock() + wish.seconds * CURVE))
    worth = Worth(chooser.base, offer.framed)
    cannot = impossible(offer.framed.problem)
    out = left_out(
        job.brief,
        job.catalog,
        offer.framed,
        answer.plan,
        worth,
        cannot,
        offer.never,
        offer.blocked,
        proven=answer.proven,
    )
    return Around(
        title(job), room_words(job.survey), wish.seconds, cheaper, nothing, more, out, _notes(job, offer, answer)
    )


def _notes(job: Job, offer: Offered, answer: Answer) -> tuple[str, ...]:
    """What a reader must know beside the plan."""
    used = {
        product
        for id in answer.plan.chosen
        if not id.startswith(ERRAND)
        for product, _ in offer.framed.candidates[id].uses
    }
    examples = sum(1 for product in job.catalog.products if product.example and product.product in used)
    notes = list(job.notes)
    if examples:
        notes.append(
            f"{examples} of the prices {'is' if examples == 1 else 'are'} still an example; put in your shop's."
        )
    notes += _no_better_layout(offer)
    if any(
        work.low != work.high
        for id in answer.plan.chosen
        if id in offer.framed.candidates
        for work in offer.framed.candidates[id].work
    ):
        notes.append("Minutes are the mean of low, likely and high where all three are given.")
    return tuple(notes)


def _no_better_layout(offer: Offered) -> list[str]:
    """Rooms in which the furniture stands in the way and no other layout of it does more than single moves."""
    given = {one.room for one in offer.framed.candidates.values() if one.kind in WHOLE}
    rooms = [room or "the room" for room in offer.crowded if room not in given]
    words = ", ".join(rooms)
    return (
        [f"{words[:1].upper()}{words[1:]}: no other layout of the furniture does more than single moves."]
        if rooms
        else []
    )
