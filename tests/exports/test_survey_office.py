"""The survey form in another spreadsheet program: typed by a script, worked out and saved there, read back."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.exports.survey_book import survey_book
from budgetfix.exports.survey_cells import Typed
from budgetfix.exports.survey_look import FIRST_ROW, live_value, missing_terms
from budgetfix.exports.survey_start import FIRST_ROOM
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import FORM_OF, HOME, ROOMS, SHEETS, Sheet
from budgetfix.intake.survey_file import read_survey
from budgetfix.intake.survey_xlsx import raw_xlsx

pytestmark = pytest.mark.libreoffice

DEMOS = Path(__file__).parents[2] / "catalog_demo"
SCENARIOS = ("renter", "stager", "couple")
TYPED: dict[str, Typed] = {
    "length": "6' 2 1/2\"",
    "count": 3,
    "number": 2.5,
    "wall": "A",
    "turn": "left",
    "text": "blue",
    "name": "sofa",
}


def saved_by_office(folder: Path, names: tuple[str, ...], kind: str = "xlsx") -> Path:
    """Every book opened, worked out and saved by LibreOffice, into a folder of its own."""
    office = shutil.which("soffice") or shutil.which("libreoffice") or ""
    home = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    out = folder / "out"
    asked = [office, home, "--headless", "--convert-to", kind, "--outdir", str(out), *(str(folder / n) for n in names)]
    subprocess.run(asked, check=True, capture_output=True, timeout=240)
    return out


def sheet_of(path: Path, title: str, shown: bool = False) -> Worksheet:
    """A sheet of a saved book."""
    sheet = load_workbook(path, data_only=shown)[title]
    assert isinstance(sheet, Worksheet)
    return sheet


def values_of(column: Column) -> tuple[Typed, ...]:
    """Everything that a column's drop-down offers, else one thing that a person would type."""
    match column.kind:
        case "choice" | "suggestion":
            return column.choices
        case "yes-no":
            return ("yes", "no")
        case "yes-no-unknown":
            return ("yes", "no", "not sure")
        case _:
            return (TYPED[column.kind],)


def typed_in(sheet: Sheet) -> Iterator[tuple[int, int, Column, Typed]]:
    """(row, column, field, value) of cells that together hold every value of every drop-down of a sheet."""
    for at, column in enumerate(sheet.columns, 2):
        for row, value in enumerate(values_of(column), FIRST_ROW):
            yield row, at, column, value


def test_every_value_of_every_drop_down_comes_back(tmp_path: Path) -> None:
    """All sheets, all choices, and a length, number or word in every other column; saved and read alike."""
    path = tmp_path / "survey.xlsx"
    path.write_bytes(survey_book(None, {}, (), unit="in"))
    book = load_workbook(path)
    for sheet in SHEETS:
        for row, at, _, value in typed_in(sheet):
            book[sheet.title].cell(row, at, value)
    for line, column in enumerate(HOME):
        book["Start"].cell(5 + line, 3, values_of(column)[0])
    for at, column in enumerate(ROOMS, 2):
        for row, value in enumerate(values_of(column)[:5], FIRST_ROOM + 1):
            book["Start"].cell(row, at, value)
    book.save(path)
    back = raw_xlsx(saved_by_office(tmp_path, ("survey.xlsx",)) / "survey.xlsx")
    assert back.problems == []
    assert {name: cell.value for name, cell in back.home.cells.items()} == {
        column.field: values_of(column)[0] for column in HOME
    }
    for sheet in SHEETS:
        lines = {row.place.row: row for row in back.rows[sheet.key]}
        for row, _, column, value in typed_in(sheet):
            cell = lines[row].cells[column.field]
            assert column.read(cell.value, "in") == column.read(value, "in"), (sheet.title, column.heading, value)


