"""What a change brings with it: old holes to fill, straps to fix again, lamps to put back, heights to measure again.

Found from a candidate's changes, whatever its kind. Steps with minutes are for what the tool sized itself; of a user's
own remedy the minutes are the user's, so there it is only said.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from budgetfix.base.twin import Twin
from budgetfix.remedies.candidate import Work, planned
from budgetfix.room.items import HEATERS, TALL, WITH_DRAWERS, Curtain, Hung, Item, Light, Opening, Piece, Rug
from budgetfix.room.survey import Change, Survey

Minutes = tuple[int, int, int]
PIN, PLUG, TOUCH_UP = (5, 8, 12), (10, 15, 25), 5
STRAP: Minutes = (15, 25, 45)
AGAIN = Fraction(7, 10)
"""The second hole of a task, and each one more, goes faster. Minutes are our judgement, shipped as defaults."""
TOUCH_UP_PHASE, STRAP_PHASE = 13, 6
BELOW_TOP_MM = 50.0
"""A frame hangs from a nail this far below its upper edge (common practice)."""
BRACKET_MM = 100.0
"""A screen's bracket is screwed on this far above and below its middle, a shelf's so far down (common practice)."""
USUAL = {
    "picture": "nail",
    "mirror": "nail",
    "clock": "nail",
    "shelf": "screws",
    "screen": "screws",
    "sconce": "screws",
}
"""What holds a thing where the survey does not say (common practice)."""
NEAR_MM = 100.0
"""A piece this near to a wall hides what is behind it."""
HIGH_MM = 2100.0
"""Whoever fills a hole higher up stands on a ladder (common practice)."""
HEAT = Twin(36)
"""How far cloth hangs from a portable heater (published value S8)."""
DRAWERS_FROM, TALL_FROM, SLENDER = Twin(27), Twin(48), 3.0
"""From where a piece counts as tall, as in the rule tall-piece-loose."""
WITH_LEAD = ("floor lamp", "table lamp")
ANYWHERE = "another room, storage, sold or given away"
GOES_TO = {"listing": "put away with the owner's things"}
"""Where what leaves the room may go, by profile; a seller's own things are not for sale, else `ANYWHERE`."""


@dataclass(frozen=True, slots=True)
class Hole:
    """One old hole in a wall: `at` from its left corner, `high` above the floor."""

    of: str
    sort: Literal["pin", "plug"]
    room: str
    wall: str
    at: float
    high: float
    bracket: bool = False


@dataclass(frozen=True, slots=True)
class Following:
    """Steps that follow, sentences that are only said, hazards that come in, and what it does to the paint."""

    steps: tuple[Work, ...] = ()
    said: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    filled: int = 0
    """Old holes that are filled."""
    plugs: int = 0
    """New plug holes, for a strap that is fixed again."""

    @property
    def words(self) -> tuple[str, ...]:
        """All of it as sentences, for work whose minutes are the user's."""
        return (*self.said, *(step.text[:1].lower() + step.text[1:] for step in self.steps))


def following(survey: Survey, changes: Iterable[Change], fill: bool = True, profile: str = "living") -> Following:
    """What comes with these changes; without `fill` their own work fills the old holes, so no step does."""
    done = tuple(changes)
    after = survey.changed(done)
    holes = tuple(hole for hole in _holes(survey, done) if not _covered(after, hole))
    straps = tuple(_refixed(survey, after, done))
    steps = [*(_strap(name) for name in straps), *([_fill(holes)] if holes and fill else [])]
    hazards = [*_around(survey, after, done), *(["drill", "tipping"] if straps else [])]
    hazards += ["ladder"] if any(hole.high > HIGH_MM for hole in holes) else []
    return Following(
        tuple(steps),
        (*_put_back(survey, after, done), *_void(survey, after, done), *_leaving(survey, done, profile)),
        tuple(dict.fromkeys(hazards)),
        len(holes) + _patched(survey, done),
        2 * len(straps),
    )


def says(text: str, words: Iterable[str]) -> str:
    """A step's text with what follows it."""
    return "; ".join((text, *words))


def _before(survey: Survey, change: Change) -> Item | None:
    return survey.named.get(change.item, (None, None))[1] if change.add is None else None


def _holes(survey: Survey, changes: tuple[Change, ...]) -> Iterator[Hole]:
    """Where each changed thing hangs from as surveyed."""
    for change in changes:
        thing = _before(survey, change)
        if isinstance(thing, Hung):
            yield from _of_hung(thing)
        elif isinstance(thing, Piece) and thing.fixed:
            for share in (0.25, 0.75):
                at, high = thing.from_left + share * thing.width, thing.height - BELOW_TOP_MM
                yield Hole(f"the strap of the {thing.name}", "plug", thing.room, thing.wall, at, high)
        elif isinstance(thing, Curtain) and _rod_goes(thing, change):
            yield from _of_rod(survey, thing)


