"""The survey as a form: its sheets in walking order, and every field of every table."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.base.twin import Twin
from budgetfix.forms.column import Column, Default
from budgetfix.forms.furniture_columns import FURNITURE, PIECES
from budgetfix.forms.wall_columns import CURTAINS, MARK_COLUMNS, OPENINGS, PICTURES, ROOM

KINDS_OF_ROOM = ("living room", "bedroom", "dining room", "kitchen", "hall", "study", "living-dining room")

ROOMS = (
    Column("room", "Room", "its name", "text", needed=True, wide=16),
    Column("kind", "Kind of room", "choose", "choice", choices=KINDS_OF_ROOM, wide=18),
    Column(
        "ceiling",
        "Ceiling",
        "above the floor",
        "length",
        positive=True,
        defaults=(Default(Twin(96, 2400), Twin(90, 2300), Twin(108, 2700)),),
    ),
    Column("floor", "Floor", "choose", "choice", choices=("hard", "carpet"), wide=11),
)

WALLS = (
    Column("wall", "Wall", "its letter", "text", needed=True, wide=8),
    Column("length", "Length", "corner to corner", "length", needed=True, positive=True, wide=12),
    Column("turn", "Turn at its right end", "right, left or degrees", "turn", choices=("right", "left"), wide=20),
    Column("solid", "Solid", "brick or concrete?", "yes-no-unknown", wide=15),
    Column("outside", "Outside wall", "the street behind it?", "yes-no", wide=16),
    ROOM,
)

RUGS = (
    Column("name", "Name", "yours, used once", "text", needed=True, wide=18),
    Column("wall", "Nearest wall", "its letter", "wall", needed=True),
    Column("from_left", "From left", "corner to its left edge", "length", needed=True, wide=12),
    Column("width", "Width", "along that wall", "length", needed=True, positive=True),
    Column("depth", "Depth", "away from it", "length", needed=True, positive=True),
    Column("gap", "Gap to wall", "bare floor between", "length", needed=True, wide=12),
    Column("round", "Round", "any curve", "yes-no", wide=8),
    Column("pad", "Pad", "something under it?", "yes-no", wide=12),
    Column("under", "Belongs to", "dining table or bed", "name", names=("furniture", "openings"), wide=16),
    ROOM,
)

LAMPS = ("ceiling", "pendant", "floor lamp", "table lamp", "wall light", "other")
WITH_LEAD = ("floor lamp", "table lamp")

LIGHTS = (
    Column("name", "Name", "yours, used once", "text", needed=True, wide=18),
    Column("what", "What", "choose", "choice", needed=True, choices=LAMPS, wide=12),
    Column("switch", "Switched with", "same word = same switch", "text", wide=14),
    Column(
        "lumens", "Lumens", "on the lamp; all together", "number", wide=10, defaults=(Default(806.0, 250.0, 1521.0),)
    ),
    Column("kelvin", "Kelvin", "2700 warm, 4000 cold", "number", wide=11, defaults=(Default(2700.0, 2200.0, 4000.0),)),
    Column("wall", "Nearest wall", "its letter", "wall", wide=9),
    Column("from_left", "From left", "corner to left edge", "length", wide=10),
    Column("gap", "Gap to wall", "empty = touches", "length", wide=9),
    Column("width", "Width", "shade or foot", "length", wide=9),
    Column("depth", "Depth", "shade or foot", "length", wide=9),
    Column("bottom", "Shade above floor", "its lower edge", "length"),
    Column("on", "Stands on", "a piece of furniture", "name", names=("furniture",), wide=14),
    Column("over", "Hangs over", "a table", "name", names=("furniture",), wide=14),
    Column(
        "lead",
        "Lead",
        "lamp to plug",
        "length",
        defaults=(Default(Twin(60, 1500), Twin(48, 1200), Twin(96, 2500), WITH_LEAD),),
    ),
    Column("socket", "Socket", "where it is plugged in", "name", names=("sockets",), wide=12),
    Column("lead_over_route", "Lead where you walk", "across the way?", "yes-no", wide=11),
    Column("lead_covered", "Lead covered", "taped or in a strip?", "yes-no"),
    ROOM,
)

SOCKETS = (
    Column("name", "Name", "yours, or leave empty", "text", wide=18),
    Column("wall", "Wall", "its letter", "wall", needed=True, wide=10),
    Column("from_left", "From left", "corner to its middle", "length", needed=True, wide=12),
    ROOM,
)

FAULTS = (
    Column("fault", "Short name", "one word, used once", "text", needed=True, wide=18),
    Column("points", "Points", "100 = glaring", "count", needed=True, wide=10),
    Column("what", "What bothers you", "in your words", "text", wide=44),
    Column("where", "Where", "place or thing", "text", wide=24),
    Column("safety", "Safety", "could it hurt someone?", "yes-no", wide=14),
)

HOME = (
    Column("unit", "A bare number means", "in, cm or mm", "choice", choices=("in", "cm", "mm")),
    Column("rent", "You rent", "yes or no", "yes-no"),
    Column("before_1978", "Built before 1978", "yes, no or not sure", "yes-no-unknown"),
    Column("children", "Children live here or visit", "yes or no", "yes-no"),
    Column("toddlers", "Toddlers among them", "yes or no", "yes-no"),
    Column("walkers", "Someone walks unsteadily", "yes or no", "yes-no"),
    Column("step_free", "Someone uses a wheelchair", "yes or no", "yes-no"),
)

MONEY = (
    Column("currency", "Currency", "three letters, such as EUR", "text"),
    Column("budget", "Most you will spend", "in your money; empty = no limit", "number"),
    Column("hours", "Free hours, day by day", "3; 2 means two days", "text"),
    Column("people", "People", "how many pairs of hands", "count"),
    Column("holes", "New holes allowed", "a number; empty = any", "count"),
)
"""The brief's simple fields; `brief.yaml` overrides them. They are handed on as typed."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet: `key` is the table's key in survey.yaml, `rows` how many lines stand ready."""

    title: str
    key: str
    how: str
    columns: tuple[Column, ...]
    rows: int


SHEETS = (
    Sheet("Walls", "walls", "Face the wall with the main door: that is A. Keep turning right: B, C, D. "
          "Measure each from corner to corner.", WALLS, 16),
    Sheet("Openings", "openings", "Doors, windows, closets. Face the wall and measure from the corner on your left "
          "to the frame's outer edge.", OPENINGS, 14),
    Sheet("Curtains", "curtains", "One line for each rod. Measure the rod from the left corner of its wall, "
          "and the cloth lying flat.", CURTAINS, 12),
    Sheet("Furniture", "furniture", "Everything that stands on the floor, heaters and plants too. Face the wall it is "
          "nearest to, and measure from the corner on your left.", FURNITURE, 26),
    Sheet("On the walls", "pictures", "Pictures, mirrors, screens, shelves, alarms: face the wall, outer edges, "
          "and the bottom edge above the floor.", PICTURES, 22),
    Sheet("Rugs", "rugs", "The real size, not the label. Face the nearest wall and measure from the corner "
          "on your left.", RUGS, 10),
    Sheet("Lights", "lights", "Every lamp that can be switched on. Lumens and kelvin are printed on the lamp "
          "or its box.", LIGHTS, 18),
    Sheet("Sockets", "sockets", "Face the wall and measure from the corner on your left to the middle of the "
          "socket.", SOCKETS, 18),
    Sheet("What bothers you", "faults", "What a tape cannot see. Give points: 100 for something glaring, "
          "50 for something that nags.", FAULTS, 18),
    Sheet("Wall marks", "marks", "Holes, scuffs and what strips left, seen from the door; a landlord looks at these. "
          "Several of one sort together are one line.", MARK_COLUMNS, 14),
)  # fmt: skip

START_TITLE = "Start"
FORM_OF: dict[str, tuple[Column, ...]] = {"rooms": ROOMS, **{sheet.key: sheet.columns for sheet in SHEETS}}
SHEET_OF: dict[str, str] = {"rooms": START_TITLE, **{sheet.key: sheet.title for sheet in SHEETS}}

SCREEN_WIDTH, SCREEN_HEIGHT = 0.871576, 0.490261
"""Of a 16:9 screen's diagonal: 16 and 9 over the root of 337 (geometry)."""

__all__ = ["FAULTS", "FORM_OF", "HOME", "MONEY", "PIECES", "ROOMS", "SHEETS", "SHEET_OF", "START_TITLE", "Sheet"]
