"""Who does what when, in words; and names for a sheet and a file of each person that no computer stumbles over."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Container, Iterable

from budgetfix.exports.lettering import clock
from budgetfix.outcome.book import PlanBook, SessionRow, Spell, Task

LONGEST_SHEET = 31
"""UTF-16 letters of a sheet's name (Excel specifications and limits)."""
LONGEST_FILE = 40
NO_SHEET = re.compile(r"[\[\]:*?/\\\x00-\x1f\x7f]")
"""Letters that no sheet's name may hold."""
TOGETHER = "Together"
TAKEN = frozenset(
    name.casefold()
    for name in (
        "History", "Summary", "Buy", "Do", TOGETHER, "Before and after", "Left out", "What more buys", "Chances",
        "Drawings", "Moving out", "As it was", "Landlord", "Quote", "Costing", "Record",
    )
)  # fmt: skip
"""Names of sheets that are not a person's: the program's own, and the one that Excel keeps for itself."""


def workers(tasks: Iterable[Task], sessions: tuple[SessionRow, ...] | None, people: Iterable[str] = ()) -> list[str]:
    """Everybody with something to do, in the household's order; nobody where only one person works."""
    named = [name for row in (sessions or ())[:1] for name, _, _ in row.who] or list(people)
    busy = {name for task in tasks for name in task.who}
    found = [*dict.fromkeys(name for name in named if name in busy), *sorted(busy - set(named))]
    return found if len(found) > 1 else []


def workers_of(book: PlanBook) -> list[str]:
    """Those who work in the book's own plan."""
    return workers(book.tasks, book.sessions, book.people)


def times(row: SessionRow | None, spells: Iterable[Spell], many: bool) -> str:
    """`09:30-10:15`; in a session without a date `+0:00-0:45`, and only where several people work (`many`)."""
    joined: list[tuple[int, int]] = []
    for spell in spells:
        if joined and joined[-1][1] == spell.begin:
            joined[-1] = (joined[-1][0], spell.end)
        else:
            joined.append((spell.begin, spell.end))
    if row is None or (row.on is None and not many):
        return ""
    if row.on is None:
        return ", ".join(f"+{_hours(begin)}-{_hours(end)}" for begin, end in joined)
    start = row.start_minute
    return ", ".join(f"{clock(start + begin)}-{clock(start + end)}" for begin, end in joined)


def _hours(minutes: int) -> str:
    return f"{minutes // 60}:{minutes % 60:02d}"


def own(task: Task, person: str) -> tuple[Spell, ...]:
    """When one person works on a task."""
    return tuple(spell for spell in task.spells if person in spell.who)


def who_words(task: Task, between: str = ", ") -> str:
    """`adult 1, adult 2`, or `adult 1; adult 2 helps for the first 10 min`."""
    if not task.helper:
        return between.join(task.who)
    main = between.join(name for name in task.who if name != task.helper)
    return f"{main}; {task.helper} helps for the first {task.help_minutes} min"


def with_words(task: Task, person: str) -> str:
    """Who else is at it, as one person is told: `adult 2`, or `adult 2, the first 10 min`."""
    others = ", ".join(name for name in task.who if name != person)
    if not task.helper:
        return others
    return f"{others}, the first {task.help_minutes} min"


def sheet_names(people: Iterable[str]) -> list[str]:
    """A name for each person's sheet: as they are called, as far as a sheet can be called so, and no two alike."""
    found: list[str] = []
    taken = set(TAKEN)
    for number, person in enumerate(people, 1):
        plain = NO_SHEET.sub(" ", _whole(person)).replace("'", "’")
        name = _free(" ".join(plain.split()) or f"Person {number}", taken, _cut_sheet, " {}")
        taken.add(name.casefold())
        found.append(name)
    return found


def file_names(people: Iterable[str]) -> list[str]:
    """`plan-adult-1.ics`: letters and digits of any language, all else a dash, and no two alike."""
    found: list[str] = []
    taken: set[str] = set()
    for number, person in enumerate(people, 1):
        letters = "".join(letter if letter.isalnum() else "-" for letter in _whole(person).casefold())
        plain = re.sub("-+", "-", letters).strip("-") or f"person-{number}"
        name = _free(unicodedata.normalize("NFC", plain), taken, lambda text, room: text[: LONGEST_FILE - room], "-{}")
        taken.add(name)
        found.append(f"plan-{name}.ics")
    return found


def _whole(name: str) -> str:
    """A name without broken letters, letters of one look written one way."""
    return unicodedata.normalize("NFKC", name.encode("utf-8", "ignore").decode("utf-8"))


def _cut_sheet(text: str, room: int) -> str:
    """As much as fits beside `room` letters more, no letter torn apart."""
    while len(text.encode("utf-16-le")) // 2 > LONGEST_SHEET - room:
        text = text[:-1]
    return text.strip()


def _free(name: str, taken: Container[str], cut: Callable[[str, int], str], numbered: str) -> str:
    """The name, or the name with the first number that makes it another."""
    made, number = cut(name, 0), 1
    while made.casefold() in taken or not made:
        number += 1
        end = numbered.format(number)
        made = cut(name, len(end)) + end
    return made
