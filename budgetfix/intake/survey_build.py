"""From cells to records: every cell is read by its column; what is missing is filled in or told."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from budgetfix.base.problems import FileProblem
from budgetfix.base.tape import read_length
from budgetfix.forms.column import Cell, Column, Unread
from budgetfix.forms.survey_form import FORM_OF, HOME, SCREEN_HEIGHT, SCREEN_WIDTH, SHEET_OF
from budgetfix.intake.raw_rows import RawRow, RawSurvey, close_to

UNITS = {"in": "in", "inch": "in", "inches": "in", '"': "in", "cm": "cm", "centimetres": "cm", "centimeters": "cm",
         "mm": "mm", "millimetres": "mm", "millimeters": "mm"}  # fmt: skip
_BARE = re.compile(r"\d+(\.\d+)?")


@dataclass
class Line:
    """One read line: values by field, whether something in it was refused, and the raw row for its places."""

    table: str
    name: str
    values: dict[str, Cell]
    row: RawRow
    broken: bool = False

    def bare(self, name: str) -> bool:
        """True where the number was typed without a unit."""
        cell = self.row.cells.get(name)
        if cell is None or isinstance(cell.value, bool):
            return False
        return isinstance(cell.value, (int, float)) or bool(_BARE.fullmatch(str(cell.value).strip()))

    def number(self, name: str) -> float:
        """A length or number; 0 where there is none."""
        value = self.values.get(name)
        return float(value) if isinstance(value, (int, float)) else 0.0

    def text(self, name: str) -> str:
        return str(self.values.get(name) or "")


@dataclass
class Reading:
    """Everything read from one file, growing as it is checked."""

    raw: RawSurvey
    unit: str
    unit_known: bool = True
    lines: dict[str, list[Line]] = field(default_factory=dict)
    guessed: set[tuple[str, str]] = field(default_factory=set)
    problems: list[FileProblem] = field(default_factory=list)
    bad_rooms: set[str] = field(default_factory=set)
    inward: dict[tuple[str, str], tuple[float, float]] = field(default_factory=dict)
    """Which way each wall (room, letter) looks, for rooms whose walls are sound."""

    def refuse(self, line: Line, name: str, found: str, wanted: str, todo: str = "") -> None:
        """Note a problem at a field of a line, and leave the line out of later checks."""
        self.problems.append(FileProblem(line.row.place_of(name), found, wanted, todo))
        line.broken = True

    def turned(self, line: Line) -> bool:
        """True where a piece looks along its wall, so that its depth runs along it."""
        own = self.inward.get((line.text("room"), line.text("wall")))
        faced = self.inward.get((line.text("room"), line.text("faces")))
        return own is not None and faced is not None and abs(own[0] * faced[0] + own[1] * faced[1]) < 0.5

    def sound(self, *tables: str) -> list[Line]:
        """The lines of these tables in which nothing was refused."""
        return [line for table in tables for line in self.lines.get(table, []) if not line.broken]


def read_cells(raw: RawSurvey) -> Reading:
    """Read every cell of every table by its column. References between lines are not looked at yet."""
    reading = Reading(raw, "mm", problems=list(raw.problems))
    reading.unit = _unit(reading)
    home = _line(reading, raw.home, tuple(column for column in HOME if column.field != "unit"))
    reading.lines["home"] = [home]
    for table, columns in FORM_OF.items():
        reading.lines[table] = [_line(reading, row, columns) for row in raw.rows.get(table, [])]
    _names(reading)
    for table, columns in FORM_OF.items():
        for line in reading.lines[table]:
            _fill(reading, line, columns)
    _hang_marks(reading)
    return reading


SPOT_MM = 20.0
"""How large a mark is that nobody measured (common practice)."""
HELD = {"pin hole": "nail", "plug hole": "screws"}
"""What made a hole; all other marks are no holes."""


def _hang_marks(reading: Reading) -> None:
    """Marks stand among what hangs on the walls: each line there is a patch of holes or marks."""
    for line in reading.lines["marks"]:
        sort, size = line.text("what"), line.number("width") or SPOT_MM
        line.values |= {"what": "old holes", "fixing": HELD[sort]} if sort in HELD else {"what": "mark", "group": sort}
        line.values |= {"width": size, "height": size}
        line.values.setdefault("things", 1)
        line.table = "pictures"
    reading.lines["pictures"] += reading.lines["marks"]
    reading.lines["marks"] = []


def _unit(reading: Reading) -> str:
    home = reading.raw.home
    cell = home.cells.get("unit")
    word = str(cell.value).strip().lower() if cell else ""
    if word in UNITS:
        return UNITS[word]
    found = cell.shown if cell else "nothing"
    reading.unit_known = False
    reading.problems.append(FileProblem(home.place_of("unit"), found, "the unit of bare numbers: in, cm or mm"))
    return "mm"


def _line(reading: Reading, row: RawRow, columns: tuple[Column, ...]) -> Line:
    line = Line(row.table, "", {}, row)
    for column in columns:
        cell = row.cells.get(column.field)
        if cell is None:
            continue
        try:
            if cell.trouble:
                raise Unread("")
            value = column.read(cell.value, reading.unit)
        except Unread as advice:
            reading.refuse(line, column.field, cell.shown, column.wanted, str(advice))
            continue
        if value is not None:
            line.values[column.field] = value
    return line


def _names(reading: Reading) -> None:
    """Give every line its name; names that are used twice are told at the second."""
    seen: dict[str, Line] = {}
    for table in FORM_OF:
        own = {} if table in ("rooms", "faults") else seen
        for number, line in enumerate(reading.lines[table], 1):
            if table == "walls":
                continue
            line.name = _name(line, table, number)
            first = own.setdefault(line.name.lower(), line) if line.name else line
            if first is not line:
                field_name = {"rooms": "room", "faults": "fault"}.get(table, "name")
                wanted = f"a name used once (also at {first.row.place_of(field_name).label})"
                reading.refuse(line, field_name, f"'{line.name}' again", wanted)


def _name(line: Line, table: str, number: int) -> str:
    if table == "rooms":
        return line.text("room")
    if table == "faults":
        return line.text("fault")
    if "name" not in line.values and table == "curtains" and line.text("window"):
        line.values["name"] = f"{line.text('window')} curtains"
    if "name" not in line.values and table == "sockets":
        line.values["name"] = f"Socket {number}"
    if table == "marks":
        line.values["name"] = f"Marks {number}"
    return line.text("name")


def _fill(reading: Reading, line: Line, columns: tuple[Column, ...]) -> None:
    """Work out, take a usual value, or say that it is missing."""
    if line.table == "pictures":
        _screen(reading, line)
    for column in columns:
        spoilt = column.field in line.row.cells and column.field not in line.values
        if column.field in line.values or (spoilt and _typed(line.row, column.field)):
            continue
        default = column.default_for(line.text("what"), reading.unit != "in")
        if default is not None:
            line.values[column.field] = default
            reading.guessed.add((line.name, column.field))
        elif line.row.empty and column.field not in line.row.empty and column.needs(line.text("what")):
            line.broken = True  # its heading is missing, and that was told once
        elif column.needs(line.text("what")) and not _excused(line, column):
            todo = f"fill in {column.heading}" if line.row.empty else f"add `{column.field}:`"
            reading.refuse(line, column.field, "nothing", column.wanted, todo)


def _typed(row: RawRow, name: str) -> bool:
    value = row.cells[name].value
    return value is not None and str(value).strip() != ""


def _excused(line: Line, column: Column) -> bool:
    """Things that are worked out later, or by another field."""
    if line.table == "walls" and column.field == "length" and "length" not in line.row.cells:
        return True
    return bool(column.unless) and column.unless in line.row.cells


def _screen(reading: Reading, line: Line) -> None:
    """A 16:9 screen's width and height from its diagonal."""
    diagonal = line.values.pop("diagonal", None)
    if diagonal is None:
        return
    if line.text("what") not in ("screen", ""):
        reading.refuse(line, "diagonal", line.row.cells["diagonal"].shown, "a diagonal of screens only")
        return
    for name, factor in (("width", SCREEN_WIDTH), ("height", SCREEN_HEIGHT)):
        line.values.setdefault(name, _grid(float(diagonal) * factor, reading.unit))


def _grid(mm: float, unit: str) -> float:
    """To a thousandth of an inch or a tenth of a millimetre, so that a form can show it."""
    return read_length(round(mm / 25.4, 3), "in") if unit == "in" else round(mm, 1)


def unknown(reading: Reading, line: Line, name: str, what: str, known: list[str]) -> None:
    """Refuse a name that nothing in the survey carries."""
    typed = line.text(name)
    listed = ", ".join(known[:8]) + (" ..." if len(known) > 8 else "")
    reading.refuse(line, name, f"'{typed}'", f"{what}: {listed}" if known else what, close_to(typed, known))


def title(reading: Reading, table: str) -> str:
    """How the file at hand calls a table."""
    return SHEET_OF[table] if reading.raw.home.place.label.startswith("Start") else table
