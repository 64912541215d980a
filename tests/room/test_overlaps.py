"""Two things on one spot of floor or wall: what counts, and what may share a place."""

from __future__ import annotations

from typing import Any

import pytest
from shapely.affinity import translate
from shapely.geometry import Polygon

from budgetfix.room.items import Hung, Light, Opening, Piece
from budgetfix.room.overlaps import _share, covers_opening, hides, hung_overlap, in_doorways, overlaps, pieces_overlap
from budgetfix.room.places import wall_lines
from budgetfix.room.survey import RoomFacts, Survey, Wall
from tests.inspection.rooms import couple_bedroom, couple_living, renter, stager_bedroom, stager_living

SIDES = dict(zip("ABCD", (4000.0, 5000.0, 4000.0, 5000.0), strict=True))


def piece(name: str, wall: str, from_left: float, gap: float, **more: Any) -> Piece:
    """A box of 800 x 400, 900 high, unless said otherwise."""
    size = {"what": "cabinet", "width": 800.0, "depth": 400.0, "height": 900.0}
    return Piece.model_validate({"name": name, "wall": wall, "from_left": from_left, "gap": gap, **size, **more})


def frame(name: str, from_left: float, bottom: float, **more: Any) -> Hung:
    """A frame of 500 x 700 on wall A."""
    size = {"wall": "A", "width": 500.0, "height": 700.0}
    return Hung.model_validate({"name": name, "from_left": from_left, "bottom": bottom, **size, **more})


def in_room(*things: Piece | Hung | Opening | Light) -> Survey:
    """A room of 4 x 5 m with these things."""
    return Survey(
        rooms=(RoomFacts(),),
        walls=tuple(Wall(wall=letter, length=length) for letter, length in SIDES.items()),
        furniture=tuple(one for one in things if isinstance(one, Piece)),
        pictures=tuple(one for one in things if isinstance(one, Hung)),
        openings=tuple(one for one in things if isinstance(one, Opening)),
        lights=tuple(one for one in things if isinstance(one, Light)),
    )


def found(*things: Piece | Hung | Opening | Light) -> tuple[tuple[str, str], ...]:
    """The pairs that overlap in a room of 4 x 5 m."""
    return overlaps(in_room(*things), "")


@pytest.mark.parametrize("survey", [renter, stager_living, stager_bedroom, couple_living, couple_bedroom])
def test_rooms_as_people_live_in_them_have_no_overlap(survey: Any) -> None:
    """Nothing in the invented rooms stands on one spot with something else."""
    assert overlaps(survey(), "r") == ()


def test_two_pieces_on_one_spot_are_named_in_order() -> None:
    """A cabinet pushed half into its neighbour is found, the smaller name first."""
    assert found(piece("shelf", "A", 1000, 0), piece("box", "A", 1700, 0)) == (("box", "shelf"),)


def test_pieces_of_two_walls_meet_in_the_corner() -> None:
    """At the corner of A and B one piece of each wall cannot both stand against it."""
    assert found(piece("a", "A", 3200, 0), piece("b", "B", 0, 0)) == (("a", "b"),)
    assert found(piece("a", "A", 2800, 0), piece("b", "B", 0, 0)) == ()


@pytest.mark.parametrize(("apart", "overlapping"), [(-2.0, True), (-1.0, False), (0.0, False)])
def test_touching_within_a_millimetre_is_no_overlap(apart: float, overlapping: bool) -> None:
    """Two pieces side by side: 2 mm into each other is one spot, 1 mm is the tape's business."""
    assert bool(found(piece("a", "A", 1000, 0), piece("b", "A", 1800 + apart, 0))) is overlapping


def test_a_tucked_chair_shares_its_tables_floor() -> None:
    """A chair pushed in belongs to its table; pushed in at another table it does not."""
    table = piece("table", "A", 1000, 1000)
    assert found(table, piece("chair", "A", 1200, 1200, width=400.0, at="table", tucked=True)) == ()
    assert found(table, piece("chair", "A", 1200, 1200, width=400.0, at="desk", tucked=True)) == (("chair", "table"),)


def test_what_hangs_leaves_the_floor_free() -> None:
    """A shelf unit on the wall may hang over a cabinet."""
    assert found(piece("a", "A", 1000, 0), piece("up", "A", 1000, 0, hangs=True)) == ()


