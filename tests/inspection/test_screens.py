"""How large a screen is, and what stands beside its bench."""

from __future__ import annotations

import pytest

from budgetfix.inspection.look import Look
from budgetfix.inspection.screens import beside, diagonal_of
from budgetfix.room.items import Hung
from tests.inspection.rooms import room

BENCH = {"name": "bench", "what": "cabinet", "plan": (1500.0, 0.0, 1000.0, 400.0), "height": 500.0, "faces": "C"}


@pytest.mark.parametrize(
    ("width", "height", "diagonal"),
    [(1600.0, 900.0, 1835.76), (1600.0, 0.0, 1835.76), (1600.0, 1000.0, 1835.76), (800.0, 600.0, 1000.0)],
)
def test_the_diagonal_of_a_screen(width: float, height: float, diagonal: float) -> None:
    """16:9 by its width, with its foot or where nobody measured its height; a 4:3 set of 800 x 600 is 1,000."""
    screen = Hung(name="tv", what="screen", wall="A", width=width, height=height)
    assert diagonal_of(screen) == pytest.approx(diagonal, abs=0.01)


@pytest.mark.parametrize(
    ("plan", "seen"),
    [
        ((900.0, 0.0, 500.0, 300.0), True),
        ((2600.0, 0.0, 500.0, 300.0), True),
        ((900.0, 390.0, 500.0, 300.0), True),
        ((900.0, 410.0, 500.0, 300.0), False),
        ((900.0, 0.0, 650.0, 300.0), False),
        ((800.0, 0.0, 60.0, 300.0), False),
    ],
)
def test_what_counts_as_beside(plan: tuple[float, float, float, float], seen: bool) -> None:
    """To either side, behind the bench's front edge; not before it, not under it, not farther than 610 mm (24 in)."""
    box = {"name": "box", "what": "cabinet", "plan": plan, "height": 600.0, "faces": "C"}
    look = Look(room("mm", (4000.0, 5000.0), {"ceiling": 2500.0, "furniture": [BENCH, box]}), "r")
    bench = look.piece("bench")
    assert bench is not None
    assert bool(beside(look, "A", bench, 610.0)) is seen
