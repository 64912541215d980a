"""Ways of a room in which something was surveyed without a wall of this room."""

from __future__ import annotations

from budgetfix.inspection.look import Look
from budgetfix.inspection.ways import piece_routes, targets, ways
from budgetfix.room.survey import Survey
from tests.inspection.rooms import room, seen

IN = {"name": "in", "wall": "A", "from_left": 1600.0, "width": 800.0}
BED = {"name": "bed", "what": "bed", "plan": (1200.0, 1700.0, 1600.0, 1600.0), "height": 500.0}


def bedroom() -> Survey:
    """A door, a bed in the middle of the floor, a door behind it."""
    openings = [IN, {**IN, "name": "out", "wall": "C"}]
    return room("mm", (4000.0, 5000.0), {"ceiling": 2500.0, "openings": openings, "furniture": [BED]})


def test_a_bed_without_a_place_is_no_target_and_no_obstacle() -> None:
    """Where the bed stands a way leads to it, and beside it 1,200 mm are left; of a wall that is not there, neither."""
    there, nowhere = Look(bedroom(), "r"), Look(seen(bedroom(), "bed", wall="Z"), "r")
    assert [route.name for route in piece_routes(there)] == ["in to bed"]
    assert ways(there).between("in", "out").width_mm == 1200.0
    assert (targets(nowhere), piece_routes(nowhere)) == ((), ())
    assert ways(nowhere).between("in", "out").width_mm > 1200.0


def test_a_door_without_a_place_is_no_door() -> None:
    """A door at a wall that this room does not have starts no way, and without doors there are no ways at all."""
    only_out = Look(seen(bedroom(), "in", wall="Z"), "r")
    assert [route.name for route in piece_routes(only_out)] == ["out to bed"]
    assert piece_routes(Look(seen(seen(bedroom(), "in", wall="Z"), "out", wall="Z"), "r")) == ()
