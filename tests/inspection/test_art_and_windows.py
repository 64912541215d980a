"""What picture and window rules look at: clear spans, rows, the wall beside a frame."""

from __future__ import annotations

from budgetfix.inspection.art import clear_of, group_names, group_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.windows import at_window, dressed, glass
from budgetfix.room.items import Curtain, Hung, Opening, Piece
from budgetfix.room.survey import RoomFacts, Survey, Wall

ROOM = Survey(
    rooms=(RoomFacts(),),
    walls=tuple(Wall(wall=w, length=size) for w, size in zip("ABCD", (4000.0, 5000.0) * 2, strict=True)),
    openings=(Opening(name="win", what="window", wall="C", from_left=200.0, width=1000.0, bottom=900.0, top=2100.0),),
    curtains=(
        Curtain(
            name="c",
            window="win",
            rod_height=2200.0,
            rod_from_left=0.0,
            rod_width=1500.0,
            panel_width=1000.0,
            hem=10.0,
            stack=300.0,
        ),
    ),
    furniture=(
        Piece(name="tall", what="bookcase", wall="C", from_left=3400.0, width=600.0, depth=300.0, height=2000.0),
        Piece(name="low", what="sideboard", wall="C", from_left=1900.0, width=900.0, depth=300.0, height=800.0),
    ),
    pictures=(
        Hung(name="a", wall="C", from_left=2000.0, width=300.0, height=400.0, bottom=1300.0, group="row"),
        Hung(name="b", wall="C", from_left=2360.0, width=300.0, height=400.0, bottom=1310.0, group="row"),
    ),
)


def test_the_clear_span_runs_from_the_open_cloth_to_the_tall_piece() -> None:
    """Not between the corners: the cloth ends at 1500, the bookcase starts at 3400, the low piece is under it all."""
    look = Look(ROOM, "")
    group = group_of(look, "row")
    assert group is not None
    assert group_names(look) == ("row",)
    assert clear_of(look, group) == (1500.0, 3400.0)


def test_a_dressed_window_with_its_rod() -> None:
    """The window that has a rod, and the stretch of frame that it serves."""
    look = Look(ROOM, "")
    assert dressed(look) == ("win",)
    found = at_window(look, "win")
    assert found is not None
    assert glass(look, *found) == (200.0, 1200.0)
