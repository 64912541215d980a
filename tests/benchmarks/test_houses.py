"""The houses of one room through the whole walk, and the page that tells how published instances came out."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.benchmarks.instance_table import Result, summary
from tests.benchmarks.instances import Instance, found
from tests.benchmarks.run_instances import run

HOUSES = Path(__file__).parent / "houses"
SECONDS = 8.0
"""For choosing, of which these houses need less than one; what is worked out besides gets its share of them."""
SMALL = tuple(one for family in found([HOUSES]) for one in family.instances if "_01rooms_" in one.name)


@pytest.mark.parametrize("house", SMALL, ids=[one.name for one in SMALL])
def test_a_house_of_one_room(house: Instance) -> None:
    """45 remedies or so in three or six sessions: points and least spend as a separate program proved them."""
    result = run(house, SECONDS)
    assert (result.reached, result.code) == (house.reference, 0)


def test_there_are_houses_of_each_size() -> None:
    """Four houses of one room, two each of 4, 8 and 32."""
    names = [one.name for family in found([HOUSES]) for one in family.instances]
    assert [sum(f"_{size}rooms_" in name for name in names) for size in ("01", "04", "08", "32")] == [4, 2, 2, 2]


def test_the_summary_tells_what_was_not_reached() -> None:
    """Reached and proven counts; without proof only where that is allowed and the exit code says stopped."""
    rows = (
        Result("bins", "a", "5", "5", 4, False, 1.0, True),
        Result("lines", "b", "5", "5", 4, False, 1.0, False),
        Result("lines", "c", "5", "6", 0, True, 1.0, False),
        Result("lines", "d", "5", "5", 0, True, 1.0, False),
    )
    assert [one.good for one in rows] == [True, False, False, True]
    assert summary(rows) == (
        "3 of 4 reached, 1 proven. Reached without proof, as is allowed for them: bins a. "
        "Not reached, or not proven where that is asked for: lines b, lines c."
    )