def _patched(survey: Survey, changes: tuple[Change, ...]) -> int:
    """Old holes of the survey that the changes fill."""
    filled = 0
    for change in changes:
        thing = _before(survey, change)
        if isinstance(thing, Hung) and thing.what == "old holes":
            left = 0 if change.remove else dict(change.set).get("things", thing.things)
            filled += thing.things - int(left or 0)
    return filled


def _of_hung(thing: Hung) -> Iterator[Hole]:
    """A nail in the middle; two screws; four for a shelf, or a screen on the wall. What was not said is usual."""
    if thing.leaned or thing.on or thing.what in ("old holes", "mark") or thing.fixing in ("strips", "strap", "none"):
        return
    held = USUAL.get(thing.what, "none") if thing.fixing == "unknown" else thing.fixing
    shares = {"nail": (0.5,), "screws": (0.25, 0.75)}.get(held, ())
    sort: Literal["pin", "plug"] = "pin" if held == "nail" else "plug"
    middle, top = thing.bottom + thing.height / 2, thing.bottom + thing.height - BELOW_TOP_MM
    brackets = {"screen": (middle - BRACKET_MM, middle + BRACKET_MM), "shelf": (top - BRACKET_MM, top)}
    for high in brackets.get(thing.what, (top,)):
        for share in shares:
            at = thing.from_left + share * thing.width
            yield Hole(thing.group or thing.name, sort, thing.room, thing.wall, at, high)


def _rod_goes(curtain: Curtain, change: Change) -> bool:
    now = dict(curtain)
    names = ("rod_height", "rod_from_left", "rod_width", "window", "also_window")
    return change.remove or any(name in names and now[name] != value for name, value in change.set)


def _of_rod(survey: Survey, curtain: Curtain) -> Iterator[Hole]:
    """Two holes a bracket, the brackets spread evenly over the rod."""
    from budgetfix.remedies.rods import brackets

    window = survey.named.get(curtain.window, (None, None))[1]
    wall = window.wall if isinstance(window, Opening) else ""
    count = brackets(curtain.rod_width)
    for number in range(count):
        at = curtain.rod_from_left + curtain.rod_width * number / (count - 1)
        for _ in range(2):
            of = f"the rod at the {curtain.window}"
            yield Hole(of, "plug", curtain.room, wall, at, curtain.rod_height, bracket=True)


def _covered(after: Survey, hole: Hole) -> bool:
    """True where something hangs over a hole, or stands close before it, afterwards. Rods hide nothing."""
    if hole.bracket:
        return False
    for one in after.pictures:
        here = (one.room, one.wall) == (hole.room, hole.wall) and one.what not in ("old holes", "mark")
        if here and 0 < hole.at - one.from_left < one.width and 0 < hole.high - one.bottom < one.height:
            return True
    return any(
        (one.room, one.wall) == (hole.room, hole.wall) and one.gap <= NEAR_MM and not one.hangs
        and 0 < hole.at - one.from_left < one.width and hole.high < one.height
        for one in after.furniture
    )  # fmt: skip


def _fill(holes: tuple[Hole, ...]) -> Work:
    """One step that fills and touches up all old holes."""
    counts = Counter(hole.of for hole in holes)
    count = len(holes)
    which = f"the {count} old holes" if count > 1 else "the old hole"
    text = f"Fill and touch up {which} of {listed(counts)}: press filler in, wipe it smooth while damp, no sanding"
    slow = sum(hole.sort == "plug" for hole in holes)
    return _work(text, [PLUG] * slow + [PIN] * (count - slow), TOUCH_UP, TOUCH_UP_PHASE)


def _strap(name: str) -> Work:
    return _work(f"Fix the {name} to the wall again, into studs or new plugs", [STRAP], 0, STRAP_PHASE)


def _work(text: str, each: list[Minutes], more: int, phase: int) -> Work:
    """The first whole, the others a little faster, and once `more`."""
    low, likely, high = (
        Fraction(each[0][place]) + AGAIN * sum(one[place] for one in each[1:]) + more for place in range(3)
    )
    return Work(text, planned(low, likely, high), math.ceil(low), math.ceil(likely), math.ceil(high), 1, phase)


