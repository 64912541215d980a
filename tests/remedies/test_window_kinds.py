"""Windows: rods, panels and hems."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.remedies.kinds import clip_rings, hem_tape, longer_rod, new_panels, rehang_rod
from budgetfix.remedies.rods import brackets, panels_for, windows_at
from budgetfix.room.items import Curtain, Piece
from budgetfix.room.survey import Survey, Wall
from tests.inspection.rooms import couple_living, renter
from tests.remedies.bench import added, altered, fields, fitted, holes, left, product, severity, site, uses, without

ROD = product("rod", "rod", width=1600.0, width_to=3000.0)
SHORT = product("short", "rod", width=1200.0, width_to=2100.0, price_minor=800)
PAIR = product("pair", "panels", width=1400.0, drop=2500.0, heading="eyelet", cloth="lined")
WIDE = product("wide", "panels", width=2000.0, drop=2500.0, heading="eyelet", cloth="lined", price_minor=1500)
TAPE = product("tape", "hem tape", price_minor=500)
RINGS = product("rings", "clip rings", pack=Fraction(14))


def dining(survey: Survey, **more: Any) -> Survey:
    """The couple's dining window dressed as they have it, and their front rod level with it or not."""
    curtain = {
        "name": "curtain-dining", "room": "r", "window": "win-dining", "rod_height": 2175.0, "rod_from_left": 400.0,
        "rod_width": 1400.0, "panel_width": 1400.0, "hem": 10.0,
    }  # fmt: skip
    return added(survey, "curtains", Curtain.model_validate({**curtain, **more}))


def test_a_longer_rod_with_its_panels_answers_the_whole_window() -> None:
    """The drop that is sold sets the rod: 250 cm less 40 mm of head plus 10 mm.

    That is nearer to the ceiling than 60 mm, so the rod hangs at 2440 and the cloth just touches the floor; low, narrow
    and hem are cured together.
    """
    survey = renter()
    offers = fitted(longer_rod.KIND, survey, "rod-hung-low", "win", ROD, PAIR, TAPE)
    new = next(one for one in offers if "pair" in uses(one))
    assert fields(new, "curtain")["rod_height"] == 2440.0
    for rule in ("rod-hung-low", "rod-too-narrow", "hem-off-floor"):
        assert left(survey, new, rule, "win") == 0, rule
    assert left(survey, new, "panels-skimpy", "win") < Fraction(1, 10)
    assert "rod 2440 mm above the floor, from 740 mm to 2660 mm from the left corner of wall C" in new.work[0].text


def test_a_drop_of_229_cm_hangs_at_2260() -> None:
    """The couple's trap: 229 cm with eyelets 4 cm above the rod give a rod at 2260 for a hem 10 off the floor."""
    sold = product("q06", "panels", width=2290.0, drop=2290.0, heading="eyelet", cloth="lined")
    (new,) = [
        one for one in fitted(longer_rod.KIND, couple_living(), "rod-hung-low", "win-front", ROD, sold)
        if "q06" in uses(one)
    ]  # fmt: skip
    assert (fields(new, "curtain-front")["rod_height"], fields(new, "curtain-front")["hem"]) == (2260.0, 10.0)


def test_a_drop_too_long_needs_hem_tape() -> None:
    """Panels of 300 cm are shortened with tape; without tape in the catalogue they are not offered."""
    long = product("long", "panels", width=1400.0, drop=3000.0, heading="eyelet")
    with_tape = fitted(longer_rod.KIND, renter(), "rod-hung-low", "win", ROD, long, TAPE)
    assert any(uses(one) == {"rod": 1, "long": 1, "tape": 1} for one in with_tape)
    assert all("long" not in uses(one) for one in fitted(longer_rod.KIND, renter(), "rod-hung-low", "win", ROD, long))


def test_old_panels_keep_their_height() -> None:
    """A longer rod with the old panels stays where the hem is: moved up, the cloth would hang in the air (trap m07)."""
    old = fitted(longer_rod.KIND, renter(), "rod-too-narrow", "win", ROD)
    assert [fields(one, "curtain") for one in old] == [{"rod_from_left": 800.0, "rod_width": 1800.0}]
    assert left(renter(), old[0], "rod-too-narrow", "win") == 0


def test_a_longer_rod_takes_the_cloth_from_the_heater() -> None:
    """The couple's front curtain hangs 100 mm from the panel heater because its rod is short: a longer rod cures it."""
    survey = couple_living()
    offers = fitted(longer_rod.KIND, survey, "curtain-near-heater", "curtain-front", ROD)
    assert severity(survey, "curtain-near-heater", "curtain-front") > left(
        survey, offers[0], "curtain-near-heater", "curtain-front"
    )
    assert offers[0].hazards == ("drill", "ladder", "heat")
    assert any("Before drilling" in care for care in offers[0].cares)


def test_holes_and_minutes_follow_the_rod_and_the_wall() -> None:
    """Six holes for three brackets; masonry takes 1.4 times as long (112 for 80 minutes: our judgement)."""
    solid = renter().model_copy(
        update={"walls": tuple(Wall(room="r", wall=w.wall, length=w.length, solid=True) for w in renter().walls)}
    )
    board, brick = (fitted(longer_rod.KIND, one, "rod-too-narrow", "win", ROD)[0] for one in (renter(), solid))
    assert holes(board) == 6
    assert (board.work[0].minutes, brick.work[0].minutes) == (80, 112)
    assert (board.work[0].people, brackets(1200), brackets(1221), brackets(3100)) == (2, 2, 3, 4)


