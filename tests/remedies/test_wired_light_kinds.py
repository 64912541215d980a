"""Pendants set, shaded, led over a hook or moved by the trade; wall lights with a plug, and level ones."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.inspection.inspect import judge_one
from budgetfix.inspection.look import Look
from budgetfix.remedies.kinds import (
    deeper_shade,
    electrician,
    pendant_cord,
    plug_in_sconces,
    rehang_sconces,
    swag_pendant,
    table_under_pendant,
)
from budgetfix.room.items import Hung, Piece, Socket
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_bedroom, couple_living, renter, stager_bedroom
from tests.remedies.bench import (
    BRIEF,
    JUDGES,
    added,
    altered,
    fields,
    fitted,
    holes,
    left,
    product,
    severity,
    uses,
    without,
)

VISIT = product("visit", "electrician visit", price_minor=15000)
HOOK = product("hook", "ceiling hook", price_minor=600)
SCONCE = product("sconce", "sconce", width=120.0, height=300.0, lead=2500.0, lumens=470.0, kelvin=2700.0)


def over(table: bool = True, **more: Any) -> Survey:
    """The couple's pendant over the middle of their dining table of 740 (at 2550 from wall B, 5100 from wall A)."""
    facts = {"wall": "A", "from_left": 2550.0, "gap": 5100.0, "bottom": 1555.0, "over": "dining" if table else ""}
    return altered(couple_living(), "pendant", **{**facts, **more})


def test_a_pendant_is_taken_up_or_let_down_at_its_grip() -> None:
    """Over a table of 740: 815 above it, 1555 above the floor (10 mm of ceiling above 8 ft add 2)."""
    for high in (1400.0, 1820.0):
        survey = over(bottom=high)
        (one,) = fitted(pendant_cord.KIND, survey, "pendant-off-height", "pendant")
        assert fields(one, "pendant") == {"bottom": 1555.0}
        assert left(survey, one, "pendant-off-height", "pendant") == 0
        assert "815 mm above the dining" in one.work[0].text
        assert (uses(one), holes(one)) == ({}, 0)


def test_a_high_ceiling_lifts_the_pendant() -> None:
    """Three feet more of ceiling lift it by 9 in: 75 mm for each 305."""
    survey = over(bottom=1500.0)
    rooms = tuple(one.model_copy(update={"ceiling": 2440.0 + 915.0}) for one in survey.rooms)
    tall = survey.model_copy(update={"rooms": rooms})
    (one,) = fitted(pendant_cord.KIND, tall, "pendant-off-height", "pendant")
    assert fields(one, "pendant") == {"bottom": 1780.0}


def test_a_cord_that_is_too_short_is_the_electricians() -> None:
    """345 mm down are more than a grip hides: the free kind stays away, the trade is asked."""
    survey = over(bottom=1900.0)
    assert fitted(pendant_cord.KIND, survey, "pendant-off-height", "pendant") == ()
    (one,) = fitted(electrician.KIND, survey, "pendant-off-height", "pendant", VISIT)
    assert left(survey, one, "pendant-off-height", "pendant") == 0
    assert (one.work[0].low, one.work[0].likely, one.work[0].high, one.work[0].phase) == (15, 30, 60, 4)
    assert (one.hazards, electrician.KIND.leaves, uses(one)) == (("wire",), "asks leave", {"visit": 1})
    assert any("licensed electrician" in care for care in one.cares)
    near = over(bottom=1820.0)
    assert fitted(electrician.KIND, near, "pendant-off-height", "pendant", VISIT) == ()


def test_a_pendant_over_a_way_goes_above_heads() -> None:
    """No table below: 2085 above the floor, above the 80 in (2030 mm) of headroom (published value C9)."""
    survey = over(table=False, bottom=1900.0)
    (one,) = fitted(pendant_cord.KIND, survey, "pendant-off-height", "pendant")
    assert fields(one, "pendant") == {"bottom": 2085.0}
    assert left(survey, one, "pendant-off-height", "pendant") == 0


@pytest.mark.parametrize(("deep", "offered"), [(200.0, 0), (350.0, 1), (150.0, 0)])
def test_a_deeper_shade_comes_nearer_to_the_table(deep: float, offered: int) -> None:
    """A shade of 350 in place of the usual 200 brings the edge 150 lower; one of 200 or less does nothing."""
    survey = over(bottom=1760.0)
    found = fitted(deeper_shade.KIND, survey, "pendant-off-height", "pendant", product("s", "shade", height=deep))
    assert len(found) == offered
    for one in found:
        assert fields(one, "pendant") == {"bottom": 1610.0}
        assert left(survey, one, "pendant-off-height", "pendant") == 0


def test_a_pendant_too_low_gets_no_deeper_shade() -> None:
    """It would hang lower still."""
    survey = over(bottom=1300.0)
    assert fitted(deeper_shade.KIND, survey, "pendant-off-height", "pendant", product("s", "shade", height=400.0)) == ()


