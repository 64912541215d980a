"""A wall from the front, as someone sees it who faces it: heights above the floor, distances from the left corner."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.exports import palette
from budgetfix.exports.drawings.floor import Marks, figure
from budgetfix.exports.drawings.hanging import draw_curtain, draw_hung, draw_lamp, draw_opening_front, draw_piece_front
from budgetfix.exports.drawings.labels import Box, meet
from budgetfix.exports.drawings.lanes import Side
from budgetfix.exports.drawings.pen import OLD, STAYS, Look, Pen
from budgetfix.exports.drawings.sheet import MARGIN, SHORTEST, WIDTH, Keys, Sheet
from budgetfix.room.items import Curtain, Hung, Item, Light, Opening, Piece
from budgetfix.room.places import wall_lines
from budgetfix.room.stretches import along_wall, stack_of
from budgetfix.room.survey import Survey

TALLEST = 240.0
NEAR_MM = 300.0
"""What stands nearer to a wall than this is drawn before it."""
BESIDE_MM = 700.0
"""Lamps as near as this."""


@dataclass(frozen=True)
class Face:
    """Where millimetres of a wall land on paper."""

    wall: str
    room: str
    left: float
    floor: float
    scale: float

    @classmethod
    def of(cls, survey: Survey, room: str, wall: str) -> Face:
        """As large as fits between the margins."""
        length = next(one.length for one in survey.walls_of(room) if one.wall == wall)
        ceiling = survey.facts(room).ceiling
        scale = min((WIDTH - 2 * MARGIN) / length, TALLEST / ceiling)
        return cls(wall, room, (WIDTH - length * scale) / 2, 16 + ceiling * scale, scale)

    def box(self, start: float, low: float, end: float, high: float) -> Box:
        """From the left corner and above the floor, in mm, to paper."""
        return (
            self.left + start * self.scale,
            self.floor - high * self.scale,
            self.left + end * self.scale,
            self.floor - low * self.scale,
        )


@dataclass(frozen=True)
class Seen:
    """One thing on the face of a wall: what it is, where it is on paper, and the part of it that takes its name."""

    item: Item
    box: Box
    name_at: Box


def on_wall(survey: Survey, face: Face) -> list[Seen]:
    """What is drawn on a wall, from behind to before: openings, what hangs, what stands near, cloth, lamps."""
    lines, here = wall_lines(survey, face.room), (face.room, face.wall)
    found = [
        _seen(one, _span(face, one.from_left, one.bottom, one.width, one.top))
        for one in survey.openings
        if (one.room, one.wall) == here
    ]
    found += [
        _seen(one, _span(face, one.from_left, one.bottom, one.width, one.bottom + one.height))
        for one in survey.pictures
        if (one.room, one.wall) == here
    ]
    for piece in survey.furniture:
        if piece.room == face.room and piece.wall in lines:
            start, end, off = along_wall(piece, lines, face.wall)
            if off < NEAR_MM and not (piece.tucked and piece.at):
                found.append(_seen(piece, face.box(start, 0, end, piece.height)))
    for curtain in survey.curtains:
        window = survey.named.get(curtain.window, (None, None))[1]
        if isinstance(window, Opening) and (window.room, window.wall) == here:
            whole = _span(face, curtain.rod_from_left, curtain.hem, curtain.rod_width, curtain.rod_height)
            cloth = _span(face, curtain.rod_from_left, curtain.hem, stack_of(curtain), curtain.rod_height)
            found.append(Seen(curtain, whole, cloth))
    found += [_seen(light, _lamp_box(face, light)) for light in survey.lights if _lamp_here(light, face)]
    return found


def _seen(item: Item, box: Box) -> Seen:
    return Seen(item, box, box)


def _span(face: Face, start: float, low: float, width: float, high: float) -> Box:
    return face.box(start, low, start + width, high)


def _lamp_here(light: Light, face: Face) -> bool:
    here = (light.room, light.wall) == (face.room, face.wall)
    return here and light.what in ("wall light", "floor lamp", "table lamp") and light.gap < BESIDE_MM


def _lamp_box(face: Face, light: Light) -> Box:
    """The shade; of a floor lamp, down to the floor."""
    tall = max(150.0, 0.9 * light.width)
    return _span(face, light.from_left, light.bottom, max(light.width, 80.0), light.bottom + tall)


def wall_sheet(
    before: Survey, after: Survey, room: str, wall: str, marks: Marks, pen: Pen, keys: Keys, now: bool
) -> Sheet:
    """One wall as surveyed, or (`now`) as the plan leaves it."""
    survey = after if now else before
    face = Face.of(survey, room, wall)
    length = next(one.length for one in survey.walls_of(room) if one.wall == wall)
    ground = face.box(0, 0, length, survey.facts(room).ceiling)
    sheet = Sheet(pen, ground, (2, 2, WIDTH - 2, ground[3] + MARGIN - 4), keys)
    things = on_wall(survey, face)
    sheet.pen.rect(ground[0], ground[1], ground[2] - ground[0], ground[3] - ground[1], STAYS)
    if now:
        _old(sheet, before, face, marks, things)
    for seen in things:
        _draw(sheet, face, survey, seen, seen.item.name in marks, now)
    sheet.pen.line((ground[0] - 6, ground[3]), (ground[2] + 6, ground[3]), {"stroke": palette.INK, "stroke-width": 2.2})
    _dims(sheet, before, after, face, marks, now)
    sheet.dim("bottom", ground[0], ground[2], figure(length, survey.household.unit), changed=False)
    here = {seen.item.name for seen in things}
    gone = [seen for seen in on_wall(before, face) if seen.item.name not in here] if now else []
    _labels(sheet, things, marks, gone, now)
    return sheet


def _old(sheet: Sheet, before: Survey, face: Face, marks: Marks, things: list[Seen]) -> None:
    """Dashes where a thing was, drawn below all else."""
    here = {seen.item.name: seen.box for seen in things}
    for seen in on_wall(before, face):
        name, (x0, y0, x1, y1) = seen.item.name, seen.box
        if name in marks and here.get(name) != seen.box and not isinstance(seen.item, Light):
            sheet.pen.rect(x0, y0, x1 - x0, y1 - y0, OLD)


def _draw(sheet: Sheet, face: Face, survey: Survey, seen: Seen, marked: bool, now: bool) -> None:
    pen, item = sheet.pen, seen.item
    look: Look = pen.changed if marked and now else {**STAYS, "stroke-width": 1.8} if marked else STAYS
    match item:
        case Opening():
            draw_opening_front(pen, item, seen.box, look)
        case Hung():
            draw_hung(pen, item, seen.box, look)
        case Piece():
            draw_piece_front(pen, item, seen.box, look)
        case Curtain():
            draw_curtain(pen, item, seen.box, look, face.scale)
        case Light():
            draw_lamp(pen, item, seen.box, look, _stands_at(survey, face, item))
        case _:
            return


def _stands_at(survey: Survey, face: Face, light: Light) -> float:
    """The height on paper at which a lamp's foot stands: the floor, or the top of the piece it stands on."""
    on = survey.named.get(light.on, (None, None))[1] if light.on else None
    return face.floor - (on.height * face.scale if isinstance(on, Piece) else 0.0)


