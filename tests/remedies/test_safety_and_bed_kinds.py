"""Straps, cleats, covers; nightstands beside the bed."""

from __future__ import annotations

import pytest

from budgetfix.remedies.kinds import cable_cover, cord_cleat, nightstands, strap
from tests.inspection.rooms import couple_bedroom, couple_living, renter, stager_bedroom
from tests.remedies.bench import altered, fitted, holes, left, product, site, uses

STRAPS = product("straps", "strap", unit="strap")


def test_a_tall_piece_takes_two_straps_and_two_holes() -> None:
    """The renter's bookcase: two straps near its top, cautions for drilling and tipping."""
    survey = renter()
    (one,) = fitted(strap.KIND, survey, "tall-piece-loose", "bookcase", STRAPS)
    assert left(survey, one, "tall-piece-loose", "bookcase") == 0
    assert (uses(one), holes(one), one.hazards) == ({"straps": 2}, 2, ("drill", "tipping"))
    assert "1970 mm above the floor" in one.work[0].text
    assert any("Tall furniture tips" in care for care in one.cares)


def test_a_set_of_straps_is_enough_for_one_piece() -> None:
    """Where the shop counts in sets, one is used."""
    (one,) = fitted(strap.KIND, renter(), "tall-piece-loose", "bookcase", product("set", "strap", unit="set"))
    assert uses(one) == {"set": 1}


def test_a_piece_away_from_the_wall_cannot_be_strapped() -> None:
    """At 300 mm from the wall there is nothing to screw a strap to."""
    survey = altered(renter(), "bookcase", gap=300.0)
    assert strap.KIND.fit(site(survey, "tall-piece-loose", "bookcase", STRAPS)) == ()


def test_a_looped_cord_is_tied_down() -> None:
    """The couple's blind cord of 900 mm: wound on a cleat as high as one reaches."""
    survey = couple_living()
    (one,) = fitted(cord_cleat.KIND, survey, "cord-in-reach", "win-dining", product("cleat", "cord cleat"))
    assert left(survey, one, "cord-in-reach", "win-dining") == 0
    assert holes(one) == 2


def test_a_cover_makes_a_lead_better_not_gone() -> None:
    """Covered, the lead across the way counts 0.4 of what it was."""
    survey = couple_living()
    (one,) = fitted(cable_cover.KIND, survey, "cable-across-route", "floor lamp", product("cover", "cable cover"))
    assert float(left(survey, one, "cable-across-route", "floor lamp")) == pytest.approx(0.4)
    assert holes(one) == 0


@pytest.mark.parametrize(("height", "fits"), [(600.0, True), (510.0, True), (480.0, False), (720.0, False)])
def test_a_nightstand_is_level_with_the_mattress(height: float, fits: bool) -> None:
    """The couple's is 120 mm below the mattress of 600: within 100 mm is what is bought."""
    survey = couple_bedroom()
    sold = product("stand", "nightstand", width=400.0, depth=350.0, height=height)
    offers = fitted(nightstands.KIND, survey, "nightstand-off-height", "stand-1", sold)
    assert bool(offers) is fits
    assert all(left(survey, one, "nightstand-off-height", "stand-1") == 0 for one in offers)


def test_the_missing_nightstand_is_added() -> None:
    """The stager's bed has one on its right: the other side gets its own where there is room for it."""
    survey = altered(stager_bedroom(), "bed", from_left=42 * 25.4)
    survey = altered(survey, "stand", from_left=104 * 25.4)
    sold = product("stand-2", "nightstand", width=500.0, depth=400.0, height=620.0)
    offers = fitted(nightstands.KIND, survey, "bed-lopsided", "bed", sold)
    assert [left(survey, one, "bed-lopsided", "bed") for one in offers] == [0]
