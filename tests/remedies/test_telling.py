"""What a user's change says when it is read to somebody with a tape."""

from __future__ import annotations

from budgetfix.remedies.telling import held, told
from budgetfix.room.survey import Change
from tests.inspection.rooms import renter, stager_bedroom, stager_living
from tests.remedies.test_screen_and_table_kinds import screened


def test_a_rug_is_told_with_corner_wall_and_size() -> None:
    """From the left corner, off the wall, and how large."""
    change = Change(
        "rugs", "rug", (("depth", 1580.0), ("from_left", 1210.0), ("gap", 700.0), ("wall", "B"), ("width", 2280.0))
    )
    assert told(renter(), (change,)) == (
        "rug: left edge 1210 mm from the left corner of wall B, 2280 mm wide, 1580 mm deep, 700 mm off the wall"
    )


def test_a_rod_is_told_with_its_height_and_its_ends() -> None:
    """Heights from the floor, ends from the left corner of the window's wall."""
    change = Change(
        "curtains", "curtain", (("hem", 10.0), ("rod_from_left", 750.0), ("rod_height", 2390.0), ("rod_width", 1900.0))
    )
    assert told(renter(), (change,)) == (
        "curtain: rod from 750 mm to 2650 mm from the left corner of wall C, rod 2390 mm above the floor, "
        "hem 10 mm above the floor"
    )


def test_inches_are_told_in_inches_and_what_goes_is_said() -> None:
    """A survey in inches speaks inches; a thing that leaves is told so; what has no measure is told as it is done."""
    survey = stager_living()
    changes = (
        Change("furniture", "table", (("from_left", 1371.6),)), Change("rugs", "rug", remove=True),
        Change("furniture", "cabinet", (("fixed", True),)),
    )  # fmt: skip
    assert told(survey, changes) == (
        "table: left edge 54 in from the left corner of wall A; rug: take it away; "
        "cabinet: a strap at each side near its top, into the wall and into its frame, pulled tight"
    )


def test_lamps_and_cords_are_told_without_a_tape() -> None:
    """Light by lumens and kelvin, a cord by what is done with it; a field that says nothing to anybody stays unsaid."""
    survey = stager_living()
    light, window = survey.lights[0].name, survey.openings[0].name
    changes = (
        Change("lights", light, (("lumens", 1521.0), ("kelvin", 2700.0))), Change("openings", window, (("cord", 0.0),)),
        Change("openings", window, (("entry", True),)),
    )  # fmt: skip
    assert told(survey, changes) == (
        f"{light}: lamp of 1521 lm, light of 2700 K; {window}: its cord or loop tied down, nothing hanging free"
    )


def test_how_a_thing_is_held() -> None:
    """A screen is strapped or not strapped; a picture hangs by something or by nothing."""
    survey = screened()
    screen = next(one for one in survey.pictures if one.what == "screen")
    assert told(survey, (Change("pictures", screen.name, (("fixing", "strap"),)),)) == f"{screen.name}: strapped"
    assert told(survey, (Change("pictures", screen.name, (("fixing", "none"),)),)) == f"{screen.name}: not strapped"
    assert held("none", "picture") == "held by nothing"
    assert held("screws", "picture") == "held by screws"
    assert held("unknown", "screen") == "not known what holds it"


def test_a_bed_is_told_made_up() -> None:
    """Not with a yes or a no."""
    survey = stager_bedroom()
    assert told(survey, (Change("furniture", "bed", (("undressed", False),)),)) == "bed: made up"
