"""Other layouts of the furniture that is there: searched on the real geometry, and honest where there is none."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest

from budgetfix.catalog.models import Catalog
from budgetfix.inspection.guard import WORSE
from budgetfix.inspection.inspect import Seen, look_at
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.fit import candidates
from budgetfix.remedies.kind import Site
from budgetfix.remedies.kinds.rearrange import KIND
from budgetfix.remedies.layouts import WAYS, Tried, searched
from budgetfix.room.items import Opening, Piece, Socket
from budgetfix.room.overlaps import in_doorways, overlaps
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall
from tests.remedies.bench import BRIEF, JUDGES, altered, without
from tests.scenarios import job

ROOMS = (("renter", "living room"), ("couple", "living-dining"), ("couple", "bedroom"), ("stager", "living room"))


@cache
def site(name: str, room: str) -> Site:
    """A room of a demo job with the rules that its brief switches on."""
    found = job(name)
    assert found.survey is not None
    judged = {judge.rule.slug: judge for judge in judges(RULES, found.brief)}
    return Site(found.survey, room, "room", found.catalog, found.brief, judges=judged)


@cache
def tried(name: str, room: str) -> Tried:
    """The layouts of a demo room, searched once."""
    return searched(site(name, room))


def whole(at: Site, survey: Survey) -> Seen:
    """All findings of the room, by an inspection from scratch."""
    found = [look_at(block, survey, at.brief) for block in blocks((at.room,), tuple(at.judges.values()))]
    return Seen(tuple(finding for seen in found for finding in seen.findings), ())


def ways(at: Site, seen: Seen) -> Fraction:
    """Weights times severities of what stands in the way."""
    found = [one for one in seen.findings if one.rule in WAYS]
    return sum((one.severity * at.judges[one.rule].weight for one in found), Fraction(0))


@pytest.mark.parametrize(("name", "room"), ROOMS)
def test_a_layout_opens_the_ways_and_breaks_nothing(name: str, room: str) -> None:
    """Inspected from scratch: less in all, the ways no worse, nothing much worse, nothing on one spot."""
    at = site(name, room)
    before = whole(at, at.survey)
    was = {one.id: one.severity for one in before.findings}
    for layout in tried(name, room).layouts:
        after = at.survey.changed(layout.changes)
        now = whole(at, after)
        assert (now.hazards, now.points) == (layout.hazards, layout.points) < (before.hazards, before.points)
        assert ways(at, now) == layout.ways <= ways(at, before)
        worse = [one for one in now.findings if one.severity > was.get(one.id, Fraction(0)) + WORSE]
        assert {one.rule for one in worse} <= set(at.brief.may_worsen), layout.stands
        assert set(overlaps(after, room)) <= set(overlaps(at.survey, room))
        assert set(in_doorways(after, room)) <= set(in_doorways(at.survey, room))


@pytest.mark.parametrize(("name", "room"), [ROOMS[0], ROOMS[1]])
def test_the_renters_and_the_couples_ways_can_be_opened(name: str, room: str) -> None:
    """A layout is found that takes away more than two thirds of what stands in the way there."""
    at = site(name, room)
    assert min(one.ways for one in tried(name, room).layouts) * 3 < ways(at, whole(at, at.survey))


@pytest.mark.parametrize(("name", "room"), ROOMS)
def test_at_most_five_that_differ(name: str, room: str) -> None:
    """No layout holds another one and moves more besides."""
    found = [frozenset(one.stands) for one in tried(name, room).layouts]
    assert len(found) <= 5
    assert not any(one <= other for place, one in enumerate(found) for other in found[place + 1 :])


def test_the_couples_bed_has_no_better_place() -> None:
    """Every layout of the bedroom was looked at, and none is offered: the plan says so (`test_couple.py`)."""
    assert tried("couple", "bedroom").looked_at > 20
    assert tried("couple", "bedroom").layouts == ()


def test_one_group_that_costs_nothing() -> None:
    """The couple's layouts: pick one, no product, no money, two people, every edge told with a tape."""
    offers = KIND.fit(site("couple", "living-dining"))
    assert len(offers) == len(tried("couple", "living-dining").layouts) > 1
    assert {one.pick_one for one in offers} == {"layout of the living-dining"}
    for one in offers:
        assert (one.uses, one.cost_minor, one.work[0].people) == ((), 0, 2)
        assert "from the left corner of wall" in one.work[0].text
        assert one.name.startswith(("Rearrange: ", "Move the ", "Pull the "))


def small(*pieces: Piece) -> Survey:
    """A study of 3 x 3 m: the door is in wall A on the left, a window in wall C, a desk and a bookcase as given."""
    return Survey(
        household=Household(unit="mm"),
        rooms=(RoomFacts(room="r", kind="study", ceiling=2500.0),),
        walls=tuple(Wall(room="r", wall=letter, length=3000.0) for letter in "ABCD"),
        openings=(
            Opening(name="door", room="r", wall="A", from_left=100.0, width=800.0, hinge="left"),
            Opening(name="window", room="r", wall="C", what="window", from_left=900.0, width=1200.0, bottom=900.0),
        ),
        furniture=pieces,
        sockets=(Socket(name="socket", room="r", wall="B", from_left=1500.0),),
    )


def piece(name: str, what: str, wall: str, from_left: float, width: float, depth: float, height: float) -> Piece:
    """A piece against a wall."""
    return Piece(name=name, room="r", what=what, wall=wall, from_left=from_left, width=width, depth=depth,
                 height=height)  # fmt: skip


BOOKCASE = piece("bookcase", "bookcase", "D", 2100.0, 800.0, 350.0, 2000.0)


def room_site(survey: Survey) -> Site:
    """The study, as kinds see it."""
    return Site(survey, "r", "room", Catalog(), BRIEF, judges=JUDGES)


def test_what_stops_the_door_goes_to_a_wall_where_it_fits() -> None:
    """The bookcase stands where the door's leaf swings; at another wall the door opens, and no window is covered."""
    at = room_site(small(BOOKCASE))
    found = searched(at).layouts
    assert found
    for layout in found:
        after = at.survey.changed(layout.changes).named["bookcase"][1]
        assert isinstance(after, Piece)
        assert after.wall != "D"
        beside = after.wall != "C" or after.from_left + after.width <= 900.0 or after.from_left >= 2100.0
        assert beside, "a tall piece before the window"


def test_where_nothing_is_in_the_way_nothing_is_moved() -> None:
    """The same room with the bookcase in the far corner: no layout is offered."""
    free = altered(small(BOOKCASE), "bookcase", from_left=0.0)
    assert searched(room_site(free)).layouts == ()
    assert not [one for one in candidates(free, Catalog(), BRIEF, whole(room_site(free), free).findings)
                if one.kind == "rearrange" and one.own]  # fmt: skip


def test_a_screen_goes_only_where_a_socket_is_near() -> None:
    """Without sockets at the other walls the renter's screen stays where it is; without a survey of them it may go."""
    at = site("renter", "living room")
    others = [one.name for one in at.survey.sockets if one.wall != "D"]
    alone = Site(without(at.survey, *others), at.room, "room", at.catalog, at.brief, judges=at.judges)
    moved = {change.item for layout in searched(alone).layouts for change in layout.changes}
    assert "screen" not in moved


def test_the_same_room_gives_the_same_layouts() -> None:
    """Searched twice: the same changes in the same order."""
    at = room_site(small(BOOKCASE, piece("desk", "desk", "B", 200.0, 1200.0, 600.0, 740.0)))
    assert searched(at) == searched(at)
