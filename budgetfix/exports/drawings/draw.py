"""All drawings of a plan: every room that changes from above, every wall that changes from the front, in pairs."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from budgetfix.exports.drawings.floor import floor_sheet
from budgetfix.exports.drawings.pen import Pen
from budgetfix.exports.drawings.picture import Picture, When
from budgetfix.exports.drawings.sheet import WIDTH, Keys, Sheet
from budgetfix.exports.drawings.wall import Face, on_wall, wall_sheet
from budgetfix.outcome.book import Drawn, PlanBook
from budgetfix.outcome.changes import Altered, altered

BOTH: tuple[When, When] = ("before", "after")
Draw = Callable[[Pen, Keys, bool], Sheet]
"""A picture drawn with a pen, with letters that its pair shares; as the plan leaves it (True) or as surveyed."""


def pictures(book: PlanBook) -> tuple[Picture, ...]:
    """Pairs of before and after; none where nothing that can be seen changes."""
    if book.drawn is None:
        return ()
    rows = altered(book.drawn)
    found: list[Picture] = []
    for facts in book.drawn.before.rooms:
        mine = [row for row in rows if row.room == facts.room]
        if mine:
            found += _of_room(book, book.drawn, facts.room, mine, len(found))
    return tuple(found)


def _of_room(book: PlanBook, drawn: Drawn, room: str, rows: list[Altered], count: int) -> list[Picture]:
    marks = {row.item: row.tasks for row in rows}

    def floor(pen: Pen, keys: Keys, now: bool) -> Sheet:
        return floor_sheet(drawn.before, drawn.after, room, marks, pen, keys, now)

    def wall(letter: str) -> Draw:
        return lambda pen, keys, now: wall_sheet(drawn.before, drawn.after, room, letter, marks, pen, keys, now)

    found = _pair(book, room, "floor", rows, count, floor)
    for one in drawn.before.walls_of(room):
        changed = [row for row in rows if row.item in _seen(drawn, room, one.wall)]
        if changed:
            found += _pair(book, room, f"wall {one.wall}", changed, count + len(found), wall(one.wall))
    return found


def _seen(drawn: Drawn, room: str, wall: str) -> set[str]:
    """What is seen on a wall, before or after."""
    face = Face.of(drawn.before, room, wall)
    return {seen.item.name for survey in (drawn.before, drawn.after) for seen in on_wall(survey, face)}


def _pair(book: PlanBook, room: str, view: str, rows: list[Altered], count: int, draw: Draw) -> list[Picture]:
    """Both pictures, as high as the higher one."""
    unit = book.drawn.before.household.unit if book.drawn is not None else "mm"
    keys, found = Keys(), []
    pens = [Pen(f"p{count + at}") for at in range(len(BOTH))]
    drawn = [(when, pen, draw(pen, keys, when == "after")) for when, pen in zip(BOTH, pens, strict=True)]
    tall = max(sheet.close(unit, when) for when, _, sheet in drawn)
    for when, pen, _ in drawn:
        title = f"{room[:1].upper()}{room[1:]}{', ' if room else ''}{_view(view)}, {when}"
        words = told(rows, when)
        svg = pen.svg(WIDTH, tall, title, words)
        found.append(Picture(room, view, when, title, svg, words, WIDTH, tall, _notes(book, rows, when)))
    return found


def _view(view: str) -> str:
    return "seen from above" if view == "floor" else view


def told(rows: Iterable[Altered], when: When) -> str:
    """What a picture shows of what changes, for those who cannot see it."""
    if when == "before":
        parts = [f"{row.item}: {row.was}" if row.was else f"{row.item}: not there" for row in rows]
        return "As measured. " + "; ".join(parts) + "."
    parts = [_change(row) for row in rows]
    return "After the plan. " + "; ".join(parts) + "."


def _change(row: Altered) -> str:
    if not row.now:
        return f"{row.item}: taken away"
    return f"{row.item}: {row.now}, before: {row.was}" if row.was else f"{row.item}, new: {row.now}"


def _notes(book: PlanBook, rows: Iterable[Altered], when: When) -> tuple[tuple[int, str], ...]:
    if when == "before":
        return ()
    numbers = sorted({row.tasks[-1] for row in rows if row.tasks})
    return tuple((number, book.tasks[number - 1].name) for number in numbers)
