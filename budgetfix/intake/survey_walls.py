"""The walls of each room: lengths that can be worked out, turns that add up, a floor that closes."""

from __future__ import annotations

import math

from budgetfix.base.tape import write_length
from budgetfix.intake.survey_build import Line, Reading
from budgetfix.intake.survey_links import THINGS
from budgetfix.room.places import closing_gap, lines_of
from budgetfix.room.survey import Wall

CLOSE_MM = 50.0
"""What a careful tape may be off around a room (common practice)."""


def settle_walls(reading: Reading) -> None:
    """Work out what is left empty and tell what does not fit together, room by room."""
    _drop_unmeasured(reading)
    rooms: dict[str, list[Line]] = {}
    for line in reading.lines["walls"]:
        line.values["wall"] = line.text("wall").upper()
        rooms.setdefault(line.text("room"), []).append(line)
    for room, walls in rooms.items():
        _doubled(reading, walls)
        if not any(line.broken for line in walls):
            _settle(reading, walls)
        if any(line.broken for line in walls):
            reading.bad_rooms.add(room)
        else:
            for side in lines_of(_records(walls)):
                reading.inward[(room, side.letter)] = side.inward
    for line in reading.lines["walls"]:
        line.name = f"{line.text('room')} {line.text('wall')}".strip()


def _drop_unmeasured(reading: Reading) -> None:
    """The letters that a blank form brings are no walls while nothing else in the survey was measured."""
    if any(set(line.row.cells) - {"wall"} for table in THINGS for line in reading.lines[table]):
        return
    if not any(line.broken or set(line.row.cells) - {"wall"} for line in reading.lines["walls"]):
        reading.lines["walls"] = []


def _doubled(reading: Reading, walls: list[Line]) -> None:
    seen: set[str] = set()
    for line in walls:
        letter = line.text("wall")
        if letter in seen:
            reading.refuse(line, "wall", f"wall '{letter}' again", "a letter used once in a room")
        seen.add(letter)


def _settle(reading: Reading, walls: list[Line]) -> None:
    typed = [line.number("turn") if "turn" in line.values else None for line in walls]
    turns = [90.0 if turn is None else turn for turn in typed]
    square = all(turn == 90.0 for turn in turns)
    if len(walls) == 2 and square:
        walls += [_twin(reading, walls[0], "C"), _twin(reading, walls[1], "D")]
        turns = [90.0] * 4
    if len(walls) < 3:
        reading.refuse(walls[0], "wall", f"{len(walls)} wall", "all walls of the room, or A and B of a rectangle")
        return
    if len(walls) == 4 and square:
        for line, opposite in zip(walls[2:], walls[:2], strict=True):
            line.values.setdefault("length", opposite.number("length"))
    if typed[-1] is None:
        turns[-1] = 360.0 - sum(turns[:-1])
    for line, turn in zip(walls, turns, strict=True):
        line.values["turn"] = turn
    _lengths(reading, walls)
    if not any(line.broken for line in walls):
        _closes(reading, walls)


def _twin(reading: Reading, line: Line, letter: str) -> Line:
    """The wall across a rectangle."""
    values = {"room": line.values.get("room"), "wall": letter, "length": line.values.get("length"), "turn": 90.0}
    twin = Line("walls", "", values, line.row)
    reading.lines["walls"].append(twin)
    return twin


def _records(walls: list[Line]) -> tuple[Wall, ...]:
    return tuple(Wall(wall=line.text("wall"), length=line.number("length"), turn=line.number("turn")) for line in walls)


def _lengths(reading: Reading, walls: list[Line]) -> None:
    """The last wall may be empty; any other is told."""
    for line in walls[:-1]:
        if "length" not in line.values:
            reading.refuse(line, "length", "nothing", "a length (only the last wall's can be worked out)")
    if "length" in walls[-1].values or any(line.broken for line in walls):
        return
    lines = lines_of(_records(walls))
    last, start = lines[-1], lines[0].start
    along, off = last.local(*start)
    if along <= 0 or abs(off) > CLOSE_MM:
        away = write_length(math.hypot(min(along, 0.0), off), reading.unit)
        wanted = "walls and turns that lead back to the left end of the first wall"
        reading.refuse(walls[-1], "length", f"walls that miss their start by {away}", wanted)
    else:
        walls[-1].values["length"] = round(along, 3)


def _closes(reading: Reading, walls: list[Line]) -> None:
    last = walls[-1]
    total = sum(line.number("turn") for line in walls)
    if abs(total - 360.0) > 0.5:
        reading.refuse(last, "turn", f"turns that add up to {total:g}°", "turns that add up to 360°")
        return
    gap = closing_gap(_records(walls))
    if gap > CLOSE_MM:
        away = write_length(gap, reading.unit)
        todo = f"measure walls {', '.join(line.text('wall') for line in walls)} again"
        reading.refuse(last, "length", f"walls that do not close by {away}", "walls that end where A begins", todo)
    elif _crosses(walls):
        reading.refuse(last, "turn", "walls that cross each other", "walls in the order in which you turn right")


def _crosses(walls: list[Line]) -> bool:
    from shapely.geometry import Polygon

    floor = Polygon([line.start for line in lines_of(_records(walls))])
    return not floor.is_valid or floor.area <= 0