def test_a_piece_that_leaves_the_room_is_outside() -> None:
    """A piece half through the wall is paired with "outside"."""
    assert found(piece("a", "A", 3500, 0)) == (("a", "outside"),)


def test_frames_on_one_spot_of_wall() -> None:
    """Two frames overlap only where they share width and height of one wall."""
    assert found(frame("one", 1000, 1200), frame("two", 1400, 1500)) == (("one", "two"),)
    assert found(frame("one", 1000, 1200), frame("two", 1400, 1900)) == ()
    assert found(frame("one", 1000, 1200), frame("two", 1400, 1899)) == ()
    assert found(frame("one", 1000, 1200), frame("two", 1499, 1500)) == ()
    assert found(frame("one", 1000, 1200), frame("two", 1498, 1898)) == (("one", "two"),)
    assert found(frame("one", 1000, 1200), frame("two", 1000, 1200, wall="B")) == ()


def test_small_things_may_sit_on_others() -> None:
    """A picture light sits on its picture; old holes are behind whatever hangs or stands there now."""
    assert found(frame("one", 1000, 1200), frame("lamp", 1100, 1800, what="picture light")) == ()
    assert found(frame("one", 1000, 1200), frame("holes", 1100, 1300, what="old holes")) == ()
    assert found(frame("holes", 1000, 1000, what="old holes"), piece("tall", "A", 900, 0, height=1800.0)) == ()


def test_a_frame_over_a_window_or_behind_a_cabinet() -> None:
    """A picture neither hangs over glass nor vanishes behind a tall piece."""
    window = Opening(name="win", what="window", wall="A", from_left=1200.0, width=900.0, bottom=900.0, top=2100.0)
    assert found(frame("one", 1000, 1200), window) == (("one", "win"),)
    assert found(frame("one", 1000, 2100), window) == ()
    assert found(frame("one", 1000, 1000), piece("tall", "A", 900, 0, height=1800.0)) == (("one", "tall"),)
    assert found(frame("one", 1000, 1000), piece("low", "A", 900, 0)) == ()


@pytest.mark.parametrize(("opens", "gap", "in_the_way"), [("in", 500, True), ("out", 500, True), ("out", 700, False)])
def test_a_piece_before_a_door_is_in_the_way(opens: str, gap: float, in_the_way: bool) -> None:
    """A leaf that opens in needs a square of its width, any other doorway 610 mm (common practice) before it."""
    door = Opening.model_validate({"name": "door", "wall": "A", "from_left": 1000.0, "width": 800.0, "opens": opens})
    survey = in_room(door, piece("box", "A", 1200, gap))
    assert in_doorways(survey, "") == ((("box", "door"),) if in_the_way else ())


def test_a_floor_lamp_needs_its_own_floor() -> None:
    """A floor lamp may not stand inside a cabinet; a table lamp may stand on it."""
    lamp = {"wall": "A", "from_left": 1200.0, "gap": 100.0, "width": 300.0, "depth": 300.0}
    floor = Light.model_validate({"name": "lamp", "what": "floor lamp", **lamp})
    assert found(floor, piece("box", "A", 1000, 0)) == (("box", "lamp"),)
    assert found(floor.model_validate({**dict(floor), "what": "table lamp"}), piece("box", "A", 1000, 0)) == ()


def test_two_screens_on_two_walls_of_one_room_do_not_meet() -> None:
    """Places on wall A and B with the same figures are two spots."""
    assert found(frame("a", 100, 900, what="screen"), frame("b", 100, 900, what="screen", wall="B")) == ()


@pytest.mark.parametrize(
    ("first", "second", "apart"),
    [
        ({"at": "table", "tucked": True}, {"at": "table", "tucked": True}, True),
        ({"at": "table", "tucked": True}, {"at": "desk", "tucked": True}, False),
        ({"at": "table", "tucked": True}, {"at": "table"}, False),
        ({"at": "table"}, {"at": "table", "tucked": True}, False),
        ({"at": "table"}, {"at": "table"}, False),
        ({"hangs": True}, {}, True),
        ({}, {"hangs": True}, True),
    ],
)
def test_two_chairs_on_one_spot(first: dict[str, Any], second: dict[str, Any], apart: bool) -> None:
    """Pushed in at one table they do not mind each other; one that is pulled out stands where it stands."""
    one, other = piece("one", "A", 1000, 0, **first), piece("other", "A", 1100, 0, **second)
    assert found(one, other) == (() if apart else (("one", "other"),))
    assert pieces_overlap(one, other, wall_lines(in_room(one, other), "")) is not apart


