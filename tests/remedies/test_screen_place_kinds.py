"""Screens hung lower, slid along, seats turned to them, and cables out of sight."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.remedies.kinds import cable_channel, lower_screen, slide_screen, tie_cables, turn_seat
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_living, renter, stager_living
from tests.remedies.bench import added, altered, fields, fitted, holes, left, product, severity, uses, without

FILLER, PAINT = product("filler", "filler"), product("paint", "paint")


def screen(survey: Survey, **more: Any) -> Survey:
    """A screen of 48 in on the wall opposite the renter's sofa, 1600 up unless said otherwise."""
    facts = {"name": "screen", "room": "r", "what": "screen", "wall": "D", "from_left": 1600.0, "width": 1060.0,
             "height": 600.0, "bottom": 1600.0, "fixing": "screws", "depth": 60.0}  # fmt: skip
    return added(survey, "pictures", Hung.model_validate({**facts, **more}))


def high() -> Survey:
    """Over bare wall: bench and shoe cabinet are not there."""
    return screen(without(renter(), "console", "shoes"))


def test_a_wall_screen_comes_down_to_the_eye() -> None:
    """Centre 1065 for a seat of 430: lower edge 765 above the floor, five plugs, two people, old holes filled."""
    (one,) = fitted(lower_screen.KIND, high(), "screen-off-eye-level", "screen", FILLER, PAINT)
    assert fields(one, "screen") == {"bottom": 765.0}
    assert left(high(), one, "screen-off-eye-level", "screen") == 0
    assert dict(one.uses) == {"filler": Fraction(1, 5), "paint": Fraction(1, 5)}
    assert (holes(one), one.work[0].people, one.work[0].phase, lower_screen.KIND.leaves) == (5, 2, 10, "plugs")
    assert (one.work[0].low, one.work[0].likely, one.work[0].high) == (90, 150, 240)
    assert len(one.work) == 1
    assert "fill and paint the old holes" in one.work[0].text
    assert "lower edge is 765 mm above the floor (centre 1065 mm), left edge 1600 mm" in one.work[0].text


def test_a_seat_that_is_higher_takes_the_screen_with_it() -> None:
    """A seat of 530 is 100 higher than the usual one, and so is the screen."""
    survey = altered(high(), "sofa", seat=530.0)
    (one,) = fitted(lower_screen.KIND, survey, "screen-off-eye-level", "screen")
    assert fields(one, "screen") == {"bottom": 865.0}


def test_a_screen_over_a_tall_piece_comes_down_as_far_as_it_can() -> None:
    """Over a cabinet of 1000 the lower edge stays 50 above it, and that is still better."""
    survey = screen(altered(without(renter(), "shoes"), "console", height=1000.0))
    (one,) = fitted(lower_screen.KIND, survey, "screen-off-eye-level", "screen")
    assert fields(one, "screen") == {"bottom": 1050.0}
    assert 0 < left(survey, one, "screen-off-eye-level", "screen") < severity(survey, "screen-off-eye-level", "screen")


def test_a_screen_over_a_mantel_stays() -> None:
    """The stager's screen is 4 in over the fireplace: there is nowhere lower to go, and nothing is offered."""
    survey = screen(stager_living(), wall="D", from_left=77 * 25.4, width=56 * 25.4, height=32 * 25.4,
                    bottom=54 * 25.4)  # fmt: skip
    assert fitted(lower_screen.KIND, survey, "screen-off-eye-level", "screen") == ()


def test_a_screen_on_its_bench_is_no_matter_of_brackets() -> None:
    """It stands: the bench decides its height."""
    survey = screen(altered(renter(), "console", height=1200.0), from_left=1150.0, width=1000.0, bottom=1250.0,
                    on="console", fixing="strap")  # fmt: skip
    assert fitted(lower_screen.KIND, survey, "screen-off-eye-level", "screen") == ()


def sideways() -> Survey:
    """The renter's screen on a bench that stands a metre and more off the sofa's middle."""
    return screen(altered(renter(), "console", from_left=200.0), from_left=170.0, width=1060.0, bottom=500.0,
                  on="console", fixing="strap")  # fmt: skip


