"""Pairs of candidates that cannot both be chosen: one item set twice, or two things on one spot. Never typed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import combinations

from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Hung, Item, Light, Piece
from budgetfix.room.overlaps import hides, hung_overlap, pieces_overlap
from budgetfix.room.places import wall_lines
from budgetfix.room.survey import Change, Survey, moved_to

TOGETHER = {
    "curtains": (("rod_height", "rod_from_left", "rod_width", "panels", "panel_width", "hem", "heading", "cloth",
                  "length", "stack", "also_window"),),
    "furniture": (("wall", "from_left", "gap", "faces", "width", "depth", "height", "seat", "arm", "round"),),
    "rugs": (("wall", "from_left", "gap", "width", "depth", "round"),),
    "pictures": (("wall", "from_left", "bottom", "width", "height", "over", "group", "on"),),
    "lights": (("wall", "from_left", "gap", "width", "depth", "bottom", "on", "over", "socket"), ("lumens", "kelvin")),
}  # fmt: skip
"""Fields that only make sense together: setting one of them and another elsewhere is a clash."""


STAYS = ("fixed", "fixing", "pad", "things", "personal", "headboard", "undressed", "cables", "surface")
"""Fields that leave a thing on its spot."""


@dataclass(frozen=True)
class Touch:
    """What one candidate does: fields by thing, things gone or new, and where things stand afterwards."""

    fields: frozenset[tuple[str, str]]
    whole: frozenset[str]
    placed: tuple[Item, ...]


def needed(one: Candidate, by_id: Mapping[str, Candidate]) -> tuple[Change, ...]:
    """The changes of all that it needs, directly or not: what it finds when it is done. What comes first is first."""
    own = (by_id[id] for id in sorted(one.needs) if id in by_id)
    return tuple(change for other in own for change in (*needed(other, by_id), *other.changes))


def clashes(survey: Survey, candidates: Iterable[Candidate]) -> tuple[tuple[str, str], ...]:
    """Pairs (id, id), sorted; the smaller id first. What builds on a remedy that it needs does not clash with it."""
    by_id = {one.id: one for one in candidates}
    changing = [one for one in by_id.values() if one.changes]
    touches = {one.id: _touch(survey.changed(needed(one, by_id)) if one.needs else survey, one) for one in changing}
    by_item: dict[str, list[str]] = defaultdict(list)
    for id, touch in sorted(touches.items()):
        for item in sorted({item for item, _ in touch.fields} | touch.whole):
            by_item[item].append(id)
    found = set()
    for ids in by_item.values():
        found |= {pair for pair in combinations(ids, 2) if _same_item(touches[pair[0]], touches[pair[1]])}
    found -= {(one, two) for one, two in found if one in by_id[two].needs or two in by_id[one].needs}
    placing: dict[str, list[str]] = defaultdict(list)
    for id, touch in sorted(touches.items()):
        for room in sorted({item.room for item in touch.placed}):
            placing[room].append(id)
    for ids in placing.values():
        found |= {pair for pair in combinations(ids, 2) if _one_spot(survey, touches[pair[0]], touches[pair[1]])}
    return tuple(sorted((min(pair), max(pair)) for pair in found))


def _touch(survey: Survey, one: Candidate) -> Touch:
    fields: set[tuple[str, str]] = set()
    whole: set[str] = set()
    placed: list[Item] = []
    for change in one.changes:
        if change.add is not None or change.remove:
            whole.add(change.item)
        else:
            fields |= {(change.item, name) for name in _spread(change)}
        after = _after(survey, change)
        if isinstance(after, (Piece, Hung)) or (isinstance(after, Light) and after.what == "floor lamp"):
            placed.append(after)
    return Touch(frozenset(fields), frozenset(whole), tuple(placed))


def _spread(change: Change) -> set[str]:
    names = {name for name, _ in change.set}
    for group in TOGETHER.get(change.table, ()):
        if names & set(group):
            names |= set(group)
    return names


def _after(survey: Survey, change: Change) -> Item | None:
    if change.add is not None:
        return change.add
    if change.remove or change.item not in survey.named:
        return None
    moves = any(name not in STAYS for name, _ in change.set)
    return moved_to(survey.named[change.item][1], change.set) if moves else None


def _same_item(one: Touch, other: Touch) -> bool:
    if not one.fields.isdisjoint(other.fields):
        return True
    names = {item for item, _ in other.fields} | other.whole
    mine = {item for item, _ in one.fields} | one.whole
    return not one.whole.isdisjoint(names) or not other.whole.isdisjoint(mine)


def _one_spot(survey: Survey, one: Touch, other: Touch) -> bool:
    return any(
        mine.name != theirs.name and mine.room == theirs.room and _meet(survey, mine, theirs)
        for mine in one.placed
        for theirs in other.placed
    )


def _meet(survey: Survey, one: Item, other: Item) -> bool:
    if isinstance(one, (Piece, Light)) and isinstance(other, (Piece, Light)):
        return pieces_overlap(one, other, wall_lines(survey, one.room))
    if isinstance(one, Hung) and isinstance(other, Hung):
        return hung_overlap(one, other)
    if isinstance(one, Piece) and isinstance(other, Hung):
        return hides(one, other, wall_lines(survey, one.room))
    return isinstance(one, Hung) and isinstance(other, Piece) and hides(other, one, wall_lines(survey, one.room))
