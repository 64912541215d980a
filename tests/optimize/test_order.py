"""What an option is worth when it alone is dropped from a set: what would come back."""

from __future__ import annotations

import pytest

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.order import Worths, worth
from budgetfix.optimize.problem import Option, Problem
from tests.optimize.worlds import Table, table_tree

OPTIONS = (Option("alarm"), Option("rug"), Option("lamp"))
LEFT: Table = {
    frozenset(): (10, 60),
    frozenset({"alarm"}): (0, 60),
    frozenset({"rug"}): (10, 25),
    frozenset({"lamp"}): (10, 40),
    frozenset({"alarm", "rug"}): (0, 25),
    frozenset({"alarm", "lamp"}): (0, 40),
    frozenset({"rug", "lamp"}): (14, 20),
    frozenset({"alarm", "rug", "lamp"}): (4, 20),
}
"""(hazard points, points) left: the lamp beside the rug brings a cable to trip over, 4 points of hazard."""


def found(*, hazards_first: bool) -> Worths:
    """What each of all three is worth."""
    tree = table_tree("t", OPTIONS, LEFT, ("alarm", "lamp", "rug"))
    problem = Problem(OPTIONS, (tree,), hazards_first=hazards_first)
    return worth(Facts.of(problem), Growth(problem), frozenset({"alarm", "rug", "lamp"}))


@pytest.mark.parametrize(
    ("hazards_first", "worths"),
    [
        (True, {"alarm": (10, 0), "lamp": (0, 5), "rug": (0, 20)}),
        (False, {"alarm": (0, 10), "lamp": (0, 1), "rug": (0, 16)}),
    ],
)
def test_what_would_come_back(hazards_first: bool, worths: Worths) -> None:
    """Without the rug 20 points come back and 4 of hazard go: 20 where hazards come first, 16 where all is one sum."""
    assert found(hazards_first=hazards_first) == worths
