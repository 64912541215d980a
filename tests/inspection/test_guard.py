"""The guard: a quarter worse at most; what is no worse than the room as it stands may stay."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.inspection.guard import too_much_worse, worse_than
from budgetfix.inspection.inspect import Seen
from tests.framing.small_jobs import measured_ground


def at(severity: str) -> Seen:
    """One finding of a room, this severe."""
    one = next(finding for seen in measured_ground().seen for finding in seen.findings)
    return Seen((replace(one, severity=Fraction(severity)),), ())


@pytest.mark.parametrize(("after", "forbidden"), [("0.5", False), ("0.75", False), ("0.76", True)])
def test_a_quarter_worse_at_most(after: str, forbidden: bool) -> None:
    """From one half, three quarters is the most (the guard of the trade page)."""
    assert too_much_worse(at("0.5"), at(after), ()) == forbidden
    assert too_much_worse(Seen((), ()), at("0.26"), ())
    assert not too_much_worse(at("0.5"), at(after), [at("0").findings[0].rule])


@pytest.mark.parametrize(("now", "after", "forbidden"), [("2", "2", False), ("2", "2.01", True), ("0", "0.75", False)])
def test_what_is_no_worse_than_now_may_stay(now: str, after: str, forbidden: bool) -> None:
    """Somebody left it far worse than it was: doing nothing is allowed, worse than that is not; nor is more forbidden
    where it is better now than it was.
    """
    assert bool(worse_than(at("0.5"), at(after), (), at(now))) == forbidden
