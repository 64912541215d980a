"""Lamps: placed, moved, made brighter, made alike; leads that reach and cross no way."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kinds import brighter_lamps, floor_lamp, move_lamp, table_lamp, warm_lamps
from budgetfix.remedies.lamps import socket_for
from budgetfix.remedies.products import bulb_for
from budgetfix.room.items import Light, Piece, Socket
from budgetfix.room.survey import Survey
from tests.inspection.rooms import couple_bedroom, couple_living, renter
from tests.remedies.bench import added, fitted, left, product, severity, site, uses, without

LAMP = product("lamp", "floor lamp", width=280.0, height=1450.0, lead=2000.0, lumens=806.0, kelvin=2700.0)
TABLE = product("small", "table lamp", width=250.0, height=520.0, lead=1600.0, lumens=806.0, kelvin=2700.0)
BULBS = tuple(
    product(f"b{lumens}", "lamp", lumens=float(lumens), kelvin=2700.0, price_minor=lumens)
    for lumens in (470, 806, 1055, 1521, 2500)
)


def plugged(survey: Survey, *sockets: tuple[str, float]) -> Survey:
    """The room with sockets: (wall, from its left corner)."""
    made = (Socket(name=f"{wall} {at:.0f}", room="r", wall=wall, from_left=at) for wall, at in sockets)
    return added(survey, "sockets", *made)


def lamp_of(offer: Candidate) -> Light:
    """The first light that an offer adds."""
    lamp = offer.changes[0].add
    assert isinstance(lamp, Light)
    return lamp


def test_a_floor_lamp_stands_by_the_reading_chair() -> None:
    """The single socket half a metre behind the armchair makes it work (C 2600); the page is bright."""
    survey = plugged(renter(), ("C", 2600.0))
    offers = fitted(floor_lamp.KIND, survey, "seat-dim-for-reading", "armchair", LAMP)
    assert left(survey, offers[0], "seat-dim-for-reading", "armchair") == 0
    assert lamp_of(offers[0]).socket == "C 2600"
    assert "plug it in at C 2600" in offers[0].work[0].text


def test_no_socket_within_the_lead_no_lamp() -> None:
    """A lead of 2 m does not reach the far wall."""
    assert fitted(floor_lamp.KIND, renter(), "seat-dim-for-reading", "armchair", LAMP) == ()
    far = plugged(renter(), ("A", 200.0))
    assert fitted(floor_lamp.KIND, far, "seat-dim-for-reading", "armchair", LAMP) == ()


def test_a_lead_never_crosses_the_way_between_two_doors() -> None:
    """From beside the way the lead would cross it, from hall to kitchen (the renter's trap e)."""
    here = site(plugged(renter(), ("A", 1400.0)), "one-light-only", "room")
    assert socket_for(here, (2600.0, 600.0), 2000.0) == "A 1400"
    assert socket_for(here, (2600.0, 2500.0), 5000.0) is None


def test_a_lamp_without_its_bulb_takes_one() -> None:
    """Sold without: the cheapest bulb that one can read by comes along."""
    bare = product("bare", "floor lamp", width=280.0, height=1450.0, lead=2000.0)
    survey = plugged(renter(), ("C", 2600.0))
    offers = fitted(floor_lamp.KIND, survey, "seat-dim-for-reading", "armchair", bare, *BULBS)
    plain = next(one for one in offers if "~alike" not in one.id)
    assert uses(plain) == {"bare": 1, "b470": 1}
    assert lamp_of(plain).lumens == 470.0
    assert bulb_for(site(survey, "one-light-only", "room", LAMP, *BULBS), LAMP) is None


def test_a_table_lamp_stands_on_the_desk() -> None:
    """A third light that is switched apart; not on the low table, and not without a socket."""
    survey = plugged(renter(), ("A", 2000.0))
    (one,) = fitted(table_lamp.KIND, survey, "one-light-only", "room", TABLE)
    assert lamp_of(one).on == "desk"
    assert left(survey, one, "one-light-only", "room") < severity(survey, "one-light-only", "room")
    assert fitted(table_lamp.KIND, renter(), "one-light-only", "room", TABLE) == ()


def test_both_sides_of_the_bed_get_a_lamp() -> None:
    """Two nightstands, two lamps in one candidate; one lamp alone leaves one sleeper in the dark."""
    survey = couple_bedroom()
    stand = survey.named["stand-1"][1]
    assert isinstance(stand, Piece)
    other = Piece.model_validate({**dict(stand), "name": "stand-2", "wall": "B", "from_left": 3650.0, "width": 100.0})
    survey = without(survey, "wall light 1", "wall light 2")
    survey = plugged(added(survey, "furniture", other), ("B", 1450.0), ("B", 3700.0))
    offers = fitted(table_lamp.KIND, survey, "bedroom-light-not-at-bed", "bed", TABLE)
    assert uses(offers[0]) == {"small": 2}
    assert left(survey, offers[0], "bedroom-light-not-at-bed", "bed") == 0


def test_the_couples_lamp_moves_to_the_other_end_of_the_sofa() -> None:
    """Its lead crosses the way from the hall to the kitchen: at the other end, at socket D 3000, it does not."""
    survey = plugged(couple_living(), ("D", 3000.0), ("B", 3300.0))
    offers = fitted(move_lamp.KIND, survey, "cable-across-route", "floor lamp")
    assert offers
    assert uses(offers[0]) == {}
    assert left(survey, offers[0], "cable-across-route", "floor lamp") == 0
    assert left(survey, offers[0], "lead-too-short", "floor lamp") == 0


def test_a_lamp_that_no_place_helps_stays() -> None:
    """No socket on the other side: nothing is offered."""
    survey = plugged(couple_living(), ("A", 100.0))
    assert fitted(move_lamp.KIND, survey, "cable-across-route", "floor lamp") == ()


def test_the_smallest_lamp_that_is_enough_is_offered() -> None:
    """16.2 m2 at 120 lm/m2 ask for 1944 lm: 2500 cures, and the next smaller one is offered beside it."""
    survey = renter()
    offers = fitted(brighter_lamps.KIND, survey, "room-dim", "room", *BULBS)
    assert [uses(one) for one in offers] == [{"b1521": 1}, {"b2500": 1}]
    assert [left(survey, one, "room-dim", "room") == 0 for one in offers] == [False, True]
    assert any("Switch off" in care for care in offers[0].cares)


def test_a_lamp_that_is_hardly_brighter_is_not_offered() -> None:
    """1055 lm in place of 1000 would not be seen."""
    assert fitted(brighter_lamps.KIND, renter(), "room-dim", "room", BULBS[0], BULBS[1], BULBS[2]) == ()


@pytest.mark.parametrize(("kelvin", "offered"), [(2700.0, True), (4000.0, False)])
def test_all_lamps_get_one_color(kelvin: float, offered: bool) -> None:
    """The couple's one lamp of 4000 K is changed for a warm one at least as bright; cold ones do not help."""
    survey = couple_living()
    sold = product("warm", "lamp", lumens=470.0, kelvin=kelvin)
    offers = fitted(warm_lamps.KIND, survey, "lamp-colors-mixed", "room", sold)
    assert bool(offers) is offered
    for one in offers:
        assert uses(one) == {"warm": 1}
        assert left(survey, one, "lamp-colors-mixed", "room") == Fraction(0)


def test_a_new_lamp_brings_the_others_to_its_white() -> None:
    """The renter's ceiling light is cold: the lamp comes alone, or with a warm bulb for the ceiling too."""
    survey = plugged(renter(), ("C", 2600.0))
    offers = fitted(floor_lamp.KIND, survey, "seat-dim-for-reading", "armchair", LAMP, *BULBS)
    alike, alone = offers[:2]
    assert (uses(alone), uses(alike)) == ({"lamp": 1}, {"lamp": 1, "b1055": 1})
    assert left(survey, alone, "lamp-colors-mixed", "room") > 0
    assert left(survey, alike, "lamp-colors-mixed", "room") == 0
    assert (alone.work[0].minutes, alike.work[0].minutes, alike.hazards) == (24, 30, ("cord", "lamp", "ladder"))