def test_no_rod_long_enough_means_no_offer() -> None:
    """A rod that extends to 1.2 m is of no use at a window of 1.4 m."""
    assert (
        fitted(longer_rod.KIND, renter(), "rod-too-narrow", "win", product("s", "rod", width=700.0, width_to=1200.0))
        == ()
    )


def test_two_pairs_where_one_is_too_thin() -> None:
    """One pair of 140 is enough for 1.9 m within a twentieth; for 3 m two pairs are hung; for 4 m not even two."""
    assert [panels_for(PAIR, wide) for wide in (1900.0, 3000.0, 4000.0)] == [2, 4, None]


def test_sheers_do_not_take_the_place_of_lined_cloth() -> None:
    """Behind lined curtains somebody sleeps or undresses."""
    sheer = product("sheer", "panels", width=2500.0, drop=2500.0, heading="pocket", cloth="sheer")
    assert all("sheer" not in uses(one) for one in fitted(longer_rod.KIND, renter(), "rod-hung-low", "win", ROD, sheer))


def test_a_bare_window_gets_a_rod_and_cloth() -> None:
    """An overlooked window without blind or cloth: a new curtain is hung, and the window is dressed."""
    survey = altered(without(renter(), "curtain"), "win", overlooked=True)
    offers = fitted(longer_rod.KIND, survey, "window-bare", "win", ROD, PAIR, TAPE)
    assert [left(survey, one, "window-bare", "win") for one in offers] == [0]
    assert offers[0].changes[0].add is not None


def test_wider_panels_on_the_old_rod() -> None:
    """Full enough, and the hem just clears the floor: the tape shortens what is too long."""
    survey = renter()
    (one,) = fitted(new_panels.KIND, survey, "hem-off-floor", "win", PAIR, TAPE)
    assert left(survey, one, "hem-off-floor", "win") == 0
    assert left(survey, one, "panels-skimpy", "win") == 0
    assert uses(one) == {"pair": 1, "tape": 1}
    assert holes(one) == 0
    assert fitted(new_panels.KIND, survey, "hem-off-floor", "win", PAIR) == ()


def test_panels_that_end_in_the_air_are_not_offered() -> None:
    """A drop of 137 cm is for a sill, not for the floor."""
    sill = product("sill", "panels", width=1400.0, drop=1370.0, heading="eyelet")
    assert fitted(new_panels.KIND, renter(), "hem-off-floor", "win", sill, TAPE) == ()


@pytest.mark.parametrize(("hem", "after"), [(70.0, 30.0), (55.0, 15.0), (76.0, None)])
def test_clip_rings_lower_a_hem_by_40_mm(hem: float, after: float | None) -> None:
    """Rings help up to 75 mm; beyond, nobody would call it done."""
    survey = altered(renter(), "curtain", hem=hem)
    offers = fitted(clip_rings.KIND, survey, "hem-off-floor", "win", RINGS)
    assert [fields(one, "curtain")["hem"] for one in offers] == ([] if after is None else [after])


def test_cloth_in_a_heap_is_shortened() -> None:
    """Cloth that lies 80 mm on the floor is taken up to 10 mm above it; cloth in the air cannot be."""
    survey = altered(renter(), "curtain", hem=-80.0)
    (one,) = fitted(hem_tape.KIND, survey, "hem-off-floor", "win", TAPE)
    assert left(survey, one, "hem-off-floor", "win") == 0
    assert fitted(hem_tape.KIND, renter(), "hem-off-floor", "win", TAPE) == ()


def test_a_rod_is_hung_in_line_with_its_neighbour() -> None:
    """The couple's rods are 65 mm out of line: lowered to the neighbour, the cloth is shortened with tape."""
    survey = dining(couple_living())
    (one,) = fitted(rehang_rod.KIND, survey, "rods-out-of-line", "wall D", TAPE)
    assert left(survey, one, "rods-out-of-line", "wall D") == 0
    assert fields(one, "curtain-dining") == {"rod_height": 2110.0, "hem": 10.0}
    assert fitted(rehang_rod.KIND, survey, "rods-out-of-line", "wall D") == ()


def test_long_cloth_lets_the_rod_go_up_for_nothing() -> None:
    """Cloth 150 mm in a heap under a low rod: raised by 160 mm both are cured, and nothing is bought."""
    survey = altered(renter(), "curtain", hem=-150.0)
    (one,) = fitted(rehang_rod.KIND, survey, "rod-hung-low", "win")
    assert uses(one) == {}
    assert left(survey, one, "hem-off-floor", "win") == 0
    assert left(survey, one, "rod-hung-low", "win") < severity(survey, "rod-hung-low", "win")


def test_a_rod_stops_at_a_bookcase_beside_the_window() -> None:
    """A bookcase 300 mm right of the renter's window: no rod that is offered reaches past it."""
    window = renter().openings[-1]
    end = window.from_left + window.width
    facts = {"room": window.room, "what": "bookcase", "wall": window.wall, "from_left": end + 300.0}
    case = Piece.model_validate({"name": "case", "width": 600.0, "depth": 300.0, "height": 2000.0, **facts})
    survey = added(renter(), "furniture", case)
    found = windows_at(site(survey, "rod-too-narrow", window.name))
    assert [round(one.right) for one in found] == [300]
