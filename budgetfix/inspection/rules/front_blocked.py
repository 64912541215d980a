"""Too little floor before a window, a dresser, a desk, a wardrobe or a closet.

How to measure. From the middle of the front straight out to the next thing or
wall; the desk's own chair does not count. Windows: from the wall to the far
side of what stands there, over the window's whole width. What leaves 22 in
(560 mm) of floor to stand on does not count, nor do heaters.

Drawers are glaring where they cannot be pulled out, if you measured how far
that is; a hinged closet where half of its leaf and 12 in (300 mm) is free.

Why: a window that nobody can reach stays shut, drawers that hit the bed stay
closed.

Basis: reach over what stands there: 2010 ADA Standards 308.2 (published value
C11; up to 25 in, for a seated person). Desk 30 in, dresser 36 in (HUD, Manual
of Acceptable Practices vol. 4 (1973), published values C15 and C16). Our band
leaves C11 and C16 on purpose: 24 in is the rounder figure, and 30 in before a
dresser is what passes, 36 in the aim (common practice).
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Edge, Measured, Rule, tape_give
from budgetfix.room.items import HEATERS, WITH_DRAWERS, Opening, Piece
from budgetfix.room.places import footprint
from budgetfix.room.sides import Side, free_ahead, sides, span, strip

FRONTS = (*WITH_DRAWERS, "desk", "wardrobe")
WINDOW = Band(high=Twin(24, 610), bad_high=Twin(36))
STAND = Twin(22, 560)
DRAWERS, PULL = Twin(30), Twin(15)
DESK = Band(low=Twin(30), bad_low=Twin(18))
SLIDING = Band(low=Twin(24, 610), bad_low=Twin(12))
SWING = Twin(12)
BEYOND_LEAF = Band(low=SWING)
DRESSER_AIM: tuple[Edge, Edge] = (Twin(36), None)
CHEST = Band(low=DRAWERS, bad_low=PULL, aim=DRESSER_AIM)
REACH_MM = 1500.0
MIDDLE_HALF = 0.5


def _subjects(look: Look) -> tuple[str, ...]:
    openings = look.openings(whats=("window", "closet"))
    fronts = look.pieces(whats=FRONTS)
    return tuple(thing.name for thing in (*openings, *fronts) if thing.wall in look.lines)


def _hinged(look: Look, leaf: float) -> Band:
    low = leaf + look.mm(SWING)
    return Band(low=low, bad_low=low / 2)


def _front_band(look: Look, piece: Piece) -> Band:
    if piece.what in WITH_DRAWERS:
        return Band(low=DRAWERS, bad_low=PULL if piece.drawers is None else piece.drawers, aim=DRESSER_AIM)
    return DESK if piece.what == "desk" else _hinged(look, piece.width / 2)


def _before(look: Look, side: Side, outward: tuple[float, float], share: float) -> tuple[Piece, ...]:
    """What stands on the strip before a front."""
    x0, y0, x1, y1 = strip(side, outward, REACH_MM, share).bounds
    return look.pieces(box=(x0, y0, x1, y1))


def _window(look: Look, window: Opening) -> Measured:
    line = look.lines[window.wall]
    side = (line.point(window.from_left), line.point(window.from_left + window.width))
    floor = strip(side, line.inward, REACH_MM)
    base = span(floor, line.inward)[0]
    reach, name = 0.0, ""
    for piece in _before(look, side, line.inward, 1.0):
        spot = footprint(piece, look.lines)
        if piece.what in HEATERS or floor.intersection(spot).area <= 1.0:
            continue
        near, far = (at - base for at in span(spot, line.inward))
        if near < look.mm(STAND) - 0.1 and far > reach:
            reach, name = far, piece.name
    note = f"reach over {name}" if name else "nothing before it"
    return Measured(reach, give=tape_give(reach) if name else 0.0, band=WINDOW, note=note)


def _free(look: Look, side: Side, outward: tuple[float, float], band: Band, own: str) -> Measured:
    others = [piece for piece in _before(look, side, outward, MIDDLE_HALF) if piece.name != own and piece.at != own]
    blocks = [footprint(piece, look.lines) for piece in others]
    free = free_ahead(side, outward, look.outline, blocks, REACH_MM, MIDDLE_HALF)
    return Measured(free, give=tape_give(free), band=band, note="free before it")


def _measure(look: Look, subject: str) -> Measured | None:
    opening = look.opening(subject)
    if opening is not None:
        if opening.what == "window":
            return _window(look, opening)
        line = look.lines[opening.wall]
        side = (line.point(opening.from_left), line.point(opening.from_left + opening.width))
        band = SLIDING if opening.opens in ("slides", "no leaf") else _hinged(look, opening.width / 2)
        return _free(look, side, line.inward, band, subject)
    piece = look.piece(subject)
    if piece is None:
        return None
    its = sides(piece, look.lines)
    return _free(look, its.front, its.look, _front_band(look, piece), subject)


RULE = Rule(
    slug="front-blocked",
    title="Front blocked",
    measures="free floor before drawers, desk or closet; reach over what stands before a window",
    unit="mm",
    band=CHEST,
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="C11 (2010 ADA Standards 308.2), C15, C16 (HUD 1973); common practice",
    family="free floor",
    family_by_room=True,
    lifting_helps=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
    shown=(
        ("Drawers", CHEST),
        ("Desk", DESK),
        ("Hinged closet or wardrobe, beyond its leaf", BEYOND_LEAF),
        ("Sliding closet", SLIDING),
        ("Window, the reach over what stands there", WINDOW),
    ),
)
