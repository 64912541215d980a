"""A room never left half done, and drying that fills a wait: from the brief to the minutes of the day."""

from __future__ import annotations

import shutil
import time
from pathlib import Path

import pytest

from budgetfix.base.problems import FilesRefused
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from tests.outcome.minutes import of_session, troubles
from tests.scenarios import DEMO, TODAY

CATALOG = """
remedies:
  - remedy: holes
    name: Fill the old holes
    answers: {holes: 1}
    steps:
      - {minutes: 30, text: fill}
      - {minutes: 20, wait_hours: 2, text: sand and touch up}
  - {remedy: rod, name: Hang the rod, answers: {bare: 1}, hours: 1.5, people: 2}
  - {remedy: wall, name: Paint the wall, answers: {scuffed: 1}, steps: [{hours: 0.5}, {hours: 0.5, wait_hours: 20}]}
"""
FAULTS = "fault,points,what\nholes,100,old holes\nbare,90,no curtain\nscuffed,80,scuffed wall\n"
SATURDAY = """
hours:
  - {date: 2026-06-05, start: '18:00', people: {ann: 1, ben: 0}}
  - {date: 2026-06-06, start: '09:30', people: {ann: 0.5, ben: 0.5}}
  - {date: 2026-06-06, start: '10:15', people: {ann: 1.5, ben: 1.5}}
  - {date: 2026-06-06, start: '14:00', people: {ann: 1, ben: 1}}
  - {date: 2026-06-07, start: '09:30', people: {ann: 0.5, ben: 0.5}}
"""


def job(folder: Path, brief: str) -> Path:
    """A small job of listed faults."""
    (folder / "catalog.yaml").write_text(CATALOG)
    (folder / "faults.csv").write_text(FAULTS)
    (folder / "brief.yaml").write_text(f"currency: GBP\n{brief}")
    return folder


def book_of(folder: Path, brief: str) -> PlanBook:
    """Its plan."""
    book = planned(read(job(folder, brief), JobOptions(), TODAY), Wish(20.0, time.monotonic))
    assert isinstance(book, PlanBook)
    return book


def test_drying_fills_a_wait(tmp_path: Path) -> None:
    """Filled first thing on Saturday; the rod is hung while it dries for two hours and more; sanded after lunch."""
    book = book_of(tmp_path, f"whole_days: all{SATURDAY}")
    times = {(task.candidate, task.step): (task.session, task.spells[0], task.who) for task in book.tasks}
    fill, sand, rod = times["holes", 1], times["holes", 2], times["rod", 1]
    assert (fill[0], rod[0], sand[0]) == (2, 3, 4)
    rows = {row.number: row for row in book.sessions or ()}
    filled = rows[2].start_minute + fill[1].end
    sanded = rows[4].start_minute + sand[1].begin
    assert (rows[2].on, sanded - filled >= 120) == (rows[4].on, True)
    begins, ends = rows[3].start_minute + rod[1].begin, rows[3].start_minute + rod[1].end
    assert filled <= begins < ends <= sanded
    for number in rows:
        laid, there = of_session(book, number)
        assert troubles(laid, there) == []


def test_what_would_stay_half_done_is_left_out_with_the_reason(tmp_path: Path) -> None:
    """Twenty hours of drying: fit on two days, and then a room would be half done overnight."""
    free = book_of(tmp_path, SATURDAY)
    assert "wall" in {row.id for row in free.chosen}
    book = book_of(tmp_path, f"whole_days: all{SATURDAY}")
    why = {row.id: row.why for row in book.left_out}
    assert why == {"wall": "it does not fit into one day, and its room is not to be left half done"}


def test_undated_sessions_are_each_a_day(tmp_path: Path) -> None:
    """Without dates nothing waits from one session to the next where no room is left half done."""
    book = book_of(tmp_path, "whole_days: all\npeople: 2\nhours: [3, 3]\n")
    assert {row.id for row in book.chosen} == {"rod"}


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("whole_days: []", "found a list, wanted rooms such as [bedroom], or all; name a room, or leave it out"),
        ("whole_days: 3", "found '3', wanted all: without a survey no room has a name"),
        ("whole_days: {bedroom: true}", "found a block of keys, wanted rooms such as [bedroom], or all"),
        ("whole_days: [kitchen]", "found 'kitchen', wanted all: without a survey no room has a name"),
    ],
)
def test_what_cannot_be_read(tmp_path: Path, typed: str, said: str) -> None:
    """Each message, word for word."""
    with pytest.raises(FilesRefused) as refused:
        read(job(tmp_path, f"{typed}\n"), JobOptions(), TODAY)
    assert [str(problem) for problem in refused.value.problems] == [f"brief.yaml [line 2] {said}"]


def test_rooms_are_those_of_the_survey(tmp_path: Path) -> None:
    """A room that is spelt otherwise is pointed out."""
    folder = tmp_path / "couple"
    shutil.copytree(DEMO / "couple", folder)
    (folder / "brief.yaml").write_text("whole_days: [bedroom, bedrom]\n")
    with pytest.raises(FilesRefused) as refused:
        read(folder, JobOptions(), TODAY)
    assert [str(problem) for problem in refused.value.problems] == [
        "brief.yaml [line 1] found 'bedrom', wanted a room of the survey, or all; did you mean bedroom?"
    ]
