"""`learn`, `pace` and the minutes before `load`, as the brief says them."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from pathlib import Path

from budgetfix.base.problems import FileProblem
from budgetfix.brief.models import Brief
from budgetfix.intake.brief_over import Over
from budgetfix.intake.brief_pace import check_pace
from budgetfix.intake.brief_yaml import brief_row, read_brief

KINDS = ("longer-rod", "strap")
VAN = "vans: {out: {date: 2026-06-04, from: '09:00', to: '11:00'}}\n"


def read(folder: Path, text: str) -> tuple[Brief, list[str]]:
    """A brief and its problems as people read them, names held against two kinds."""
    (folder / "brief.yaml").write_text(text, encoding="utf-8")
    problems: list[FileProblem] = []
    row = brief_row(folder / "brief.yaml", {}, Over(), problems)
    brief = read_brief(row, problems, date(2026, 6, 1), "mm", {})
    check_pace(row, brief, KINDS, problems)
    return brief, [str(problem) for problem in sorted(problems)]


def test_nothing_said(tmp_path: Path) -> None:
    """Real minutes are learnt from, and everything takes its usual minutes."""
    brief, problems = read(tmp_path, "currency: EUR\n")
    assert (brief.learn, brief.pace, problems) == (True, (), [])


def test_paces_and_no_learning(tmp_path: Path) -> None:
    """The household and single kinds, exactly; learning can be switched off."""
    brief, problems = read(tmp_path, "learn: off\npace: {all: 1.2, longer-rod: 1.5}\n")
    assert problems == []
    assert not brief.learn
    assert brief.pace == (("all", Fraction(6, 5)), ("longer-rod", Fraction(3, 2)))


def test_what_is_wrong_is_told_in_its_place(tmp_path: Path) -> None:
    """A pace beyond the limits, a word for a number, a kind that nobody knows, a switch that is neither on nor off."""
    wanted = "wanted times the usual minutes, from 0.5 to 2, such as {all: 1.2, longer-rod: 1.5}"
    _, problems = read(tmp_path, "learn: perhaps\npace:\n  all: 3\n  strap: slow\n  longer-rod: 0.4\n")
    assert problems == [
        "brief.yaml [line 1] found 'perhaps', wanted yes or no",
        f"brief.yaml [line 3] found 3, {wanted}; all: it cannot be above 2",
        f"brief.yaml [line 4] found 'slow', {wanted}; strap: that is no number",
        f"brief.yaml [line 5] found 0.4, {wanted}; longer-rod: it cannot be below 1/2",
    ]
    _, problems = read(tmp_path, "pace: {all: 1, longerrod: 1.5}\n")
    advice = "did you mean longer-rod?"
    assert problems == [f"brief.yaml [line 1] found 'longerrod', wanted a kind of remedy, or all; {advice}"]


def test_minutes_before_load(tmp_path: Path) -> None:
    """Hours are kept as typed beside what of them may be planned; without a load the two are the same."""
    brief, _ = read(tmp_path, "hours: [4, 1.5]\nload: 0.85\n")
    assert brief.hours is not None
    assert [one.minutes for one in brief.hours] == [(204,), (76,)]
    assert [one.typed_minutes for one in brief.hours] == [(240,), (90,)]
    brief, _ = read(tmp_path, "hours: [4, 1.5]\n")
    assert brief.hours is not None
    assert [(one.minutes, one.before_load) for one in brief.hours] == [((240,), ()), ((90,), ())]
    assert brief.hours[0].typed_minutes == (240,)


def test_minutes_before_load_where_the_van_cuts(tmp_path: Path) -> None:
    """A session that the van's window and the photographs cut keeps its typed minutes in each part."""
    session = "hours: [{date: 2026-06-04, start: '09:00', hours: 5}]\nload: 0.5\n"
    cut = "photographs: {date: 2026-06-04, at: '13:00'}\n"
    brief, problems = read(tmp_path, session + VAN + cut)
    assert problems == []
    assert brief.hours is not None
    assert [(one.minutes, one.typed_minutes) for one in brief.hours] == [((60,), (120,)), ((60,), (120,))]
