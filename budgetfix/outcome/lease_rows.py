"""The chosen remedies under a lease: rows for undoing them, and the landlord's note in words that need no key."""

from __future__ import annotations

import re
from collections.abc import Iterable

from budgetfix.brief.lease import CLASSES, Lease
from budgetfix.framing.frame import Ground
from budgetfix.outcome.leased import LandlordNote, Undoing, UndoRow, Work
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.leases import Under
from budgetfix.remedies.registry import KINDS
from budgetfix.remedies.undoing import Undone, goods_to_keep
from budgetfix.room.items import Curtain, Hung, Item, Light, Opening, Piece
from budgetfix.room.survey import Survey

KIND_NAMES = {kind.kind: kind.name for kind in KINDS if kind.kind != "declared"}
KEYED = re.compile(r"\d|\bwall [A-Z]\b")
TOLD = frozenset({"pins", "strips", "peels off"})
HELD = {"strips": "none: adhesive strips that come off again", "peels off": "none: it sticks and peels off again"}


def undoing(base: Ground, chosen: Iterable[Candidate]) -> Undoing | None:
    """What undoing the plan takes; None without a lease."""
    lease = base.brief.lease
    if lease is None:
        return None
    rows, keep = [], set()
    for under, one in _each(base, lease, chosen):
        done = under.undone(one)
        if done.words:
            rows.append(UndoRow(one.id, one.name, _sentence(done), done.plugs, done.pins, done.minutes))
            keep |= {product for product, _ in goods_to_keep(done, base.catalog)}
    names = tuple(one.name or one.product for one in base.catalog.products if one.product in keep)
    lent = tuple(name for name, _ in lease.keep)
    return Undoing(tuple(rows), names, lease.undo == "counted", lease.undo_minutes, lease.ends, lent)


def _each(base: Ground, lease: Lease, chosen: Iterable[Candidate]) -> list[tuple[Under, Candidate]]:
    """What is done already, as the rooms were before it, and what is chosen; what is begun with all of its steps."""
    before, now = (Under(lease, base.catalog, survey) for survey in (base.origin, base.survey))
    whole = {one.id: one for one in base.rest.whole}
    return [*((before, one) for one in base.rest.done), *((now, whole.get(one.id, one)) for one in chosen)]


def undo_minutes(base: Ground, chosen: Iterable[Candidate]) -> int:
    """Person-minutes of undoing all that is done and chosen; 0 without a lease."""
    lease = base.brief.lease
    return 0 if lease is None else sum(under.undone(one).minutes for under, one in _each(base, lease, chosen))


def _sentence(done: Undone) -> str:
    """`Take it down, take out 6 plugs, fill and touch up; put the old cloth back`."""
    words = "; ".join(done.words)
    return words[:1].upper() + words[1:]


def landlord_note(base: Ground, chosen: Iterable[Candidate]) -> LandlordNote | None:
    """The note; None where the home is not rented, there is no lease, or nothing needs leave."""
    lease, survey = base.brief.lease, base.survey
    if lease is None or survey is None or not survey.household.rent:
        return None
    asked, agreed, told = [], [], []
    each = _each(base, lease, chosen)
    for under, one in each:
        needs, said = under.leave(one)
        if needs and said == "given":
            agreed.append(_work(under, under.survey or survey, one))
        elif needs:
            asked.append(_work(under, under.survey or survey, one))
        elif one.leaves in TOLD:
            told.append(_work(under, under.survey or survey, one))
    if not asked and not agreed:
        return None
    return LandlordNote(
        tuple(asked),
        tuple(agreed),
        tuple(told),
        tuple(dict.fromkeys(f"{words}: kept {where}" for under, one in each for words, where in _kept(under, one))),
        _untouched(lease, tuple(one for _, one in each)),
        tuple(words for name, words in CLASSES.items() if name in lease.forbids),
        lease.ends,
    )


def _work(under: Under, survey: Survey, one: Candidate) -> Work:
    undone = under.undone(one)
    names = {product.product: product.name or product.product for product in under.catalog.products}
    return Work(
        _what(one),
        _where(survey, one),
        _holes(undone) or HELD.get(one.leaves, ""),
        ", ".join(names.get(product, product) for product, _ in one.uses),
        "; ".join(f"I {words}" for words in undone.words),
    )


def _what(one: Candidate) -> str:
    """The catalogue's own name; its kind's where it has none, or one that a landlord would need a key or a tape for."""
    named = not one.own and one.name != one.id and not KEYED.search(one.name)
    return one.name if named else KIND_NAMES.get(one.kind, one.name)


def _holes(done: Undone) -> str:
    plugs = "a wall plug" if done.plugs == 1 else "wall plugs"
    parts = [f"{done.plugs} for {plugs}, usually 6 to 8 mm wide"] if done.plugs else []
    pins = "pin hole" if done.pins == 1 else "pin holes"
    parts += [f"{done.pins} {pins}, about 1 mm wide"] if done.pins else []
    return ", and ".join(parts)


def _where(survey: Survey, one: Candidate) -> str:
    """Room and place, by what anybody sees there: the window, the sofa, the door in the same wall."""
    found = [_place(survey, change.add or _named(survey, change.item)) for change in one.changes]
    return "; ".join(dict.fromkeys(place for place in found if place))


def _named(survey: Survey, name: str) -> Item | None:
    return survey.named.get(name, (None, None))[1]


def _place(survey: Survey, thing: Item | None) -> str:
    if thing is None:
        return ""
    if isinstance(thing, Curtain):
        window = _named(survey, thing.window)
        return _in_room(window.room if isinstance(window, Opening) else thing.room, f"at the {thing.window}")
    if isinstance(thing, Piece):
        return _in_room(thing.room, f"behind the {thing.name}")
    if isinstance(thing, Light):
        return _in_room(thing.room, f"at the {thing.name}")
    if isinstance(thing, Hung):
        return _in_room(thing.room, f"above the {thing.over}" if thing.over else _wall(survey, thing))
    return _in_room(thing.room, f"at the {thing.name}")


def _wall(survey: Survey, thing: Hung) -> str:
    """A wall by its doors and windows; one that has none by the wall across."""
    walls = [one.wall for one in survey.walls_of(thing.room)]
    through = {
        wall: [one.name for one in survey.openings if (one.room, one.wall) == (thing.room, wall)] for wall in walls
    }
    if through.get(thing.wall):
        return f"on the wall with the {' and the '.join(through[thing.wall])}"
    across = walls[(walls.index(thing.wall) + 2) % 4] if len(walls) == 4 and thing.wall in walls else ""
    if through.get(across):
        return f"on the wall across from the {' and the '.join(through[across])}"
    return "on a wall without doors and windows"


def _in_room(room: str, place: str) -> str:
    return f"{room}, {place}" if room else place


def _kept(under: Under, one: Candidate) -> list[tuple[str, str]]:
    """(what is taken off and put back in the end, where it is kept)."""
    return [(words, where) for _, words, where in under.kept_things(one)]


def _untouched(lease: Lease, chosen: tuple[Candidate, ...]) -> tuple[str, ...]:
    changed = {change.item for one in chosen for change in one.changes}
    return tuple(f"the {name}" for name, _ in lease.keep if name not in changed)
