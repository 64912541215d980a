"""Old holes filled or painted over, and a bed made up."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.holes import GALLON_L, SQ_FT_MM2, litres, paint_for
from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds import fill_holes, make_bed, paint_wall
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import renter, stager_bedroom
from tests.remedies.bench import BRIEF, added, altered, fitted, left, product, site, uses

FILLER, PAINT = product("filler", "filler"), product("paint", "paint")
WALL = product("wall", "wall paint", pack=Fraction(5, 2), unit="l")


def holed(name: str, count: int, **more: Any) -> Hung:
    """So many old holes on wall B over the sofa."""
    facts = {"name": name, "room": "r", "what": "old holes", "wall": "B", "from_left": 1500.0, "width": 900.0,
             "height": 300.0, "bottom": 1400.0, "things": count, "fixing": "nail"}  # fmt: skip
    return Hung.model_validate({**facts, **more})


def with_holes(*holes: Hung) -> Survey:
    """The renter's room with patches of old holes."""
    return added(renter(), "pictures", *holes)


def test_pin_holes_are_filled_in_one_go() -> None:
    """Four pins: 8 minutes, three more at 0.7 of that, and 5 to touch up: 30 (29.8)."""
    survey = with_holes(holed("pins", 4))
    (one,) = fitted(fill_holes.KIND, survey, "old-holes-show", "room", FILLER, PAINT)
    assert left(survey, one, "old-holes-show", "room") == 0
    (work,) = one.work
    assert (work.likely, work.wait_minutes) == (30, 0)
    assert dict(one.uses) == {"filler": Fraction(1, 25), "paint": Fraction(1, 25)}
    assert "4 on wall B, 1500 mm to 2400 mm from the left corner, 1400 mm to 1700 mm above the floor" in work.text


def test_high_holes_need_a_ladder() -> None:
    """Old rod holes at 2160: whoever does not climb does not fill them."""
    survey = with_holes(holed("rod", 4, fixing="screws", bottom=2140.0, height=50.0))
    (one,) = fitted(fill_holes.KIND, survey, "old-holes-show", "room")
    assert "ladder" in one.hazards


def test_plug_holes_dry_before_they_are_touched_up() -> None:
    """Three plugs: 15 and two at 10.5 make 36, then an hour, then 5 minutes with the brush in a later session."""
    survey = with_holes(holed("plugs", 3, fixing="screws"))
    (one,) = fitted(fill_holes.KIND, survey, "old-holes-show", "room", FILLER, PAINT)
    fill, touch = one.work
    assert (fill.likely, fill.phase, touch.likely, touch.phase, touch.wait_minutes) == (36, 3, 5, 13, 60)
    assert dict(one.uses)["filler"] == Fraction(3, 25)


def test_no_holes_no_filler() -> None:
    """A finding of a room whose patches are gone by now gets no offer."""
    here = site(with_holes(holed("pins", 4)), "old-holes-show", "room", FILLER)
    assert fill_holes.KIND.fit(replace(here, survey=renter())) == ()
    assert paint_wall.KIND.fit(replace(here, survey=renter())) == ()


@pytest.mark.parametrize(("feet", "gallons", "cans"), [(2000.0, 5.714, 6), (350.0, 1.0, 1), (351.0, 1.003, 2)])
def test_a_gallon_covers_350_square_feet(feet: float, gallons: float, cans: int) -> None:
    """Published value P7 (OpenStax, Prealgebra 2e): 2000 sq ft at 350 a gallon are 5.714 gallons, so buy 6."""
    found = litres(feet * SQ_FT_MM2) / GALLON_L
    assert found == pytest.approx(gallons, abs=5e-4)
    assert math.ceil(found - 1e-9) == cans


def test_wall_paint_is_bought_by_volume() -> None:
    """Wall B, 4500 by 2500, two coats: 11.25 m2 x 2 at 350 sq ft a gallon are 2.62 l (from the definition)."""
    survey = with_holes(holed("pins", 9))
    (one,) = fitted(paint_wall.KIND, survey, "old-holes-show", "room", FILLER, PAINT, WALL)
    assert one.uses == (("filler", Fraction(9, 100)), ("wall", Fraction(131, 50)))
    assert left(survey, one, "old-holes-show", "room") == 0
    first, second = one.work
    assert (first.likely + second.likely, second.wait_sessions) == (240, 1)
    assert (first.low + second.low, first.high + second.high) == (150, 360)
    assert paint_wall.KIND.leaves == "asks leave"
    assert "Wall B, 4500 mm by 2500 mm" in first.text
    assert "2.6 l for two coats" in first.text
    assert any("no sanding" in care for care in one.cares)


def test_gallons_and_quarts_are_volumes_and_tins_are_not() -> None:
    """350 sq ft take one gallon, four quarts, 3.79 l; a tin of unknown size is left to the user."""
    area = 350 * SQ_FT_MM2
    found = [paint_for(product("p", "wall paint", unit=unit), area, 1) for unit in ("gal", "qt", "l", "tin")]
    assert found == [Fraction(1), Fraction(4), Fraction(379, 100), None]


def test_few_holes_are_no_reason_to_paint() -> None:
    """Five holes are filled; a wall is painted from six on, and only the wall that has them."""
    for count, walls in ((5, []), (6, ["B"])):
        survey = with_holes(holed("here", count), holed("there", 2, wall="D"))
        found = fitted(paint_wall.KIND, survey, "old-holes-show", "room", WALL)
        assert [one.name[len("Paint wall ") :][0] for one in found] == walls


def test_the_bed_is_made_with_what_is_there() -> None:
    """Free, judged as for photographs; a bed that is made up needs nothing."""
    judge = next(one for one in judges(RULES, Brief(profile="listing")) if one.rule.slug == "bed-undressed")
    survey = altered(stager_bedroom(), "bed", undressed=True)
    finding = judge_one(judge, Look(survey, "r"), "bed", BRIEF)
    here = Site(survey, "r", "bed", Catalog(), BRIEF, finding, judge)
    (one,) = make_bed.KIND.fit(here)
    assert uses(one) == {}
    assert here.severity(one.changes) == 0 < here.severity(())
    assert make_bed.KIND.fit(replace(here, survey=stager_bedroom())) == ()