@pytest.mark.parametrize(("chair", "apart"), [({"tucked": True}, True), ({}, False)])
def test_only_a_tucked_chair_shares_its_table(chair: dict[str, Any], apart: bool) -> None:
    """Whichever of the two the survey names first; a chair that is pulled out stands on floor of its own."""
    table, seat = piece("table", "A", 1000, 1000), piece("chair", "A", 1200, 1200, width=400.0, at="table", **chair)
    assert found(table, seat) == found(seat, table) == (() if apart else (("chair", "table"),))


def test_what_is_in_no_room_meets_nothing() -> None:
    """A piece without a wall of this room has no place in it, and neither has one of another room."""
    there, nowhere = piece("a", "A", 1000, 0), piece("b", "Z", 1000, 0)
    assert found(there, nowhere, piece("c", "A", 1000, 0, room="other")) == ()
    assert pieces_overlap(there, nowhere, wall_lines(in_room(there), "")) is False


def test_boxes_that_meet_where_pieces_do_not() -> None:
    """In a room with walls askew two boxes around two pieces meet at a corner, and the pieces stay apart."""
    walls = tuple(Wall(wall=name, length=2000.0, turn=45.0) for name in "ABCDEFGH")
    pieces = (piece("a", "B", 600, 0), piece("b", "B", 600, 420, width=400.0))
    room = Survey(rooms=(RoomFacts(),), walls=walls, furniture=pieces)
    assert overlaps(room, "") == ()
    nearer = (pieces[0], piece("b", "B", 600, 390, width=400.0))
    assert overlaps(Survey(rooms=(RoomFacts(),), walls=walls, furniture=nearer), "") == (("a", "b"),)


@pytest.mark.parametrize("wall", ["A", "B"])
@pytest.mark.parametrize(("into", "overlapping"), [(2.0, True), (1.0, False)])
def test_touching_within_a_millimetre_out_from_the_wall(wall: str, into: float, overlapping: bool) -> None:
    """One behind the other, at both directions of a room: 1 mm of depth shared is the tape's business."""
    pair = piece("a", wall, 1000, 0), piece("b", wall, 1000, 400 - into)
    assert bool(found(*pair)) is overlapping


def test_small_things_whichever_comes_first() -> None:
    """An alarm, holes or a mark take no wall from a frame, a piece or a window, in either order."""
    small, big = frame("alarm", 1000, 1200, what="alarm"), frame("one", 1000, 1200)
    window = Opening(name="win", what="window", wall="A", from_left=900.0, width=900.0, bottom=900.0, top=2100.0)
    assert (hung_overlap(small, big), hung_overlap(big, small), hung_overlap(big, frame("two", 1000, 1200))) == (
        False,
        False,
        True,
    )
    assert (covers_opening(window, small), covers_opening(window, big)) == (False, True)
    lines = wall_lines(in_room(), "")
    tall = piece("tall", "A", 900, 0, height=1800.0)
    assert (hides(tall, small, lines), hides(tall, big, lines)) == (False, True)


@pytest.mark.parametrize(
    ("left", "gap", "height", "hidden"),
    [
        (1000, 100, 1202, True),
        (1000, 101, 1202, False),  # not against the wall
        (1000, 0, 1201, False),  # touches it from below within a millimetre
        (1499, 0, 1800, False),  # stands beside it
        (1498, 0, 1800, True),
        (202, 0, 1800, True),
        (201, 0, 1800, False),
    ],
)
def test_what_stands_before_a_frame(left: float, gap: float, height: float, hidden: bool) -> None:
    """Within 100 mm of the wall, more than a millimetre over its lower edge and into its width (1000 to 1500)."""
    tall = piece("tall", "A", left, gap, height=height)
    assert hides(tall, frame("one", 1000, 1200), wall_lines(in_room(), "")) is hidden


