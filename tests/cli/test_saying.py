"""Printing: brackets are left alone, ASCII where nothing else is to be had, progress only where it is seen."""

from __future__ import annotations

import io
import json
import time

import pytest
import typer

from budgetfix.brief.models import Brief
from budgetfix.cli import say
from budgetfix.cli.progress import Progress, progress, progress_shown
from budgetfix.optimize.problem import Round
from budgetfix.pipeline.telling import telling


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
    """Nothing at once; then one line written over, not too often; nothing is left of it."""
    now = [0.0]
    screen = io.StringIO()
    monkeypatch.setattr("sys.stderr", screen)
    line = Progress(clock=lambda: now[0], beating=False)
    for at, text in ((0.1, "too early"), (0.7, "round 2"), (0.75, "too soon"), (1.7, "3")):
        now[0] = at
        line(text)
    line.clear()
    assert screen.getvalue() == "\rround 2  1 s" + "\r3  2 s".ljust(13) + "\r" + " " * 6 + "\r"
    assert progress(quiet=False) is None
    with progress_shown(quiet=False) as shown:
        assert shown is None


def test_the_seconds_move_on_during_a_long_solve(monkeypatch: pytest.MonkeyPatch) -> None:
    """With nothing new to tell, the same line comes again with more seconds."""
    screen = io.StringIO()
    monkeypatch.setattr("sys.stderr", screen)
    monkeypatch.setattr("budgetfix.cli.progress.BEAT_SECONDS", 0.01)
    now = iter(range(100_000))
    line = Progress(clock=lambda: float(next(now)))
    line("solving")
    while screen.getvalue().count("solving") < 3:
        time.sleep(0.01)
    line.clear()
    shown = [part for part in screen.getvalue().split("\r") if "solving" in part]
    assert len(set(shown)) == len(shown)


ROUNDS = (
    (Round("points", 900, 400, 7), "Choosing: 2,100 points gone, at most 2,600 can be, round 7"),
    (Round("both", None, None, 1), "Choosing: no plan yet, round 1"),
    (Round("hazards", 500, 250, 2), "Choosing: 500 hazard points left, at least 250 stay, round 2"),
    (Round("hazards", 0, 0), "Choosing: 0 hazard points left"),
    (Round("spend", 41500, 39000, 9), "The same for less: 415.00, at least 390.00, round 9"),
    (Round("minutes", 812, 700, 9), "Settling ties: least work, round 9"),
    (Round("order", None, None, 9), "Putting the steps in order, round 9"),
    (Round("curve", 12, 3), "Other sums of money: 12 plans, open gaps between them: 3"),
    (Round("why_not", 4, 15), "Why not the others: 4 of 15"),
    (Round("ceilings", 2, 12), "How dear goods may get, and what else would do: 2 of 12"),
)


@pytest.mark.parametrize(("one", "wanted"), ROUNDS)
def test_every_round_has_its_words(one: Round, wanted: str) -> None:
    """Best so far, bound and round, in points taken away and in money."""
    heard: list[str] = []
    report = telling(heard.append, Brief(), 3000)
    assert report is not None
    report(one)
    assert heard == [wanted]
    assert telling(None, Brief(), 3000) is None
