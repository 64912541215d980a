from __future__ import annotations

import pytest

from budgetfix.room.figures import refigured, sort_of, stands
from budgetfix.room.items import Curtain, Hung, Opening, Piece
from budgetfix.room.survey import RoomFacts, Survey
from tests.framing.small_jobs import measured_ground

ROOM = measured_ground().survey


def test_one_figure_is_put_to_another_value_and_nothing_else() -> None:
    """Of a thing or of the room; the first survey stays as it was."""
    assert ROOM is not None
    other = refigured(ROOM, "sofa", "depth", 1000.0)
    assert [one.depth for one in other.furniture] == [1000.0, 300.0]
    assert [one.depth for one in ROOM.furniture] == [900.0, 300.0]
    assert other.openings == ROOM.openings
    assert refigured(ROOM, "r", "ceiling", 2700.0).facts("r").ceiling == 2700.0


def test_a_figure_belongs_to_a_sort_of_thing_in_a_room() -> None:
    """A room's own figure has no table; an unknown thing is an error of ours."""
    assert ROOM is not None
    assert sort_of(ROOM, "sofa", "depth") == ("furniture", "sofa", "r")
    assert sort_of(ROOM, "r", "ceiling") == (None, "", "r")
    with pytest.raises(KeyError):
        sort_of(ROOM, "piano", "depth")


@pytest.mark.parametrize(
    ("item", "field", "value"),
    [
        ("r", "ceiling", 1990.0),  # the print's top is 2,000 mm up, the door's 2,030
        ("sofa", "arm", 900.0),  # above its own top
        ("door", "top", 0.0),  # no door
        ("sofa", "depth", 4200.0),  # out of the room
        ("bookcase", "height", 2500.0),  # above the ceiling
    ],
)
def test_a_room_that_cannot_be_is_told(item: str, field: str, value: float) -> None:
    """Taller than the room, upside down, or through a wall."""
    assert ROOM is not None
    assert stands(ROOM, "r", ROOM)
    assert not stands(refigured(ROOM, item, field, value), "r", ROOM)


def beside(*things: Opening | Hung | Piece | Curtain, room: str) -> Survey:
    """The room with more things in it, or in a room beside it whose name is `s`."""
    assert ROOM is not None
    named = tuple(type(one).model_validate({**dict(one), "room": room}) for one in things)
    more = {
        table: (*getattr(ROOM, table), *(one for one in named if isinstance(one, sort)))
        for table, sort in (("openings", Opening), ("pictures", Hung), ("furniture", Piece), ("curtains", Curtain))
    }
    fields = {name: getattr(ROOM, name) for name in Survey.model_fields}
    return Survey.model_validate({**fields, **more, "rooms": (*ROOM.rooms, RoomFacts(room="s", ceiling=4000.0))})


@pytest.mark.parametrize(
    "thing",
    [
        Opening(name="o", wall="D", from_left=100.0, width=800.0, top=2406.0),
        Opening(name="o", wall="D", from_left=100.0, width=800.0, bottom=2030.0),
        Hung(name="h", wall="D", from_left=100.0, width=800.0, bottom=2000.0, height=406.0),
        Piece(name="p", what="shelf unit", wall="D", from_left=100.0, width=800.0, depth=300.0, height=2406.0),
        Piece(name="p", what="bed", wall="D", from_left=100.0, width=800.0, depth=300.0, height=500.0, seat=506.0),
        Curtain(name="c", window="w", rod_height=2406.0, rod_from_left=0.0, rod_width=1.0, panel_width=1.0, hem=0.0),
    ],
)
def test_only_what_is_in_the_room_counts(thing: Opening | Hung | Piece | Curtain) -> None:
    """Over the ceiling of 2400 by more than the tape's 5 mm, or over its own top: not here, but next door."""
    here, there = beside(thing, room="r"), beside(thing, room="s")
    assert not stands(here, "r", here)
    assert stands(there, "r", there)


def test_the_tape_gives_5_mm() -> None:
    """A shelf unit of 2405 under a ceiling of 2400 is a reading, not a mistake."""
    unit = Piece(name="p", what="shelf unit", wall="D", from_left=100.0, width=800.0, depth=300.0, height=2405.0)
    here = beside(unit, room="r")
    assert stands(here, "r", here)
