"""At its own budget each demo job's plan is at least as good as what a practitioner would choose."""

from __future__ import annotations

import pytest

from budgetfix.catalog.bill import total_minor
from budgetfix.outcome.check import Checked
from tests.practitioner import CHOICES, judged, new_overlaps, planned_figures, walked
from tests.practitioner_page import HEAD, PAGE, section
from tests.scenarios import EACH, run, theirs

SPENT = {"renter": 44000, "stager": 221560, "couple": 36750}
"""What the practitioner's lists come to, added up by hand in the trade's own tables (common practice)."""
pytestmark = pytest.mark.slow


@EACH
def test_the_plan_is_at_least_as_good(name: str) -> None:
    """In the order of wishes, hazard points first, then points, the plan leaves no more than the practitioner."""
    assert run(name).book.proven
    assert planned_figures(name).wish <= judged(name, CHOICES[name]).wish


@EACH
def test_the_practitioners_bill(name: str) -> None:
    """Goods in whole packs, mark-up line by line, pay and fixed lines: to the penny what the trade's list says."""
    assert judged(name, CHOICES[name]).spent_minor == SPENT[name]


@EACH
def test_the_practitioners_choice_can_be_done(name: str) -> None:
    """It fits the money, the hours, the people and the floor, and the walk and the plain recount agree on it."""
    found, plain = walked(name), judged(name, CHOICES[name])
    assert isinstance(found, Checked)
    assert new_overlaps(name, CHOICES[name]) == []
    assert total_minor(found.bill) == plain.spent_minor
    assert sum(one.points for one in found.findings if one.safety) == plain.hazard_points
    looks = sum(one.points for one in found.findings if not one.safety)
    assert looks + sum(found.listed_after.values()) == plain.points
    assert {one.id for one in found.chosen} == set(CHOICES[name]) <= set(theirs(name))


@EACH
def test_the_page_is_fresh(name: str) -> None:
    """The page in `reports/` says about this job what is found today; `make reports` writes it anew."""
    said = PAGE.read_text(encoding="utf-8")
    assert said.startswith(HEAD), "practitioner.md is stale: make reports"
    assert section(name) in said, "practitioner.md is stale: make reports"
