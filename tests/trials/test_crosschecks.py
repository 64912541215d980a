"""A small cross-check, its promises on the page, and planted defects that every row of it must catch."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest

from tests.trials.crosschecks import TRIAL, run
from tests.trials.crosschecks_child import REPO, Came, same_object, unlike
from tests.trials.crosschecks_pythons import environment, loosely, oldest, others
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

PLAIN = Came(0, b'{"a": "\xc3\xa9"}\n', b"", {"brief.yaml": b"x", "plan.ics": b"BEGIN"})
PLANTED = """
import os, pathlib, sys

if sys.argv[0] == "-m":
    from budgetfix.exports import plan_csv
    from budgetfix.intake import csv_rows

    honest, lines = plan_csv.do_csv, csv_rows._lines
    typed = []

    def noted(text):
        typed.append("\\r" in text)
        return lines(text)

    def bent(book):
        around = {
            "seed": os.environ.get("PYTHONHASHSEED") != "0",
            "zone": os.environ.get("TZ") != "UTC",
            "language": os.environ.get("LC_ALL") != "C.UTF-8" or bool(os.environ.get("LANGUAGE")),
            "screen": sys.stdout.encoding != "utf-8" or os.environ.get("COLUMNS") != "80",
            "python": bool(sys.flags.optimize or sys.flags.dev_mode or not os.environ.get("HOME")),
            "solver": sys.modules.get("highspy", "") is None,
            "ends": any(typed),
            "place": not pathlib.Path.cwd().name.isdigit() and pathlib.Path.cwd().name != "plan --json",
        }
        return honest(book) + "".join(word for word, found in around.items() if found).encode()

    plan_csv.do_csv, csv_rows._lines = bent, noted
"""


@pytest.mark.slow
def test_a_few_tries_hold_and_the_page_tells_their_promises(tmp_path: Path) -> None:
    """One try of each promise; the page names these promises and no others."""
    result = run(Asked(SEED, TRIAL.small, tmp_path, lanes=2))
    assert result.broken == ()
    page = (REPO / "reports" / "what-we-promise.md").read_text(encoding="utf-8")
    assert promises(page, "crosschecks") == tuple(row.promise for row in result.rows)
    assert [row.tried for row in result.rows] == [1, 1, 0, *[1] * 7]
    assert result.rows[2].seen.startswith("NOT RUN: ")


@pytest.mark.slow
def test_a_defect_in_every_direction_is_caught(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A task list that depends on each of these surroundings, planted into the command: every row breaks, in words."""
    planted = tmp_path / "planted"
    planted.mkdir()
    (planted / "sitecustomize.py").write_text(PLANTED, encoding="utf-8")
    monkeypatch.setenv("PYTHONPATH", str(planted))
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setattr("tests.trials.crosschecks_answers.best_plan", lambda _: None)
    result = run(Asked(2, TRIAL.small, tmp_path / "work", lanes=2))
    assert [row.broken for row in result.rows] == [1, 1, 0, *[1] * 7]


def test_what_differs_is_told() -> None:
    """Nothing for equal runs; else the exit code, each file that is missing, new or other, and the streams."""
    assert unlike(PLAIN, PLAIN) == []
    other = Came(1, PLAIN.out, b"Traceback\nKeyError: 'rod'\n", {"brief.yaml": b"y", "do.csv": b""})
    assert unlike(PLAIN, other, typed=["brief.yaml"]) == [
        "exit code 1, not 0: KeyError: 'rod'",
        "do.csv is there too",
        "plan.ics is missing",
        "standard error differs from byte 0: b\"Traceback\\nKeyError: 'rod'\\n\", not b''",
    ]
    found = unlike(PLAIN, Came(0, b"", b"", {**PLAIN.files, "plan.ics": b"BEGUN"}), screen=False)
    assert found == ["plan.ics differs from byte 3: b'BEGUN', not b'BEGIN'"]


def test_objects_are_the_same_however_their_letters_are_written() -> None:
    """An escape says what the letter says; another value does not."""
    assert same_object(PLAIN, Came(0, b'{"a": "\\u00e9"}', b"", {})) == []
    assert same_object(PLAIN, Came(0, b'{"a": "e"}', b"", {})) == ["the printed object says something else"]
    assert same_object(PLAIN, Came(0, b"{", b"", {}))[0].startswith("the printed object cannot be read")


def test_other_libraries_may_fold_elsewhere_but_say_the_same() -> None:
    """Of the oldest libraries the words of a calendar count, not where its lines are cut, nor the rounds it took."""
    one = Came(
        0, b'{"rounds": {"inspections": 3}, "spent": 5}', b"", {"a.ics": b"SUMMARY:two\r\n  holes", "a.xlsx": b"1"}
    )
    other = Came(
        0, b'{"rounds": {"inspections": 4}, "spent": 5}', b"", {"a.ics": b"SUMMARY:tw\r\n o holes", "a.xlsx": b"2"}
    )
    assert unlike(loosely(one), loosely(other)) == []
    assert unlike(loosely(one), loosely(replace(other, out=b'{"rounds": {}, "spent": 6}'))) != []
    assert unlike(loosely(one), loosely(replace(other, files={"a.ics": b"SUMMARY:three holes"}))) != []


def test_other_pythons_are_found_where_one_says(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Folders of folders, as a version manager lays them out; what does not run or is too old is passed over."""
    for name, says in (("a", "echo 3 19"), ("b", "exit 3"), ("c", "echo 2 7"), ("d", "echo 4 15")):
        python = tmp_path / name / "bin" / "python3"
        python.parent.mkdir(parents=True)
        python.write_text(f"#!/bin/sh\n{says}\n", encoding="utf-8")
        python.chmod(0o755)
    monkeypatch.setenv("BUDGETFIX_PYTHONS", os.pathsep.join([str(tmp_path), str(tmp_path / "none")]))
    assert others()["3.19"] == tmp_path / "a" / "bin" / "python3"
    assert not {"2.7", "4.15"} & set(others())


def test_the_oldest_libraries_are_those_of_the_project() -> None:
    """Each with one version, the least that is allowed; none of them without a floor."""
    found = oldest()
    assert any(one.startswith("pulp==3.") for one in found)
    assert all(one.count("==") == 1 for one in found)


def test_a_python_that_cannot_be_set_up_is_told(tmp_path: Path) -> None:
    """No environment comes of it; the reason stands where the figures would."""
    python = tmp_path / "python3.19"
    python.write_text("#!/bin/sh\necho no room left >&2\nexit 1\n", encoding="utf-8")
    python.chmod(0o755)
    assert environment(python, tmp_path / "made") == "python3.19: no room left"
