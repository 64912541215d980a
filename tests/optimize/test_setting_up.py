"""Setting up in sessions of several parts."""

from __future__ import annotations

from budgetfix.optimize.problem import Placed, Problem, Session
from budgetfix.optimize.setting_up import set_up, setups, wholes

MORNING = Session(540, 550, (10, 10))
PARTS = (MORNING, Session(550, 660, (110, 50), continues=True), Session(660, 700, (40, 0), continues=True))
PROBLEM = Problem((), people=("ann", "ben"), sessions=(*PARTS, Session(2000, 2100, (100, 100))), setup_minutes=15)


def test_setting_up_goes_on_in_the_next_part() -> None:
    """A quarter of an hour, of which ten minutes lie before the van: five are left for the second part."""
    assert wholes(PROBLEM.sessions or ()) == (0, 0, 0, 1)
    assert setups(PROBLEM) == (15, 5, 0, 15)


def test_whoever_works_in_any_part_sets_up() -> None:
    """Ann works after the van only, and has set up before; Ben works on the other day only."""
    placed = (Placed("a", 0, 2, ("ann",)), Placed("b", 0, 3, ("ben",)))
    assert set_up(PROBLEM, placed) == (
        {"ann": 10, "ben": 0},
        {"ann": 5, "ben": 0},
        {"ann": 0, "ben": 0},
        {"ann": 0, "ben": 15},
    )
