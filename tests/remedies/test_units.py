"""What moves together, and where it stands after it was carried: planned rooms and the three demo rooms."""

from __future__ import annotations

import math

import pytest

from budgetfix.remedies.kind import Site
from budgetfix.remedies.units import Carry, Unit, carried, movable, seating_unit, units
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint, middle
from budgetfix.room.seating import eye, group
from budgetfix.room.survey import Survey
from tests.remedies.bench import JUDGES, altered
from tests.scenarios import job


def site(name: str, room: str) -> Site:
    """A room of a demo job, as kinds see it."""
    found = job(name)
    assert found.survey is not None
    return Site(found.survey, room, "room", found.catalog, found.brief, judges=JUDGES)


def to_wall(at: Site, unit: Unit, wall: str, from_left: float) -> Survey:
    """The survey with the unit carried to another wall. It must find its place there."""
    lead = unit.lead
    carry = Carry(at.lines[lead.wall], lead.from_left, lead.gap, at.lines[wall], from_left, lead.gap)
    changes = carried(at, unit, carry)
    assert changes is not None
    return at.survey.changed(changes)


def test_the_renters_group_is_sofa_armchair_table_rug_bench_and_screen() -> None:
    """And the picture over the sofa; the bookcase, the desk and the shoe cabinet are no part of it."""
    found = seating_unit(site("renter", "living room"))
    assert found is not None
    assert found.lead.name == "sofa"
    assert found.names == {"sofa", "armchair", "coffee table", "screen bench", "screen", "rug", "picture over the sofa"}


def test_chairs_pictures_and_lamps_go_with_their_piece() -> None:
    """The dining table has its four chairs, the sideboard its three pictures, the bed its stand and picture."""
    at = site("couple", "living-dining")
    found = {unit.lead.name: unit.names for unit in units(at)}
    assert found["dining table"] == {"dining table", *(f"dining chair {number}" for number in range(1, 5))}
    assert found["sideboard"] == {"sideboard", *(f"picture over the sideboard {number}" for number in range(1, 4))}
    bed = {unit.lead.name: unit.names for unit in units(site("couple", "bedroom"))}["bed"]
    assert {"bed", "bedside table", "picture over the bed"} <= bed


def test_heaters_and_what_is_fixed_stay() -> None:
    """A radiator is part of the house; a bookcase that is screwed to the wall is not carried about."""
    at = site("renter", "living room")
    assert "bookcase" in {piece.name for piece in movable(at)}
    fixed = Site(altered(at.survey, "bookcase", fixed=True), "living room", "room", at.catalog, at.brief)
    assert not {"bookcase", "radiator"} & {piece.name for piece in movable(fixed)}


@pytest.mark.parametrize("wall", ["A", "C", "D"])
def test_a_carried_unit_keeps_its_shape(wall: str) -> None:
    """The couple's table and chairs, turned to any wall: each distance between two of them is what it was."""
    at = site("couple", "living-dining")
    unit = next(one for one in units(at) if one.lead.name == "dining table")
    after = to_wall(at, unit, wall, 1000.0)
    names = sorted(unit.names)
    for one in names:
        for other in names:
            before, then = (
                math.dist(*(middle(_floor(survey, name), at.lines) for name in (one, other)))
                for survey in (at.survey, after)
            )
            assert then == pytest.approx(before, abs=6.0), (one, other)


def _floor(survey: Survey, name: str) -> Piece:
    item = survey.named[name][1]
    assert isinstance(item, Piece)
    return item


def test_a_group_that_is_turned_still_looks_at_its_screen() -> None:
    """The renter's group on wall D: the bench stands against wall B opposite, and the screen is on it."""
    at = site("renter", "living room")
    unit = seating_unit(at)
    assert unit is not None
    after = to_wall(at, unit, "D", 1200.0)
    bench, screen = _floor(after, "screen bench"), after.named["screen"][1]
    assert (bench.wall, bench.gap) == ("B", 0.0)
    offset = getattr(at.survey.named["screen"][1], "from_left", 0.0) - _floor(at.survey, "screen bench").from_left
    assert getattr(screen, "wall", "") == "B"
    assert getattr(screen, "from_left", 0.0) == pytest.approx(bench.from_left + offset)
    seats = group(after.furniture, at.lines)
    assert {seat.name for seat in seats} == {"armchair", "sofa"}
    x, _ = eye(_floor(after, "sofa"), at.lines)
    assert x > footprint(bench, at.lines).bounds[2]


def test_a_picture_stays_where_its_piece_leaves_the_wall() -> None:
    """The couple's sideboard pulled 600 mm into the room: nothing can hang over it there."""
    at = site("couple", "living-dining")
    unit = next(one for one in units(at) if one.lead.name == "sideboard")
    lead, line = unit.lead, at.lines[unit.lead.wall]
    changes = carried(at, unit, Carry(line, lead.from_left, lead.gap, line, lead.from_left, 600.0))
    assert changes is not None
    assert {change.item for change in changes} == {"sideboard"}


def test_what_finds_no_wall_is_not_carried() -> None:
    """A table that would stick out through the next wall has no place."""
    at = site("couple", "living-dining")
    unit = next(one for one in units(at) if one.lead.name == "dining table")
    line = at.lines[unit.lead.wall]
    assert carried(at, unit, Carry(line, unit.lead.from_left, unit.lead.gap, line, line.length - 300, 0.0)) is None


def test_a_floor_lamp_beside_the_seats_goes_along_and_forgets_its_socket() -> None:
    """Which socket it then reaches is for the rule to say."""
    at = site("couple", "living-dining")
    unit = seating_unit(at)
    assert unit is not None
    lead = unit.lead
    carry = Carry(at.lines[lead.wall], lead.from_left, lead.gap, at.lines[lead.wall], lead.from_left - 200, lead.gap)
    changes = carried(at, unit, carry)
    assert changes is not None
    moved = {change.item: dict(change.set) for change in changes}
    assert "floor lamp" in moved
    assert moved["floor lamp"].get("socket", "") == ""