@pytest.fixture(scope="module")
def demos(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The three demo rooms as forms without any stored result, saved by LibreOffice."""
    folder = tmp_path_factory.mktemp("office")
    for name in SCENARIOS:
        path = folder / f"{name}.xlsx"
        path.write_bytes(survey_book(read_survey(DEMOS / name / "survey.yaml").survey, {}, ()))
        load_workbook(path).save(path)
    return saved_by_office(folder, tuple(f"{name}.xlsx" for name in SCENARIOS))


@pytest.mark.parametrize("name", SCENARIOS)
def test_every_demo_room_comes_back(demos: Path, name: str) -> None:
    """Metres and inches, one room and several: the same survey, and the same figures guessed."""
    back = read_survey(demos / f"{name}.xlsx")
    assert [str(problem) for problem in back.problems] == []
    assert back.survey == read_survey(DEMOS / name / "survey.yaml").survey


@pytest.mark.parametrize("name", SCENARIOS)
def test_every_filled_row_says_ready(demos: Path, name: str) -> None:
    """Column A was empty of results when the book was opened: what stands there now was worked out."""
    for sheet in SHEETS:
        page = sheet_of(demos / f"{name}.xlsx", sheet.title, shown=True)
        for row in range(FIRST_ROW, page.max_row + 1):
            begun = any(page.cell(row, at).value is not None for at in range(2, len(sheet.columns) + 2))
            said = page.cell(row, 1).value or ""
            assert str(said).startswith("✓ ready") if begun else said == "", (sheet.title, row, said)


def test_column_a_and_the_salmon_cells_are_worked_out_there_as_here(tmp_path: Path) -> None:
    """One cell typed in a row at a time: the sentence is the one that we store, and exactly its cells turn salmon.

    The rules of the colour are put into cells beside the table, since a colour cannot be read back.
    """
    path = tmp_path / "survey.xlsx"
    path.write_bytes(survey_book(None, {}, (), unit="cm"))
    book = load_workbook(path)
    rows: list[tuple[Sheet, int, dict[str, Typed]]] = []
    for sheet in (one for one in SHEETS if one.key != "walls"):
        page = book[sheet.title]
        for row, column in enumerate(sheet.columns[: sheet.rows], FIRST_ROW):
            page.cell(row, 2 + sheet.columns.index(column), values_of(column)[0])
            rows.append((sheet, row, {column.field: values_of(column)[0]}))
            for place, (_, _, term) in enumerate(missing_terms(sheet.key, sheet.columns, row)):
                page.cell(row, 40 + place, f"=IF({term},1,0)")
        assert_rules_are_these(page, sheet)
    book.save(path)
    saved = load_workbook(saved_by_office(tmp_path, ("survey.xlsx",)) / "survey.xlsx", data_only=True)
    for sheet, row, values in rows:
        page = saved[sheet.title]
        said = live_value(sheet.key, sheet.columns, values)
        assert page.cell(row, 1).value == said, (sheet.title, row)
        terms = missing_terms(sheet.key, sheet.columns, row)
        salmon = [heading for place, (_, heading, _) in enumerate(terms) if page.cell(row, 40 + place).value == 1]
        assert said.startswith(f"needs {salmon[0]}") if salmon else said.startswith("✓ ready")
        assert said.endswith(f" + {len(salmon) - 1}") or len(salmon) < 2


def assert_rules_are_these(page: Worksheet, sheet: Sheet) -> None:
    """The colours of a sheet stand on the cells that column A may name, by the same words."""
    found = [rule.formula[0] for ranges in page.conditional_formatting for rule in ranges.rules if rule.formula]
    for _, _, term in missing_terms(sheet.key, sheet.columns, FIRST_ROW):
        assert sum(1 for formula in found if formula.endswith(f">0,{term})")) >= 1, (sheet.title, term)


def test_wide_sheets_print_on_two_pages_with_the_names_on_both(tmp_path: Path) -> None:
    """One page for the first sheet and each narrow one, two for each wide one; the names stand on all of them."""
    from budgetfix.exports.survey_print import pages

    (tmp_path / "survey.xlsx").write_bytes(survey_book(read_survey(DEMOS / "renter" / "survey.yaml").survey, {}, ()))
    pdf = saved_by_office(tmp_path, ("survey.xlsx",), "pdf") / "survey.pdf"
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext is not installed")
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], check=True, capture_output=True, text=True).stdout
    sheets = text.split("\f")[:-1]
    assert len(sheets) == 1 + sum(pages(sheet.columns) for sheet in SHEETS)
    furniture = [page for page in sheets if page.split()[:2] == ["4", "Furniture"]]
    assert len(furniture) == 2
    assert all("bookcase" in page and "measure from the corner on your left" in page for page in furniture)


def test_every_table_is_tried() -> None:
    """Every table of the form but the rooms has a sheet, and a value for each of its columns."""
    assert {sheet.key for sheet in SHEETS} == set(FORM_OF) - {"rooms"}
    assert all(values_of(column) for sheet in SHEETS for column in sheet.columns)
