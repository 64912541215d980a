"""The screen's bench and what stands beside it; tables before and beside the seats."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.remedies.kinds import (
    filler_basket,
    move_table_to_seat,
    new_coffee_table,
    screen_strap,
    side_table,
    slide_table,
    wider_console,
)
from budgetfix.remedies.screens import screen_and_bench
from budgetfix.remedies.tables import beside
from budgetfix.room.items import Hung, Piece
from budgetfix.room.places import footprint, wall_lines
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_living, renter, stager_living
from tests.remedies.bench import added, altered, fields, fitted, holes, left, product, severity, site, uses, without

BENCH = product("bench", "console", width=1600.0, depth=400.0, height=500.0)


def screened(**more: Any) -> Survey:
    """The renter's screen on its narrow bench."""
    screen = {
        "name": "screen", "room": "r", "what": "screen", "wall": "D", "from_left": 1096.5, "width": 1107.0,
        "height": 623.0, "bottom": 504.5, "on": "console", "fixing": "none",
    }  # fmt: skip
    return added(renter(), "pictures", Hung.model_validate({**screen, **more}))


def side(name: str, wall: str, from_left: float, gap: float) -> Piece:
    """A small table that serves nobody where it stands."""
    return Piece(
        name=name,
        room="r",
        what="side table",
        wall=wall,
        from_left=from_left,
        gap=gap,
        width=350.0,
        depth=350.0,
        height=500.0,
    )


def test_a_wider_bench_carries_the_screen() -> None:
    """160 cm under a screen of 110.7: the bench is wide enough, and the screen rises with the higher top."""
    survey = screened()
    (one,) = fitted(wider_console.KIND, survey, "console-too-narrow", "screen", BENCH)
    assert left(survey, one, "console-too-narrow", "screen") == 0
    assert fields(one, "screen") == {"bottom": 554.5}
    assert one.work[0].people == 2
    assert "lifting" in one.hazards


def test_a_bench_narrower_than_the_screen_and_a_hand_is_left_in_the_shop() -> None:
    """120 cm is 93 mm more than the screen; 200 mm (8 in) are asked."""
    small = product("small", "console", width=1200.0, depth=400.0, height=450.0)
    assert fitted(wider_console.KIND, screened(), "console-too-narrow", "screen", small) == ()


def test_a_higher_bench_brings_a_low_screen_to_eye_level() -> None:
    """A screen whose middle is 700 mm up stands on a bench of 600 instead of 450: sound."""
    survey = screened(bottom=390.0)
    tall = product("tall", "console", width=1600.0, depth=400.0, height=600.0)
    (one,) = fitted(wider_console.KIND, survey, "screen-off-eye-level", "screen", tall)
    assert left(survey, one, "screen-off-eye-level", "screen") == 0


def test_a_basket_counts_to_the_benchs_width() -> None:
    """45 cm of basket, as tall as the bench and right beside it, widen it; one of 90 cm does not belong to it."""
    survey = screened()
    low, high = (product(name, "basket", width=450.0, height=tall) for name, tall in (("low", 450.0), ("high", 900.0)))
    offers = fitted(filler_basket.KIND, survey, "console-too-narrow", "screen", low, high)
    assert offers
    assert all(uses(one) == {"low": 1} for one in offers)
    assert all(left(survey, one, "console-too-narrow", "screen") == 0 for one in offers)


def test_a_plant_takes_the_weight_off_the_screen() -> None:
    """A plant of 1.2 m beside the bench is higher than the screen's middle (816 mm)."""
    survey = without(screened(), "shoes")
    plant = product("plant", "plant", width=280.0, height=1200.0)
    offers = fitted(filler_basket.KIND, survey, "console-flank-flat", "screen", plant)
    assert offers
    assert left(survey, offers[0], "console-flank-flat", "screen") == 0


def test_a_loose_screen_is_strapped() -> None:
    """A strap to the bench, no hole in the wall; a strapped one needs none."""
    survey = screened()
    (one,) = fitted(screen_strap.KIND, survey, "screen-loose", "screen", product("strap", "screen strap"))
    assert left(survey, one, "screen-loose", "screen") == 0
    assert holes(one) == 0
    here = site(survey, "screen-loose", "screen")
    found = screen_and_bench(here)
    assert found is not None
    assert found[1].name == "console"


@pytest.mark.parametrize("built", [renter, stager_living, couple_living])
def test_the_coffee_table_is_slid_into_reach(built: Any) -> None:
    """16 in (400 mm) before the sofa, whatever wall the survey measures it from; six minutes, nothing bought."""
    survey = built()
    one = fitted(slide_table.KIND, survey, "table-out-of-reach", "table")[0]
    assert left(survey, one, "table-out-of-reach", "table") == 0
    lines = wall_lines(survey, "r")
    sofa, table = (survey.changed(one.changes).named[name][1] for name in ("sofa", "table"))
    assert isinstance(sofa, Piece)
    assert isinstance(table, Piece)
    apart = footprint(sofa, lines).distance(footprint(table, lines))
    assert apart == pytest.approx(400.0 if survey.household.metric else 16 * 25.4, abs=7)
    assert one.work[0].minutes == 6
    assert uses(one) == {}


def test_a_table_of_the_right_length_is_bought() -> None:
    """110 cm before a sofa of 210: 0.52 of it, in reach, about the middle; one of 60 or 160 cm is not offered."""
    sold = [
        product(f"t{wide}", "coffee table", width=wide * 10.0, depth=600.0, height=420.0) for wide in (60, 110, 160)
    ]
    offers = fitted(new_coffee_table.KIND, renter(), "table-off-length", "table", *sold)
    assert [uses(one) for one in offers] == [{"t110": 1}]
    for rule in ("table-off-length", "table-out-of-reach"):
        assert left(renter(), offers[0], rule, "table") == 0


def test_a_seat_without_a_table_gets_one() -> None:
    """A bought table beside an arm leaves fewer seats without."""
    survey = renter()
    offers = fitted(
        side_table.KIND, survey, "seat-without-table", "sofa", product("s", "side table", width=400.0, height=550.0)
    )
    assert offers
    assert left(survey, offers[0], "seat-without-table", "sofa") < severity(survey, "seat-without-table", "sofa")


def test_a_table_that_serves_nobody_is_moved_to_a_seat() -> None:
    """The small table in the corner is stood beside a seat, for nothing; where there is none, nothing is offered."""
    survey = added(renter(), "furniture", side("small", "D", 2900.0, 0.0))
    offers = fitted(move_table_to_seat.KIND, survey, "seat-without-table", "sofa")
    assert offers
    assert uses(offers[0]) == {}
    assert left(survey, offers[0], "seat-without-table", "sofa") < severity(survey, "seat-without-table", "sofa")
    assert fitted(move_table_to_seat.KIND, stager_living(), "seat-without-table", "sofa") == ()


def test_places_beside_a_seat_are_free_floor() -> None:
    """Beside the renter's armchair only the side away from the corner has room for a table."""
    survey = altered(renter(), "fan heater", from_left=100.0)
    here = site(survey, "seat-without-table", "sofa")
    chair = here.survey.named["armchair"][1]
    assert isinstance(chair, Piece)
    for spot in beside(here, chair, side("new", chair.wall, 0.0, 0.0)):
        assert here.fits(())
        assert spot.gap >= 0
