"""The seating group as a rule sees it: its seats, and the rugs and tables that belong to it."""

from __future__ import annotations

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Box, Look
from budgetfix.room.items import SEATS, Piece, Rug
from budgetfix.room.places import footprint
from budgetfix.room.seating import group, main_seat
from budgetfix.room.sides import along, length, sides, span

GROUP = "seating group"
NEAR = Twin(48, 1220)
"""A rug this near the main seat belongs to the group (common practice)."""
BEFORE = Twin(48, 1220)
"""A table this far before a seat is its own (common practice)."""
COFFEE_TABLES = ("coffee table", "nesting tables", "ottoman")


def main_of(look: Look) -> Piece | None:
    """The main seat, if it stands at a wall of this room."""
    main = main_seat(look.pieces(whats=SEATS))
    return main if main is not None and main.wall in look.lines else None


def seats_of(look: Look) -> tuple[Piece, ...]:
    """The seats of the group, the main seat among them, by name."""
    return group(look.pieces(whats=SEATS), look.lines, look.household.metric)


def box_around(look: Look, piece: Piece, reach_mm: float) -> Box:
    """The floor around a piece."""
    x0, y0, x1, y1 = footprint(piece, look.lines).bounds
    return (x0 - reach_mm, y0 - reach_mm, x1 + reach_mm, y1 + reach_mm)


def rugs_of(look: Look) -> tuple[Rug, ...]:
    """The rugs of the group: near the main seat, under no table or bed."""
    main = main_of(look)
    if main is None:
        return ()
    rugs = look.rugs(box=box_around(look, main, look.mm(NEAR)))
    return tuple(sorted((rug for rug in rugs if not rug.under and rug.wall in look.lines), key=lambda rug: rug.name))


def tables_before(look: Look, seat: Piece) -> tuple[Piece, ...]:
    """The coffee tables before a seat: ahead of its front, beside no more than its width, within 48 in."""
    its = sides(seat, look.lines)
    left = (its.look[1], -its.look[0])
    front, (low, high) = along(its.front[0], its.look), span(footprint(seat, look.lines), left)
    found = []
    for table in look.pieces(whats=COFFEE_TABLES, box=box_around(look, seat, look.mm(BEFORE))):
        if table.wall not in look.lines:
            continue
        spot = footprint(table, look.lines)
        near, far = (at - front for at in span(spot, its.look))
        beside = span(spot, left)
        if far > 0 and near <= look.mm(BEFORE) and beside[0] < high and low < beside[1]:
            found.append(table)
    return tuple(sorted(found, key=lambda table: table.name))


def seat_length(look: Look, seat: Piece) -> float:
    """How long the front of a seat is; of a corner sofa the inner side: its width less its depth's arm."""
    whole = length(sides(seat, look.lines).front)
    return max(whole - 900.0, whole / 2) if seat.what == "corner sofa" else whole
