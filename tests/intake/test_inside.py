"""Blocks read part by part: everything that is wrong in them is told at once."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.base.problems import FileProblem
from budgetfix.intake.brief_over import Over
from budgetfix.intake.brief_yaml import brief_row, read_brief
from budgetfix.intake.inside import Gathered, Inside
from budgetfix.intake.reader import as_text, as_whole


def told(folder: Path, text: str) -> list[str]:
    """Where the problems of a brief are, and what was found there."""
    path = folder / "brief.yaml"
    path.write_text(text, encoding="utf-8")
    problems: list[FileProblem] = []
    row = brief_row(path, {}, Over(), problems)
    read_brief(row, problems, date(2026, 6, 1), "cm", {"rod-too-narrow": "mm"})
    return [f"{problem.place.label} {problem.found}" for problem in sorted(problems)]


def test_every_part_is_told() -> None:
    """Two of three parts cannot be read: both are told, with their keys, and the third is read all the same."""
    parts = Gathered()
    assert parts.at("people", "many", 1, as_whole) == 1
    assert parts.at("name", " Van ", "", as_text) == "Van"
    assert parts.at("minutes", -1, 0, as_whole) == 0
    with pytest.raises(Inside) as raised:
        parts.end()
    assert [(part.keys, part.found) for part in raised.value.parts] == [(("people",), "many"), (("minutes",), -1)]


def test_a_misspelled_key_is_one_mistake() -> None:
    """Beside a key that nobody knows a missing value is not told: it stands there, most likely."""
    parts = Gathered()
    parts.only({"minuets": 5}, ("minutes",))
    assert parts.at("minutes", None, 0, as_whole) == 0
    with pytest.raises(Inside) as raised:
        parts.end()
    assert [part.found for part in raised.value.parts] == ["minuets"]


def test_nothing_wrong() -> None:
    """Then the end is no end."""
    parts = Gathered()
    assert parts.of(lambda: Fraction(1, 2), Fraction(0)) == Fraction(1, 2)
    parts.end()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "hours:\n- {date: 2026-06-06,\n   start: noon}\n- {date: soon,\n   hours: -1}\n- {hours: long}\n",
            ["line 2 nothing", "line 3 'noon'", "line 4 'soon'", "line 5 -1", "line 6 'long'"],
        ),
        (
            "vans:\n  out: {date: soon,\n    from: '9',\n    to: noon, cost: -1}\n  back: {date: 5, from: '09:00',\n"
            "    to: '10:00', load_kg: x}\n",
            ["line 2 'soon'", "line 3 '9'", "line 4 'noon'", "line 4 -1", "line 5 5", "line 6 'x'"],
        ),
        ("fixed:\n- {people: 0,\n   minutes: -1}\n- {cost: x}\n", ["line 2 0", "line 3 -1", "line 4 'x'"]),
        ("stay: {from: soon,\n  until: later,\n  turnaround: -1}\n", ["line 1 'soon'", "line 2 'later'", "line 3 -1"]),
        ("photographs: {date: soon,\n  at: noon}\n", ["line 1 'soon'", "line 2 'noon'"]),
        (
            "money:\n- {date: soon,\n   amount: -1}\n- {session: 0, amount: 5}\n",
            ["line 2 'soon'", "line 3 -1", "line 4 0"],
        ),
        (
            "money: {from: soon,\n  monthly: -1,\n  months: 0}\n",
            ["line 1 'soon'", "line 2 -1", "line 3 0"],
        ),
        ("errands:\n- {hours: -1,\n   people: 0}\n", ["line 2 -1", "line 3 0"]),
        (
            "people:\n  ann: {not: {a: 1},\n    priorities: {b: 4}}\n  ben: {priorities: {c: x}}\n",
            ["line 2 a block of keys", "line 3 4", "line 4 'x'"],
        ),
        ("bands: {rod-too-narrow: {sound: [1],\n  glaring: x}}\n", ["line 1 a list", "line 2 'x'"]),
    ],
)  # fmt: skip
def test_everything_in_a_block_at_once(tmp_path: Path, text: str, said: list[str]) -> None:
    """Each wrong value of a block is told at its own line, whatever else in the block is wrong."""
    assert told(tmp_path, text) == said