def test_the_bench_slides_until_the_sofa_looks_straight_at_it() -> None:
    """Opposite the sofa's middle (2350 from wall A) stands its middle, 2150 from the left corner of wall D."""
    survey = without(sideways(), "shoes")
    (one,) = fitted(slide_screen.KIND, survey, "screen-seen-sideways", "screen")
    assert fields(one, "console") == {"from_left": 1650.0}
    assert fields(one, "screen") == {"from_left": 1620.0}
    assert left(survey, one, "screen-seen-sideways", "screen") == 0
    assert "left edge 1650 mm from the left corner of wall D" in one.work[0].text
    assert uses(one) == {}


def test_the_bench_slides_no_farther_than_the_next_piece() -> None:
    """A cabinet of 600 from 2400 on would hide a corner of the screen: it ends before it, and that is still better."""
    survey = altered(sideways(), "shoes", from_left=2400.0)
    (one,) = fitted(slide_screen.KIND, survey, "screen-seen-sideways", "screen")
    assert fields(one, "console")["from_left"] == 1350.0
    assert left(survey, one, "screen-seen-sideways", "screen") < severity(survey, "screen-seen-sideways", "screen")


def test_a_wall_screen_does_not_slide() -> None:
    """No bench, no sliding."""
    survey = screen(without(renter(), "console", "shoes"), from_left=100.0, bottom=800.0)
    assert fitted(slide_screen.KIND, survey, "screen-seen-sideways", "screen") == ()


def test_an_armchair_is_turned_to_the_screen() -> None:
    """The armchair looks at the window, the screen hangs at the middle of wall D: turned to A it looks that way."""
    survey = altered(screen(renter(), from_left=1900.0, bottom=1000.0), "armchair", faces="C")
    offers = fitted(turn_seat.KIND, survey, "seat-turns-the-neck", "armchair")
    assert fields(offers[0], "armchair")["faces"] == "A"
    assert left(survey, offers[0], "seat-turns-the-neck", "armchair") == 0
    assert (offers[0].work[0].people, uses(offers[0])) == (1, {})


def test_a_seat_without_room_to_turn_stays() -> None:
    """A sofa of 1960 in a gap of 900 between two pieces cannot be turned in place."""
    survey = screen(couple_living(), wall="B", from_left=2500.0, bottom=1000.0)
    blocked = added(survey, "furniture", *(
        box.model_copy(update={"name": name, "room": "r", "what": "cabinet", "wall": "C", "from_left": 1520.0,
                               "gap": gap, "width": 1960.0, "depth": 100.0, "height": 900.0, "faces": ""})
        for name, gap in (("before", 3310.0), ("behind", 2295.0))
        for box in (survey.furniture[0],)
    ))  # fmt: skip
    assert fitted(turn_seat.KIND, blocked, "seat-turns-the-neck", "sofa") == ()


def test_cables_of_a_desk_or_a_bench_are_tied_up() -> None:
    """Free where no ties are sold; a wall screen's cables cannot be hidden that way."""
    survey = altered(renter(), "desk", cables=900.0)
    (free,) = fitted(tie_cables.KIND, survey, "cables-on-show", "desk")
    (tied,) = fitted(tie_cables.KIND, survey, "cables-on-show", "desk", product("ties", "cable ties"))
    assert (uses(free), uses(tied)) == ({}, {"ties": 1})
    assert left(survey, free, "cables-on-show", "desk") == 0
    wall = altered(high(), "screen", cables=1200.0)
    assert fitted(tie_cables.KIND, wall, "cables-on-show", "screen") == ()


@pytest.mark.parametrize(("long", "pieces"), [(700.0, 1), (1000.0, 1), (1200.0, 2)])
def test_channels_are_as_many_as_the_cable_is_long(long: float, pieces: int) -> None:
    """Channels of 1 m down from the screen's lower edge, stuck on: no holes, and they peel off."""
    survey = altered(high(), "screen", cables=long)
    (one,) = fitted(
        cable_channel.KIND, survey, "cables-on-show", "screen", product("ch", "cable channel", width=1000.0)
    )
    assert uses(one) == {"ch": pieces}
    assert left(survey, one, "cables-on-show", "screen") == 0
    assert (holes(one), cable_channel.KIND.leaves) == (0, "peels off")
    assert fitted(cable_channel.KIND, altered(renter(), "desk", cables=long), "cables-on-show", "desk") == ()
