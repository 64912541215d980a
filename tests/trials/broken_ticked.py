"""A ticked workbook of a plan, typed into and broken, for `replan`: it is read back or refused, never written over."""

from __future__ import annotations

import random
from dataclasses import dataclass
from datetime import date

from budgetfix.intake.plan_ticks import USERS
from tests.trials.broken_fields import LIVE, LONG
from tests.trials.broken_jobs import Job
from tests.trials.broken_run import Files, Seen
from tests.trials.broken_sheets import Page, Pages, book_bytes, copied
from tests.trials.broken_wild import BYTES, IN_CELLS, book_shaped

PLAN = "plan.xlsx"
HEADS = {"bought": "Bought", "paid in all": "Paid in all", "done": "Done", "real minutes": "Real minutes"}
TYPED: dict[str, tuple[object, ...]] = {
    "bought": ("✓", "x", "yes", True, 1),
    "paid in all": (4.5, 12, "7,50", "GBP 3.20", 0),
    "done": ("✓", "ok", "done", True),
    "real minutes": (45, "1:15", "50 min", 0),
}
WRONG: dict[str, tuple[object, ...]] = {
    "bought": ("maybe", 17, -1, "half", date(2026, 6, 1)),
    "paid in all": (-5, "cheap", 0.001, True, LONG, "1.2.3", date(2026, 6, 1)),
    "done": ("perhaps", 17, -1, date(2026, 6, 1)),
    "real minutes": (-1, "long", 10**6, 0.3, True, LONG),
}


@dataclass(frozen=True)
class Box:
    """A cell for the user's own words, of a row of the plan."""

    page: str
    row: int
    column: int
    head: str
    label: str


def boxes(pages: Pages) -> tuple[Box, ...]:
    """Every cell that may be ticked or typed into."""
    found: list[Box] = []
    for page in pages:
        for head in USERS.get(page.title, ()):
            row, column = next(at for at, value in page.cells.items() if value == HEADS[head])
            ids = next(at for at, value in page.cells.items() if at[0] == row and value == "id")[1]
            found += [
                Box(page.title, at, column, head, page.label(at, column))
                for at in range(row + 1, page.rows() + 1)
                if (at, ids) in page.cells
            ]
    return tuple(found)


def ticked(job: Job, chance: random.Random) -> Pages:
    """The plan's workbook with some of it ticked."""
    pages = copied(job.pages(PLAN))
    there = boxes(pages)
    for box in chance.sample(there, chance.randint(0, len(there) // 2)):
        _type(pages, box, chance.choice(TYPED[box.head]))
    return pages


def _type(pages: Pages, box: Box, value: object) -> None:
    page = next(page for page in pages if page.title == box.page)
    page.cells[box.row, box.column] = value


def broken(job: Job, chance: random.Random) -> tuple[Files, tuple[tuple[Box, object], ...]]:
    """Ticked, and then broken: wrong words in the user's cells (these are given back), or anything else."""
    files: dict[str, bytes | None] = dict(job.files)
    pages = ticked(job, chance)
    match chance.randrange(4):
        case 0:
            there = boxes(pages)
            wrong = tuple(
                (box, chance.choice((*WRONG[box.head], *LIVE))) for box in chance.sample(there, min(3, len(there)))
            )
            for box, value in wrong:
                _type(pages, box, value)
            return {**files, PLAN: book_bytes(pages)}, wrong
        case 1:
            files[PLAN] = book_bytes(book_shaped(pages, chance))
        case 2:
            for _ in range(chance.randint(1, 4)):
                _anywhere(chance.choice(pages), chance)
            files[PLAN] = book_bytes(pages)
        case _:
            files[PLAN] = chance.choice(BYTES)(book_bytes(pages), chance)
    return files, ()


def _anywhere(page: Page, chance: random.Random) -> None:
    page.cells[chance.randint(1, page.rows()), chance.randint(1, page.columns())] = chance.choice(IN_CELLS)


def judge(found: Seen, wrong: tuple[tuple[Box, object], ...]) -> None:
    """Each wrong cell told, and nothing read."""
    if not wrong:
        return
    shown = "; ".join(f"{box.label} {value!r}" for box, value in wrong)
    told = {one.label for one in found.told if one.file == PLAN}
    if not found.refused:
        found.fault("sure", f"read: {shown}")
    elif any(box.label not in told for box, _ in wrong):
        found.fault("all", f"not all told: {shown}")
