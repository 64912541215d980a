"""YAML with lines."""

from __future__ import annotations

import warnings
from datetime import date
from decimal import Decimal
from pathlib import Path

from budgetfix.intake.yaml_lines import YamlFile, load_yaml


def _load(tmp_path: Path, text: str) -> YamlFile:
    path = tmp_path / "brief.yaml"
    path.write_text(text, encoding="utf-8")
    return load_yaml(path)


def test_values_and_lines(tmp_path: Path) -> None:
    """Each value has its plain type and its line; money keeps what was typed."""
    file = _load(
        tmp_path, "unit: cm\nbudget: 12.50\nitems:\n  - {a: yes, b: true}\n  - when: 2026-06-06\n    at: '09'\n"
    )
    assert file.problems == []
    assert file.data == {
        "unit": "cm",
        "budget": 12.5,
        "items": [{"a": "yes", "b": True}, {"when": date(2026, 6, 6), "at": "09"}],
    }
    assert [file.line_of("budget"), file.line_of("items", 1, "at"), file.line_of("items", 1, "gone")] == [2, 6, 5]
    assert (file.text_of("budget"), file.decimal_of("budget"), file.decimal_of("unit")) == (
        "12.50",
        Decimal("12.50"),
        None,
    )
    assert str(file.place("items", 1, "at")) == "brief.yaml [line 6]"


def test_every_doubled_key_is_told(tmp_path: Path) -> None:
    """Doubled keys are refused, all of them at once, with both lines."""
    file = _load(tmp_path, "a: 1\nb: {c: 1, c: 2}\na: 2\n")
    assert [str(problem) for problem in file.problems] == [
        "brief.yaml [line 2] found 'c' twice (first on line 2), wanted each key once",
        "brief.yaml [line 3] found 'a' twice (first on line 1), wanted each key once",
    ]


def test_a_comma_in_braces(tmp_path: Path) -> None:
    """`{cost: 12,5}` would silently become cost 12: it is told as a comma."""
    file = _load(tmp_path, "paint: {cost: 12,5, pack: 2}\n")
    assert [str(problem) for problem in file.problems] == [
        "brief.yaml [line 1] found '12,5', wanted a point, not a comma: 12.5"
    ]


def test_program_numbers_stay_text(tmp_path: Path) -> None:
    """3_4.50, 0x10, 1e3 and .inf are not what a person means by a number, so readers see text."""
    file = _load(tmp_path, "a: 3_4.50\nb: 0x10\nc: 1e3\nd: .inf\ne: 010\nf: -.5\n")
    assert file.data == {"a": "3_4.50", "b": "0x10", "c": "1e3", "d": ".inf", "e": 10, "f": -0.5}


def test_json_is_yaml(tmp_path: Path) -> None:
    """A brief written as JSON is read the same."""
    assert _load(tmp_path, '{"budget": null, "hours": [3, 2.5]}').data == {"budget": None, "hours": [3, 2.5]}


def test_broken_files(tmp_path: Path) -> None:
    """A file that is no YAML, holds no keys, or no text gives one problem with a line; an empty one is empty."""
    assert _load(tmp_path, "a: 1\nb: [1, 2\n").problems[0].place.label == "line 3"
    assert _load(tmp_path, "- 1\n").problems[0].found == "no keys"
    assert _load(tmp_path, "a: &x\n  b: *x\n").problems[0].found == "a block that holds itself"
    assert _load(tmp_path, "\n# nothing\n") == YamlFile("brief.yaml")
    path = tmp_path / "bytes.yaml"
    path.write_bytes(b"a: \xff\xfe\n")
    assert load_yaml(path).problems[0].wanted == "a file saved as UTF-8"


def test_an_anchor_twice(tmp_path: Path) -> None:
    """YAML 1.2, 3.2.2.2: an anchor may stand again, and the later one counts; no library warns of it."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        file = _load(tmp_path, "a: &x 1\nb: &x 2\nc: *x\n")
    assert (file.data, file.problems) == ({"a": 1, "b": 2, "c": 2}, [])
