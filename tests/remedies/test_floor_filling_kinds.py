"""A landing at the front door, rugs under table and bed, plants in empty corners."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.catalog.models import Catalog, Product
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds import corner_filler, hooks_and_mat, rug_under
from budgetfix.room.items import Piece, Rug
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Survey
from tests.inspection.rooms import INCH, couple_living, stager_bedroom, stager_living
from tests.remedies.bench import BRIEF, added, altered, fields, fitted, holes, left, product, uses, without

MAT = product("mat", "mat", width=750.0, depth=450.0, price_minor=1500)
STAND = product("stand", "coat rack", width=350.0, depth=350.0, height=1750.0, price_minor=3500)
RAIL = product("rail", "coat rack", width=600.0, depth=80.0, price_minor=2000)
CONSOLE = product("console", "console table", width=800.0, depth=300.0, height=800.0, price_minor=6000)
PAD = product("pad", "pad", width=3300.0, depth=2300.0)


def entry() -> Survey:
    """The stager's living room: the front door opens into it; no rug, and only the china cabinet near it."""
    return without(altered(stager_living(), "front-door", entry=True), "rug")


def test_the_front_door_gets_what_is_missing() -> None:
    """The cabinet is a surface: mat and stand cure it; the mat alone leaves a third; nothing stands before the door."""
    survey = altered(entry(), "cabinet", from_left=2000.0)
    offers = fitted(hooks_and_mat.KIND, survey, "entry-no-landing", "front-door", MAT, STAND, CONSOLE)
    full = next(one for one in offers if left(survey, one, "entry-no-landing", "front-door") == 0)
    assert uses(full) == {"mat": 1, "stand": 1}
    (mat,) = [one for one in offers if uses(one) == {"mat": 1}]
    assert left(survey, mat, "entry-no-landing", "front-door") == Fraction(1, 3)
    assert holes(full) == 0


def test_a_far_cabinet_is_no_surface() -> None:
    """Without the cabinet all three are missing, and all three come."""
    survey = survey_without_cabinet()
    offers = fitted(hooks_and_mat.KIND, survey, "entry-no-landing", "front-door", MAT, STAND, CONSOLE)
    full = next(one for one in offers if left(survey, one, "entry-no-landing", "front-door") == 0)
    assert uses(full) == {"mat": 1, "stand": 1, "console": 1}
    assert full.work[0].likely == 5 + 25 + 35


def survey_without_cabinet() -> Survey:
    """The china cabinet stands elsewhere."""
    return without(entry(), "cabinet")


def test_the_new_mat_wakes_no_other_rule() -> None:
    """It lies 6 in off the walls, does not slide, and is no rug of the seating group."""
    survey = survey_without_cabinet()
    offers = fitted(hooks_and_mat.KIND, survey, "entry-no-landing", "front-door", MAT)
    after = survey.changed(offers[0].changes)
    for judge in judges(RULES, BRIEF):
        look = Look(after, "r")
        if "mat at the front-door" in judge.rule.subjects(look):
            found = judge_one(judge, look, "mat at the front-door", BRIEF)
            assert found is None or not found.fault, judge.rule.slug


def test_a_rail_is_screwed_to_the_wall() -> None:
    """Shallow: four plugs, 1700 above the floor, needs no floor of its own."""
    offers = fitted(hooks_and_mat.KIND, survey_without_cabinet(), "entry-no-landing", "front-door", MAT, RAIL)
    railed = next(one for one in offers if "rail" in uses(one))
    assert (holes(railed), railed.leaves) == (4, "plugs")
    assert "drill" in railed.hazards
    assert "66 7/8 in above the floor" in railed.work[0].text


def test_nothing_sold_nothing_offered() -> None:
    """A catalogue without mats, racks and consoles has no answer."""
    assert fitted(hooks_and_mat.KIND, entry(), "entry-no-landing", "front-door") == ()


def dining() -> Survey:
    """The couple's dining table (900 by 1500) on a rug of 1600 by 2300 that its chairs fall off."""
    rug = Rug(name="under", room="r", wall="C", from_left=750.0, gap=0.0, width=1600.0, depth=2300.0, under="dining",
              pad=True)  # fmt: skip
    return added(couple_living(), "rugs", rug)


