"""Books that remember their own plan, as a real plan's book does: the sample with a record."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction

from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.money_lines import line_ids
from budgetfix.outcome.remembering import carried_on, counted_minor, step_id
from budgetfix.outcome.so_far import Planned, PlannedLine, PlannedStep, Remembered, SoFar
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Hung
from budgetfix.room.survey import Change
from tests.exports.sample_book import BOOK

PRINT = Candidate(
    "big-print~again", "hang-pictures", "Hang a 48 in picture", own=True, uses=(("print", Fraction(1, 3)),),
    changes=(Change("pictures", "print", add=Hung(name="print", wall="A", what="picture", width=1219.2)),),
)  # fmt: skip


def with_record(book: PlanBook) -> PlanBook:
    """The book with all that it needs to be read back."""
    chosen = tuple(Planned(Candidate(row.id, "declared", row.name)) for row in book.chosen)
    remembered = Remembered(
        tuple(PlannedLine(id, line) for id, line in zip(line_ids(book.money), book.money, strict=True)),
        tuple(PlannedStep(step_id(task), task, "declared", task.minutes, task.who) for task in book.tasks),
        (*chosen, Planned(PRINT, False, (("sofa", "gap", 50.0),))),
        date(2026, 6, 1),
        book.spent_minor,
        book.hazard_points_after,
        book.points_after,
    )
    return replace(book, remembered=remembered)


KEPT = with_record(BOOK)


def rest_of(back: SoFar, book: PlanBook = KEPT) -> PlanBook:
    """The book of what is left: rows of which nothing was said, with the sums of what was paid taken off the money."""
    settled = carried_on(back, tuple(one.planned.task for one in back.steps if not one.done))
    paid = sum(map(counted_minor, settled.lines))
    lines = tuple(one.planned for one in back.lines if one.state is None and one.paid_minor is None)
    steps = tuple(one.planned for one in back.steps if not one.done)
    spent = sum(one.line.line_minor for one in lines)
    assert book.remembered is not None
    assert book.budget_minor is not None
    whole = replace(
        book.remembered,
        lines=(*settled.remembered.lines, *lines),
        steps=(*settled.remembered.steps, *steps),
        spent_minor=spent + paid,
    )
    return replace(
        book,
        money=tuple(one.line for one in lines),
        tasks=tuple(one.task for one in steps),
        spent_minor=spent,
        budget_minor=max(0, book.budget_minor - paid),
        whole_budget_minor=book.budget_minor,
        best=replace(book.best, spent_minor=spent),
        remembered=whole,
        so_far=back,
    )
