"""The columns of what stands on the floor, with the trade's usual sizes for what was not measured."""

from __future__ import annotations

from budgetfix.base.twin import Twin
from budgetfix.forms.column import Column, Default
from budgetfix.forms.wall_columns import ROOM
from budgetfix.room.items import HEATERS, SEATS, TABLES_TO_REACH, TALL

BENCHES = ("screen bench", "bench")
CHAIRS = ("dining chair", "desk chair")
BEDS = ("bed",)
OTHERS = ("dining table", "desk", "console", "basket", "plant", "coat rack", "floor mirror", "toy box", "fireplace")
PIECES = tuple(sorted({*SEATS, *HEATERS, *TALL, *TABLES_TO_REACH, *BENCHES, *CHAIRS, *BEDS, *OTHERS}))

SOFAS = ("sofa", "corner sofa", "loveseat")
ARMED = (*SOFAS, "armchair")

FURNITURE = (
    Column("name", "Name", "yours, used once", "text", needed=True, wide=16),
    Column("what", "What", "choose or write", "suggestion", needed=True, choices=PIECES, wide=16),
    Column("wall", "Nearest wall", "its letter", "wall", needed=True, wide=9),
    Column("from_left", "From left", "corner to left edge", "length", needed=True, wide=9),
    Column("width", "Width", "along its own back", "length", needed=True, positive=True, wide=8),
    Column("depth", "Depth", "front to back", "length", needed=True, positive=True, wide=8,
           defaults=(Default(Twin(36, 900), Twin(30, 760), Twin(42, 1070), SOFAS),)),
    Column("height", "Height", "to the very top", "length", needed=True, positive=True, wide=8,
           defaults=(Default(Twin(34, 850), Twin(26, 660), Twin(40, 1020), SOFAS),
                     Default(Twin(18, 450), Twin(14, 350), Twin(26, 660), BENCHES))),
    Column("gap", "Gap to wall", "empty = touches", "length", wide=8),
    Column("faces", "Faces", "a wall; empty = the room", "wall", wide=9),
    Column("seat", "Seat or top", "or mattress", "length", positive=True, wide=9,
           defaults=(Default(Twin(17, 430), Twin(14, 360), Twin(20, 510), SEATS),
                     Default(Twin(24, 600), Twin(16, 400), Twin(32, 810), BEDS))),
    Column("arm", "Arm", "arm above the floor", "length", positive=True, wide=8,
           defaults=(Default(Twin(24, 610), Twin(19, 480), Twin(29, 740), ARMED),)),
    Column("round", "Round", "any curve?", "yes-no", wide=7),
    Column("fixed", "Fixed", "to the wall?", "yes-no", wide=7),
    Column("heavy", "Heavy", "takes two?", "yes-no", wide=7),
    Column("weight", "Weight", "kilograms, if known", "number", wide=9),
    Column("main", "Main seat", "the one you use", "yes-no", wide=7),
    Column("at", "Belongs at", "its table, desk or bed", "name", names=("furniture",), wide=12),
    Column("tucked", "Pushed in", "under its table?", "yes-no", wide=8),
    Column("reading", "For reading", "a seat to read in?", "yes-no", wide=8),
    Column("headboard", "Headboard", "a bed's", "yes-no", wide=11),
    Column("sleepers", "Sleepers", "how many", "count", wide=9),
    Column("drawers", "Drawers", "pull out how far", "length", wide=9),
    Column("hangs", "Hangs", "off the floor?", "yes-no", wide=7),
    Column("surface", "Surface", "no = takes no cup", "yes-no", wide=8),
    Column("things", "Things", "how many on it", "count", wide=8),
    Column("cables", "Cables", "longest loop in view", "length", wide=8),
    Column("undressed", "Not made up", "a bed's, right now", "yes-no", wide=10),
    ROOM,
)  # fmt: skip
