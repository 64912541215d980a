"""What the command line says over a brief: so much more money, one session more, another file."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from budgetfix.base.problems import FilesRefused
from budgetfix.brief.models import Brief
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, one_each, write_job

DATED = [{"date": "2026-06-06", "hours": 3}, {"date": "2026-06-20", "hours": 2}]


def brief(folder: Path, options: JobOptions, **wishes: object) -> Brief:
    """The brief of a small job with these wishes, under these options."""
    write_job(folder, [100], one_each([100], [10]), wishes)
    return read(folder, options, TODAY).brief


def told(folder: Path, options: JobOptions, **wishes: object) -> list[str]:
    """The problems that reading it gives."""
    with pytest.raises(FilesRefused) as refused:
        brief(folder, options, **wishes)
    return [str(problem) for problem in refused.value.problems]


def test_more_money(tmp_path: Path) -> None:
    """+12.50 over a budget of 40 is 52.50; a plain sum stands for the budget."""
    assert brief(tmp_path, JobOptions(budget="+12.50"), budget=40).budget_minor == 5250
    assert brief(tmp_path, JobOptions(budget="12.50"), budget=40).budget_minor == 1250


def test_more_money_needs_a_budget(tmp_path: Path) -> None:
    """Without a budget there is nothing to add to, and words are no sum."""
    wanted = "wanted a sum such as +100, over a budget that the brief names"
    assert told(tmp_path, JobOptions(budget="+100")) == [
        f"--budget found '+100', {wanted}; give the whole sum instead",
    ]
    assert told(tmp_path, JobOptions(budget="+1,5"), budget=40) == [
        f"--budget found '+1,5', {wanted}; write a point, not a comma: 1.5",
    ]


def test_a_session_among_dated_ones(tmp_path: Path) -> None:
    """A date finds its place in time; without a date it comes last."""
    found = brief(tmp_path, JobOptions(session="2026-06-14=4.5"), hours=DATED).hours
    assert found is not None
    assert [(one.on, one.minutes) for one in found] == [
        (date(2026, 6, 6), (180,)), (date(2026, 6, 14), (270,)), (date(2026, 6, 20), (120,)),
    ]  # fmt: skip
    plain = brief(tmp_path, JobOptions(session="2"), hours=[4, 3]).hours
    assert plain is not None
    assert [one.minutes for one in plain] == [(240,), (180,), (120,)]


def test_a_session_over_typed_hours(tmp_path: Path) -> None:
    """--hours and --session together: the list as typed, and one more."""
    found = brief(tmp_path, JobOptions(hours="4,3", session="1"), hours=[9]).hours
    assert found is not None
    assert [one.minutes for one in found] == [(240,), (180,), (60,)]


def test_a_session_that_is_none(tmp_path: Path) -> None:
    """What is no hours, no date, or comes on top of no limit is told."""
    wanted = "wanted hours such as 4, or a date and hours such as 2026-06-14=4"
    assert told(tmp_path, JobOptions(session="Sunday=4"), hours=[4]) == [
        f"--session found 'Sunday=4', {wanted}; a date such as 2026-06-06",
    ]
    assert told(tmp_path, JobOptions(session="long"), hours=[4]) == [
        f"--session found 'long', {wanted}; hours are a number such as 3.5",
    ]
    assert told(tmp_path, JobOptions(session="4")) == [
        "--session found '4', wanted a list of hours in the brief, to which a session can be added",
    ]


def test_problems_keep_their_lines(tmp_path: Path) -> None:
    """What was wrong in the brief's own hours is still told by its own line, behind the new session too."""
    lines = ("currency: USD", "hours:", "- {date: 2026-06-06, hours: 3}", "- {date: 2026-06-20, hours: -2}")
    write_job(tmp_path, [100], one_each([100], [10]), {})
    (tmp_path / "brief.yaml").write_text("\n".join(lines), encoding="utf-8")
    with pytest.raises(FilesRefused) as refused:
        read(tmp_path, JobOptions(session="2026-06-10=1"), TODAY)
    assert [str(problem) for problem in refused.value.problems] == [
        "brief.yaml [line 4] found -2, wanted hours such as [4, 3], or [{date: 2026-06-06, start: '09:00', "
        "people: {ann: 3}}], or null; hours cannot be below 0",
    ]


def test_another_brief(tmp_path: Path) -> None:
    """Another file stands for the job's own brief."""
    other = tmp_path / "dear.yaml"
    other.write_text("currency: USD\nbudget: 77\n", encoding="utf-8")
    assert brief(tmp_path, JobOptions(brief=other), budget=40).budget_minor == 7700
