"""What a plan changes in the room, thing by thing: how it was, how it is now, and which tasks do it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.base.tape import write_length
from budgetfix.outcome.book import Drawn, Mark, Task
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.telling import held
from budgetfix.room.items import Curtain, Hung, Item, Opening
from budgetfix.room.survey import Survey, Value

LENGTHS = {
    "width": "{} wide",
    "depth": "{} deep",
    "height": "{} high",
    "from_left": "left edge {} from the left corner",
    "gap": "{} off the wall",
    "bottom": "lower edge {} above the floor",
    "rod_height": "rod {} above the floor",
    "rod_from_left": "rod starts {} from the left corner",
    "rod_width": "rod {} long",
    "panel_width": "panels {} wide",
    "hem": "hem {} above the floor",
    "stack": "open cloth {} on each side",
    "cord": "loose cord {}",
    "cables": "loop of cable {}",
    "top": "head {} above the floor",
    "lead": "lead {} long",
    "arm": "arm {} high",
    "feet": "feet {} apart",
    "seat": "seat {} high",
    "drawers": "drawers pull out {}",
}
"""Fields that hold a length, as people say them; in the order in which they are said."""
FLAGS = {
    "fixed": ("fixed to the wall", "not fixed"),
    "pad": ("a pad under it", "no pad under it"),
    "lead_covered": ("lead covered", "lead open"),
    "headboard": ("with a headboard", "no headboard"),
    "undressed": ("not made up", "made up"),
    "leaned": ("leaned", "hung"),
    "tucked": ("pushed in", "not pushed in"),
    "blind": ("with a blind", "no blind"),
    "round": ("round", "not round"),
    "personal": ("personal", "neutral"),
    "heavy": ("heavy", "not heavy"),
    "main": ("the main seat", "not the main seat"),
    "reading": ("a seat to read in", "not a seat to read in"),
    "hangs": ("hangs on the wall", "stands"),
    "surface": ("things can be put down on it", "nothing can be put down on it"),
    "entry": ("the front door", "not the front door"),
    "overlooked": ("overlooked", "not overlooked"),
    "escape": ("an escape window", "no escape window"),
    "outside": ("in an outside wall", "in an inside wall"),
    "lead_over_route": ("lead across the way", "no lead across the way"),
}
WORDS = {
    "wall": "at wall {}",
    "faces": "facing wall {}",
    "over": "over {}",
    "on": "on {}",
    "panels": "{} panels",
    "lumens": "{} lm",
    "kelvin": "{} K",
    "fixing": "{}",
    "heading": "heading {}",
    "cloth": "cloth {}",
    "things": "{} things on it",
    "switch": "switched by {}",
    "what": "{}",
    "opens": "opens {}",
    "hinge": "hinged on the {}",
    "length": "cloth to the {}",
    "window": "at {}",
    "also_window": "across to {}",
    "at": "at {}",
    "under": "under {}",
    "group": "one of {}",
    "socket": "plugged in at {}",
    "weight": "{} kg",
    "sleepers": "for {} sleepers",
    "room": "in {}",
}


PLACING = (
    "wall",
    "width",
    "depth",
    "height",
    "from_left",
    "gap",
    "bottom",
    "rod_from_left",
    "rod_width",
    "rod_height",
)
"""What is said of a thing that comes or goes."""


@dataclass(frozen=True, slots=True)
class Altered:
    """One thing: `was` and `now` in words ("" where it was not there, or is gone). `tasks` from 1, as listed."""

    item: str
    room: str
    was: str
    now: str
    tasks: tuple[int, ...]


def drawn(
    before: Survey | None, after: Survey | None, chosen: Iterable[Candidate], tasks: Iterable[Task]
) -> Drawn | None:
    """What drawings show; None without a survey. Marks stand in the order of the survey, new things last."""
    if before is None or after is None:
        return None
    listed = tuple(tasks)
    by_item: dict[str, set[int]] = {}
    for one in chosen:
        numbers = {at for at, task in enumerate(listed, 1) if task.candidate == one.id}
        for change in one.changes:
            name = change.add.name if change.add is not None else change.item
            by_item.setdefault(name, set()).update(numbers)
    order = {name: at for at, name in enumerate([*before.named, *after.named])}
    names = sorted(
        (name for name in by_item if _thing(before, name) != _thing(after, name)), key=lambda name: (order[name], name)
    )
    return Drawn(before, after, tuple(Mark(name, tuple(sorted(by_item[name]))) for name in names))


def altered(drawn: Drawn) -> tuple[Altered, ...]:
    """Every thing that changes, in words of the survey's own unit."""
    rows = []
    for mark in drawn.marks:
        old, new = _thing(drawn.before, mark.item), _thing(drawn.after, mark.item)
        there = old or new
        if there is None:
            continue
        room = room_of(drawn.before if old is not None else drawn.after, there)
        fields = _differing(old, new)
        unit = drawn.before.household.unit
        rows.append(Altered(mark.item, room, said(old, fields, unit), said(new, fields, unit), mark.tasks))
    return tuple(row for row in rows if row.was or row.now)


def _thing(survey: Survey, name: str) -> Item | None:
    return survey.named.get(name, (None, None))[1]


def room_of(survey: Survey, item: Item) -> str:
    """The room of a thing; a curtain's is that of its window."""
    if isinstance(item, Curtain):
        window = _thing(survey, item.window)
        return window.room if isinstance(window, Opening) else item.room
    return item.room


def _differing(old: Item | None, new: Item | None) -> tuple[str, ...]:
    """Fields that differ; of a thing that comes or goes, those that say where it stands and how large it is."""
    if old is not None and new is not None and type(old) is type(new):
        was, now = dict(old), dict(new)
        return tuple(name for name in (*LENGTHS, *FLAGS, *WORDS) if name in was and was[name] != now[name])
    return tuple(name for name in PLACING if not (isinstance(old or new, Hung) and name == "depth"))


def said(item: Item | None, fields: Iterable[str], unit: str) -> str:
    """Some fields of a thing in words, in their own order; empty for nothing."""
    if item is None:
        return ""
    values: dict[str, Value] = dict(item)
    values |= {"fixing": held(values["fixing"], values.get("what"))} if "fixing" in values else {}
    words = [_words(name, values[name], unit) for name in fields if name in values]
    return ", ".join(word for word in words if word)


def _words(name: str, value: Value, unit: str) -> str:
    if name in FLAGS:
        return FLAGS[name][0 if value else 1]
    if value is None or value == "":
        return ""
    if name == "gap" and value == 0:
        return "against the wall"
    if name in LENGTHS:
        return LENGTHS[name].format(write_length(float(value), unit))
    number = f"{value:g}" if isinstance(value, float) else str(value)
    return WORDS[name].format(number)
