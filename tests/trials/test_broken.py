"""A few broken jobs; that the trial sees what it looks for; and anything that a person could type, by hypothesis."""

from __future__ import annotations

from pathlib import Path

from tests.trials.broken import TRIAL
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

PAGE = Path(__file__).parents[2] / "reports" / "what-we-promise.md"


def test_a_few_broken_jobs(tmp_path: Path) -> None:
    """No traceback, no silent reading, nothing written; the page promises what is tried, word for word."""
    found = TRIAL.run(Asked(SEED, TRIAL.small, tmp_path))
    assert found.broken == ()
    assert all(row.tried for row in found.rows)
    assert promises(PAGE.read_text("utf-8"), TRIAL.slug) == tuple(row.promise for row in found.rows)
