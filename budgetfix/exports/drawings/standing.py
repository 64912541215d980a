"""Signs for what stands in a room seen from above: openings, furniture, curtains, lamps."""

from __future__ import annotations

from collections.abc import Callable

from budgetfix.exports import palette
from budgetfix.exports.drawings.labels import Box
from budgetfix.exports.drawings.pen import THIN, Look, Pen, Point
from budgetfix.room.items import SEATS, Curtain, Light, Opening, Piece
from budgetfix.room.places import WallLine, footprint
from budgetfix.room.sides import sides
from budgetfix.room.stretches import cloth_of
from budgetfix.room.survey import Survey

At = Callable[[Point], Point]
BACK = 0.18
"""Share of a seat's depth that its back takes in a drawing."""


def draw_opening(pen: Pen, at: At, line: WallLine, opening: Opening, scale: float, thick: float) -> None:
    """A gap in the wall: three lines for a window, a leaf and its swing for a door."""
    deep, start, end = thick / scale, opening.from_left, opening.from_left + opening.width
    gap = [at(line.point(*spot)) for spot in ((start, 0), (end, 0), (end, -deep), (start, -deep))]
    pen.path([gap], {"fill": palette.WHITE, "stroke": palette.INK, "stroke-width": 0.8})
    if opening.what == "window":
        pen.line(at(line.point(start, -deep / 2)), at(line.point(end, -deep / 2)), THIN)
        return
    if opening.opens != "in" or opening.what != "door":
        return
    hinge, free = (start, end) if opening.hinge == "left" else (end, start)
    leaf = at(line.point(hinge, opening.width))
    pen.line(at(line.point(hinge)), leaf, {"stroke": palette.INK, "stroke-width": 1.4})
    swing: Look = {"fill": "none", "stroke": palette.QUIET, "stroke-width": 0.7, "stroke-dasharray": "3 2"}
    pen.arc(leaf, at(line.point(free)), opening.width * scale, opening.hinge == "left", swing)


def draw_piece(pen: Pen, at: At, lines: dict[str, WallLine], piece: Piece, look: Look) -> None:
    """A piece as its outline; seats and beds show their back."""
    if piece.wall not in lines:
        return
    ring = [at((float(x), float(y))) for x, y in footprint(piece, lines).exterior.coords[:-1]]
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    round_ = min(max(xs) - min(xs), max(ys) - min(ys)) / 2 if piece.round else 1.5
    pen.rect(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys), look, round_)
    if piece.what in SEATS or piece.what.endswith("chair") or piece.what == "bed":
        seen = sides(piece, lines)
        (ax, ay), (bx, by) = seen.back
        deep = BACK * (piece.depth if piece.what != "bed" else piece.depth * 0.8)
        dx, dy = seen.look[0] * deep, seen.look[1] * deep
        pen.line(at((ax + dx, ay + dy)), at((bx + dx, by + dy)), {**THIN, "stroke": look["stroke"]})


def curtain_at(
    pen: Pen, at: At, lines: dict[str, WallLine], survey: Survey, room: str, curtain: Curtain, marked: bool
) -> None:
    """The rod as a line before its window, the open cloth as two blocks at its ends."""
    window = survey.named.get(curtain.window, (None, None))[1]
    if not isinstance(window, Opening) or window.room != room or window.wall not in lines:
        return
    line, color = lines[window.wall], palette.TEAL if marked else palette.INK
    start, end = curtain.rod_from_left, curtain.rod_from_left + curtain.rod_width
    pen.line(at(line.point(start, 70)), at(line.point(end, 70)), {"stroke": color, "stroke-width": 1.1})
    for one, two in cloth_of(curtain):
        ring = [at(line.point(*spot)) for spot in ((one, 30), (two, 30), (two, 110), (one, 110))]
        pen.path([ring], {"fill": palette.CHANGED if marked else palette.STRAW, "stroke": color, "stroke-width": 0.8})


def draw_light(pen: Pen, box: Box, light: Light, marked: bool) -> None:
    """A circle: with a cross for lights at the ceiling (dashed, since they are above), with a dot for lamps."""
    x, y, radius = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2, max(4.0, (box[2] - box[0]) / 2)
    color = palette.TEAL if marked else palette.INK
    look: Look = {"fill": "none", "stroke": color, "stroke-width": 1.8 if marked else 0.8}
    if light.what in ("ceiling", "pendant"):
        pen.circle(x, y, radius, {**look, "stroke-dasharray": "2 1.5"})
        for dx, dy in ((0.7, 0.7), (0.7, -0.7)):
            pen.line(
                (x - dx * radius, y - dy * radius), (x + dx * radius, y + dy * radius), {**look, "stroke-width": 0.6}
            )
        return
    pen.circle(x, y, radius, {**look, "fill": palette.WHITE})
    pen.circle(x, y, 1.6, {"fill": color})