def test_a_hook_leads_a_low_pendant_to_the_middle() -> None:
    """300 aside and 250 too low: over a hook it comes 300 up and hangs right; a hole in the ceiling asks leave."""
    survey = over(from_left=2250.0, bottom=1300.0)
    (one,) = fitted(swag_pendant.KIND, survey, "pendant-off-center", "pendant", HOOK)
    for rule in ("pendant-off-center", "pendant-off-height"):
        assert left(survey, one, rule, "pendant") == 0
    assert fields(one, "pendant")["bottom"] == 1600.0
    assert (holes(one), swag_pendant.KIND.leaves, uses(one)) == (1, "asks leave", {"hook": 1})
    assert "hook 2550 mm from the left corner of wall A and 5100 mm off it" in one.work[0].text


def test_a_hook_does_not_pull_a_pendant_out_of_reach() -> None:
    """Too high already and 800 aside: it would end under the ceiling; and 1000 aside is too far for a hook."""
    for aside, bottom in ((800.0, 1900.0), (1000.0, 1300.0)):
        survey = over(from_left=2550.0 - aside, bottom=bottom)
        assert fitted(swag_pendant.KIND, survey, "pendant-off-center", "pendant", HOOK) == ()


def test_the_electrician_moves_two_pendants_together() -> None:
    """Two over one table: their middle goes over the table's middle, their distance stays."""
    survey = over(from_left=2000.0, gap=5100.0)
    light = survey.named["pendant"][1]
    twin = type(light).model_validate({**dict(light), "name": "pendant two", "from_left": 2500.0})
    (one,) = fitted(electrician.KIND, added(survey, "lights", twin), "pendant-off-center", "pendant", VISIT)
    assert [fields(one, name)["from_left"] for name in ("pendant", "pendant two")] == [2300.0, 2800.0]
    assert left(added(survey, "lights", twin), one, "pendant-off-center", "pendant") == 0


def test_a_wired_light_is_added_only_where_no_lamp_with_a_plug_fits() -> None:
    """The renter's room without a socket gets a wall light by the trade; with a socket a lamp is the answer."""
    light = product("wired", "wall light", lumens=806.0)
    lamp = product("lamp", "floor lamp", width=280.0, lead=2000.0, lumens=806.0)
    survey = renter()
    (one,) = fitted(electrician.KIND, survey, "one-light-only", "room", VISIT, light, lamp)
    assert uses(one) == {"visit": 1, "wired": 1}
    assert left(survey, one, "one-light-only", "room") < severity(survey, "one-light-only", "room")
    plugged = added(survey, "sockets", Socket(name="s", room="r", wall="B", from_left=1150.0))
    assert fitted(electrician.KIND, plugged, "one-light-only", "room", VISIT, light, lamp) == ()
    assert fitted(electrician.KIND, survey, "one-light-only", "room", light) == ()


def bedside() -> Survey:
    """The stager's bed with sockets left and right of it."""
    sockets = (Socket(name=f"s{at}", room="r", wall="C", from_left=at * 25.4) for at in (8.0, 100.0))
    return added(stager_bedroom(), "sockets", *sockets)


def test_a_pair_beside_the_bed() -> None:
    """Both sleepers get a light with a switch, 22 in above a mattress of 25 in: 47 in above the floor, four plugs."""
    survey = bedside()
    offers = fitted(plug_in_sconces.KIND, survey, "bedroom-light-not-at-bed", "bed", SCONCE)
    pair = next(one for one in offers if len(one.changes) == 2)
    assert left(survey, pair, "bedroom-light-not-at-bed", "bed") == 0
    assert (holes(pair), uses(pair), plug_in_sconces.KIND.leaves) == (4, {"sconce": 2}, "plugs")
    assert [getattr(change.add, "bottom", None) for change in pair.changes] == [47 * 25.4] * 2
    assert (pair.work[0].low, pair.work[0].likely, pair.work[0].high) == (45, 75, 120)
    assert "plugged in at s8" in pair.work[0].text


def test_what_is_sold_as_a_pair_is_bought_once() -> None:
    """One unit for two lights."""
    pair = SCONCE.model_copy(update={"unit": "pair"})
    offers = fitted(plug_in_sconces.KIND, bedside(), "bedroom-light-not-at-bed", "bed", pair)
    assert {tuple(uses(one).items()) for one in offers if len(one.changes) == 2} == {(("sconce", 1),)}


def test_a_lead_too_short_for_the_drop_and_the_wall_is_not_offered() -> None:
    """From 47 in down to the socket and along: a lead of 1 m reaches neither."""
    short = SCONCE.model_copy(update={"lead": 1000.0})
    assert fitted(plug_in_sconces.KIND, bedside(), "bedroom-light-not-at-bed", "bed", short) == ()
    assert fitted(plug_in_sconces.KIND, stager_bedroom(), "bedroom-light-not-at-bed", "bed", SCONCE) == ()


