"""The lease of a brief: what is read, and every word that means nothing told in its own place."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from pathlib import Path

from budgetfix.base.problems import FileProblem
from budgetfix.brief.lease import Lease
from budgetfix.brief.models import Brief
from budgetfix.intake.brief_lease import check_lease
from budgetfix.intake.brief_over import Over
from budgetfix.intake.brief_yaml import brief_row, read_brief

FULL = """
limits: {holes: 8, kg: 40}
lease:
  forbids: [painting, longer-rod]
  holes: {plugs: 12, pins: 20}
  leave: {plugs: given, curtain rods: asked, m18: refused}
  reversible_first: yes
  ends: 2027-11-30
  undo: counted
  undo_hours: 2.5
  keep: {curtain: in the cellar, ceiling light: null}
"""
BROKEN = """
lease:
  forbids: [paintng, longer-rod]
  holes: {plugs: -1, nails: 3}
  leave: {plugs: maybe}
  reversible_first: perhaps
  ends: soon
  undo: later
  undo_hours: -2
  rent: 900
"""
UNKNOWN = """
lease:
  forbids: [paintng, longer-rod, strap/bookcase]
  leave: {plugs: given, blind: asked}
  keep: [curtian]
"""
WORDS = (
    "painting, plugs, pins, strips, things that peel off, drilling, holes in ceilings, screens on walls, "
    "shelves and rails, furniture fixed to walls, curtain rods, blinds, hard-wired lights, lampholders and shades"
)
WANTED = "wanted a lease such as {forbids: [painting], holes: {plugs: 12}, leave: {curtain rods: asked}}"


def read(folder: Path, text: str, check: bool = False) -> tuple[Brief, list[str]]:
    """A brief and its problems as people read them; `check`: against two kinds and one thing."""
    (folder / "brief.yaml").write_text(text, encoding="utf-8")
    problems: list[FileProblem] = []
    row = brief_row(folder / "brief.yaml", {}, Over(), problems)
    brief = read_brief(row, problems, date(2026, 6, 1), "mm", {})
    if check:
        check_lease(row, brief, ("longer-rod", "strap", "m18"), ("curtain",), problems)
    return brief, [str(problem) for problem in sorted(problems)]


def test_a_whole_lease(tmp_path: Path) -> None:
    """Each key lands in its field; things without a place are kept in the wardrobe; holes join the limits."""
    brief, problems = read(tmp_path, FULL)
    assert problems == []
    assert brief.lease == Lease(
        forbids=("painting", "longer-rod"),
        plugs=12,
        pins=20,
        leave=(("curtain rods", "asked"), ("m18", "refused"), ("plugs", "given")),
        reversible_first=True,
        ends=date(2027, 11, 30),
        undo="counted",
        undo_minutes=150,
        keep=(("ceiling light", "in the wardrobe"), ("curtain", "in the cellar")),
    )
    assert brief.limits == (
        ("holes", Fraction(8)), ("kg", Fraction(40)), ("minutes to undo", Fraction(150)), ("pins", Fraction(20)),
    )  # fmt: skip


def test_no_lease(tmp_path: Path) -> None:
    """Without the section there is no lease, and no limit comes of it."""
    brief, problems = read(tmp_path, "budget: 10\n")
    assert (problems, brief.lease, brief.limits) == ([], None, ())


def test_what_cannot_be_read(tmp_path: Path) -> None:
    """Every wrong value of the section is told at once, each on its own line with what to do."""
    _, problems = read(tmp_path, BROKEN)
    assert problems == [
        f"brief.yaml [line 4] found -1, {WANTED}; a whole number, 0 or more",
        f"brief.yaml [line 4] found 'nails', {WANTED}; known here: plugs, pins",
        f"brief.yaml [line 5] found 'maybe', {WANTED}; one of: given, asked, refused",
        f"brief.yaml [line 6] found 'perhaps', {WANTED}; yes or no",
        f"brief.yaml [line 7] found 'soon', {WANTED}; a date such as 2026-06-06",
        f"brief.yaml [line 8] found 'later', {WANTED}; one of: shown, counted",
        f"brief.yaml [line 9] found -2, {WANTED}; hours cannot be below 0",
        f"brief.yaml [line 10] found 'rent', {WANTED}; known here: forbids, holes, leave, reversible_first, ends, "
        "undo, undo_hours, keep",
    ]


def test_words_of_another_shape(tmp_path: Path) -> None:
    """A list where pairs are wanted, and a word where a section is wanted, are told as such."""
    _, problems = read(tmp_path, "lease: {holes: 12, leave: [plugs], keep: {}}\n")
    assert problems == [
        f"brief.yaml [line 1] found 12, {WANTED}; holes by class such as {{plugs: 12, pins: 20}}",
        f"brief.yaml [line 1] found a list, {WANTED}; what the landlord said, such as "
        "{plugs: given, curtain rods: asked, blinds: refused}",
    ]
    assert read(tmp_path, "lease: none\n")[1] == [f"brief.yaml [line 1] found 'none', {WANTED}"]


def test_words_that_mean_nothing(tmp_path: Path) -> None:
    """A word that is no class, kind or remedy is refused with the words there are; an id that starts with a kind may
    be one that is still to be fitted. What is kept must be in the survey.
    """
    _, problems = read(tmp_path, UNKNOWN, check=True)
    wanted = f"wanted a kind, a remedy, or one of: {WORDS}"
    assert problems == [
        f"brief.yaml [line 3] found 'paintng', {wanted}; did you mean painting?",
        f"brief.yaml [line 4] found 'blind', {wanted}; did you mean blinds?",
        "brief.yaml [line 5] found 'curtian', wanted a thing of the survey; did you mean curtain?",
    ]
