"""The sample plan with its minutes laid out, and one step with a helper."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.outcome.book import Spell, Task
from tests.exports.sample_book import BOOK, SESSIONS, TASKS

ANN, BEN, BOTH = ("Ann",), ("Ben",), ("Ann", "Ben")


def timed(task: Task, *spells: Spell, **more: object) -> Task:
    """A task with its minutes."""
    return replace(task, spells=spells, **more)  # type: ignore[arg-type]  # fields of a task


SHOPS, TV, ANCHOR, MARK, ROD, PANELS, BULBS = TASKS
TIMED = replace(
    BOOK,
    tasks=(
        timed(TV, Spell(0, 45, BOTH)),
        timed(SHOPS, Spell(45, 105, ANN)),
        timed(ANCHOR, Spell(45, 70, BEN)),
        timed(MARK, Spell(105, 115, ANN)),
        timed(ROD, Spell(0, 10, BOTH), Spell(10, 50, BEN), who=("Ben", "Ann"), helper="Ann", help_minutes=10),
        timed(PANELS, Spell(10, 30, ANN)),
        timed(BULBS, Spell(30, 35, ANN)),
    ),
)
UNDATED = replace(TIMED, sessions=tuple(replace(row, on=None, start_minute=0) for row in SESSIONS))