def listed(names: Iterable[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    *rest, last = dict.fromkeys(names)
    return f"{', '.join(rest)} and {last}" if rest else last


def _moves(before: Piece, after: Item | None) -> bool:
    """True where a piece stands elsewhere afterwards, or another one stands in its place."""
    if not isinstance(after, Piece):
        return True
    names = ("wall", "from_left", "gap", "faces", "width", "depth", "height")
    return any(getattr(before, name) != getattr(after, name) for name in names)


def _pieces(survey: Survey, after: Survey, changes: tuple[Change, ...]) -> Iterator[tuple[Piece, Piece | None]]:
    """Pieces that move or go: as surveyed, and afterwards."""
    for change in changes:
        thing = _before(survey, change)
        if isinstance(thing, Piece):
            then = after.named.get(thing.name, (None, None))[1]
            if _moves(thing, then):
                yield thing, then if isinstance(then, Piece) else None


def _refixed(survey: Survey, after: Survey, changes: tuple[Change, ...]) -> Iterator[str]:
    """Pieces that were strapped and stand elsewhere."""
    return (then.name for piece, then in _pieces(survey, after, changes) if piece.fixed and then is not None)


def _put_back(survey: Survey, after: Survey, changes: tuple[Change, ...]) -> Iterator[str]:
    """Lamps and screens that stood on what moves or goes."""
    named = {change.item for change in changes}
    for piece, then in _pieces(survey, after, changes):
        on: list[Light | Hung] = [one for one in survey.lights if one.on == piece.name]
        on += [one for one in survey.pictures if one.on == piece.name]
        loose = [one.name for one in on if one.name not in named]
        if loose and then is None:
            yield f"find a new place for the {listed(loose)}"
        elif loose:
            yield f"put the {listed(loose)} back on the {piece.name}"
        strapped = [one.name for one in on if isinstance(one, Hung) and one.fixing == "strap"]
        if strapped and then is not None:
            yield f"strap the {listed(strapped)} again"


def _void(survey: Survey, after: Survey, changes: tuple[Change, ...]) -> Iterator[str]:
    """Pictures over a piece that moves without them: their heights and middles hold no longer."""
    named = {change.item for change in changes}
    for piece, _ in _pieces(survey, after, changes):
        frames = [one for one in survey.pictures if one.over == piece.name and one.name not in named]
        over = [one.group or one.name for one in frames]
        if over:
            yield f"measure the {listed(over)} again: height and middle were for the {piece.name} where it was"


def _leaving(survey: Survey, changes: tuple[Change, ...], profile: str) -> Iterator[str]:
    """Things that leave the room: taken away, or another one stands in their place."""
    names = [words for _, words in left_behind(survey, changes)]
    if names:
        yield let_go(names, GOES_TO.get(profile, ANYWHERE))


def left_behind(survey: Survey, changes: Iterable[Change]) -> tuple[tuple[str, str], ...]:
    """Things that leave the room, each with what it is called then: `the sofa` taken away, `the old sofa` replaced."""
    gone = []
    for change in changes:
        thing = _before(survey, change)
        if thing is not None and change.remove:
            spot = getattr(thing, "what", "") in ("old holes", "mark")
            gone.append((thing.name, "" if spot else f"the {thing.name}"))
        elif thing is not None and _replaced(thing, dict(change.set)):
            gone.append((thing.name, f"the old {'cloth' if isinstance(thing, Curtain) else thing.name}"))
    return tuple((name, words) for name, words in gone if words)


def let_go(names: Iterable[str], where: str = ANYWHERE) -> str:
    """What is said of things that leave the room."""
    return f"say where {listed(names)} will go: {where}"


def _replaced(thing: Item, new: dict[str, object]) -> bool:
    """True where a thing gets another size: then it is another thing. A piece that only grows taller stays."""
    sizes = {Curtain: ("panel_width",), Hung: ("width", "height")}
    names = sizes.get(type(thing), ("width", "depth"))
    if isinstance(thing, (Opening, Light)) or not set(names) & set(new):
        return False
    now = dict(thing)
    before, after = ([fields.get(name) for name in names if name in now] for fields in (now, {**now, **new}))
    if isinstance(thing, Rug):
        return sorted(map(str, before)) != sorted(map(str, after))
    return before != after


def _around(survey: Survey, after: Survey, changes: tuple[Change, ...]) -> Iterator[str]:
    """Hazards of what is moved: cloth near a heater, tall pieces, leads."""
    for change in changes:
        thing = change.add if change.add is not None else after.named.get(change.item, (None, None))[1]
        if isinstance(thing, Curtain) and _near_heater(after, thing):
            yield "heat"
        if isinstance(thing, Piece) and _tips(survey, thing) and any(name != "fixed" for name, _ in change.set):
            yield "tipping"
        places = {"wall", "from_left", "gap", "on", "lead", "socket"}
        if (
            isinstance(thing, Light)
            and thing.what in WITH_LEAD
            and (change.add or {name for name, _ in change.set} & places)
        ):
            yield "cord"


def _near_heater(after: Survey, curtain: Curtain) -> bool:
    """True where a heater stands at the curtain's wall, within 36 in (910 mm) of the rod's stretch."""
    window = after.named.get(curtain.window, (None, None))[1]
    reach = HEAT.in_mm(after.household.metric)
    start, end = curtain.rod_from_left - reach, curtain.rod_from_left + curtain.rod_width + reach
    return isinstance(window, Opening) and any(
        (one.room, one.wall) == (window.room, window.wall) and one.from_left < end and start < one.from_left + one.width
        for one in after.furniture
        if one.what in HEATERS
    )


def _tips(survey: Survey, piece: Piece) -> bool:
    if piece.what not in TALL or piece.hangs:
        return False
    least = (DRAWERS_FROM if piece.what in WITH_DRAWERS else TALL_FROM).in_mm(survey.household.metric)
    return piece.height >= least - 0.1 or piece.height > SLENDER * piece.depth
