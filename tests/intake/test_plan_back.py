"""A plan's workbook read back: what was typed is found whatever became of the file around it."""

from __future__ import annotations

from datetime import time
from pathlib import Path

import pytest
from openpyxl.comments import Comment
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_back import read_back
from budgetfix.outcome.so_far import LineBack, SoFar, StepBack
from tests.exports.remembered_book import KEPT, with_record
from tests.exports.sample_book import NO_HOURS, NOTHING, many
from tests.intake.ticked import HEAD, Desk, said

pytestmark = pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")
TYPED = {
    "product:rod@harrow": ("bought", 4350),
    "product:anchor@harrow": (None, 980),
    "product:bulb@harrow": ("sold out", None),
    "product:panels@mill": ("returned", 0),
    "hire:Hire: cordless drill": ("bought", None),
    "delivery:Delivery, Mill Lane Home@mill": (None, 650),
    "tax:Tax, Harrow Tools@harrow": ("bought", 502),
    "lower-tv#1": (True, 75),
    "rod#1": (True, None),
    "bulbs#1": (False, 12),
}
"""What the desk below says, as it is read."""


def desk() -> Desk:
    """The sample's workbook with something of everything typed into it."""
    made = Desk()
    for id, bought, paid in (
        ("product:rod@harrow", "✓", 43.5), ("product:anchor@harrow", None, "EUR 9,80"),
        ("product:bulb@harrow", "Sold out", None), ("product:panels@mill", "returned", 0),
        ("hire:Hire: cordless drill", True, None), ("delivery:Delivery, Mill Lane Home@mill", None, "6.50"),
        ("tax:Tax, Harrow Tools@harrow", "x", None),
    ):  # fmt: skip
        made.type("Buy", id, "Bought", bought)
        made.type("Buy", id, "Paid in all", paid)
    for id, done, minutes in (("lower-tv#1", 1, time(1, 15)), ("rod#1", "yes", None), ("bulbs#1", None, "12 min")):
        made.type("Do", id, "Done", done)
        made.type("Do", id, "Real minutes", minutes)
    return made


def test_everything_typed_is_found() -> None:
    """Ticks, sums and minutes, each at its row; what nobody touched says nothing; the plan is as it was."""
    found = desk().back()
    assert said(found) == TYPED
    assert found.remembered == KEPT.remembered
    assert [one.planned for one in found.lines] == list(found.remembered.lines)
    assert [one.planned for one in found.steps] == list(found.remembered.steps)


@pytest.mark.parametrize("plan", [KEPT, with_record(NOTHING), with_record(NO_HOURS), with_record(many(100, "JPY"))])
def test_a_fresh_book_says_nothing(plan: object, tmp_path: Path) -> None:
    """A book as we wrote it, also an empty one, comes back without a word."""
    (tmp_path / "plan.xlsx").write_bytes(plan_book(plan))  # type: ignore[arg-type]
    found, problems = read_back(tmp_path / "plan.xlsx", plan.currency)  # type: ignore[attr-defined]
    assert problems == ()
    assert found is not None
    rows = found.remembered
    assert found == SoFar(rows, tuple(map(LineBack, rows.lines)), tuple(StepBack(step) for step in rows.steps))


def test_columns_may_be_moved_and_inserted() -> None:
    """The user's columns at the far end, a new one in front of everything: headings tell where they are."""
    made = desk()
    for title, heading in (("Buy", "Paid in all"), ("Do", "Done")):
        page = made.page(title)
        at = next(cell.column_letter for cell in page[HEAD] if cell.value == heading)
        page.move_range(f"{at}{HEAD}:{at}{page.max_row}", cols=20)
        page.insert_cols(1)
    assert said(made.back()) == TYPED


def test_rows_may_be_sorted_and_hidden() -> None:
    """Lines by price, steps backwards, half of them hidden: ids go with their rows."""
    made = desk()
    for title, count in (("Buy", 7), ("Do", 7)):
        page = made.page(title)
        _reverse(page, count)
        page.row_dimensions[HEAD + 2].hidden = True
        page.column_dimensions["D"].hidden = True
    assert said(made.back()) == TYPED


