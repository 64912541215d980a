"""Too little room behind a dining chair.

How to measure. From the edge of the table straight back past each chair, to
the wall or the next piece. Chairs of the same table do not count. People walk
behind where the straight line between two doors crosses the 36 in (910 mm)
behind the table.

Why: nobody can get up, or pass with a dish.

Basis: common practice. 36 in before a dresser and 24 in where people pass
between furniture (HUD, Manual of Acceptable Practices vol. 4 (1973), published
values C16 and C15) are the nearest rows; our 28 in leaves them on purpose: it
is the least that lets a chair be pushed back and left.
"""

from __future__ import annotations

from fractions import Fraction

from shapely.geometry import Polygon

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint
from budgetfix.room.sides import Side, free_ahead, sides, span, straight_ways, strip

GLARING = Twin(18)
PLAIN = Band(low=Twin(28, 710), bad_low=GLARING, aim=(Twin(36), None))
ROUTE = Band(low=Twin(36), bad_low=GLARING, aim=(Twin(36), None))
CHAIRS = ("dining chair", "chair")
BEHIND = Twin(36)
"""People walk behind a chair where the straight line between two doors crosses this much floor behind the table."""
REACH_MM = 1200.0


def _subjects(look: Look) -> tuple[str, ...]:
    chairs = {chair.at for chair in look.pieces(whats=CHAIRS)}
    tables = look.pieces(whats=("dining table",))
    return tuple(table.name for table in tables if table.name in chairs and table.wall in look.lines)


def _strips(look: Look, table: Piece, chairs: tuple[Piece, ...]) -> list[list[tuple[Side, tuple[float, float]]]]:
    """The floor behind each chair: the stretch of the table's edge that it takes, and the way out; at a corner two."""
    its = sides(table, look.lines)
    left = (its.look[1], -its.look[0])
    ways_out = (its.look, (-its.look[0], -its.look[1]), left, (-left[0], -left[1]))
    spot = footprint(table, look.lines)
    found = []
    for chair in chairs:
        seat = footprint(chair, look.lines)
        beyond = [span(seat, way)[1] - span(spot, way)[1] for way in ways_out]
        outs = [way for way, far in zip(ways_out, beyond, strict=True) if far > max(beyond) - 0.1]
        found.append([_strip(seat, spot, out) for out in outs])
    return found


def _strip(seat: Polygon, spot: Polygon, out: tuple[float, float]) -> tuple[Side, tuple[float, float]]:
    across, base = (out[1], -out[0]), span(spot, out)[1]
    low, high = span(seat, across)
    corners = [(across[0] * at + out[0] * base, across[1] * at + out[1] * base) for at in (low, high)]
    return ((corners[0], corners[1]), out)


def _free(look: Look, side: Side, out: tuple[float, float], names: set[str]) -> float:
    x0, y0, x1, y1 = strip(side, out, REACH_MM).bounds
    others = [piece for piece in look.pieces(box=(x0, y0, x1, y1)) if piece.name not in names]
    blocks: list[Polygon] = [footprint(piece, look.lines) for piece in others]
    return free_ahead(side, out, look.outline, blocks, REACH_MM)


def _measure(look: Look, subject: str) -> Measured | None:
    table = look.piece(subject)
    chairs = tuple(chair for chair in look.pieces(whats=CHAIRS) if chair.at == subject and chair.wall in look.lines)
    if table is None or not chairs:
        return None
    names = {subject, *(chair.name for chair in chairs)}
    ways = straight_ways(look.openings(whats=("door", "opening")), look.lines)
    judged = []
    for strips in _strips(look, table, chairs):
        ways_back = []
        for side, out in strips:
            free = _free(look, side, out, names)
            floor = strip(side, out, look.mm(BEHIND))
            band = ROUTE if any(way.intersects(floor) for way in ways) else PLAIN
            ways_back.append((slope(free, band, "mm", look.household.metric), -free, band))
        judged.append(min(ways_back, key=lambda one: one[:2]))
    _, nearest, band = max(judged, key=lambda one: one[:2])
    note = "people walk behind" if band is ROUTE else "behind the tightest chair"
    return Measured(-nearest, give=tape_give(nearest), band=band, note=note)


RULE = Rule(
    slug="chairs-boxed-in",
    title="Dining chairs boxed in",
    measures="from the table's edge to the wall or piece behind a chair",
    unit="mm",
    band=PLAIN,
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; C15, C16 (HUD 1973)",
    lifting_helps=True,
    profiles={"handing-back": Fraction(0)},
    shown=(("Behind a chair", PLAIN), ("Where people also walk behind", ROUTE)),
)
