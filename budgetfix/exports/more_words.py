"""What one point or one hour more would take, in words that the screen and the workbook share."""

from __future__ import annotations

from budgetfix.base.money import write_money
from budgetfix.outcome.book import MorePlan, PlanBook


def next_lines(book: PlanBook) -> tuple[str, ...]:
    """One sentence about money and one about hours, as far as they were worked out."""
    step = book.next
    lines = []
    if step.point is not None:
        held = ", what is held back included" if step.point.spent_minor <= (book.budget_minor or 0) else ""
        dearer = write_money(step.point.spent_minor - book.spent_minor, book.currency)
        lines.append(f"{_gain(book, step.point)} for {dearer} more than this plan{held}{_with(step.point)}.")
    elif step.no_point:
        lines.append("No money buys one point more" + (" in these hours." if book.sessions is not None else "."))
    if step.hour is not None:
        lines.append(_hour(book, step.hour, step.hour_session))
    return tuple(lines)


def _gain(book: PlanBook, row: MorePlan) -> str:
    points, hazards = row.improvement - book.improvement, book.hazards_after - row.hazards_after
    if hazards <= 0:
        return f"{_count(points, 'point')} more"
    fewer = f"{_count(hazards, 'hazard')} fewer"
    if not points:
        return fewer
    return f"{fewer} and {_count(points, 'point')} more" if points > 0 else f"{fewer}, {_count(-points, 'point')} less"


def _count(number: int, what: str) -> str:
    return f"{number:,} {what}{'' if number == 1 else 's'}"


def _with(row: MorePlan) -> str:
    return f" (with {', '.join(row.with_)})" if row.with_ else ""


def _hour(book: PlanBook, row: MorePlan, session: int) -> str:
    start = f"One hour more in session {session} buys"
    if (row.hazards_after, -row.improvement) >= (book.hazards_after, -book.improvement):
        return f"{start} nothing more for the same money."
    dearer = row.spent_minor - book.spent_minor
    words = f"{write_money(abs(dearer), book.currency)} {'more' if dearer > 0 else 'less'}"
    return f"{start} {_gain(book, row)}" + (f", for {words}" if dearer else "") + f"{_with(row)}."


def more_note(book: PlanBook) -> str:
    """What the rows of the sheet are: all there are, or some of them; and why points may fall with more money."""
    if book.sides:
        return "The fair plans for some sums of money, in the same hours; between two rows it lies between theirs."
    first = " Hazards go first: points may fall where more of one goes." if book.hazards_before else ""
    if book.next.complete:
        return f"Every sum of money at which more can be done, in the same hours, with the best plan for it.{first}"
    return f"The best plans for some sums of money, in the same hours; between two rows it lies between theirs.{first}"
