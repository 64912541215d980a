"""Bare windows dressed without a rod on the wall, and what stands at the head of a bed."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.remedies.kinds import clamp_rod, hang_blind, headboard
from budgetfix.room.items import Hung, Opening, Piece
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_bedroom, renter, stager_bedroom
from tests.remedies.bench import added, altered, fields, fitted, holes, left, product, uses, without

ROD = product("clamp", "clamp rod", width=1200.0, width_to=2000.0, carries=5.0)
SHEER = product("sheer", "panels", width=1500.0, drop=2500.0, heading="pocket", cloth="sheer")
TAPE = product("tape", "hem tape", price_minor=500)
BOARD = product("board", "headboard", width=1540.0, depth=60.0, height=1150.0)


def bare() -> Survey:
    """The renter's window of 1400, overlooked and without cloth."""
    return altered(without(renter(), "curtain"), "win", overlooked=True)


def test_a_clamp_rod_dresses_a_bare_window_without_a_hole() -> None:
    """Between the reveals from 1000 to 2400 on wall C, 40 below the head: nobody looks in, nothing is drilled."""
    (one,) = fitted(clamp_rod.KIND, bare(), "window-bare", "win", ROD, SHEER, TAPE)
    assert uses(one) == {"clamp": 1, "sheer": 1, "tape": 1}
    assert left(bare(), one, "window-bare", "win") == 0
    assert holes(one) == 0
    assert one.hazards == ()
    assert clamp_rod.KIND.leaves == "nothing"
    text = one.work[0].text
    assert "2060 mm above the floor, from 1000 mm to 2400 mm from the left corner of wall C" in text
    assert "it carries 5 kg" in text
    assert "hem 910 mm above the floor" in text


@pytest.mark.parametrize(
    ("rod", "cloth", "more"),
    [
        (product("clamp", "clamp rod", width=700.0, width_to=1390.0), SHEER, (TAPE,)),
        (ROD, product("thin", "panels", width=500.0, drop=2500.0, cloth="sheer"), (TAPE,)),
        (ROD, product("short", "panels", width=1500.0, drop=1000.0, cloth="sheer"), (TAPE,)),
        (ROD, SHEER, ()),
    ],
)
def test_a_clamp_rod_stays_away_where_it_does_not_fit(rod: Any, cloth: Any, more: Any) -> None:
    """A rod too short, cloth too thin or too short, or cloth to be cut and no tape to hem it with."""
    assert fitted(clamp_rod.KIND, bare(), "window-bare", "win", rod, cloth, *more) == ()


def screened() -> Survey:
    """A bare window right behind the head of who watches: the glass mirrors in the screen."""
    window = Opening(
        name="behind", room="r", what="window", wall="B", from_left=1900.0, width=1200.0, bottom=900.0, top=2100.0
    )
    screen = Hung(name="screen", room="r", what="screen", wall="D", from_left=1100.0, width=1100.0, height=620.0,
                  bottom=500.0, on="console")  # fmt: skip
    return added(added(renter(), "openings", window), "pictures", screen)


def test_glare_is_shaded_by_a_rod_or_a_blind() -> None:
    """The window named by no finding is found: it is the only bare one of the room."""
    blind = product("blind", "blind", width=1300.0, height=1400.0)
    for kind, sold in ((clamp_rod.KIND, (ROD, SHEER, TAPE)), (hang_blind.KIND, (blind,))):
        (one,) = fitted(kind, screened(), "screen-glare", "screen", *sold)
        assert one.subject == "behind"
        assert left(screened(), one, "screen-glare", "screen") == 0


@pytest.mark.parametrize(("wide", "tall", "offered"), [(1400.0, 1300.0, 1), (1610.0, 1300.0, 0), (1390.0, 1300.0, 0),
                                                       (1400.0, 1200.0, 0)])  # fmt: skip
def test_a_blind_is_as_wide_as_the_frame_or_a_little_wider(wide: float, tall: float, offered: int) -> None:
    """Frame 1400 by 1200: from 1400 to 1600 wide, and 50 above the head down to the sill."""
    blind = product("blind", "blind", width=wide, height=tall)
    found = fitted(hang_blind.KIND, bare(), "window-bare", "win", blind)
    assert len(found) == offered
    for one in found:
        assert left(bare(), one, "window-bare", "win") == 0
        assert holes(one) == 4
        assert "2150 mm above the floor, left edge of the blind 1000 mm" in one.work[0].text


def bed(**more: Any) -> Survey:
    """The couple's bed of 1500 without its headboard, nothing over it."""
    return altered(couple_bedroom(), "bed", **{"headboard": False, **more})


def test_a_headboard_answers_a_bare_head() -> None:
    """1540 at a mattress of 1500: the bed comes 60 off the wall, the mattress stays at 600."""
    (one,) = fitted(headboard.KIND, bed(), "bed-headless", "bed", BOARD)
    assert left(bed(), one, "bed-headless", "bed") == 0
    assert fields(one, "bed") == {"headboard": True, "depth": 2060.0, "height": 1150.0, "seat": 600.0}
    assert (one.work[0].people, one.work[0].help, holes(one), headboard.KIND.leaves) == (1, 20, 0, "nothing")
    assert "1150 mm above the floor" in one.work[0].text
    assert "say where" not in one.work[0].text


@pytest.mark.parametrize("wide", [1470.0, 1810.0])
def test_a_headboard_of_another_bed_is_not_offered(wide: float) -> None:
    """Less than the mattress less 25, or more than 300 wider."""
    assert fitted(headboard.KIND, bed(), "bed-headless", "bed", product("b", "headboard", width=wide)) == ()


def test_a_headboard_wider_than_the_place_between_stands_is_not_offered() -> None:
    """A board of 1600 needs 50 on each side: the nightstand that stands 30 away is in its way."""
    wide = product("wide", "headboard", width=1600.0, depth=60.0)
    assert fitted(headboard.KIND, bed(), "bed-headless", "bed", wide) == ()
    assert len(fitted(headboard.KIND, without(bed(), "stand-1"), "bed-headless", "bed", wide)) == 1


def test_a_headboard_does_not_hide_the_picture_over_the_bed() -> None:
    """The stager's picture hangs 56 in up: a board of 40 in is fine, one of 60 in would cover it."""
    low, tall = (product(f"b{top}", "headboard", width=60 * 25.4, height=top * 25.4) for top in (40, 60))
    survey = altered(stager_bedroom(), "picture", bottom=56 * 25.4)
    assert [list(uses(one)) for one in fitted(headboard.KIND, survey, "bed-headless", "bed", low, tall)] == [["b40"]]


def test_a_bed_across_its_wall_gets_no_board() -> None:
    """A bed that looks along its wall has its head at no wall of its own."""
    survey = added(without(bed(), "bed", "stand-1"), "furniture", Piece(
        name="bed", room="r", what="bed", wall="B", from_left=900.0, width=1500.0, depth=2000.0, height=600.0,
        faces="C", sleepers=1))  # fmt: skip
    assert fitted(headboard.KIND, survey, "bed-headless", "bed", BOARD) == ()
