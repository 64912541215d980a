"""What cannot be believed of a plan's workbook: each message, word for word, with the cell that it names."""

from __future__ import annotations

import io
import zipfile
from datetime import date, time

import pytest

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_back import back_from
from tests.exports.remembered_book import KEPT
from tests.exports.sample_book import BOOK
from tests.intake.ticked import HEAD, Desk

pytestmark = pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")
ROD, DELIVERY, TV = "product:rod@harrow", "delivery:Delivery, Mill Lane Home@mill", "lower-tv#1"
STATE = "wanted ✓, returned, sold out or nothing"
SUM = "wanted a sum in EUR such as 43.00"
MINUTES = "wanted minutes such as 45, or 1:15"
COPY = "take a copy of the workbook that still has it"


@pytest.mark.parametrize(
    ("title", "id", "heading", "value", "said"),
    [
        ("Buy", ROD, "Bought", "maybe", f"found 'maybe', {STATE}"),
        ("Buy", ROD, "Bought", date(2026, 6, 6), f"found a date, {STATE}"),
        ("Buy", ROD, "Bought", "#REF!", f"found the error #REF!, {STATE}"),
        ("Buy", DELIVERY, "Bought", "returned", "found 'returned', wanted ✓ or nothing"),
        ("Do", TV, "Done", "half of it", "found 'half of it', wanted ✓ or nothing"),
        ("Buy", ROD, "Paid in all", "about 40", f"found 'about 40', {SUM}"),
        ("Buy", ROD, "Paid in all", -5, f"found -5, {SUM}; a sum cannot be below 0"),
        ("Buy", ROD, "Paid in all", 43.505, f"found 43.505, {SUM}; EUR has 2 digits after the point"),
        ("Buy", ROD, "Paid in all", "1.200", f"found '1.200', {SUM}; write 1200, or 2 digits after a point"),
        ("Buy", ROD, "Paid in all", 10**12, f"found 1000000000000, {SUM}; nothing in a home costs that much"),
        ("Buy", ROD, "Paid in all", True, f"found yes, {SUM}"),
        ("Buy", ROD, "Paid in all", date(2026, 6, 6), f"found a date, {SUM}"),
        ("Buy", ROD, "Paid in all", "=20+5", f"found a formula whose result was never stored, {SUM}; open the workbook "
                                             "in a spreadsheet program and save it"),
        ("Do", TV, "Real minutes", "a while", f"found 'a while', {MINUTES}"),
        ("Do", TV, "Real minutes", -3, f"found -3, {MINUTES}; minutes cannot be below 0"),
        ("Do", TV, "Real minutes", 12.5, f"found 12.5, {MINUTES}; write whole minutes"),
        ("Do", TV, "Real minutes", 99999, f"found 99999, {MINUTES}; no step takes that long"),
        ("Do", TV, "Real minutes", time(0, 45, 30), f"found a time of day, {MINUTES}; leave the seconds out"),
        ("Do", TV, "Real minutes", "45:00",
         f"found '45:00', {MINUTES}; hours come first, as in 1:15, and make less than a day"),
    ],
)  # fmt: skip
def test_a_cell_that_cannot_be_believed_is_named(title: str, id: str, heading: str, value: object, said: str) -> None:
    """Sheet and cell, what stands there, what was wanted, and what to do."""
    desk = Desk()
    where = desk.type(title, id, heading, value)
    assert desk.problems() == [f"plan.xlsx [{where}] {said}"]


def test_all_problems_are_told_at_once() -> None:
    """Three bad cells on two sheets are three problems, in the order of the sheets."""
    desk = Desk()
    wheres = [
        desk.type("Buy", ROD, "Bought", "?"), desk.type("Buy", ROD, "Paid in all", "?"),
        desk.type("Do", TV, "Real minutes", "?"),
    ]  # fmt: skip
    assert [problem.split("]")[0] for problem in desk.problems()] == [f"plan.xlsx [{where}" for where in wheres]


def test_a_row_twice_that_says_two_things() -> None:
    """A copied line with another sum in it: nobody knows which holds."""
    desk = Desk()
    desk.type("Buy", ROD, "Paid in all", 40)
    page, row = desk.page("Buy"), desk.cell("Buy", ROD, "Bought").row
    for at in range(1, 18):
        page.cell(60, at).value = page.cell(row, at).value
    page.cell(60, 16).value = 41
    assert desk.problems() == [
        "plan.xlsx [Buy!B60] found 'Extending rod 66-120 in' a second time, with something else in it, wanted each row "
        "once; take one of the two rows away"
    ]


