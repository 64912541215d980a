"""Signs for what is seen on a wall from the front: openings, frames, screens, furniture, cloth, lamps."""

from __future__ import annotations

from budgetfix.exports import palette
from budgetfix.exports.drawings.labels import Box
from budgetfix.exports.drawings.pen import THIN, Look, Pen
from budgetfix.room.items import SEATS, WITH_DRAWERS, Curtain, Hung, Light, Opening, Piece
from budgetfix.room.stretches import stack_of

FRAME = 0.12
"""How much of a picture its frame takes on each side."""


def draw_opening_front(pen: Pen, opening: Opening, box: Box, look: Look) -> None:
    """A window with its bars, a door with its handle."""
    x0, y0, x1, y1 = box
    glass: Look = {**look, "fill": palette.GLASS} if opening.what == "window" else look
    pen.rect(x0, y0, x1 - x0, y1 - y0, glass)
    if opening.what == "window":
        pen.line(((x0 + x1) / 2, y0), ((x0 + x1) / 2, y1), THIN)
        pen.line((x0, (y0 + y1) / 2), (x1, (y0 + y1) / 2), THIN)
    elif opening.what == "door":
        side = x1 - 4 if opening.hinge == "left" else x0 + 4
        pen.circle(side, y0 + (y1 - y0) * 0.52, 1.3, {"fill": palette.INK})


def draw_hung(pen: Pen, hung: Hung, box: Box, look: Look) -> None:
    """A frame within a frame; a screen is dark; old holes are dots."""
    x0, y0, x1, y1 = box
    if hung.what in ("old holes", "mark"):
        for share in (0.2, 0.5, 0.8):
            pen.circle(x0 + (x1 - x0) * share, (y0 + y1) / 2, 0.9, {"fill": look["stroke"]})
        return
    pen.rect(x0, y0, x1 - x0, y1 - y0, look)
    inset = FRAME * min(x1 - x0, y1 - y0)
    if hung.what == "screen":
        pen.rect(x0 + 2, y0 + 2, x1 - x0 - 4, y1 - y0 - 4, {"fill": palette.SCREEN, "stroke": "none"})
    elif hung.what in ("picture", "mirror") and inset > 1:
        inner: Look = {**THIN, "fill": palette.GLASS if hung.what == "mirror" else "none", "stroke": look["stroke"]}
        pen.rect(x0 + inset, y0 + inset, x1 - x0 - 2 * inset, y1 - y0 - 2 * inset, inner)


def draw_piece_front(pen: Pen, piece: Piece, box: Box, look: Look) -> None:
    """A piece from the front: seats with their cushions, shelves with boards, chests with drawers, tables on legs."""
    x0, y0, x1, y1 = box
    w, h, thin = x1 - x0, y1 - y0, {**THIN, "stroke": look["stroke"]}
    if piece.what in ("desk", "dining table", "coffee table", "side table", "console table") and h > 8:
        top = min(5.0, h * 0.15)
        for at in (x0 + 2, x1 - 2):
            pen.line((at, y0 + top), (at, y1), {**thin, "stroke-width": 1.4})
        pen.rect(x0, y0, w, top, look)
        return
    pen.rect(x0, y0, w, h, look, 1.5)
    boards = {"bookcase": 5, "shelf unit": 4}.get(piece.what, 3 if piece.what in WITH_DRAWERS else 0)
    for at in range(1, boards):
        pen.line((x0, y0 + h * at / boards), (x1, y0 + h * at / boards), thin)
    if piece.what in SEATS and piece.seat:
        seat = y1 - h * min(0.9, piece.seat / piece.height)
        pen.line((x0, seat), (x1, seat), thin)
    if piece.what == "radiator":
        for at in range(1, 8):
            pen.line((x0 + w * at / 8, y0 + 2), (x0 + w * at / 8, y1 - 2), thin)


def draw_curtain(pen: Pen, curtain: Curtain, box: Box, look: Look, scale: float) -> None:
    """The rod with its ends, and the open cloth down to its hem."""
    x0, y0, x1, y1 = box
    stack = min(stack_of(curtain) * scale, (x1 - x0) / 2)
    starts = (x0, x1 - stack) if curtain.panels > 1 else (x0,)
    for start in starts:
        pen.rect(start, y0, stack, y1 - y0, look)
        folds = max(2, round(stack / 4))
        for at in range(1, folds):
            pen.line((start + stack * at / folds, y0 + 1), (start + stack * at / folds, y1),
                     {**THIN, "stroke-width": 0.5, "stroke": look["stroke"]})  # fmt: skip
    pen.line((x0, y0), (x1, y0), {"stroke": look["stroke"], "stroke-width": 2.4})
    for end in (x0, x1):
        pen.circle(end, y0, 2, {"fill": look["stroke"]})


def draw_lamp(pen: Pen, light: Light, box: Box, look: Look, foot: float) -> None:
    """A shade; a stem down to where it stands, for lamps that stand."""
    x0, y0, x1, y1 = box
    middle, slope = (x0 + x1) / 2, (x1 - x0) * 0.18
    if light.what != "wall light" and foot > y1:
        stem: Look = {"stroke": look["stroke"], "stroke-width": 1.3}
        pen.line((middle, y1), (middle, foot), stem)
        pen.line((middle - 4, foot), (middle + 4, foot), stem)
    pen.path([[(x0 + slope, y0), (x1 - slope, y0), (x1, y1), (x0, y1)]], look)
