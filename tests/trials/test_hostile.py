"""A few hostile jobs; and that the trial hears and sees what it looks for."""

from __future__ import annotations

import random
import socket
from pathlib import Path

import openpyxl
import pytest

from budgetfix.cli import commands, say
from budgetfix.exports import plan_csv
from tests.trials import hostile_texts, hostile_walks
from tests.trials.hostile import TRIAL, one
from tests.trials.hostile_outputs import Page, judged, shape_of
from tests.trials.hostile_run import Ran, ran
from tests.trials.page import promises
from tests.trials.registry import SEED
from tests.trials.trial import Asked

PAGE = Path(__file__).parents[2] / "reports" / "what-we-promise.md"


def test_a_few_hostile_jobs(tmp_path: Path) -> None:
    """Nothing runs, nothing grows, nothing is written beside the folder; the page promises what is tried."""
    found = TRIAL.run(Asked(SEED, TRIAL.small, tmp_path))
    assert found.broken == ()
    assert all(row.tried for row in found.rows)
    assert promises(PAGE.read_text("utf-8"), TRIAL.slug) == tuple(row.promise for row in found.rows)


def _plan(folder: Path, words: tuple[str, ...] = hostile_texts.PLAIN) -> Ran:
    folder.mkdir(parents=True)
    files = hostile_texts.files(words)
    for name, data in files.items():
        (folder / name).write_bytes(data)
    return ran("plan", folder, files)


def _broken(found: Ran) -> set[str]:
    return {promise for promise, _ in found.breaks}


def test_a_planted_formula_and_a_planted_element_are_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A table that lets formulas through; a page that holds one element more."""
    _plan(tmp_path / "harmless")
    shape = shape_of(tmp_path / "harmless")
    words = tuple(f"=zqx {at}" for at in range(len(hostile_texts.PLAIN)))
    monkeypatch.setattr(plan_csv, "harmless", lambda text: text)
    assert _plan(tmp_path / "job", words).breaks == []
    page = tmp_path / "job" / "plan.html"
    page.write_text(page.read_text("utf-8").replace("</main>", "<img src=x onerror=zqx></main>"), "utf-8")
    assert {promise for promise, _ in judged(tmp_path / "job", shape)} == {"formulas", "page"}


def test_a_planted_script_in_a_drawing_is_seen(tmp_path: Path) -> None:
    """A drawing is made of lines and words; an element that would run is seen, whatever stands around it."""
    page = tmp_path / "plan.html"
    page.write_text("<svg><g><line/><text>a</text></g></svg><p>words</p>", "utf-8")
    assert (Page(page).tags, Page(page).live) == (["svg", "p"], [])
    page.write_text("<svg><g><animate/></g></svg><svg><script>zqx</script></svg>", "utf-8")
    assert Page(page).live == ["<animate> in a drawing", "<script> in a drawing"]


def test_a_planted_link_out_of_the_folder_is_seen(tmp_path: Path) -> None:
    """A folder of jobs links to their workbooks, and to nothing else; a name cannot end the formula."""
    told = []
    for place in ("a/plan.xlsx", "http://a.invalid", "/etc/passwd", "\\\\a.invalid\\b", 'a","b")&HYPERLINK("c', "a:b"):
        book = openpyxl.Workbook()
        book.worksheets[0]["A1"] = f'=HYPERLINK("{place}","A")'
        book.save(tmp_path / "portfolio.xlsx")
        told.append([promise for promise, _ in judged(tmp_path, {})])
    assert told == [[], *[["formulas"]] * 5]


def test_a_walk_that_a_word_stops_counts_as_broken(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A workbook that cannot be read back once it is ticked: the break says which command ended how."""

    def broken(path: Path) -> None:
        path.write_bytes(b"zqx")

    monkeypatch.setattr(hostile_walks, "tick", broken)
    found = hostile_walks.whole("walk", random.Random(1), tmp_path)
    assert _broken(found) == {"read back"}
    assert found.breaks[0][1].startswith("replan: exit 3: ")


def test_a_planted_way_out_is_heard(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A command that opens a socket and leaves something beside the folder, on a screen that obeys."""

    def reaching(*_words: object) -> None:
        socket.socket().close()
        (tmp_path / "left").write_text("zqx")
        say.out("\x1b[31mzqx")

    monkeypatch.setattr(commands, "run_inspect", reaching)
    monkeypatch.setattr(say, "shown", lambda text: text)
    (tmp_path / "job").mkdir()
    assert {"socket", "outside", "screen"} <= _broken(ran("inspect", tmp_path / "job", {}))


def test_a_planted_crash_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A command that ends in a traceback."""

    def crash(*_words: object) -> None:
        raise ZeroDivisionError("zqx")

    monkeypatch.setattr(commands, "run_inspect", crash)
    (tmp_path / "job").mkdir()
    assert _broken(ran("inspect", tmp_path / "job", {})) == {"words"}


def test_words_that_are_refused_must_be_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A try of words that no text may hold counts as broken where they are taken."""
    monkeypatch.setattr(hostile_texts, "NEVER", ("zqx",))
    found, promised = one(SEED, 4, "never", tmp_path / "try")
    assert promised == ("taken",)
    assert _broken(found) == {"taken"}


def test_every_word_differs_from_the_others() -> None:
    """Ids are names used once, also when spaces and hidden signs are gone; a hundred drawings."""
    for number in range(100):
        words = hostile_texts.drawn(random.Random(number))
        assert len({" ".join(word.split()) for word in words}) == len(words)