def test_only_what_is_asked_about() -> None:
    """`of` narrows to pairs with one of these things, on either side of the pair; before doors it names the pieces."""
    things = (
        piece("a", "A", 1000, 0),
        piece("b", "A", 1100, 0),
        piece("c", "A", 3500, 0),
        frame("f", 900, 800),
        frame("g", 900, 900),
    )
    window = Opening(name="win", what="window", wall="A", from_left=900.0, width=900.0, bottom=800.0, top=2100.0)
    survey = in_room(*things, window)
    every = (("a", "b"), ("a", "f"), ("b", "f"), ("c", "outside"), ("f", "g"), ("f", "win"), ("g", "win"))
    assert overlaps(survey, "") == every
    for name in "abcfg":
        assert overlaps(survey, "", frozenset({name})) == tuple(pair for pair in every if name in pair)
    door = Opening(name="door", wall="A", from_left=1000.0, width=800.0)
    blocked = in_room(door, *things, piece("up", "A", 1000, 0, hangs=True))
    assert in_doorways(blocked, "") == (("a", "door"), ("b", "door"))
    assert in_doorways(blocked, "", frozenset({"b", "up"})) == (("b", "door"),)


@pytest.mark.parametrize(("left", "blocked"), [(201, False), (202, True), (1798, True), (1799, False)])
def test_a_piece_that_just_reaches_before_a_door(left: float, blocked: bool) -> None:
    """A door from 1000 to 1800, boxes of 800: within a millimetre of its edges they leave it free."""
    door = Opening(name="door", wall="A", from_left=1000.0, width=800.0)
    assert bool(in_doorways(in_room(door, piece("box", "A", left, 300)), "")) is blocked


@pytest.mark.parametrize(("gap", "blocked"), [(608, True), (609, False)])
def test_how_far_before_a_doorway_a_thing_stands(gap: float, blocked: bool) -> None:
    """610 mm before a doorway (24 in) are kept free, within a millimetre, from boxes and from floor lamps."""
    door = Opening(name="door", wall="A", from_left=1000.0, width=800.0, opens="out")
    lamp = Light(name="lamp", what="floor lamp", wall="A", from_left=1200.0, gap=gap, width=300.0, depth=300.0)
    assert in_doorways(in_room(door, lamp), "") == ((("door", "lamp"),) if blocked else ())
    assert bool(in_doorways(in_room(door, piece("box", "A", 1200, gap)), "")) is blocked


def test_a_lamp_whose_foot_nobody_measured() -> None:
    """Without a width or a depth it takes no floor, so it is in nobody's way; not even outside the room."""
    for size in ({"width": 300.0}, {"depth": 300.0}, {}):
        lamp = Light.model_validate({"name": "lamp", "what": "floor lamp", "wall": "A", "from_left": 3900.0, **size})
        assert found(lamp, piece("box", "A", 3100, 0)) == ()


@pytest.mark.parametrize(("bottom", "over"), [(2098, True), (2099, False)])
def test_a_frame_that_just_touches_a_window(bottom: float, over: bool) -> None:
    """A window up to 2100: a frame hung within a millimetre of its top edge does not hang over it."""
    window = Opening(name="win", what="window", wall="A", from_left=1200.0, width=900.0, bottom=900.0, top=2100.0)
    assert covers_opening(window, frame("one", 1000, bottom)) is over


def test_what_stands_in_another_room_hides_nothing() -> None:
    """The same wall letter, another room: a tall piece there is not before the frame here."""
    assert found(frame("one", 1000, 1000), piece("tall", "A", 900, 0, height=1800.0, room="other")) == ()


@pytest.mark.parametrize("turned", [False, True])
def test_a_corner_that_barely_touches_a_slanted_side(turned: bool) -> None:
    """A corner 0.3 mm into a side: 3.4 mm are shared along it and 0.6 across, which is the tape's business."""
    slab = [(-1000.0, -87.5), (1000.0, 87.5), (1000.0, 400.0), (-1000.0, 400.0)]
    tip = [(0.0, 0.3), (-98.5, -17.06), (-81.1, -115.5), (17.4, -98.2)]
    one, other = (Polygon([(y, x) if turned else (x, y) for x, y in ring]) for ring in (slab, tip))
    assert one.intersection(other).area > 0
    assert not _share(one, other)
    assert _share(one, translate(other, yoff=3.0, xoff=3.0))
