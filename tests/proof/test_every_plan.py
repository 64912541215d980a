"""Two hundred random jobs, every feature on, against every subset and every placing, in all keys of the wishes."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from budgetfix.cli.app import app
from tests.proof.checker import broken
from tests.proof.comparing import differences
from tests.proof.every_plan import best_plan
from tests.proof.job_files import read_job
from tests.proof.random_jobs import write
from tests.proof.random_vans import FROM

JOBS = 200
PARTS = 20
VAN_JOBS = 120


@pytest.mark.parametrize("part", range(PARTS))
def test_random_jobs_equal_trying_everything(tmp_path: Path, part: int) -> None:
    """Whatever is drawn, the plan is the one that trying everything finds, and it keeps every promise."""
    wrong = {number: differences(tmp_path / str(number), number) for number in range(part, JOBS, PARTS)}
    assert {number: words for number, words in wrong.items() if words} == {}


@pytest.mark.parametrize("part", range(PARTS))
def test_jobs_with_a_van_equal_trying_everything(tmp_path: Path, part: int) -> None:
    """The same with stock, hire, a van that cuts a session, its load, and photographs."""
    numbers = range(FROM + part, FROM + VAN_JOBS, PARTS)
    wrong = {number: differences(tmp_path / str(number), number) for number in numbers}
    assert {number: words for number, words in wrong.items() if words} == {}


@pytest.mark.parametrize("number", range(300, 312))
def test_the_command_line_tells_the_same(tmp_path: Path, number: int) -> None:
    """The command ends with 0 and a plan that keeps every promise, or with 1 where trying everything finds none."""
    write(tmp_path, number)
    job = read_job(tmp_path)
    best = best_plan(job)
    ran = CliRunner().invoke(app, ["plan", str(tmp_path), "--json"])
    assert ran.exit_code == (1 if best is None else 0)
    if best is None:
        assert ran.stdout == ""
    else:
        plan = json.loads(ran.stdout)
        assert broken(job, plan) == []
        assert sorted(one["id"] for one in plan["chosen"]) == [*best.chosen]