def _reverse(page: Worksheet, count: int) -> None:
    rows = [[cell.value for cell in page[number]] for number in range(HEAD + 1, HEAD + 1 + count)]
    for number, values in enumerate(reversed(rows), start=HEAD + 1):
        for at, value in enumerate(values, start=1):
            page.cell(number, at).value = value


def test_rows_above_between_and_below_do_no_harm() -> None:
    """Titles more, notes between the lines, a list of one's own below with words under our headings."""
    made = desk()
    for title in ("Buy", "Do"):
        page = made.page(title)
        page.insert_rows(1, 3)
        page.insert_rows(HEAD + 5)
        page.cell(HEAD + 5, 4).value = "Ask Ann whether we need this"
        page.cell(page.max_row + 3, 4).value = "My own list"
    made.page("Do").cell(40, 2).value = "✓"
    made.page("Do").cell(40, 8).value = "Water the plants"
    assert said(made.back()) == TYPED


@pytest.mark.parametrize(
    ("title", "id", "heading", "name"),
    [
        ("Buy", "product:rod@harrow", "Bought", "Extending rod 66-120 in"),
        ("Buy", "delivery:Delivery, Mill Lane Home@mill", "Bought", "Delivery, Mill Lane Home"),
        ("Do", "lower-tv#1", "Done", "Lower the TV by 12 in"),
    ],
)
def test_a_row_taken_away_is_missed(title: str, id: str, heading: str, name: str) -> None:
    """What was paid and done would go with its row, so nothing is read: sheet and row are named, and what to do."""
    made = desk()
    made.page(title).delete_rows(made.cell(title, id, heading).row)
    assert made.problems() == [
        f"plan.xlsx [{title}] found no row '{name}', wanted every row of the plan: rows may be sorted, not deleted; "
        "put it back, or take a copy of the workbook that still has it"
    ]


def test_a_hidden_id_wiped_out_in_an_empty_row_is_missed_too() -> None:
    """Nothing is typed there yet, but what will be would be lost."""
    made = Desk()
    made.page("Do").cell(made.cell("Do", "lower-tv#1", "Done").row, 1).value = None
    assert [problem.split(",")[0] for problem in made.problems()] == [
        "plan.xlsx [Do] found no row 'Lower the TV by 12 in'"
    ]


def test_sheets_of_ones_own_notes_and_looks_do_no_harm() -> None:
    """Sheets added and moved, our sums typed over, comments, merged cells, filters, colours: none of it is read."""
    made = desk()
    made.book.create_sheet("Receipts", 0)["B4"] = "Bought"
    made.book.move_sheet("Record", -5)
    copied = made.book.copy_worksheet(made.page("Do"))
    copied.title = "Do (2)"
    page = made.page("Do")
    page["B6"].comment = Comment("took ages", "Ann")
    page.merge_cells("C30:F33")
    page.auto_filter.ref = "A4:R11"
    for row in range(12, page.max_row + 1):
        for at in range(1, page.max_column + 1):
            if page.cell(row, at).data_type == "f":
                page.cell(row, at).value = 7
    buy = made.page("Buy")
    for line in buy.iter_rows(min_row=HEAD + 1):
        for cell in line:
            if cell.data_type == "f":
                cell.value = 1
    assert said(made.back()) == TYPED


def test_a_copied_row_that_says_the_same_is_one_row() -> None:
    """The same line twice with the same tick is no contradiction."""
    made = desk()
    page = made.page("Buy")
    row = made.cell("Buy", "product:rod@harrow", "Bought").row
    for at in range(1, 18):
        page.cell(60, at).value = page.cell(row, at).value
    assert said(made.back()) == TYPED


def test_people_see_ticks_on_their_own_sheets_and_nothing_is_wrong() -> None:
    """A program that stores what formulas show leaves Do's own ticks on the sheet of a person."""
    made = desk()
    page = made.page("Ann")
    for row in range(HEAD + 1, page.max_row + 1):
        id = page.cell(row, 1).value
        page.cell(row, 2).value = "✓" if id in ("lower-tv#1", "rod#1") else "☐"
    assert said(made.back()) == TYPED
