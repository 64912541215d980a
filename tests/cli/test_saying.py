"""Printing: brackets are left alone, ASCII where nothing else is to be had, progress only where it is seen."""

from __future__ import annotations

import io
import json

import pytest
import typer

from budgetfix.cli import say
from budgetfix.cli.progress import Progress, progress


def test_the_users_brackets_are_not_markup(capsys: pytest.CaptureFixture[str]) -> None:
    """`[rods!d2]` and `[line 8]` come out as they are."""
    say.out("survey.xlsx [rods!d2] and brief.yaml [line 8]")
    assert capsys.readouterr().out == "survey.xlsx [rods!d2] and brief.yaml [line 8]\n"


def test_one_object_and_nothing_else(capsys: pytest.CaptureFixture[str]) -> None:
    """What is printed parses, accents included."""
    say.obj({"name": "Gardine für Küche"})
    assert json.loads(capsys.readouterr().out) == {"name": "Gardine für Küche"}


def test_stopping_says_why_on_standard_error(capsys: pytest.CaptureFixture[str]) -> None:
    """Standard output stays empty."""
    with pytest.raises(typer.Exit) as left:
        say.stop(say.REFUSED, ["one", "two"])
    assert left.value.exit_code == 3
    assert capsys.readouterr() == ("", "one\ntwo\n")


def test_progress_waits_half_a_second_and_wipes_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing at once; then one line written over; nothing is left of it."""
    now = iter((0.0, 0.1, 0.7))
    screen = io.StringIO()
    monkeypatch.setattr("sys.stderr", screen)
    line = Progress(clock=lambda: next(now))
    line("too early")
    line("round 2")
    line.clear()
    assert screen.getvalue() == "\rround 2" + "\r" + " " * 7 + "\r"
    assert progress(quiet=False) is None