def test_one_beside_a_seat_is_fit_to_read_by() -> None:
    """Lower edge 1065 above the floor beside the renter's sofa: reading light, and a second switch."""
    survey = added(altered(renter(), "armchair", reading=False), "sockets",
                   Socket(name="s", room="r", wall="B", from_left=1150.0))  # fmt: skip
    offers = fitted(plug_in_sconces.KIND, survey, "seat-dim-for-reading", "sofa", SCONCE)
    assert len(offers[0].changes) == 1
    assert left(survey, offers[0], "seat-dim-for-reading", "sofa") == 0
    assert left(survey, offers[0], "one-light-only", "room") < severity(survey, "one-light-only", "room")
    assert (offers[0].work[0].likely, holes(offers[0])) == (45, 2)


def test_no_light_is_screwed_over_a_picture() -> None:
    """A picture on either side of the bed leaves no free wall for it."""
    frames = (
        Hung(name=name, room="r", wall="C", from_left=at, width=300.0, height=600.0, bottom=1000.0)
        for name, at in (("one", 0.0), ("two", 1850.0))
    )
    survey = added(bedside(), "pictures", *frames)
    assert fitted(plug_in_sconces.KIND, survey, "bedroom-light-not-at-bed", "bed", SCONCE) == ()


def sconces(survey: Survey, wall: str, *spots: tuple[float, float], **more: Any) -> Survey:
    """Wall lights of 120 by 300, each at (from_left, bottom)."""
    lamps = (
        Hung.model_validate({"name": f"w{at}", "room": "r", "what": "sconce", "wall": wall, "from_left": left,
                             "width": 120.0, "height": 300.0, "bottom": up, **more})
        for at, (left, up) in enumerate(spots, 1)
    )  # fmt: skip
    return added(survey, "pictures", *lamps)


def test_a_pair_is_hung_level_and_even_about_its_piece() -> None:
    """Over the renter's sofa (middle at 2350 from the left corner of B): 1600 to the middles, 2000 apart."""
    survey = sconces(renter(), "B", (1200.0, 1500.0), (3200.0, 1400.0), over="sofa")
    (one,) = fitted(rehang_sconces.KIND, survey, "sconces-uneven", "wall B")
    assert [fields(one, name) for name in ("w1", "w2")] == [
        {"bottom": 1450.0, "from_left": 1290.0}, {"bottom": 1450.0, "from_left": 3290.0},
    ]  # fmt: skip
    assert left(survey, one, "sconces-uneven", "wall B") == 0
    assert (holes(one), uses(one), rehang_sconces.KIND.leaves) == (4, {}, "plugs")


def test_a_wall_light_beside_a_bed_goes_by_the_mattress() -> None:
    """22 in (560 mm) above a mattress of 600: 1160 above the floor."""
    survey = sconces(without(couple_bedroom(), "stand-1"), "B", (1900.0, 1500.0))
    (one,) = fitted(rehang_sconces.KIND, survey, "sconce-off-height", "w1")
    assert fields(one, "w1")["bottom"] == 1160.0
    assert left(survey, one, "sconce-off-height", "w1") == 0
    assert holes(one) == 2


def test_one_slide_of_the_table_cures_its_pendant_the_chairs_and_the_way() -> None:
    """The couple's trap: 500 to wall D and 200 to the sofa, its chairs with it, for nothing."""
    survey = altered(couple_living(), "pendant", wall="A", from_left=2050.0, gap=4900.0)
    (one,) = fitted(table_under_pendant.KIND, survey, "pendant-off-center", "pendant")
    assert left(survey, one, "pendant-off-center", "pendant") == 0
    assert {change.item for change in one.changes} == {"dining", "ch1", "ch2", "ch3", "ch4"}
    before, after = (Look(each, "r") for each in (survey, survey.changed(one.changes)))
    for rule in ("walkway-too-narrow", "chairs-boxed-in"):
        sums = [
            sum(found.severity for name in JUDGES[rule].rule.subjects(look)
                if (found := judge_one(JUDGES[rule], look, name, BRIEF)) is not None)
            for look in (before, after)
        ]  # fmt: skip
        assert sums[1] == 0 < sums[0], rule
    assert (uses(one), one.work[0].likely, one.work[0].people) == ({}, 25, 2)


def test_a_table_against_a_wall_comes_as_near_as_it_can() -> None:
    """A cabinet stands where the table would have to be: it stops before it."""
    survey = altered(couple_living(), "pendant", wall="A", from_left=2050.0, gap=4900.0)
    block = Piece(name="block", room="r", what="cabinet", wall="D", from_left=500.0, gap=1400.0, width=1400.0,
                  depth=400.0, height=900.0)  # fmt: skip
    blocked = added(survey, "furniture", block)
    (one,) = fitted(table_under_pendant.KIND, blocked, "pendant-off-center", "pendant")
    now = left(blocked, one, "pendant-off-center", "pendant")
    assert 0 < now < severity(blocked, "pendant-off-center", "pendant")
