from __future__ import annotations

import io
import shutil
import subprocess
from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_ticks import touched
from tests.exports.sample_book import BOOK, LONG_TEXT, NO_HOURS, NOTHING, many

pytestmark = pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")
HEAD = 4
"""Row of the headings, counted from 1."""


def typed(where: Path, sheet: str, heading: str, value: object, row: int = HEAD + 1) -> Path:
    """A plan in which somebody typed one value below a heading."""
    book = load_workbook(io.BytesIO(plan_book(BOOK)))
    page = book[sheet]
    assert isinstance(page, Worksheet)
    column = next(cell.column for cell in page[HEAD] if cell.value == heading)
    assert isinstance(column, int)
    page.cell(row, column).value = value  # type: ignore[assignment]
    path = where / "plan.xlsx"
    book.save(path)
    return path


@pytest.mark.parametrize("plan", [BOOK, NOTHING, NO_HOURS, many(100, "JPY")], ids=["usual", "empty", "no hours", "100"])
def test_a_fresh_plan_is_not_touched(plan: object, tmp_path: Path) -> None:
    """What we wrote ourselves holds no ticks, also when there is nothing to buy or to do."""
    path = tmp_path / "plan.xlsx"
    path.write_bytes(plan_book(plan))  # type: ignore[arg-type]
    assert not touched(path)


@pytest.mark.parametrize(
    ("sheet", "heading", "value"),
    [
        ("Buy", "Bought", "✓"),
        ("Buy", "Bought", "x"),
        ("Buy", "Bought", True),
        ("Buy", "Paid in all", 43.5),
        ("Buy", "Paid in all", 0),
        ("Do", "Done", "yes"),
        ("Do", "Done", 1),
        ("Do", "Real minutes", 40),
        ("Do", "Real minutes", "about 40"),
    ],
)
def test_one_value_of_the_users_is_seen(sheet: str, heading: str, value: object, tmp_path: Path) -> None:
    """One tick, one price or one number of minutes is enough."""
    assert touched(typed(tmp_path, sheet, heading, value))


def test_the_last_row_is_seen(tmp_path: Path) -> None:
    """A tick on the last step counts like one on the first."""
    assert touched(typed(tmp_path, "Do", "Done", "✓", HEAD + len(BOOK.tasks)))


@pytest.mark.parametrize("value", ["  ", "", None, False])
def test_an_empty_cell_is_no_tick(value: object, tmp_path: Path) -> None:
    """Blanks, and a tick taken away again, leave the book as we wrote it."""
    assert not touched(typed(tmp_path, "Buy", "Bought", value))


def test_a_moved_column_is_found_by_its_heading(tmp_path: Path) -> None:
    """A user who puts a column in front loses nothing: the ids move too, and the tick is still seen."""
    book = load_workbook(io.BytesIO(plan_book(BOOK)))
    page = book["Buy"]
    assert isinstance(page, Worksheet)
    page.move_range("B4:B9", cols=15)
    page["Q5"] = "✓"
    book.save(tmp_path / "plan.xlsx")
    assert touched(tmp_path / "plan.xlsx")


@pytest.mark.parametrize("gone", ["Buy", "Do"])
def test_a_book_that_lost_a_sheet_is_left_alone(gone: str, tmp_path: Path) -> None:
    """Somebody worked on it: it is not ours to write over."""
    book = load_workbook(io.BytesIO(plan_book(BOOK)))
    del book[gone]
    book.save(tmp_path / "plan.xlsx")
    assert touched(tmp_path / "plan.xlsx")


def test_a_book_that_lost_a_heading_is_left_alone(tmp_path: Path) -> None:
    """Where no heading of the user's columns is left, nobody can tell, so it counts as touched."""
    book = load_workbook(io.BytesIO(plan_book(BOOK)))
    book["Do"].delete_rows(HEAD)
    book.save(tmp_path / "plan.xlsx")
    assert touched(tmp_path / "plan.xlsx")


def test_a_file_that_is_no_workbook_is_left_alone(tmp_path: Path) -> None:
    """Something else under that name is not ours."""
    (tmp_path / "plan.xlsx").write_bytes(b"my own notes")
    assert touched(tmp_path / "plan.xlsx")


@pytest.mark.parametrize(
    ("sheet", "cell", "value"),
    [
        ("Summary", "H9", "ask Ann about the rod"),
        ("Do", "E6", "Lower the TV by 11 in"),
        ("Buy", "J5", 38),
        ("Buy", "Q2", 7),
    ],
)
def test_a_note_anywhere_is_seen(sheet: str, cell: str, value: str | int, tmp_path: Path) -> None:
    """Words beside the lists, a step rewritten, a price over a formula: all of it is the user's work."""
    book = load_workbook(io.BytesIO(plan_book(BOOK)))
    book[sheet][cell] = value
    book.save(tmp_path / "plan.xlsx")
    assert touched(tmp_path / "plan.xlsx")


def test_a_book_without_its_fingerprint_is_judged_by_the_users_cells(tmp_path: Path) -> None:
    """Some programs drop document properties: then a note beside the lists is not seen, a tick still is."""
    book = load_workbook(io.BytesIO(plan_book(BOOK)))
    del book.custom_doc_props["as written"]  # type: ignore[attr-defined]
    book["Summary"]["H9"] = "a note"
    book.save(tmp_path / "plan.xlsx")
    assert not touched(tmp_path / "plan.xlsx")
    book["Do"]["B5"] = "✓"
    book.save(tmp_path / "plan.xlsx")
    assert touched(tmp_path / "plan.xlsx")


@pytest.mark.libreoffice
def test_a_book_saved_by_libreoffice_is_read_the_same(tmp_path: Path) -> None:
    """Opening and saving elsewhere changes every byte, but types nothing and loses no tick and no note."""
    plans = {"usual": BOOK, "empty": NOTHING, "hundred": many(100, "JPY"), "long": LONG_TEXT}
    given = {name: plan_book(plan) for name, plan in plans.items()}
    given["ticked"] = typed(tmp_path, "Do", "Done", "✓").read_bytes()
    saved, paths = tmp_path / "saved", []
    for name, data in given.items():
        paths.append(tmp_path / f"{name}.xlsx")
        paths[-1].write_bytes(data)
    command = [shutil.which("soffice") or "libreoffice", f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"]
    command += ["--headless", "--convert-to", "xlsx", "--outdir", str(saved), *map(str, paths)]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    assert {name: touched(saved / f"{name}.xlsx") for name in given} == {**dict.fromkeys(plans, False), "ticked": True}