PLACES = {
    "from_left": ("x", "from_left"),
    "width": ("x", "width"),
    "bottom": ("y", "bottom"),
    "rod_from_left": ("x", "from_left"),
    "rod_width": ("x", "width"),
    "rod_height": ("y", "top"),
    "hem": ("y", "bottom"),
    "height": ("y", "top"),
}
"""Fields that a dimension can show: along the wall or up from the floor, and which edge of the thing they give."""


def _dims(sheet: Sheet, before: Survey, after: Survey, face: Face, marks: Marks, now: bool) -> None:
    """One dimension for each place or size that changes, as it was or as it is now."""
    unit = before.household.unit
    there = {seen.item.name: seen for seen in on_wall(after if now else before, face)}
    for name in marks:
        if name not in there:
            continue
        old, new = (survey.named.get(name, (None, None))[1] for survey in (before, after))
        for field in _shown(old, new):
            _dim(sheet, face, there[name], field, unit)


def _shown(old: Item | None, new: Item | None) -> Iterable[str]:
    """The fields that differ; of a thing that is new or was on another wall, those that place it."""
    both = old is not None and new is not None and getattr(old, "wall", "") == getattr(new, "wall", "")
    one = new or old
    for field in PLACES:
        if hasattr(one, field) and not (isinstance(one, Piece) and field == "height"):
            if both and getattr(old, field, None) == getattr(new, field, None):
                continue
            if both or field not in ("width", "rod_width", "height"):
                yield field


def _dim(sheet: Sheet, face: Face, seen: Seen, field: str, unit: str) -> None:
    (x0, y0, x1, y1), (axis, edge) = seen.box, PLACES[field]
    value = float(getattr(seen.item, field) or 0)
    words = figure(value, unit)
    if axis == "x":
        ends = (face.left, x0) if edge == "from_left" else (x0, x1)
        sheet.dim("bottom", *ends, words)
        return
    side: Side = "left" if (x0 + x1) / 2 < WIDTH / 2 else "right"
    if field == "height":
        sheet.dim(side, y1, y0, words)
    else:
        sheet.dim(side, face.floor, y0 if edge == "top" else y1, words, least=0.3 if field == "hem" else SHORTEST)


def _labels(sheet: Sheet, things: list[Seen], marks: Marks, gone: list[Seen], now: bool) -> None:
    if now:
        for seen in things:
            if marks.get(seen.item.name):
                sheet.tag(seen.name_at, marks[seen.item.name])
        for seen in gone:
            if marks.get(seen.item.name):
                sheet.tag_gone(seen.name_at, marks[seen.item.name])
    named = [seen for seen in things if not (isinstance(seen.item, Hung) and seen.item.what == "old holes")]
    boxes = [seen.name_at for seen in things]
    for seen in sorted(named, key=lambda seen: (_area(seen.name_at), seen.item.name)):
        mine = seen.name_at
        sheet.name(
            mine, seen.item.name, [box for box in boxes if not meet(mine, box, -0.5) or _area(box) < _area(mine)]
        )


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])
