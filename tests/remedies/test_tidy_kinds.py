"""What costs little and shows: surfaces, personal frames, heavy pictures."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.catalog.models import Catalog
from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.judging import judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds import clear_surface, neutral_prints, screw_picture
from budgetfix.room.items import Hung
from budgetfix.room.survey import Survey
from tests.inspection.rooms import renter, stager_living
from tests.remedies.bench import BRIEF, added, altered, fields, fitted, holes, left, product, uses

LISTING = {judge.rule.slug: judge for judge in judges(RULES, BRIEF.model_copy(update={"profile": "listing"}))}


def test_three_things_stay_on_a_crowded_surface() -> None:
    """Eleven on the desk: three stay, eight get a place, nothing is bought."""
    survey = altered(renter(), "desk", things=11)
    (one,) = fitted(clear_surface.KIND, survey, "surface-crowded", "desk")
    assert fields(one, "desk") == {"things": 3}
    assert left(survey, one, "surface-crowded", "desk") == 0
    assert "other 8" in one.work[0].text
    assert uses(one) == {}


def listing_site(survey: Survey, *products: Any) -> Site:
    """The personal things of a room that is to be photographed."""
    finding = judge_one(LISTING["personal-things"], Look(survey, "r"), "room", BRIEF)
    return Site(survey, "r", "room", Catalog(products=products), BRIEF, finding, LISTING["personal-things"],
                judges=LISTING)  # fmt: skip


def test_personal_frames_keep_their_places_with_neutral_prints() -> None:
    """The stager's three photographs: three prints, eight minutes each, and no frame is taken off its wall."""
    here = listing_site(stager_living(), product("print", "print", price_minor=400))
    (one,) = neutral_prints.KIND.fit(here)
    assert uses(one) == {"print": 3}
    assert here.severity(one.changes) == 0 < here.severity(())
    assert one.work[0].likely == 24
    assert not any(change.remove for change in one.changes)
    assert "Ask the owners" in one.work[0].text


def test_without_prints_the_photographs_are_left_to_the_owners() -> None:
    """Nothing is ever taken away by itself."""
    assert neutral_prints.KIND.fit(listing_site(stager_living())) == ()


def heavy(**more: Any) -> Survey:
    """Six kilograms over the renter's sofa, on strips unless said otherwise."""
    facts = {"name": "picture", "room": "r", "wall": "B", "from_left": 1900.0, "width": 1000.0, "height": 700.0,
             "bottom": 980.0, "over": "sofa", "weight": 6.0, "fixing": "strips"}  # fmt: skip
    return added(renter(), "pictures", Hung.model_validate({**facts, **more}))


@pytest.mark.parametrize("fixing", ["strips", "nail", "none"])
def test_a_heavy_picture_hangs_on_two_screws(fixing: str) -> None:
    """Two plugs a quarter in from its edges; screws for twice its weight; the hazard is gone."""
    survey = heavy(fixing=fixing)
    (one,) = fitted(
        screw_picture.KIND, survey, "heavy-over-head", "picture", product("screws", "screws", pack=Fraction(4))
    )
    assert left(survey, one, "heavy-over-head", "picture") == 0
    assert (holes(one), uses(one), screw_picture.KIND.leaves) == (2, {"screws": 2}, "plugs")
    assert "2150 mm and 2650 mm from the left corner of wall B" in one.work[0].text
    assert "carry 12 kg" in one.work[0].text
    assert any("Before drilling" in care for care in one.cares)


def test_a_hazard_needs_no_shop_for_two_screws() -> None:
    """Where no screws are sold the remedy is offered all the same."""
    (one,) = fitted(screw_picture.KIND, heavy(), "heavy-over-head", "picture")
    assert uses(one) == {}
