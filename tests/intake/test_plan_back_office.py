"""A workbook ticked by script and saved by LibreOffice is read back: not one tick, price or minute is lost."""

from __future__ import annotations

import random
from datetime import time, timedelta
from pathlib import Path

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.base.money import digits_of
from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_back import back_from
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.money_lines import NOT_BOUGHT
from budgetfix.outcome.so_far import SoFar
from tests.exports.plan_sheets import opened, sheet, values
from tests.exports.remembered_book import KEPT, rest_of, with_record
from tests.exports.sample_book import many
from tests.intake.office import converted
from tests.intake.ticked import HEAD, Desk, said
from tests.scenarios import SCENARIOS, run

pytestmark = [
    pytest.mark.libreoffice,
    pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension"),
]
Said = dict[str, tuple[object, object]]
TICKS = ("✓", "x", "X", "yes", 1, True, "TRUE", "☑", "ok")


def filled(plan: PlanBook) -> tuple[Desk, Said]:
    """Something in every cell of the user's, in many ways of writing it; and what it says."""
    assert plan.remembered is not None
    desk, chance, wanted = Desk(plan), random.Random(7), Said()
    digits = 10 ** digits_of(plan.currency)
    for at, line in enumerate(plan.remembered.lines):
        goods = line.line.kind not in NOT_BOUGHT
        said_, state = ("returned", "returned") if goods and at % 5 == 1 else (TICKS[at % len(TICKS)], "bought")
        said_, state = ("Sold out", "sold out") if goods and at % 5 == 3 else (said_, state)
        minor = chance.randrange(10**6)
        paid = (minor / digits, f"{plan.currency} {minor / digits:.{digits_of(plan.currency)}f}")[at % 2]
        desk.type("Buy", line.id, "Bought", said_)
        desk.type("Buy", line.id, "Paid in all", paid)
        wanted[line.id] = (state, minor)
    for at, step in enumerate(plan.remembered.steps):
        minutes = chance.randrange(1, 300)
        hours, rest = divmod(minutes, 60)
        ways = (minutes, f"{minutes} min", time(hours, rest), f"{hours}:{rest:02d}", timedelta(minutes=minutes),
                f"{hours} h {rest}")  # fmt: skip
        desk.type("Do", step.id, "Done", TICKS[at % len(TICKS)])
        desk.type("Do", step.id, "Real minutes", ways[at % len(ways)])
        wanted[step.id] = (True, minutes)
    return desk, wanted


def shuffled(desk: Desk) -> bytes:
    """The same with its columns moved, its rows sorted backwards, a sheet and a note of the user's own."""
    for title, heading in (("Buy", "Paid in all"), ("Do", "Real minutes")):
        page = desk.page(title)
        rows = [row for row in range(HEAD + 1, page.max_row + 1) if page.cell(row, 1).value is not None]
        _backwards(page, rows)
        at = next(cell.column_letter for cell in page[HEAD] if cell.value == heading)
        page.move_range(f"{at}{HEAD}:{at}{page.max_row}", cols=25)
        page.cell(page.max_row + 2, 4).value = "ask Ann"
    desk.book.create_sheet("Receipts", 0)["A1"] = "mine"
    return desk.saved()


def _backwards(page: Worksheet, rows: list[int]) -> None:
    lines = [[cell.value for cell in page[row]] for row in rows]
    for row, line in zip(rows, reversed(lines), strict=True):
        for at, value in enumerate(line, start=1):
            page.cell(row, at).value = value


def read(data: bytes, currency: str) -> SoFar:
    """What is read of a workbook that has nothing wrong."""
    found, problems = back_from(data, "plan.xlsx", currency)
    assert problems == ()
    assert found is not None
    return found


def survives(plan: PlanBook, folder: Path) -> None:
    """Filled by script, saved by LibreOffice, also after columns and rows were moved: all of it comes back."""
    desk, wanted = filled(plan)
    plain = desk.saved()
    saved = converted(folder, {"plain": plain, "shuffled": shuffled(desk), "fresh": plan_book(plan)})
    for name in ("plain", "shuffled"):
        found = read(saved[name], plan.currency)
        assert said(found) == wanted
        assert found.remembered == plan.remembered
    assert said(read(saved["fresh"], plan.currency)) == {}


@pytest.mark.parametrize(
    "plan", [KEPT, with_record(many(60, "JPY")), with_record(many(30, "KWD"))], ids=["EUR", "JPY", "KWD"]
)
def test_a_workbook_with_everything_filled_survives(plan: PlanBook, tmp_path: Path) -> None:
    """Three currencies, every way of ticking and of writing sums and minutes."""
    survives(plan, tmp_path)


def test_a_workbook_survives_as_a_spreadsheet_of_another_kind(tmp_path: Path) -> None:
    """Kept as .ods for a while, then saved as .xlsx again; a formula of the user's has its result."""
    desk, wanted = filled(KEPT)
    desk.type("Buy", "product:rod@harrow", "Paid in all", "=20+5.5")
    wanted["product:rod@harrow"] = (wanted["product:rod@harrow"][0], 2550)
    other = converted(tmp_path, {"plan": desk.saved()}, "ods")
    back = converted(tmp_path, other, "xlsx", "ods")
    assert said(read(back["plan"], "EUR")) == wanted


def test_a_broken_cell_is_named_after_libreoffice_saved_it(tmp_path: Path) -> None:
    """One price that is none, in a book that another program wrote: its cell, and only that."""
    desk, _ = filled(KEPT)
    where = desk.type("Buy", "product:rod@harrow", "Paid in all", "=1/0")
    saved = converted(tmp_path, {"plan": desk.saved()})
    found, problems = back_from(saved["plan"], "plan.xlsx", "EUR")
    assert found is None
    assert [str(one) for one in problems] == [
        f"plan.xlsx [{where}] found the error #DIV/0!, wanted a sum in EUR such as 43.00"
    ]


def test_carried_rows_are_worked_out_the_same_by_libreoffice(tmp_path: Path) -> None:
    """Sums, tiles and minutes of a book that carries rows on: every cell as we stored it."""
    desk, _ = filled(KEPT)
    for id in ("product:panels@mill", "hire:Hire: cordless drill"):
        desk.type("Buy", id, "Bought", None)
        desk.type("Buy", id, "Paid in all", None)
    for id in ("rod#2", "panels#1"):
        desk.type("Do", id, "Done", None)
    data = plan_book(rest_of(desk.back()))
    saved = opened(converted(tmp_path, {"plan": data})["plan"])
    for page in opened(data).sheetnames:
        theirs, ours = values(sheet(saved, page)), values(sheet(opened(data), page))
        assert theirs.keys() == ours.keys()
        for at, value in ours.items():
            assert theirs[at] == (pytest.approx(value) if isinstance(value, float) else value), (page, at)


@pytest.mark.slow
@pytest.mark.parametrize("name", [pytest.param(name, marks=pytest.mark.xdist_group(name)) for name in SCENARIOS])
def test_the_demo_plans_survive(name: str, tmp_path: Path) -> None:
    """The renter's, the stager's and the couple's workbook: filled, shuffled and saved, not one tick, price or minute
    is lost, and neither is anything that the book knows of its plan.
    """
    survives(run(name).book, tmp_path)
