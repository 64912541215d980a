"""Rugs: slid, turned, laid new, and kept from sliding."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.remedies.kinds import lay_rug, rug_pad, slide_rug, turn_rug
from budgetfix.remedies.rugs import best_laid, seat_of
from tests.inspection.rooms import couple_living, renter, stager_living
from tests.remedies.bench import altered, fields, fitted, holes, left, product, severity, site, uses, without

SMALL = product("small", "rug", width=1580.0, depth=2280.0)
LARGE = product("large", "rug", width=1970.0, depth=2950.0, price_minor=2000)
TINY = product("tiny", "rug", width=800.0, depth=1400.0)
PAD = product("pad", "pad", width=2200.0, depth=1500.0)


def test_the_couples_rug_is_slid_under_the_sofa() -> None:
    """Slid 400 mm the rug lies 200 mm under the sofa's front, and nothing is bought."""
    survey = couple_living()
    first = fitted(slide_rug.KIND, survey, "rug-misses-seats", "rug")[0]
    assert left(survey, first, "rug-misses-seats", "rug") == 0
    assert uses(first) == {}
    assert first.cost_minor == 0
    assert [work.minutes for work in first.work] == [12]


def test_the_renters_rug_is_turned_and_slid_under() -> None:
    """The long side runs along the sofa, 200 mm under its front, middle on the sofa's middle (2350)."""
    survey = renter()
    turned = fitted(turn_rug.KIND, survey, "rug-across", "rug")[0]
    assert left(survey, turned, "rug-across", "rug") == 0
    assert fields(turned, "rug") == {"wall": "B", "from_left": 1500.0, "gap": 680.0, "width": 1700.0, "depth": 1200.0}
    assert "left edge 1500 mm from the left corner of wall B, 680 mm off it" in turned.work[0].text


def test_a_round_rug_is_never_turned() -> None:
    """Turning a circle changes nothing."""
    survey = altered(renter(), "rug", round=True)
    assert fitted(turn_rug.KIND, survey, "rug-misses-seats", "rug") == ()


def test_a_rug_of_the_right_size_is_laid_with_the_pad_that_fits() -> None:
    """158 x 228 cm along the renter's sofa: the practitioner's choice, with the 150 x 220 pad, by one person."""
    survey = renter()
    offers = fitted(lay_rug.KIND, survey, "rug-misses-seats", "rug", SMALL, LARGE, TINY, PAD)
    small = next(one for one in offers if uses(one) == {"pad": 1, "small": 1})
    assert left(survey, small, "rug-misses-seats", "rug") < severity(survey, "rug-misses-seats", "rug") / 2
    assert left(survey, small, "rug-across", "rug") == 0
    assert fields(small, "rug")["pad"] is True
    assert small.work[0].people == 1
    assert next(one for one in offers if "large" in uses(one)).work[0].people == 2
    assert not any("tiny" in uses(one) for one in offers), "140 cm along a sofa of 210 cm is a bath mat"


def test_a_pad_is_cut_to_size_but_never_pieced() -> None:
    """A pad that sticks out is cut; one that reaches under too little stays in the shop, and the rug lies without."""
    wide = product("wide", "pad", width=2400.0, depth=1500.0)
    offers = fitted(lay_rug.KIND, renter(), "rug-misses-seats", "rug", SMALL, wide)
    assert offers
    assert all(uses(one) == {"small": 1, "wide": 1} and one.accepts_of == "small" for one in offers)
    short = product("short", "pad", width=1600.0, depth=1100.0)
    bare = fitted(lay_rug.KIND, renter(), "rug-misses-seats", "rug", SMALL, short)
    assert all(fields(one, "rug")["pad"] is False for one in bare)


@pytest.mark.parametrize("built", [renter, stager_living, couple_living])
def test_a_bare_floor_gets_a_new_rug(built: Any) -> None:
    """Without a rug one is added in each invented living room, and the floor is no longer bare."""
    survey = without(built(), "rug")
    offers = fitted(lay_rug.KIND, survey, "floor-bare", "seating group", SMALL)
    assert offers
    assert all(left(survey, one, "floor-bare", "seating group") == 0 for one in offers)
    assert offers[0].changes[0].add is not None


def test_a_rug_that_would_leave_the_room_is_not_laid() -> None:
    """A rug of 5 x 4 m does not fit a room of 3.6 x 4.5 m."""
    huge = product("huge", "rug", width=4000.0, depth=5000.0)
    assert fitted(lay_rug.KIND, renter(), "rug-misses-seats", "rug", huge) == ()


def test_a_pad_keeps_the_rug_from_sliding() -> None:
    """Of two pads at one price the first by name; no hole is made."""
    survey = renter()
    pad = product("p", "pad", width=1600.0, depth=1100.0)
    (one,) = fitted(rug_pad.KIND, survey, "rug-slides", "rug", pad, product("q", "pad", width=2200.0, depth=1500.0))
    assert uses(one) == {"p": 1}
    assert holes(one) == 0
    assert left(survey, one, "rug-slides", "rug") == 0


def test_shifted_rugs_stay_in_the_room() -> None:
    """Every place that is tried for a rug is by the main seat and inside the walls."""
    here = site(renter(), "rug-misses-seats", "rug")
    main = seat_of(here)
    assert main is not None
    assert main.name == "sofa"
    for laid in best_laid(here, here.survey.rugs[0], 2950.0, 1970.0):
        assert 0 <= laid.from_left <= 4500 - laid.width
        assert 0 <= laid.gap <= 3600 - laid.depth
