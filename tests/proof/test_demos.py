"""The demo jobs held to their files, as far as that goes without looking at the rooms: money and hours."""

from __future__ import annotations

import json

import pytest

from budgetfix.exports.plan_json import plan_object
from tests.proof.checker import broken
from tests.proof.job_files import read_job
from tests.scenarios import DEMO, SCENARIOS, run


@pytest.mark.parametrize("name", SCENARIOS)
def test_demos_keep_what_can_be_checked(name: str) -> None:
    """Sums of money, fees and taxes of listed shops, and minutes by session."""
    plan = json.loads(json.dumps(plan_object(run(name).book, ())))
    assert broken(read_job(DEMO / name), plan) == []
    spoiled = {**plan, "spent_minor": plan["spent_minor"] + 1}
    assert broken(read_job(DEMO / name), spoiled) != []