@pytest.mark.parametrize(
    ("title", "id", "heading", "value", "said"),
    [
        ("Buy", ROD, "Bought", "✓", "'✓'"), ("Buy", ROD, "Paid in all", 43.5, "43.5"), ("Do", TV, "Done", "x", "'x'"),
        ("Do", TV, "Real minutes", 40, "40"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("other", [None, "product:sofa@moon"])
def test_something_typed_where_the_plan_has_no_row(
    title: str, id: str, heading: str, value: object, said: str, other: str | None
) -> None:
    """A row whose hidden id was wiped out, or is another plan's: what stands there is not dropped without a word."""
    desk = Desk()
    where = desk.type(title, id, heading, value)
    page = desk.page(title)
    page.cell(desk.cell(title, id, heading).row, 1).value = other
    assert desk.problems() == [
        f"plan.xlsx [{where}] found {said} in a row that the plan does not have, wanted a row of the plan with its "
        "hidden id; write it into the row that it is for; money for anything else belongs under fixed in brief.yaml"
    ]


def test_a_sum_beside_the_total() -> None:
    """What somebody typed into the row of the total would be counted nowhere."""
    desk = Desk()
    page = desk.page("Buy")
    row = next(row for row in range(HEAD, 30) if page.cell(row, 11).value == "Total")
    page.cell(row, 16).value = 150
    assert [problem.split(" in a row")[0] for problem in desk.problems()] == [f"plan.xlsx [Buy!P{row}] found 150"]


def test_a_tick_on_the_sheet_of_a_person() -> None:
    """There ticks are only shown: one typed over our formula would be lost."""
    desk = Desk()
    where = desk.type("Ben", TV, "Done", "✓")
    assert desk.problems() == [
        f"plan.xlsx [{where}] found a tick that the sheet 'Do' does not have, wanted ticks on Do: they show here by "
        "themselves; tick 'lower-tv#1' there"
    ]
    desk.type("Do", TV, "Done", "✓")
    assert desk.problems() == []


@pytest.mark.parametrize("title", ["Buy", "Do"])
def test_a_list_that_is_gone(title: str) -> None:
    """Without the sheet nobody can tell what was typed there."""
    desk = Desk()
    del desk.book[title]
    assert desk.problems() == [f"plan.xlsx found no sheet '{title}', wanted the sheet '{title}'; {COPY}"]


def test_headings_that_are_gone_or_there_twice() -> None:
    """The column of ids, one of the user's columns, both; and one that was copied."""
    desk = Desk()
    desk.page("Buy").delete_cols(1)
    desk.page("Do").cell(HEAD, 2).value = "Finished"
    desk.page("Do").cell(HEAD, 25).value = "Real minutes"
    assert desk.problems() == [
        "plan.xlsx [Buy] found no hidden column of ids, wanted the column with the heading 'id' as it was written; "
        f"{COPY}",
        f"plan.xlsx [Do] found no heading 'Done', wanted the heading 'Done' above its column; {COPY}",
        f"plan.xlsx [Do!Y{HEAD}] found the heading 'Real minutes' again, wanted it once; take one away",
    ]


def test_a_record_that_is_gone_broken_or_of_another_time() -> None:
    """Without its own record a workbook cannot be read back: said with the sheet, and the cell if any."""
    whole = f"wanted the hidden sheet 'Record' as it was written; {COPY}"
    assert Desk(BOOK).problems() == [f"plan.xlsx found no sheet 'Record', {whole}"]
    broken: dict[str, tuple[str | int, str]] = {
        "B3": ("{", f"found a text that cannot be read, {whole}"),
        "A4": ("thing", f"found no kind of record, {whole}"),
        "B1": (2, f"found a record of version 2, wanted version 1; {COPY}"),
    }
    for cell, (value, said) in broken.items():
        desk = Desk()
        desk.page("Record")[cell] = value
        assert desk.problems() == [f"plan.xlsx [Record!{cell.replace('A', 'B')}] {said}"]
    desk = Desk()
    desk.page("Record")["B1"] = None
    assert desk.problems() == [f"plan.xlsx [Record!B1] found no version of the record, wanted version 1; {COPY}"]
    desk = Desk()
    desk.page("Record").delete_rows(2)
    assert desk.problems() == [f"plan.xlsx [Record!B1] found nothing of the plan itself, {whole}"]


@pytest.mark.parametrize("sign", ["\\u001b[31m", "\\u0000", "\\u009b", "\\ud800", "\\u202e", "\\ufeff", "\\u007f"])
def test_a_forged_record_with_signs_that_do_something(sign: str) -> None:
    """No plan of ours remembers a text that a terminal would obey, or that turns a name about: wherever it stands."""
    desk = Desk()
    page = desk.page("Record")
    for row in range(2, page.max_row + 1):
        text = str(page.cell(row, 2).value)
        at = text.index('":"') + 3
        page.cell(row, 2).value = f"{text[:at]}{sign}{text[at:]}"
        assert desk.problems() == [
            f"plan.xlsx [Record!B{row}] found a text that cannot be read, "
            f"wanted the hidden sheet 'Record' as it was written; {COPY}"
        ]
        page.cell(row, 2).value = text


@pytest.mark.parametrize("kind", ["text", "nothing", "zip", "cut", "ods"])
def test_a_file_that_is_no_workbook(kind: str) -> None:
    """Words, nothing, another archive, half a workbook: one plain sentence."""
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w") as made:
        made.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
    whole = plan_book(KEPT)
    data = {
        "text": b"my own notes", "nothing": b"", "zip": archive.getvalue(), "cut": whole[: len(whole) // 2],
        "ods": archive.getvalue(),
    }[kind]  # fmt: skip
    found, problems = back_from(data, "plan.xlsx", "EUR")
    assert found is None
    assert [str(problem) for problem in problems] == [
        "plan.xlsx found a file that is no workbook, wanted the workbook that budgetfix wrote, saved as .xlsx"
    ]


def test_a_lost_row_of_a_sheet_that_is_called_otherwise() -> None:
    """Sheets are known in any letters: one that somebody calls `DO ` is read, and named so where it lost a row."""
    desk = Desk()
    desk.page("Do").title = "DO "
    desk.back()
    desk.page("DO ").delete_rows(HEAD + 1)
    assert [line for line in desk.problems() if "no row 'One round of shops'" in line and "plan.xlsx [DO ] " in line]
