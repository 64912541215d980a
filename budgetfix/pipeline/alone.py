"""The best plan of a job with nothing beside it: no other sums of money, no why not. For setting plans side by side."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import NextStep, PlanBook
from budgetfix.outcome.check import checked
from budgetfix.outcome.make import Around, make_book
from budgetfix.pipeline.inspecting import room_words, title
from budgetfix.pipeline.planning import Wish, walked
from budgetfix.remedies.candidate import Candidate


@dataclass(frozen=True)
class Alone:
    """A checked plan, and what it chose."""

    book: PlanBook
    chosen: tuple[Candidate, ...]


def planned_alone(job: Job, wish: Wish) -> Alone | NoPlan:
    """The best plan of a job. Errors: FilesRefused for a must that names nothing here."""
    found = walked(job, wish)
    if isinstance(found, NoPlan):
        return found
    base, framed = found.seen.base, found.offer.framed
    seen = checked(base, framed, found.answer.plan)
    around = Around(title(job), room_words(job.survey), wish.seconds, None, None, (), NextStep(), (), job.notes)
    return Alone(make_book(base, framed, found.answer, seen, around), seen.chosen)
