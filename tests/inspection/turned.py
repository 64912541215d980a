"""The same room surveyed from elsewhere: turned, so that the walls get the next letters, or seen in a mirror."""

from __future__ import annotations

from typing import Any, TypeVar

from pydantic import BaseModel

from budgetfix.room.items import Curtain, Light, OnWall, Opening, Piece, Rug, Thing
from budgetfix.room.places import WallLine, extent, wall_lines
from budgetfix.room.survey import Survey, Wall

T = TypeVar("T", bound=Thing)
M = TypeVar("M", bound=BaseModel)
Letters = dict[str, str]


def fresh(item: M, **new: Any) -> M:
    """The thing with other fields."""
    return type(item).model_validate({**dict(item), **new})


def rebuilt(survey: Survey, **new: Any) -> Survey:
    """A new survey with other tables (a plain copy would keep what was worked out of the old one)."""
    return Survey.model_validate({**{name: getattr(survey, name) for name in type(survey).model_fields}, **new})


def letters(survey: Survey, room: str, step: int) -> Letters:
    """Which letter a wall gets when every wall takes over that of the wall `step` further on."""
    names = [wall.wall for wall in survey.walls_of(room)]
    return {name: names[(at + step) % len(names)] for at, name in enumerate(names)}


def rotated(survey: Survey, room: str = "r") -> Survey:
    """The survey of someone who called the last wall A: A becomes B, B becomes C and so on; nothing else differs."""
    new = letters(survey, room, 1)
    walls = survey.walls_of(room)
    turned = tuple(fresh(wall, wall=new[wall.wall]) for wall in (walls[-1], *walls[:-1]))
    others = tuple(wall for wall in survey.walls if wall.room != room)

    def at(item: T) -> T:
        if not isinstance(item, OnWall) or item.room != room:
            return item
        more = {"faces": new.get(item.faces, "")} if isinstance(item, Piece) else {}
        return fresh(item, wall=new.get(item.wall, item.wall), **more)

    return _with(survey, (*turned, *others), at)


def mirrored(survey: Survey, room: str = "r") -> Survey:
    """The survey of the room's mirror image: wall A stays, the walls follow each other the other way round."""
    lines = wall_lines(survey, room)
    names = [wall.wall for wall in survey.walls_of(room)]
    new = dict(zip((names[0], *reversed(names[1:])), names, strict=True))
    walls = {wall.wall: wall for wall in survey.walls_of(room)}
    back = {name: walls[names[at - 1]].turn for at, name in enumerate(names)}
    flipped = [fresh(walls[name], wall=new[name], turn=back[name]) for name in (names[0], *reversed(names[1:]))]
    windows = {one.name: lines[one.wall].length for one in survey.openings if one.room == room and one.wall in lines}

    def at(item: T) -> T:
        if item.room != room:
            return item
        if isinstance(item, Curtain):
            return fresh(item, **_curtain(item, windows.get(item.window)))
        if not isinstance(item, OnWall) or item.wall not in lines:
            return item
        return fresh(item, **_place(item, lines, new))

    others = tuple(wall for wall in survey.walls if wall.room != room)
    return _with(survey, (*flipped, *others), at)


def _place(item: OnWall, lines: dict[str, WallLine], new: Letters) -> dict[str, Any]:
    wide = extent(item, lines)[0] if isinstance(item, (Piece, Rug, Light)) else item.width
    more: dict[str, Any] = {}
    if isinstance(item, Piece):
        more = {"faces": new.get(item.faces, "")}
    if isinstance(item, Opening):
        more = {"hinge": "left" if item.hinge == "right" else "right"}
    return {"wall": new[item.wall], "from_left": lines[item.wall].length - item.from_left - wide, **more}


def _curtain(item: Curtain, length: float | None) -> dict[str, Any]:
    """A rod across two windows names the left one first; a single panel hangs at the left and has no mirror image."""
    assert item.panels > 1
    if length is None:
        return {}
    names = {"window": item.also_window, "also_window": item.window} if item.also_window else {}
    return {"rod_from_left": length - item.rod_from_left - item.rod_width, **names}


def _with(survey: Survey, walls: tuple[Wall, ...], at: Any) -> Survey:
    tables = ("openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets")
    return rebuilt(survey, walls=walls, **{name: tuple(map(at, getattr(survey, name))) for name in tables})
