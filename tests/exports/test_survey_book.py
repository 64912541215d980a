"""The survey form as a workbook."""

from __future__ import annotations

import io
import shutil
import subprocess
from pathlib import Path

import pytest
from openpyxl import load_workbook

from budgetfix.exports.marked import write_marked
from budgetfix.exports.survey_book import survey_book, write_survey_book
from budgetfix.exports.survey_print import pages
from budgetfix.forms.survey_form import SHEETS
from budgetfix.intake.survey_file import SurveyFile, read_survey

ROOMS = Path(__file__).parents[1] / "intake" / "rooms"


def _front_room() -> SurveyFile:
    return read_survey(ROOMS / "front-room.yaml")


def _filled(path: Path) -> SurveyFile:
    file = _front_room()
    write_survey_book(path, file.survey, file.brief_fields, file.faults)
    return file


@pytest.mark.parametrize("room", ["front-room", "two-rooms"])
def test_every_survey_comes_back(tmp_path: Path, room: str) -> None:
    """A form filled from a survey reads back to the same survey, in inches and in metres, with one room or two."""
    file = read_survey(ROOMS / f"{room}.yaml")
    assert file.survey is not None
    write_survey_book(tmp_path / "survey.xlsx", file.survey, {}, ())
    back = read_survey(tmp_path / "survey.xlsx")
    assert [str(problem) for problem in back.problems] == []
    assert back.survey == file.survey


def test_what_goes_in_comes_back(tmp_path: Path) -> None:
    """Survey, book, survey: nothing is lost, and what was guessed is guessed again."""
    path = tmp_path / "survey.xlsx"
    file = _filled(path)
    back = read_survey(path)
    assert [str(problem) for problem in back.problems] == []
    assert back.survey == file.survey
    assert back.faults == file.faults
    fields = {name: value for name, (value, _) in back.brief_fields.items()}
    assert fields == {"currency": "USD", "budget": 150, "hours": "3; 2", "people": 2, "holes": 12}


@pytest.mark.libreoffice
def test_it_survives_another_spreadsheet_program(tmp_path: Path) -> None:
    """Opened and saved by LibreOffice, the survey is still the same, and column A was worked out alike."""
    path = tmp_path / "survey.xlsx"
    file = _filled(path)
    office = shutil.which("soffice") or shutil.which("libreoffice") or ""
    home = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    convert = [office, home, "--headless", "--convert-to", "xlsx", "--outdir", str(tmp_path / "out"), str(path)]
    subprocess.run(convert, check=True, capture_output=True, timeout=120)
    back = read_survey(tmp_path / "out" / "survey.xlsx")
    assert [str(problem) for problem in back.problems] == []
    assert back.survey == file.survey
    ours, theirs = load_workbook(path, data_only=True), load_workbook(tmp_path / "out" / "survey.xlsx", data_only=True)
    for sheet in SHEETS:
        said = [
            [page.cell(row, 1).value or "" for row in range(6, 16)] for page in (ours[sheet.title], theirs[sheet.title])
        ]
        assert said[0] == said[1]


def test_the_same_bytes() -> None:
    """Two builds of the same survey are the same file."""
    file = _front_room()
    first = survey_book(file.survey, file.brief_fields, file.faults)
    assert first == survey_book(file.survey, file.brief_fields, file.faults)
    assert survey_book(None, {}, ()) == survey_book(None, {}, ())


def test_the_live_column(tmp_path: Path) -> None:
    """Column A names the first missing cell and counts the rest; its value is stored with the formula."""
    path = tmp_path / "survey.xlsx"
    _filled(path)
    page = load_workbook(path, data_only=True)["Furniture"]
    assert [page.cell(row, 1).value for row in (6, 7, 9, 14)] == ["✓ ready", "✓ ready", "✓ ready, 1 assumed", None]
    formula = load_workbook(path)["Openings"]["A6"].value
    assert formula.startswith('=IF(COUNTA($B6:$Q6)=0,"",')
    assert 'IF(AND($G6="",OR($C6="window")),"Sill"' in formula


def test_the_blank_form(tmp_path: Path) -> None:
    """A blank form has its sheets in walking order, hidden lists, and asks for nothing but the unit."""
    path = tmp_path / "survey.xlsx"
    write_survey_book(path, None)
    book = load_workbook(path)
    titles = ["Start", "Walls", "Openings", "Curtains", "Furniture", "On the walls", "Rugs", "Lights", "Sockets"]
    assert book.sheetnames == [*titles, "What bothers you", "Wall marks", "Lists"]
    assert book["Lists"].sheet_state == "hidden"
    assert [str(problem) for problem in read_survey(path).problems] == [
        "survey.xlsx [Start!C5] found nothing, wanted the unit of bare numbers: in, cm or mm"
    ]
    write_survey_book(path, None, unit="cm")
    file = read_survey(path)
    assert (file.problems, file.unit) == ((), "cm")


def test_print_and_drop_downs(tmp_path: Path) -> None:
    """Every sheet prints one page wide, the widest two; each choice has its drop-down, by a defined name."""
    path = tmp_path / "survey.xlsx"
    _filled(path)
    book = load_workbook(path)
    for sheet in SHEETS:
        page = book[sheet.title]
        assert page.sheet_properties.pageSetUpPr is not None
        assert page.sheet_properties.pageSetUpPr.fitToPage
        across = None if pages(sheet.columns) == 1 else 2  # one wide is the default
        assert (page.page_setup.fitToWidth, page.page_setup.fitToHeight) == (across, 0)
        assert page.oddFooter is not None
        assert page.oddFooter.right.text == "page &P of &N"
        assert page.oddHeader is not None
        said = page.oddHeader.left.text or ""
        assert sheet.how in said
        assert "\n" not in said
        assert page.freeze_panes == "C6"
        asked = {rule.formula1: rule for rule in page.data_validations.dataValidation}
        lists = sum(1 for c in sheet.columns if c.choices or c.kind in ("yes-no", "yes-no-unknown", "wall", "name"))
        assert len(page.data_validations.dataValidation) == lists
        assert all(name in book.defined_names for name in asked)


def test_text_stays_text() -> None:
    """A name that starts with an equals sign is no formula."""
    file = _front_room()
    assert file.survey is not None
    rug = file.survey.rugs[0].model_validate({**dict(file.survey.rugs[0]), "name": "=SUM(1)"})
    survey = type(file.survey).model_validate({**dict(file.survey), "rugs": (rug,)})
    page = load_workbook(io.BytesIO(survey_book(survey, {}, ())))["Rugs"]
    assert page["B6"].value == "=SUM(1)"
    assert page["B6"].data_type == "s"
    shown = load_workbook(io.BytesIO(survey_book(survey, {}, ())), data_only=True)["Rugs"]
    assert shown["B6"].value == "=SUM(1)"


def test_written_whole(tmp_path: Path) -> None:
    """A file is replaced as a whole, and nothing else is left beside it."""
    target = tmp_path / "survey.marked.xlsx"
    write_marked(target, b"old")
    write_marked(target, b"new")
    assert target.read_bytes() == b"new"
    assert [path.name for path in tmp_path.iterdir()] == ["survey.marked.xlsx"]
