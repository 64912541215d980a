"""Hang wall lights at one height and at even distances from the middle of what they flank.

Fits: a pair of plug-in or candle lights over one piece, or the only two of a wall; or a single one that is too high
or too low. The middle goes to 63 in (1600 mm) above the floor; beside a bed the lower edge to 22 in (560) above the
mattress. A pair keeps its distance from each other, even about the piece or picture between. Two plugs each; a light
that is wired into the wall is the electrician's.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import says
from budgetfix.room.groups import picture_groups
from budgetfix.room.items import Hung, Piece
from budgetfix.room.stretches import along_wall
from budgetfix.room.survey import Change

MIDDLE_IN, MIDDLE_MM, MATTRESS_IN, MATTRESS_MM = 63.0, 1600.0, 22.0, 560.0
BESIDE_IN, BESIDE_MM, HEAD_IN, HEAD_MM = 36.0, 910.0, 12.0, 300.0
SINGLE_MINUTES = (15, 25, 40)


def _fit(site: Site) -> tuple[Candidate, ...]:
    lamps = [one for one in site.survey.pictures if one.room == site.room and one.what == "sconce"]
    lamps = sorted((one for one in lamps if one.wall in site.lines), key=lambda one: (one.from_left, one.name))
    mine = _named(site, lamps)
    changes = tuple(change for change in _changes(site, mine) if _moves(site, change))
    if not changes or not site.fits(changes):
        return ()
    what = "Hang both wall lights level and even" if len(mine) == 2 else f"Hang {mine[0].name} at the right height"
    text = f"Only lights with a plug; a wired one is the electrician's. {says(site, changes)}"
    minutes = None if len(changes) == 2 else SINGLE_MINUTES
    offer = Offer(what, changes, text, holes=2 * len(changes), wall=mine[0].wall, minutes=minutes)
    return best(KIND, site, (offer,), 1)


def _named(site: Site, lamps: list[Hung]) -> tuple[Hung, ...]:
    """The pair that the site is about, or the pair that its light belongs to, else the light alone."""
    wall, _, name = site.subject.removeprefix("wall ").partition(", ")
    one = next((lamp for lamp in lamps if lamp.name == site.subject), None)
    wall, name = (one.wall, one.over or one.group) if one is not None else (wall, name)
    here = [lamp for lamp in lamps if lamp.wall == wall]
    pair = here if len(here) == 2 else [lamp for lamp in here if name and name in (lamp.over, lamp.group)]
    return tuple(pair) if len(pair) == 2 else (one,) if one is not None else ()


def _changes(site: Site, lamps: tuple[Hung, ...]) -> tuple[Change, ...]:
    axis = _axis(site, lamps) if len(lamps) == 2 else None
    changes = []
    for at, lamp in enumerate(lamps):
        left = lamp.from_left
        if axis is not None:
            first, last = (one.from_left + one.width / 2 for one in lamps)
            left = site.tape(axis + (last - first) / 2 * (1 if at else -1) - lamp.width / 2)
        changes.append(set_on("pictures", lamp.name, from_left=left, bottom=_bottom(site, lamp)))
    return tuple(changes)


def _bottom(site: Site, lamp: Hung) -> float:
    """Where its lower edge goes."""
    middle = lamp.from_left + lamp.width / 2
    for bed in sorted(site.survey.furniture, key=lambda one: one.name):
        if bed.room != site.room or bed.what != "bed" or bed.wall != lamp.wall:
            continue
        low, high, near = along_wall(bed, site.lines, lamp.wall)
        beside = site.mm(BESIDE_IN, BESIDE_MM)
        if near <= site.mm(HEAD_IN, HEAD_MM) and low - beside <= middle <= high + beside:
            mattress = bed.height if bed.seat is None else bed.seat
            return site.tape(mattress + site.mm(MATTRESS_IN, MATTRESS_MM))
    return site.tape(site.mm(MIDDLE_IN, MIDDLE_MM) - lamp.height / 2)


def _axis(site: Site, pair: tuple[Hung, ...]) -> float | None:
    """The middle of what a pair flanks: the piece below, else the one picture group between."""
    wall, over = pair[0].wall, pair[0].over
    piece = site.survey.named.get(over, (None, None))[1] if over and over == pair[1].over else None
    if isinstance(piece, Piece) and piece.wall in site.lines:
        low, high, _ = along_wall(piece, site.lines, wall)
        return (low + high) / 2
    hung = [one for one in site.survey.pictures if one.room == site.room and one.wall == wall]
    between = [
        one.middle
        for one in picture_groups(hung, site.metric)
        if pair[0].from_left < one.middle < pair[1].from_left + pair[1].width
    ]
    return between[0] if len(between) == 1 else None


def _moves(site: Site, change: Change) -> bool:
    """True where a light goes somewhere else by more than a millimetre."""
    now = dict(site.survey.named[change.item][1])
    return any(abs(float(now[name]) - float(value or 0)) > 1.0 for name, value in change.set)


KIND = Kind(
    "rehang-sconces", "Hang wall lights level and even", ("sconces-uneven", "sconce-off-height"), (30, 50, 80), 12,
    _fit, holes=4, hazards=("drill", "cord"), tools=("drill",), leaves="plugs",
    done_when="a level from one to the other shows no slope",
)  # fmt: skip
