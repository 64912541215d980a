"""A survey's things by room, as they are and after changes."""

from __future__ import annotations

from budgetfix.room.items import TABLES, Light
from budgetfix.room.survey import Change, RoomFacts, Survey, Wall

WALLS = tuple(Wall(room=room, wall=letter, length=4000.0) for room in ("den", "hall") for letter in "ABCD")
LAMPS = tuple(
    Light(name=name, room=room, wall="A", what="floor lamp") for name, room in (("one", "den"), ("two", "hall"))
)
HOME = Survey(rooms=(RoomFacts(room="den"), RoomFacts(room="hall")), walls=WALLS, lights=LAMPS)


def plainly(survey: Survey, room: str) -> list[str]:
    """Names of what is in a room, by a look at everything."""
    return [item.name for table in TABLES for item in survey.table(table) if item.room == room]


def by_room(survey: Survey, room: str) -> list[str]:
    """The same as the survey tells it."""
    return [item.name for table in TABLES for item in survey.things(table, room)]


def test_things_by_room_follow_every_change() -> None:
    """A lamp carried to another room, one taken away and one bought: each room holds what stands there now."""
    changes = (
        Change("lights", "one", (("room", "hall"),)),
        Change("lights", "two", remove=True),
        Change("lights", "three", add=Light(name="three", room="den", wall="B", what="floor lamp")),
    )
    assert by_room(HOME, "den") == ["one"]
    after = HOME.changed(changes)
    for survey in (HOME, after, after.changed(())):
        assert [by_room(survey, room) for room in ("den", "hall")] == [
            plainly(survey, room) for room in ("den", "hall")
        ]
    assert (by_room(after, "den"), by_room(after, "hall")) == (["three"], ["one"])
    assert by_room(after, "attic") == []


def test_walls_by_room_stay() -> None:
    """No change moves a wall; a room that is not there has none."""
    after = HOME.changed((Change("lights", "one", remove=True),))
    assert [wall.room for wall in after.walls_of("hall")] == ["hall"] * 4
    assert after.walls_of("attic") == ()


def test_a_copy_with_other_rows_has_these() -> None:
    """What was kept by room of the one is not taken for the other, whichever way it was copied."""
    assert by_room(HOME, "den") == ["one"]
    assert [wall.wall for wall in HOME.walls_of("den")] == list("ABCD")
    fewer = {"lights": LAMPS[1:], "walls": WALLS[1:]}
    for other in (HOME.model_copy(update=fewer), Survey(**{**dict(HOME), **fewer})):
        assert (by_room(other, "den"), by_room(HOME, "den")) == ([], ["one"])
        assert [wall.wall for wall in other.walls_of("den")] == list("BCD")
