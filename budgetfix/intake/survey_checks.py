"""Contradictions that a tape cannot have measured: too long for the wall, above the ceiling, upside down."""

from __future__ import annotations

from budgetfix.base.tape import write_length
from budgetfix.intake.survey_build import Line, Reading

GIVE_MM = 5.0
"""The tape's give (common practice)."""

HEIGHTS: dict[str, tuple[str, ...]] = {
    "openings": ("bottom", "top"),
    "curtains": ("rod_height", "hem"),
    "furniture": ("height", "seat", "arm"),
    "pictures": ("bottom", "height"),
    "lights": ("bottom",),
}
HUNG = ("openings", "pictures")
STANDING = ("furniture", "rugs", "lights")


def check_sizes(reading: Reading) -> None:
    """Every thing against its wall and its ceiling. Each line is told once."""
    walls = {(w.text("room"), w.text("wall")): w for w in reading.sound("walls")}
    windows = {line.name: line for line in reading.lines["openings"]}
    ceilings = {line.text("room"): line.number("ceiling") for line in reading.sound("rooms")}
    measured = {room: top for room, top in ceilings.items() if (room, "ceiling") not in reading.guessed}
    for table in (*HUNG, "curtains", *STANDING, "sockets"):
        for line in reading.sound(table):
            window = windows.get(line.text("window"), line)
            wall = walls.get((line.text("room"), (window if table == "curtains" else line).text("wall")))
            if wall is not None and line.text("room") not in reading.bad_rooms:
                _along(reading, line, wall)
            if not line.broken:
                _upright(reading, line, measured.get(line.text("room")))


def _extent(reading: Reading, line: Line) -> tuple[str, float]:
    """The field that says how long a thing is along its wall, and that length in mm."""
    if line.table == "curtains":
        return "rod_width", line.number("rod_width")
    name = "depth" if line.table == "furniture" and reading.turned(line) else "width"
    return name, line.number(name)


def _along(reading: Reading, line: Line, wall: Line) -> None:
    size_field, size = _extent(reading, line)
    start_field = "rod_from_left" if line.table == "curtains" else "from_left"
    length, start = wall.number("length"), line.number(start_field)
    where = f"wall {wall.text('wall')}'s {write_length(length, reading.unit)}"
    for name, value in ((size_field, size), (start_field, start)):
        if value > length + GIVE_MM and not (name == size_field and _opens_out(line, wall)):
            _too_big(reading, line, name, value, length, f"at most {where}")
            return
    if start + size > length + GIVE_MM and not _opens_out(line, wall):
        end = write_length(start + size, reading.unit)
        found = f"'{line.name}' ending {end} from the left corner"
        reading.refuse(line, start_field, found, f"an end within {where}")


def _opens_out(line: Line, wall: Line) -> bool:
    """A floor piece may reach past a wall whose right end turns away from it."""
    return line.table in STANDING and wall.number("turn") < 0


def _too_big(reading: Reading, line: Line, name: str, value: float, limit: float, wanted: str) -> None:
    todo = ""
    if reading.unit == "in" and line.bare(name) and value / 2.54 <= limit + GIVE_MM:
        todo = f"did you mean {value / 25.4:g} cm?"
    found = f"{write_length(value, reading.unit)} for '{line.name}'"
    reading.refuse(line, name, found, wanted, todo)


def _upright(reading: Reading, line: Line, ceiling: float | None) -> None:
    fields = HEIGHTS.get(line.table, ())
    if ceiling is not None:
        limit = f"at most the ceiling's {write_length(ceiling, reading.unit)}"
        for name in fields:
            if line.number(name) > ceiling + GIVE_MM:
                _too_big(reading, line, name, line.number(name), ceiling, limit)
                return
        if line.table == "pictures" and line.number("bottom") + line.number("height") > ceiling + GIVE_MM:
            top = write_length(line.number("bottom") + line.number("height"), reading.unit)
            reading.refuse(line, "bottom", f"the top of '{line.name}' at {top}", limit)
            return
    for low, high, wanted in (
        ("bottom", "top", "a top above the sill"),
        ("hem", "rod_height", "a rod above the hem"),
    ):
        if low in fields and high in fields and high in line.values and line.number(low) >= line.number(high):
            found = (
                f"{write_length(line.number(high), reading.unit)} over {write_length(line.number(low), reading.unit)}"
            )
            reading.refuse(line, high, found, wanted)
            return
