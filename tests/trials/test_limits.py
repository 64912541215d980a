"""The limits in the gate: fewer jobs, all refusals, no clock; and the trial is shown to catch what is planted."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from budgetfix.base import limits
from budgetfix.framing import frame
from budgetfix.intake import how_much
from budgetfix.optimize import digits
from budgetfix.pipeline.reading import JobOptions, read
from tests.trials.limits import SMALL, run
from tests.trials.limits_exact import tried
from tests.trials.limits_jobs import AXES, Axis
from tests.trials.limits_refused import LIMITS, TODAY, at_the_edge
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

PAGE = Path(__file__).parents[2] / "reports" / "what-we-promise.md"


def always(answer: object) -> Callable[..., object]:
    """Gives one answer to everything."""
    return lambda *_: answer


def test_limits_hold(tmp_path: Path) -> None:
    """Small jobs with the largest figures have the best of all plans, and what is too large is refused."""
    result = run(Asked(SEED, SMALL, tmp_path, 1))
    assert result.broken == ()
    assert sum(row.tried for row in result.rows) == SMALL + len(LIMITS)
    assert promises(PAGE.read_text("utf-8"), "limits") == tuple(row.promise for row in result.rows)


def test_large_figures_that_go_to_the_solver_as_they_are_are_caught(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Planted: nothing is written in digits. In job 7/47 the solver then claims what does not come out again."""
    monkeypatch.setattr(digits, "large", always(False))
    assert "can be placed after all" in tried(tmp_path / "job", 7, 47).words


def test_one_minor_unit_too_much_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: the tool believes in a budget that is one minor unit larger. A plan that is over it by one is seen."""
    real = frame._for_remedies
    monkeypatch.setattr(frame, "_for_remedies", lambda brief: None if (most := real(brief)) is None else most + 1)
    words = tried(tmp_path / "job", 7, 15).words
    assert "spent 238150000001 of 238150000000" in words


def test_a_limit_that_is_not_looked_at_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Planted: sums of everything together have no end. The refusal is missed."""
    monkeypatch.setattr(how_much, "job_too_dear", always([]))
    monkeypatch.setattr("budgetfix.intake.job.job_too_dear", always([]))
    (limit,) = (one for one in LIMITS if one.most == limits.MOST_ALL_MINOR)
    assert "exit" in at_the_edge(tmp_path / "edge", limit).words[0]


@pytest.mark.parametrize("axis", AXES, ids=lambda axis: axis.write.__name__)
def test_jobs_at_the_limits_can_be_read(axis: Axis, tmp_path: Path) -> None:
    """The jobs that are timed are sound: a large one of each kind is read, without a problem."""
    axis.write(tmp_path, axis.size if axis.size > 10**5 else max(2, axis.size // 8))
    job = read(tmp_path, JobOptions(), TODAY)
    assert job.faults or (job.survey is not None and job.survey.rooms)
