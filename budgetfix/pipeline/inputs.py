"""What a plan was made of, in short: its money, its hours, and marks that tell whether a file is another one since."""

from __future__ import annotations

from dataclasses import replace
from hashlib import sha256

from budgetfix.intake.job import Job
from budgetfix.outcome.book import PlanBook

DIGITS = 16
APART = ("budget_minor", "hours", "ordered", "ordered_typed")
"""Of the brief, what is told by itself."""


def marks_of(job: Job) -> tuple[tuple[str, str], ...]:
    """(what, mark) of survey, catalog, brief and faults; the same for the same content on every machine."""
    brief = {name: value for name, value in job.brief.model_dump(exclude_defaults=True).items() if name not in APART}
    survey = None if job.survey is None else job.survey.model_dump(exclude={"guessed"}, exclude_defaults=True)
    catalog = job.catalog.model_dump(exclude_defaults=True)
    faults = [one.model_dump(exclude_defaults=True) for one in job.faults]
    parts = {"survey": survey, "catalog": catalog, "brief": brief, "faults": faults}
    return tuple((name, sha256(repr(part).encode()).hexdigest()[:DIGITS]) for name, part in parts.items())


def minutes_of(job: Job) -> tuple[int, ...]:
    """Person-minutes of each session."""
    return tuple(sum(one.minutes) for one in job.brief.hours or ())


def with_inputs(book: PlanBook, whole: Job) -> PlanBook:
    """The book, remembering what the whole job was."""
    if book.remembered is None:
        return book
    known = replace(
        book.remembered, budget_minor=whole.brief.budget_minor, minutes=minutes_of(whole), marks=marks_of(whole)
    )
    return replace(book, remembered=known)
