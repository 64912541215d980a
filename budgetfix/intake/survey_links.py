"""Names that point at other lines: rooms, walls, windows, pieces, sockets."""

from __future__ import annotations

from budgetfix.base.tape import write_length
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.intake.survey_build import Line, Reading, title, unknown

THINGS = ("openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets")


def link_rooms(reading: Reading) -> None:
    """Put each line into a room: the only one, or the one that it names."""
    known = [line.text("room") for line in reading.lines["rooms"] if line.text("room")]
    by_lower = {name.lower(): name for name in known}
    windows = {line.name.lower(): line for line in reading.lines["openings"]}
    for table in ("walls", *THINGS):
        for line in reading.lines[table]:
            typed = line.text("room")
            if not typed and table == "curtains" and line.text("window").lower() in windows:
                typed = windows[line.text("window").lower()].text("room")
            if typed.lower() in by_lower:
                line.values["room"] = by_lower[typed.lower()]
            elif typed:
                unknown(reading, line, "room", "a room that the survey lists", known)
                line.values.pop("room")
            elif len(known) > 1:
                reading.refuse(line, "room", "nothing", f"one of the rooms: {', '.join(known)}")
            else:
                line.values["room"] = known[0] if known else ""


def link_names(reading: Reading) -> None:
    """Resolve walls and names; big and small letters do not matter."""
    names = {table: {line.name.lower(): line.name for line in reading.lines[table] if line.name} for table in THINGS}
    walls = [line for line in reading.lines["walls"] if line.text("wall")]
    if not walls and any(line.text("wall") for table in THINGS for line in reading.lines[table]):
        _no_walls(reading)
        return
    for table in THINGS:
        for column in FORM_OF[table]:
            for line in reading.lines[table]:
                if column.field not in line.values or column.field == "room":
                    continue
                if column.kind == "wall":
                    _wall(reading, line, column.field, walls)
                elif column.kind == "name":
                    _name(reading, line, column.field, column.names, names)


def _no_walls(reading: Reading) -> None:
    """One problem for a survey without walls, not one for each thing."""
    first = next(line for table in THINGS for line in reading.lines[table] if line.text("wall"))
    reading.refuse(first, "wall", f"wall '{first.text('wall')}'", f"the walls listed under {title(reading, 'walls')}")
    for table in THINGS:
        for line in reading.lines[table]:
            line.broken = True


def _wall(reading: Reading, line: Line, name: str, walls: list[Line]) -> None:
    room = line.values.get("room")
    letters = [wall.text("wall") for wall in walls if wall.values.get("room") == room]
    if room is None or line.text(name) in letters or (name == "faces" and not letters):
        return
    if room in reading.bad_rooms and not _letters_hold([wall for wall in walls if wall.values.get("room") == room]):
        return
    unknown(reading, line, name, "a wall of this room", letters)


def _letters_hold(walls: list[Line]) -> bool:
    """True where only a length could not be read: which walls there are is still known."""
    letters = [wall.text("wall") for wall in walls]
    unread = any(wall.broken and "length" not in wall.values for wall in walls)
    return unread and len(letters) > 3 and len(set(letters)) == len(letters)


def _name(reading: Reading, line: Line, name: str, tables: tuple[str, ...], names: dict[str, dict[str, str]]) -> None:
    typed = line.text(name).lower()
    for table in tables:
        if typed in names[table] and names[table][typed] != line.name:
            line.values[name] = names[table][typed]
            return
    known = [known for table in tables for known in names[table].values() if known != line.name]
    where = " or ".join(title(reading, table) for table in tables)
    unknown(reading, line, name, f"a name from {where}", known)


def place_lamps(reading: Reading) -> None:
    """A lamp on a piece, with no place of its own, stands on the middle of that piece."""
    pieces = {line.name: line for line in reading.sound("furniture")}
    for lamp in reading.sound("lights"):
        piece = pieces.get(lamp.text("on"))
        if piece is None or "wall" in lamp.values:
            continue
        along, off = ("depth", "width") if reading.turned(piece) else ("width", "depth")
        middle = piece.number("from_left") + (piece.number(along) - lamp.number("width")) / 2
        away = piece.number("gap") + (piece.number(off) - lamp.number("depth")) / 2
        lamp.values.update(wall=piece.text("wall"), from_left=max(0.0, middle), gap=max(0.0, away))
        reading.guessed.update((lamp.name, name) for name in ("from_left", "gap"))


def need_places(reading: Reading) -> None:
    """A light at a wall has a place on it."""
    for lamp in reading.sound("lights"):
        if "wall" in lamp.values and "from_left" not in lamp.values:
            wanted = f"where the lamp is along wall {lamp.text('wall')}, such as {write_length(1000, reading.unit)}"
            reading.refuse(lamp, "from_left", "nothing", wanted)
