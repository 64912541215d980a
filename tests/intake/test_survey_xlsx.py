"""A survey typed into the workbook."""

from __future__ import annotations

import io
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from budgetfix.exports.survey_book import write_survey_book
from budgetfix.intake.survey_file import SurveyFile, read_survey
from budgetfix.intake.survey_xlsx import marked

FRONT_ROOM = Path(__file__).parent / "rooms" / "front-room.yaml"
LENGTH = "a length such as 6' 2 1/2\", 74.5 or 188 cm"


def _book(tmp_path: Path) -> Path:
    file = read_survey(FRONT_ROOM)
    path = tmp_path / "survey.xlsx"
    write_survey_book(path, file.survey, file.brief_fields, file.faults)
    return path


def _edited(tmp_path: Path, edit: Callable[[Workbook], None]) -> SurveyFile:
    path = _book(tmp_path)
    book = load_workbook(path)
    edit(book)
    book.save(path)
    return read_survey(path)


def _put(book: Workbook, sheet: str, name: str, heading: str, value: object) -> None:
    """Type a value into the line that starts with a name, under a heading."""
    page = book[sheet]
    column = next(cell.column for cell in page[4] if cell.value == heading)
    row = next(cell.row for cell in page["B"] if cell.value == name)
    page.cell(row, column).value = value  # type: ignore[assignment]


def test_ten_planted_mistakes(tmp_path: Path) -> None:
    """Ten mistakes give ten problems, each with its cell, word for word."""

    def plant(book: Workbook) -> None:
        _put(book, "Openings", "Front door", "Hinge", "middle")
        _put(book, "Curtains", "big window curtains", "Window", "big windw")
        _put(book, "Curtains", "big window curtains", "Hem", datetime(2026, 5, 8))  # noqa: DTZ001
        _put(book, "Furniture", "Sofa", "Height", "33,5")
        _put(book, "Furniture", "Armchair", "Width", 188)
        _put(book, "Furniture", "Console", "Width", "5O in")
        _put(book, "Furniture", "Desk", "Nearest wall", "E")
        _put(book, "On the walls", "TV", "Width", "=24*2")
        _put(book, "On the walls", "Harbour print", "Bottom edge", 80)
        _put(book, "Rugs", "Rug", "Name", "Sofa")

    file = _edited(tmp_path, plant)
    assert file.survey is None
    assert [str(problem) for problem in file.problems] == [
        "survey.xlsx [Openings!J6] found 'middle', wanted one of: left, right",
        "survey.xlsx [Curtains!C6] found 'big windw', wanted a name from Openings: Front door, Big window; "
        "did you mean Big window?",
        f"survey.xlsx [Curtains!H6] found a date, wanted {LENGTH}; found a date; if you typed 5/8, write 0 5/8",
        f"survey.xlsx [Furniture!H6] found '33,5', wanted {LENGTH} above 0; write a point, not a comma: 33.5",
        "survey.xlsx [Furniture!F7] found 188 in for 'Armchair', wanted at most wall D's 144 in; did you mean 188 cm?",
        f"survey.xlsx [Furniture!F9] found '5O in', wanted {LENGTH} above 0",
        "survey.xlsx [Furniture!D10] found 'E', wanted a wall of this room: A, B, C, D",
        f"survey.xlsx [On the walls!F6] found a formula whose result was never stored, wanted {LENGTH} above 0",
        "survey.xlsx [On the walls!H7] found the top of 'Harbour print' at 104 in, wanted at most the ceiling's 96 in",
        "survey.xlsx [Rugs!B6] found 'Sofa' again, wanted a name used once (also at Furniture!B6)",
    ]


def test_the_marked_copy(tmp_path: Path) -> None:
    """The copy has a note on each bad cell and a red tab; drop-downs stay, and the user's own file is not touched."""
    file = _edited(tmp_path, lambda book: _put(book, "Furniture", "Console", "Width", "5O in"))
    path = tmp_path / "survey.xlsx"
    before = path.read_bytes()
    copy = load_workbook(io.BytesIO(marked(path, file.problems)))
    assert path.read_bytes() == before
    note = copy["Furniture"]["F9"].comment
    assert note is not None
    assert note.text == f"Found '5O in', wanted {LENGTH} above 0."
    color = copy["Furniture"].sheet_properties.tabColor
    assert color is not None
    assert color.rgb == "00C0392B"
    assert copy["Rugs"].sheet_properties.tabColor is None
    assert len(copy["Furniture"].data_validations.dataValidation) == len(
        load_workbook(path)["Furniture"].data_validations.dataValidation
    )


