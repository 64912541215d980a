"""The steps of reading a survey, one by one."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.intake.survey_build import Line, Reading, read_cells
from budgetfix.intake.survey_checks import check_sizes
from budgetfix.intake.survey_file import read_survey
from budgetfix.intake.survey_floor import STACKED, check_floor
from budgetfix.intake.survey_links import link_names, link_rooms, place_lamps
from budgetfix.intake.survey_walls import CLOSE_MM, settle_walls
from budgetfix.intake.survey_yaml import raw_yaml

FRONT_ROOM = Path(__file__).parent / "rooms" / "front-room.yaml"


def _reading() -> Reading:
    return read_cells(raw_yaml(FRONT_ROOM))


def _line(reading: Reading, table: str, name: str) -> Line:
    return next(line for line in reading.lines[table] if line.name == name)


def test_cells_first() -> None:
    """After the first step lengths are read and usual sizes filled in, but names are as typed."""
    reading = _reading()
    assert _line(reading, "furniture", "Armchair").number("depth") == 800.0
    assert _line(reading, "curtains", "big window curtains").text("window") == "big window"
    assert ("Console", "height") in reading.guessed
    assert _line(reading, "furniture", "Sofa").bare("width")
    assert not _line(reading, "furniture", "Armchair").bare("depth")


def test_then_rooms_and_names() -> None:
    """Then every line is in a room, and names are spelt as where they were given."""
    reading = _reading()
    link_rooms(reading)
    settle_walls(reading)
    link_names(reading)
    assert _line(reading, "curtains", "big window curtains").text("window") == "Big window"
    assert {line.text("room") for line in reading.lines["furniture"]} == {"Front room"}
    assert reading.problems == []


def test_then_lamps() -> None:
    """A lamp on the desk stands on its middle: 20 in to the desk, 20 to its middle, less half of 6 in."""
    reading = _reading()
    link_rooms(reading)
    settle_walls(reading)
    link_names(reading)
    place_lamps(reading)
    lamp = _line(reading, "lights", "Desk lamp")
    assert lamp.number("from_left") == pytest.approx((20 + 20 - 3) * 25.4)
    assert lamp.number("gap") == pytest.approx((10 - 3) * 25.4)


@pytest.mark.parametrize(("off", "told"), [(CLOSE_MM - 1, 0), (CLOSE_MM + 1, 1)])
def test_what_a_tape_may_be_off(off: float, told: int) -> None:
    """Walls that end within 50 mm of their start close; a little more is told (common practice)."""
    reading = _reading()
    link_rooms(reading)
    third = reading.lines["walls"][2]
    third.values["length"] = 4267.2 + off
    settle_walls(reading)
    assert len(reading.problems) == told


@pytest.mark.parametrize(("past", "told"), [(4.9, 0), (5.1, 1)])
def test_the_give_at_a_wall(past: float, told: int) -> None:
    """A thing may end 5 mm past its wall, the give of a tape (common practice)."""
    reading = _reading()
    link_rooms(reading)
    settle_walls(reading)
    link_names(reading)
    print_line = _line(reading, "pictures", "Harbour print")
    print_line.values["from_left"] = 4267.2 - print_line.number("width") + past
    check_sizes(reading)
    assert len(reading.problems) == told


@pytest.mark.parametrize(("closer", "told"), [(9.0, 0), (11.0, 1)])
def test_the_give_on_the_floor(closer: float, told: int) -> None:
    """Two pieces may run 5 mm each into one another before it is told (common practice)."""
    survey = read_survey(FRONT_ROOM).survey
    assert survey is not None
    sofa, table = survey.furniture[0], survey.furniture[2]
    near = table.model_validate({**dict(table), "gap": sofa.gap + sofa.depth - closer})
    pieces = tuple(near if piece.name == table.name else piece for piece in survey.furniture)
    reading = _reading()
    check_floor(reading, survey.model_validate({**dict(survey), "furniture": pieces}))
    assert len(reading.problems) == told
    assert "sofa" not in STACKED
