"""What is moved for nothing: pieces in the way, heaters, beds, seats."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.remedies.kinds import center_bed, float_seating, move_heater, move_piece, take_away
from budgetfix.remedies.moves import with_chairs
from tests.inspection.rooms import couple_bedroom, couple_living, renter, stager_bedroom, stager_living
from tests.remedies.bench import altered, fields, fitted, left, severity, site


def test_the_shoe_cabinet_is_slid_out_of_the_door() -> None:
    """The hall door stops at 71 degrees: the cabinet slid along wall D, it opens wide; one person, minutes."""
    survey = renter()
    offers = fitted(move_piece.KIND, survey, "door-cannot-open", "door-hall")
    assert offers
    assert all(left(survey, one, "door-cannot-open", "door-hall") == 0 for one in offers)
    assert {change.item for one in offers for change in one.changes} == {"shoes"}
    assert (offers[0].work[0].minutes, offers[0].work[0].people, offers[0].hazards) == (12, 1, ())


def test_a_fixed_piece_stays() -> None:
    """What is screwed to the wall is not slid."""
    assert fitted(move_piece.KIND, altered(renter(), "shoes", fixed=True), "door-cannot-open", "door-hall") == ()


def test_chairs_go_with_their_table() -> None:
    """The couple's dining table is slid with its four chairs, by two people, and the chairs have room behind them."""
    survey = couple_living()
    offers = fitted(move_piece.KIND, survey, "chairs-boxed-in", "dining")
    table = next(one for one in offers if "dining" in {change.item for change in one.changes})
    assert {change.item for change in table.changes} == {"dining", "ch1", "ch2", "ch3", "ch4"}
    assert (table.work[0].people, table.work[0].minutes, table.hazards) == (2, 45, ("lifting",))
    assert left(survey, table, "chairs-boxed-in", "dining") == 0
    here = site(survey, "chairs-boxed-in", "dining")
    shoved = with_chairs(here, here.survey.furniture[5], table.changes[0])
    assert shoved == table.changes


def test_one_slide_opens_the_way_to_the_kitchen() -> None:
    """The pinch of 450 mm between sideboard and chairs goes when the table is slid."""
    survey = couple_living()
    offers = fitted(move_piece.KIND, survey, "walkway-too-narrow", "door-hall to door-kitchen")
    assert any(left(survey, one, "walkway-too-narrow", "door-hall to door-kitchen") == 0 for one in offers)


def test_the_fan_heater_is_stood_away_from_the_cloth() -> None:
    """500 mm from the curtain is too near; its new places are 910 mm (36 in) away or more, and before no door."""
    survey = renter()
    offers = fitted(move_heater.KIND, survey, "curtain-near-heater", "curtain")
    assert offers
    assert all(left(survey, one, "curtain-near-heater", "curtain") == 0 for one in offers)
    assert any("Cloth stays away from heaters" in care for care in offers[0].cares)


def test_a_panel_heater_is_not_carried_about() -> None:
    """The couple's heater hangs on the wall: only portable ones are moved."""
    assert fitted(move_heater.KIND, couple_living(), "curtain-near-heater", "curtain-front") == ()


def test_the_bed_is_slid_to_where_both_sides_are_free() -> None:
    """The stager's bed stands 10 in from wall B: slid along wall C both sides and the window are free. Two people."""
    survey = stager_bedroom()
    offers = fitted(center_bed.KIND, survey, "bed-side-tight", "bed")
    assert offers
    assert all(left(survey, one, "bed-side-tight", "bed") == 0 for one in offers)
    one = offers[0]
    moved = fields(one, "bed")["from_left"] - 254.0
    assert fields(one, "stand")["from_left"] == pytest.approx(72 * 25.4 + moved)
    assert fields(one, "picture")["from_left"] == pytest.approx(38 * 25.4 + moved)
    assert one.work[0].people == 2


def test_a_bed_that_leaves_no_room_elsewhere_stays() -> None:
    """In a room hardly wider than the bed there is nowhere to slide it to."""
    survey = altered(couple_bedroom(), "bed", width=3300.0, from_left=0.0)
    assert center_bed.KIND.fit(site(survey, "bed-side-tight", "bed")) == ()


def test_seats_are_pulled_off_the_walls() -> None:
    """All of the stager's seats stand within 3 in of a wall: one of them pulled forward is enough to let it pass."""
    survey = stager_living()
    offers = fitted(float_seating.KIND, survey, "all-against-walls", "seating group")
    assert offers
    assert all(left(survey, one, "all-against-walls", "seating group") == 0 for one in offers)


def test_facing_seats_are_brought_together() -> None:
    """Front to front is 108 in: a chair that is pulled forward comes within 8 ft (C15)."""
    survey = stager_living()
    before = severity(survey, "seats-too-far-apart", "chair-1")
    (one,) = fitted(float_seating.KIND, survey, "seats-too-far-apart", "chair-1")
    assert before > 0
    assert left(survey, one, "seats-too-far-apart", "chair-1") == Fraction(0)


def test_nothing_is_taken_away_unasked() -> None:
    """Taking away is for the user to say; as an answer to a fault it is never offered."""
    assert take_away.KIND.targets == ()
    assert take_away.KIND.fit(site(renter(), "door-cannot-open", "door-hall")) == ()