def test_a_larger_rug_goes_under_the_dining_table() -> None:
    """2980 by 2380 reaches 24 in beyond on the sides with chairs that 1600 by 2300 does not."""
    big = product("big", "rug", width=2980.0, depth=2380.0)
    survey = altered(dining(), "under", width=1200.0, depth=1700.0, pad=False)
    big_one = [one for one in fitted(rug_under.KIND, survey, "rug-catches-chairs", "under", big, PAD) if uses(one)]
    assert left(survey, big_one[0], "rug-catches-chairs", "under") == 0
    assert uses(big_one[0]) == {"big": 1, "pad": 1}
    assert fields(big_one[0], "under")["pad"] is True
    assert big_one[0].work[0].people == 2


def test_the_rug_that_is_there_is_turned_for_nothing() -> None:
    """1600 by 2300 laid across reaches 700 beyond on both sides: nobody buys the same size, nor one beyond the room."""
    sizes = ((1600.0, 2300.0), (5200.0, 4800.0))
    sold = (product(f"w{wide:.0f}", "rug", width=wide, depth=deep) for wide, deep in sizes)
    (one,) = fitted(rug_under.KIND, dining(), "rug-catches-chairs", "under", *sold)
    assert (uses(one), one.id) == ({}, "rug-under/under/anew~turned")
    assert left(dining(), one, "rug-catches-chairs", "under") == 0


def test_a_rug_under_the_bed_reaches_beyond_both_sides() -> None:
    """A bed of 60 in on a rug of 5 by 6 ft: one of 8 by 10 laid across has 30 in on each side."""
    rug = Rug(name="under", room="r", wall="C", from_left=10 * INCH, gap=0.0, width=60 * INCH, depth=72 * INCH,
              under="bed", pad=True)  # fmt: skip
    survey = added(altered(stager_bedroom(), "bed", from_left=42 * INCH), "rugs", rug)
    wide = product("wide", "rug", width=120 * INCH, depth=96 * INCH)
    offers = fitted(rug_under.KIND, survey, "rug-under-bed", "under", wide)
    (bought,) = [one for one in offers if uses(one) == {"wide": 1}]
    assert left(survey, bought, "rug-under-bed", "under") == 0


LISTING = {judge.rule.slug: judge for judge in judges(RULES, BRIEF.model_copy(update={"profile": "listing"}))}


def corners(survey: Survey, *sold: Product) -> Site:
    """The empty corners of a room that is to be photographed."""
    judge = LISTING["floor-left-empty"]
    finding = judge_one(judge, Look(survey, "r"), "room", BRIEF)
    return Site(survey, "r", "room", Catalog(products=sold), BRIEF, finding, judge, judges=LISTING)


def test_a_plant_fills_the_corner_that_is_empty() -> None:
    """Nothing stands in the stager's far corner: a plant 6 in off both walls, and none where it changes nothing."""
    plant = product("plant", "plant", width=280.0, depth=280.0, height=1200.0)
    survey = altered(survey_without_cabinet(), "chair-2", from_left=60 * INCH)
    here = corners(survey, plant)
    offers = corner_filler.KIND.fit(here)
    assert offers
    for one in offers:
        assert here.severity(one.changes) < here.severity(())
        assert set(overlaps(survey.changed(one.changes), "r")) <= set(overlaps(survey, "r"))
        assert uses(one)["plant"] == len(one.changes)
        for change in one.changes:
            fewer = tuple(each for each in one.changes if each is not change)
            assert here.severity(fewer) > here.severity(one.changes)
            assert isinstance(change.add, Piece)


@pytest.mark.parametrize("sold", [(), (product("rug", "rug", width=1000.0),)])
def test_no_plant_no_filler(sold: Any) -> None:
    """Without a plant or a basket in the catalogue the corner stays."""
    assert corner_filler.KIND.fit(corners(survey_without_cabinet(), *sold)) == ()
