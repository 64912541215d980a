"""The columns of what belongs to walls: openings, curtains, and what hangs."""

from __future__ import annotations

from budgetfix.base.twin import Twin
from budgetfix.forms.column import Column, Default

ROOM = Column("room", "Room", "if several", "name", names=("rooms",), wide=11)
NAME = Column("name", "Name", "yours, used once", "text", needed=True, wide=20)
WALL = Column("wall", "Wall", "its letter", "wall", needed=True, wide=8)

WHAT_OPENS = ("door", "opening", "window", "closet")
DOOR_TOP = Default(Twin(80, 2030), Twin(77, 1960), Twin(90, 2300), ("door", "opening", "closet"))

OPENINGS = (
    NAME,
    Column("what", "What", "choose", "choice", needed=True, choices=WHAT_OPENS, wide=10),
    WALL,
    Column("from_left", "From left", "corner to frame", "length", needed=True, wide=10),
    Column("width", "Width", "frame to frame", "length", needed=True, positive=True, wide=10,
           defaults=(Default(Twin(30, 760), Twin(24, 610), Twin(36, 910), ("door",)),)),
    Column("bottom", "Sill", "above the floor", "length", needed_for=("window",), wide=10),
    Column("top", "Top", "above the floor", "length", positive=True, needed_for=("window",), defaults=(DOOR_TOP,),
           wide=10),
    Column("opens", "Opens", "choose", "choice", choices=("in", "out", "slides", "no leaf")),
    Column("hinge", "Hinge", "seen from inside", "choice", choices=("left", "right")),
    Column("entry", "Front door", "of the home", "yes-no", wide=9),
    Column("outside", "Outside wall", "in one?", "yes-no", wide=9),
    Column("blind", "Blind", "there is one?", "yes-no", wide=9),
    Column("cord", "Cord", "free length", "length", wide=9),
    Column("overlooked", "Overlooked", "seen from outside?", "yes-no"),
    Column("escape", "Escape", "a way out in a fire?", "yes-no"),
    ROOM,
)  # fmt: skip

CURTAINS = (
    Column("name", "Name", "yours, or leave empty", "text", wide=18),
    Column("window", "Window", "from Openings", "name", needed=True, names=("openings",), wide=16),
    Column("rod_height", "Rod height", "above the floor", "length", needed=True, positive=True),
    Column("rod_from_left", "Rod from left", "corner to its left end", "length", needed=True, wide=12),
    Column("rod_width", "Rod width", "end to end", "length", needed=True, positive=True),
    Column("panel_width", "Panel width", "one panel, flat", "length", needed=True, positive=True),
    Column("hem", "Hem", "above the floor", "length", needed=True, negative=True, wide=12),
    Column("panels", "Panels", "empty = 2", "count", wide=9),
    Column("heading", "Heading", "how it hangs", "choice", choices=("eyelet", "tab", "pocket", "wave", "pleat")),
    Column("cloth", "Cloth", "choose", "choice", choices=("sheer", "lined", "blackout")),
    Column("length", "Reaches to", "choose", "choice", choices=("floor", "sill", "apron")),
    Column("stack", "Open stack", "pushed open, each side", "length", wide=12),
    Column("also_window", "Also across", "a second window", "name", names=("openings",), wide=14),
    ROOM,
)

MARKS = ("pin hole", "plug hole", "scuff", "strip left", "painted patch", "stain")
MARK_COLUMNS = (
    Column("what", "What", "choose", "choice", needed=True, choices=MARKS, wide=14),
    WALL,
    Column("from_left", "From left", "corner to left edge", "length", needed=True, wide=12),
    Column("bottom", "Height", "above the floor", "length", needed=True, wide=12),
    Column("things", "How many", "empty = 1", "count", wide=10),
    Column("width", "Size", "across all; empty = small", "length", positive=True, wide=14),
    ROOM,
)

WHAT_HANGS = ("picture", "mirror", "screen", "shelf", "sconce", "picture light", "alarm", "clock", "old holes")
FIXINGS = ("nail", "screws", "strips", "strap", "none", "unknown")

PICTURES = (
    NAME,
    Column("what", "What", "choose", "choice", needed=True, choices=WHAT_HANGS, wide=12),
    WALL,
    Column("from_left", "From left", "corner to left edge", "length", needed=True, wide=10),
    Column("width", "Width", "outer edges", "length", needed=True, positive=True, unless="diagonal", wide=10),
    Column("height", "Height", "outer edges", "length", needed=True, positive=True, unless="diagonal", wide=10),
    Column("bottom", "Bottom edge", "above the floor", "length", needed=True, wide=12),
    Column("diagonal", "Diagonal", "of a screen, instead", "length", positive=True, model=False, wide=13),
    Column("over", "Hangs over", "a piece of furniture", "name", names=("furniture",), wide=14),
    Column("on", "Stands on", "a piece of furniture", "name", names=("furniture",), wide=14),
    Column("group", "Group", "same word = one group", "text", wide=18),
    Column("depth", "Stands out", "from the wall", "length", wide=10),
    Column("leaned", "Leaned", "not hung?", "yes-no", wide=9),
    Column("weight", "Weight", "kilograms", "number", wide=9),
    Column("fixing", "Held by", "choose", "choice", choices=FIXINGS, wide=10),
    Column("feet", "Feet", "a screen's, outer edges", "length", positive=True, wide=12),
    Column("personal", "Personal", "family photograph, name?", "yes-no", wide=12),
    Column("cables", "Cables", "longest loop below a screen", "length", wide=12),
    Column("things", "Holes", "how many old ones", "count", wide=9),
    ROOM,
)