def test_columns_may_be_moved_and_added(tmp_path: Path) -> None:
    """Columns are found by their headings: an added one and a moved one change nothing."""

    def move(book: Workbook) -> None:
        page = book["Furniture"]
        page.insert_cols(3)
        page["C4"] = "My notes"
        page["C6"] = "from my aunt"
        for row in range(4, 20):
            page.cell(row, 40).value = page.cell(row, 7).value
            page.cell(row, 7).value = None

    file = _edited(tmp_path, move)
    assert [str(problem) for problem in file.problems] == []
    assert file.survey == read_survey(FRONT_ROOM).survey


@pytest.mark.parametrize(
    ("edit", "told"),
    [
        (
            lambda book: setattr(book["Furniture"]["F4"], "value", "Widht"),
            "survey.xlsx [Furniture!F4] found the heading 'Widht', wanted the heading 'Width'",
        ),
        (
            lambda book: setattr(book["Sockets"]["C4"], "value", "Which"),
            "survey.xlsx [Sockets!B4] found no such column, wanted a column with the heading 'Wall'",
        ),
        (
            lambda book: setattr(book["Sockets"], "title", "Socket"),
            "survey.xlsx [Socket] found a sheet 'Socket', wanted Sockets as title",
        ),
        (
            lambda book: setattr(book["Start"]["C5"], "value", "feet"),
            "survey.xlsx [Start!C5] found 'feet', wanted the unit of bare numbers: in, cm or mm",
        ),
        (
            lambda book: setattr(book["Start"]["C6"], "value", "perhaps"),
            "survey.xlsx [Start!C6] found 'perhaps', wanted yes or no",
        ),
        (
            lambda book: setattr(book["Walls"]["C6"], "value", None),
            "survey.xlsx [Walls!C6] found nothing, wanted a length (only the last wall's can be worked out)",
        ),
        (
            lambda book: _put(book, "Furniture", "Sofa", "What", None),
            "survey.xlsx [Furniture!C6] found nothing, wanted what, in words; fill in What",
        ),
        (
            lambda book: _put(book, "Furniture", "Sofa", "Gap to wall", 46150),
            f"survey.xlsx [Furniture!I6] found 46150, wanted {LENGTH}; "
            "the spreadsheet made a date of it; if you typed 5/8, write 0 5/8",
        ),
    ],
)
def test_what_a_workbook_can_lose(tmp_path: Path, edit: Callable[[Workbook], None], told: str) -> None:
    """Lost headings, sheets and cells are told with their place."""
    problems = [str(problem) for problem in _edited(tmp_path, edit).problems]
    assert told in problems
    assert len(problems) == (2 if "Socket]" in told else 1), problems


def test_ticks(tmp_path: Path) -> None:
    """Yes is x, a tick, 1 or TRUE: all the same."""
    for tick in ("x", "✓", 1, True, "YES", "TRUE"):
        file = _edited(tmp_path, lambda book, tick=tick: _put(book, "Rugs", "Rug", "Pad", tick))  # type: ignore[misc]
        assert file.survey is not None
        assert file.survey.rugs[0].pad is True


def test_no_workbook(tmp_path: Path) -> None:
    """A file that only has the name of a workbook is one problem."""
    path = tmp_path / "survey.xlsx"
    path.write_text("name,width\n", encoding="utf-8")
    assert [str(problem) for problem in read_survey(path).problems] == [
        "survey.xlsx found a file that is no workbook, wanted a workbook saved as .xlsx"
    ]
    assert marked(path, []) == b""


def test_lines_below_the_last_row_that_is_read(tmp_path: Path) -> None:
    """They are refused, at the first cell under a heading; blanks, and notes of one's own beside the table, are not."""

    def lower(book: Workbook) -> None:
        for row, column in ((1999, "B"), (2000, "B"), (2001, "B"), (2500, "B"), (2001, "AH")):
            book["Furniture"][f"{column}{row}"] = None
        book["Furniture"]["BB2001"] = "note"
        book["Rugs"]["B2002"] = "Runner"
        book["Rugs"]["C2001"] = "A"

    file = _edited(tmp_path, lower)
    assert [str(problem) for problem in file.problems] == [
        "survey.xlsx [Rugs!C2001] found a line in row 2,001, wanted every line in row 2,000 or above it; "
        "leave no empty rows between lines"
    ]
