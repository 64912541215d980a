"""One plus help, from the catalogue to the lists: one task, whose helper is there for its first minutes."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from budgetfix.exports.by_person import who_words
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook, Spell
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from tests.scenarios import TODAY

CATALOG = """
remedies:
  - remedy: shelf
    name: Put up the long shelf
    answers: {clutter: 1}
    tools: [drill]
    steps: [{minutes: 45, people: 1, help: 10}]
  - remedy: lamp
    name: Stand the lamp
    answers: {dark: 1}
    steps: [{minutes: 30}]
tools: [{tool: drill, own: true}]
"""
FAULTS = "fault,points,what\nclutter,100,toys all over\ndark,50,dark corner\n"


def book_of(folder: Path, brief: str) -> PlanBook | NoPlan:
    """A small job of listed faults, planned."""
    (folder / "catalog.yaml").write_text(CATALOG)
    (folder / "faults.csv").write_text(FAULTS)
    (folder / "brief.yaml").write_text(f"currency: GBP\nload: 1\n{brief}")
    return planned(read(folder, JobOptions(), TODAY), Wish(20.0, time.monotonic))


def test_one_task_with_a_helper(tmp_path: Path) -> None:
    """Adult 2 keeps off the drill, holds the shelf for ten minutes, then stands the lamp while adult 1 goes on."""
    brief = (
        "people: {adult 1: {}, adult 2: {not: [drill]}}\n"
        "hours: [{date: 2026-06-06, start: '09:30', people: {adult 1: 0.75, adult 2: 0.75}}]\n"
    )
    book = book_of(tmp_path, brief)
    assert isinstance(book, PlanBook)
    shelf, lamp = book.tasks
    assert (shelf.people, shelf.minutes, shelf.who, shelf.helper, shelf.help_minutes) == (
        1, 45, ("adult 1", "adult 2"), "adult 2", 10,
    )  # fmt: skip
    assert shelf.spells == (Spell(0, 10, ("adult 1", "adult 2")), Spell(10, 45, ("adult 1",)))
    assert lamp.spells == (Spell(10, 40, ("adult 2",)),)
    assert who_words(shelf) == "adult 1; adult 2 helps for the first 10 min"
    assert book.best.minutes == 45 + 10 + 30
    assert [row.who for row in book.sessions or ()] == [(("adult 1", 45, 45), ("adult 2", 45, 40))]


@pytest.mark.parametrize(
    ("people", "chosen"),
    [
        ("people: 1\nhours: [4]\n", ["lamp"]),
        ("people: {a: {not: [drill]}, b: {not: [drill]}}\nhours: [4]\n", ["lamp"]),
        ("people: 2\nhours: [4]\n", ["lamp", "shelf"]),
    ],
)
def test_nobody_there_to_help(tmp_path: Path, people: str, chosen: list[str]) -> None:
    """Alone, or where nobody drills, the shelf stays down; two who may do it put it up."""
    book = book_of(tmp_path, people)
    assert isinstance(book, PlanBook)
    assert sorted(row.id for row in book.chosen) == chosen


def test_pay_counts_the_helper(tmp_path: Path) -> None:
    """Six an hour: 45 minutes and ten of help are 5.50."""
    book = book_of(tmp_path, "people: 2\nhours: [4]\nlabour: 6\n")
    assert isinstance(book, PlanBook)
    assert {line.name: line.line_minor for line in book.money}["Labour: Put up the long shelf"] == 550
