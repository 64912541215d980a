"""The parts of the survey form: its cells, its live sentence, its first sheet."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from openpyxl import load_workbook

from budgetfix.exports.survey_book import survey_book
from budgetfix.exports.survey_cells import typed_brief, typed_home, typed_rows
from budgetfix.exports.survey_look import cell_format, live_formula, live_value
from budgetfix.exports.survey_start import FIRST_ROOM, THINGS
from budgetfix.forms.furniture_columns import FURNITURE
from budgetfix.forms.survey_form import WALLS
from budgetfix.forms.wall_columns import OPENINGS, PICTURES
from budgetfix.intake.survey_file import read_survey
from budgetfix.room.survey import Household

FRONT_ROOM = Path(__file__).parents[1] / "intake" / "rooms" / "front-room.yaml"


def test_cells_are_what_a_person_types() -> None:
    """Lengths are numbers of the survey's unit where that loses nothing; guesses and usual values stay empty."""
    file = read_survey(FRONT_ROOM)
    assert file.survey is not None
    rows = typed_rows(file.survey, file.faults)
    assert rows["furniture"][1] == {
        "name": "Armchair",
        "what": "armchair",
        "wall": "D",
        "from_left": 100,
        "width": 32,
        "depth": "800 mm",
        "height": 34,
    }
    assert rows["walls"][0] == {"wall": "A", "length": 168, "solid": "yes"}
    assert rows["lights"][1] == {
        "name": "Desk lamp",
        "what": "table lamp",
        "width": 6,
        "depth": 6,
        "on": "Desk",
        "socket": "Socket 1",
    }
    assert rows["curtains"][0]["hem"] == 2.75
    assert rows["faults"][1] == {"fault": "cord", "points": 80, "safety": "yes"}


def test_home_and_brief() -> None:
    """What is not known is `not sure`; a list of hours is typed with semicolons."""
    assert typed_home(Household(unit="cm", rent=True))["before_1978"] == "not sure"
    assert typed_brief({"hours": [3, 2.5], "budget": 150.0, "people": (2, "place"), "holes": None}) == {
        "hours": "3; 2.5",
        "budget": 150,
        "people": 2,
    }


@pytest.mark.parametrize(
    ("key", "columns", "values", "said"),
    [
        ("furniture", FURNITURE, {}, ""),
        ("furniture", FURNITURE, {"name": "Plant"}, "needs What + 5"),
        ("openings", OPENINGS, {"name": "D", "what": "door", "wall": "A", "from_left": 0, "width": 30}, "✓ ready"),
        (
            "openings",
            OPENINGS,
            {"name": "W", "what": "window", "wall": "A", "from_left": 0, "width": 30},
            "needs Sill + 1",
        ),
        ("openings", OPENINGS, {"name": "D", "what": "door", "wall": "A", "from_left": 0}, "✓ ready, 1 assumed"),
        (
            "furniture",
            FURNITURE,
            {"name": "S", "what": "sofa", "wall": "A", "from_left": 0, "width": 80},
            "✓ ready, 2 assumed",
        ),
        ("furniture", FURNITURE, {"name": "S", "what": "armchair", "wall": "A", "from_left": 0}, "needs Width + 2"),
        ("walls", WALLS, {"wall": "A"}, "needs Length"),
        ("walls", WALLS, {"wall": "C"}, "✓ ready"),
        (
            "pictures",
            PICTURES,
            {"name": "TV", "what": "screen", "wall": "A", "from_left": 0, "bottom": 20, "diagonal": 55},
            "✓ ready",
        ),
    ],
)
def test_the_live_sentence(key: str, columns: tuple, values: dict[str, object], said: str) -> None:  # type: ignore[type-arg]
    """The first missing cell and how many more; windows need a sill, screens only a diagonal, sofas may be guessed."""
    assert live_value(key, columns, values) == said
    assert live_formula(key, columns, 9).count("$B9") >= 1


def test_formulas_stay_short() -> None:
    """A spreadsheet takes formulas of at most 8192 characters."""
    assert max(len(live_formula("f", columns, 100)) for columns in (FURNITURE, OPENINGS, PICTURES)) < 2000


def test_cell_formats() -> None:
    """Lengths sit on the right, ticks in the middle, words on the left."""
    kinds = {column.field: cell_format(column) for column in FURNITURE}
    assert (kinds["width"], kinds["round"], kinds["name"]) == ("number", "mark", "text")


def test_the_first_sheet() -> None:
    """The first sheet names the walls, five things to know, and the rooms."""
    file = read_survey(FRONT_ROOM)
    page = load_workbook(io.BytesIO(survey_book(file.survey, file.brief_fields, file.faults)))["Start"]
    texts = [cell.value for row in page.iter_rows() for cell in row if isinstance(cell.value, str)]
    assert [letter for letter in texts if len(letter) == 1] == ["A", "D", "B", "C"]
    assert set(THINGS) <= set(texts)
    assert page.cell(FIRST_ROOM + 1, 2).value == "Front room"
    assert page["C5"].value == "in"
