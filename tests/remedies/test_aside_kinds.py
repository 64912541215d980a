"""What is moved aside: shelves in a narrow way, spare chairs, a seat too far from its screen."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds import bigger_picture, move_hung, move_piece, seat_to_screen, spare_chair
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_living, renter
from tests.remedies.bench import BRIEF, added, altered, fields, fitted, holes, left, product, severity, uses, without


def shelf(**more: Any) -> Survey:
    """A shelf of 600 by 250 on wall B at shoulder height, a cabinet 700 before it."""
    board = {"name": "shelf", "room": "r", "what": "shelf", "wall": "B", "from_left": 300.0, "width": 600.0,
             "height": 30.0, "bottom": 1400.0, "depth": 250.0, "fixing": "screws"}  # fmt: skip
    cabinet = Piece(name="cabinet", room="r", what="cabinet", wall="B", from_left=300.0, gap=950.0, width=600.0,
                    depth=400.0, height=1000.0)  # fmt: skip
    survey = without(renter(), "bookcase", "desk", "deskchair")
    return added(added(survey, "furniture", cabinet), "pictures", Hung.model_validate({**board, **more}))


def test_a_shelf_moves_along_its_wall_out_of_the_way() -> None:
    """Where more than 36 in is left before it; four plugs, its height stays, and its old holes are filled."""
    survey = shelf()
    offers = fitted(move_hung.KIND, survey, "juts-into-route", "shelf")
    for one in offers:
        assert left(survey, one, "juts-into-route", "shelf") == 0
        assert set(fields(one, "shelf")) == {"from_left"}
        assert (holes(one), uses(one), move_hung.KIND.leaves) == (4, {}, "plugs")
    assert abs(float(fields(offers[0], "shelf")["from_left"]) - 300.0) <= 1100.0


def test_a_picture_is_no_shelf() -> None:
    """It does not stand out so far; and a shelf without any free wall stays."""
    assert fitted(move_hung.KIND, shelf(what="picture"), "juts-into-route", "shelf") == ()
    other = Hung(
        name="other", room="r", what="shelf", wall="B", from_left=950.0, width=3500.0, height=30.0, bottom=1400.0
    )
    assert fitted(move_hung.KIND, added(shelf(), "pictures", other), "juts-into-route", "shelf") == ()


def crowded() -> Survey:
    """The couple's table with three chairs on one side of 1500: 500 each."""
    chair = Piece(name="ch5", room="r", what="dining chair", wall="B", from_left=4900.0, gap=900.0, width=450.0,
                  depth=200.0, height=880.0, tucked=True, at="dining")  # fmt: skip
    return added(couple_living(), "furniture", chair)


def test_one_chair_goes_to_the_wall() -> None:
    """Two at each side have 750 each: one chair stands free at a wall, at no table, and nobody buys anything."""
    survey = crowded()
    (one,) = fitted(spare_chair.KIND, survey, "table-crowded", "dining")
    (change,) = one.changes
    assert left(survey, one, "table-crowded", "dining") == 0
    assert (fields(one, change.item)["at"], fields(one, change.item)["tucked"]) == ("", False)
    assert uses(one) == {}


def test_no_free_wall_no_spare_chair() -> None:
    """A room whose walls are full of cabinets has no place for it."""
    survey = crowded()
    full = added(survey, "furniture", *(
        Piece(name=f"full {wall}", room="r", what="cabinet", wall=wall, width=line, depth=60.0, height=900.0)
        for wall, line in (("A", 4100.0), ("B", 6200.0), ("C", 4100.0), ("D", 6200.0))
    ))  # fmt: skip
    assert fitted(spare_chair.KIND, full, "table-crowded", "dining") == ()


def far(wide: float) -> Survey:
    """A screen of that width on the wall opposite the renter's sofa, 2700 before the eye or so."""
    survey = without(renter(), "shoes", "console")
    return added(survey, "pictures", Hung(name="screen", room="r", what="screen", wall="D", from_left=2150.0 - wide / 2,
                                          width=wide, height=wide * 0.56, bottom=700.0))  # fmt: skip


def test_the_sofa_comes_nearer_to_a_small_screen() -> None:
    """The shortest slide that is sound, and the table before it goes along."""
    survey = far(800.0)
    (one,) = fitted(seat_to_screen.KIND, survey, "screen-too-near-or-far", "screen")
    assert left(survey, one, "screen-too-near-or-far", "screen") == 0
    assert {change.item for change in one.changes} == {"sofa", "table"}
    assert one.work[0].people == 2
    shorter = float(fields(one, "sofa")["gap"]) - 100.0
    nearer = altered(survey, "sofa", gap=shorter)
    assert severity(nearer, "screen-too-near-or-far", "screen") > 0


def test_a_sofa_hemmed_in_stays() -> None:
    """A cabinet right before the sofa and its back at the wall."""
    block = Piece(name="block", room="r", what="cabinet", wall="B", from_left=1300.0, gap=900.0, width=2100.0,
                  depth=300.0, height=500.0)  # fmt: skip
    survey = added(far(800.0), "furniture", block)
    assert fitted(seat_to_screen.KIND, survey, "screen-too-near-or-far", "screen") == ()


@pytest.mark.parametrize(("wide", "offered"), [(1300.0, 1), (2000.0, 0)])
def test_a_picture_that_is_too_wide_is_changed_for_a_right_one(wide: float, offered: int) -> None:
    """2300 over a sofa of 2100: one of 1300 is about two thirds, one of 2000 is not."""
    frame = Hung(name="picture", room="r", wall="B", from_left=1200.0, width=2300.0, height=700.0, bottom=980.0,
                 over="sofa")  # fmt: skip
    survey = added(renter(), "pictures", frame)
    sold = product("p", "picture", width=wide, height=700.0)
    found = fitted(bigger_picture.KIND, survey, "art-too-wide", "picture", sold)
    assert len(found) == offered
    for one in found:
        assert left(survey, one, "art-too-wide", "picture") == 0


def test_a_sofa_that_shows_its_back_to_the_camera_is_slid_away() -> None:
    """The sofa stands 900 before the hall door and looks away from it: the shortest slides that free the view."""
    judge = next(one for one in judges(RULES, Brief(profile="listing")) if one.rule.slug == "camera-sees-back")
    survey = altered(couple_living(), "sofa", wall="A", from_left=1500.0, gap=1000.0, faces="C")
    survey = without(survey, "table", "bookcase")
    finding = judge_one(judge, Look(survey, "r"), "door-hall", BRIEF)
    here = Site(survey, "r", "door-hall", Catalog(), BRIEF, finding, judge, judges={judge.rule.slug: judge})
    offers = move_piece.KIND.fit(here)
    assert offers
    for one in offers:
        assert here.severity(one.changes) == 0 < here.severity(())
        assert here.fits(one.changes)
