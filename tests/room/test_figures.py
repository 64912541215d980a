from __future__ import annotations

import pytest

from budgetfix.room.figures import refigured, sort_of, stands
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
