"""The limits in the gate: fewer jobs, all refusals, no clock; and the trial is shown to catch what is planted."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.optimize import answering, digits
from budgetfix.optimize.search import Search
from tests.trials.limits import SMALL, run
from tests.trials.limits_exact import tried
from tests.trials.trial import Asked

SEED = 20_261_126


def test_large_sums_are_exact(tmp_path: Path) -> None:
    """Thirty small jobs with the largest figures: the tool's plan is the best of all plans, to the unit."""
    result = run(Asked(SEED, SMALL, tmp_path, 1))
    assert result.broken == ()
    assert sum(row.tried for row in result.rows) >= SMALL


def test_figures_handed_over_as_they_are_are_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: large figures go to the solver as they are, and nothing is counted again. The trial sees it."""
    monkeypatch.setattr(digits, "large", lambda program, objective: False)
    monkeypatch.setattr(Search, "_wrong", lambda search, chosen: ())
    monkeypatch.setattr(answering, "_check", lambda search, best, plan: None)
    found = [one for number in range(60) if (one := tried(tmp_path / str(number), 7, number)).words]
    assert found
