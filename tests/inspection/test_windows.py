"""The wall beside a window that its rod can have, to the left and to the right alike."""

from __future__ import annotations

from typing import Any

import pytest

from budgetfix.inspection.look import Look
from budgetfix.inspection.windows import at_window, dressed, glass, wall_beside
from budgetfix.room.survey import Survey
from tests.inspection.rooms import room, seen

FIRST = {"name": "first", "what": "window", "wall": "B", "from_left": 1000.0, "width": 800.0, "bottom": 900.0,
         "top": 2100.0}  # fmt: skip
SECOND = {**FIRST, "name": "second", "from_left": 2400.0, "width": 1000.0}
CLOTH = {"name": "cloth", "window": "first", "rod_height": 2200.0, "rod_from_left": 900.0, "rod_width": 1000.0,
         "panel_width": 900.0, "hem": 10.0, "stack": 200.0}  # fmt: skip


def dressed_wall(cloths: tuple[dict[str, Any], ...] = (CLOTH,), **things: Any) -> Survey:
    """Two windows in wall B, which is 5 m long: 1 m, a window of 800, 600 between, one of 1,000, 1,600 to the end."""
    return room(
        "mm", (4000.0, 5000.0), {"ceiling": 2500.0, "openings": [FIRST, SECOND], "curtains": list(cloths), **things}
    )


def sides(survey: Survey, name: str) -> tuple[float, float]:
    """Wall left and right of the frame, or frames, of a rod."""
    look = Look(survey, "r")
    found = at_window(look, name)
    assert found is not None
    return wall_beside(look, *found, glass(look, *found))


OTHER = {**CLOTH, "name": "other", "window": "second", "rod_from_left": 2300.0}


def test_a_neighbour_ends_the_wall_on_either_side() -> None:
    """600 between the frames: all of it beside a bare window, half of it where both have rods."""
    assert sides(dressed_wall((CLOTH,)), "first") == pytest.approx((1000.0, 600.0))
    assert sides(dressed_wall((OTHER,)), "second") == pytest.approx((600.0, 1600.0))
    assert sides(dressed_wall((CLOTH, OTHER)), "first") == pytest.approx((1000.0, 300.0))
    assert sides(dressed_wall((CLOTH, OTHER)), "second") == pytest.approx((300.0, 1600.0))


def test_a_rod_across_two_windows_serves_all_of_their_frames() -> None:
    """From the left one's left to the right one's right; a window of another wall is none of its own."""
    across = dressed_wall(({**CLOTH, "also_window": "second"},))
    look = Look(across, "r")
    found = at_window(look, "first")
    assert found is not None
    assert glass(look, *found) == (1000.0, 3400.0)
    assert sides(across, "first") == pytest.approx((1000.0, 1600.0))
    round_the_corner = Look(seen(across, "second", wall="C"), "r")
    there = at_window(round_the_corner, "first")
    assert there is not None
    assert glass(round_the_corner, *there) == (1000.0, 1800.0)


def test_a_window_needs_a_rod_and_a_wall() -> None:
    """Without a rod, without a window of that name, or at a wall that the room does not have, there is nothing."""
    look = Look(dressed_wall(), "r")
    assert (at_window(look, "second"), at_window(look, "third"), dressed(look)) == (None, None, ("first",))
    nowhere = Look(seen(dressed_wall(), "first", wall="Z"), "r")
    assert (at_window(nowhere, "first"), dressed(nowhere)) == (None, ())
    astray = Look(dressed_wall(({**CLOTH, "window": "third"},)), "r")
    assert (at_window(astray, "third"), dressed(astray)) == (None, ())


@pytest.mark.parametrize(("height", "left"), [(900.0, 1000.0), (1000.0, 200.0)])
def test_a_piece_beside_a_window_ends_the_wall_where_it_tops_the_sill(height: float, left: float) -> None:
    """A chest that ends 200 left of the frame, flat against the wall: as high as the sill, or 100 higher."""
    chest = {"name": "chest", "what": "cabinet", "plan": (0.0, 300.0, 400.0, 500.0), "height": height, "faces": "D"}
    assert sides(dressed_wall(furniture=[chest]), "first") == pytest.approx((left, 600.0))
