"""A room from above: wall A at the top, as someone stands who comes in and looks at it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar

from budgetfix.base.tape import write_length
from budgetfix.exports import palette
from budgetfix.exports.drawings.labels import Box, meet
from budgetfix.exports.drawings.pen import OLD, SMALL, STAYS, Look, Pen, Point
from budgetfix.exports.drawings.sheet import MARGIN, WIDTH, Keys, Sheet
from budgetfix.exports.drawings.standing import curtain_at, draw_light, draw_opening, draw_piece
from budgetfix.room.items import Hung, Light, Opening, Piece, Rug, Thing
from budgetfix.room.places import WallLine, footprint, outline, wall_lines
from budgetfix.room.survey import Survey

T = TypeVar("T", bound=Thing)
TALLEST = 330.0
THICK = 6.0
"""Units that a wall is thick."""
ON_FLOOR = (Piece, Rug, Light)


@dataclass(frozen=True)
class Floor:
    """Where millimetres of a room land on paper."""

    lines: dict[str, WallLine]
    left: float
    top: float
    high_x: float
    low_y: float
    scale: float

    @classmethod
    def of(cls, survey: Survey, room: str) -> Floor:
        """As large as fits between the margins."""
        low_x, low_y, high_x, high_y = outline(survey, room).bounds
        scale = min((WIDTH - 2 * MARGIN) / (high_x - low_x), TALLEST / (high_y - low_y))
        left = (WIDTH - (high_x - low_x) * scale) / 2
        return cls(wall_lines(survey, room), left, MARGIN, high_x, low_y, scale)

    def at(self, point: Point) -> Point:
        """A point of the room on paper: x grows to the left in the room, to the right on paper."""
        return (self.left + (self.high_x - point[0]) * self.scale, self.top + (point[1] - self.low_y) * self.scale)

    def box(self, low_x: float, low_y: float, high_x: float, high_y: float) -> Box:
        """A rectangle of the room on paper."""
        (x1, y0), (x0, y1) = self.at((low_x, low_y)), self.at((high_x, high_y))
        return (x0, y0, x1, y1)


Named = tuple[str, Box]
Marks = dict[str, tuple[int, ...]]
"""Tasks by the name of what they change."""


def floor_sheet(before: Survey, after: Survey, room: str, marks: Marks, pen: Pen, keys: Keys, now: bool) -> Sheet:
    """The room as surveyed, or (`now`) as the plan leaves it."""
    survey = after if now else before
    floor = Floor.of(survey, room)
    ground = floor.box(*outline(survey, room).bounds)
    walls = (ground[0] - THICK, ground[1] - THICK, ground[2] + THICK, ground[3] + THICK)
    sheet = Sheet(pen, walls, (2, 2, WIDTH - 2, walls[3] + MARGIN - THICK), keys)
    _walls(sheet, floor, survey, room)
    _things(sheet, floor, survey, room, marks, now)
    if now:
        _old_places(sheet, floor, before, after, room, marks)
    _dims(sheet, floor, before, after, room, marks, now)
    _letters(sheet, floor, survey, room)
    _labels(sheet, floor, survey, room, marks, _gone(floor, before, after, room) if now else None)
    return sheet


def _walls(sheet: Sheet, floor: Floor, survey: Survey, room: str) -> None:
    shape = outline(survey, room)
    outer = shape.buffer(THICK / floor.scale, join_style="mitre")
    rings = [[floor.at((x, y)) for x, y in ring.exterior.coords[:-1]] for ring in (outer, shape)]
    sheet.pen.path(rings, sheet.pen.solid)
    for opening in survey.openings:
        if opening.room == room:
            draw_opening(sheet.pen, floor.at, floor.lines[opening.wall], opening, floor.scale, THICK)


def _things(sheet: Sheet, floor: Floor, survey: Survey, room: str, marks: Marks, now: bool) -> None:
    pen = sheet.pen
    for rug in survey.rugs:
        if rug.room == room:
            x0, y0, x1, y1 = spot_of(floor, rug)
            fresh = now and rug.name in marks
            look = _heavy(pen.woven_new if fresh else pen.woven, rug.name in marks, now)
            pen.rect(x0, y0, x1 - x0, y1 - y0, look, min(x1 - x0, y1 - y0) / 2 if rug.round else 0)
    for piece in sorted(_of(survey.furniture, room), key=lambda piece: piece.height):
        look = pen.changed if now and piece.name in marks else _heavy(STAYS, piece.name in marks, now)
        draw_piece(pen, floor.at, floor.lines, piece, look)
    for hung in _of(survey.pictures, room):
        if hung.wall in floor.lines and hung.what != "old holes":
            _hung(pen, floor, hung, hung.name in marks)
    for curtain in survey.curtains:
        curtain_at(pen, floor.at, floor.lines, survey, room, curtain, curtain.name in marks)
    for light in _of(survey.lights, room):
        if light.wall in floor.lines:
            draw_light(pen, spot_of(floor, light), light, light.name in marks)


def _heavy(look: Look, marked: bool, now: bool) -> Look:
    """In the picture of before, what will change has a heavier line."""
    return {**look, "stroke-width": 1.8} if marked and not now else look


def _of(things: tuple[T, ...], room: str) -> list[T]:
    return [thing for thing in things if thing.room == room]


def spot_of(floor: Floor, item: Piece | Rug | Light) -> Box:
    """Where a thing stands on paper."""
    return floor.box(*footprint(item, floor.lines).bounds)


def _hung(pen: Pen, floor: Floor, hung: Hung, marked: bool) -> None:
    line = floor.lines[hung.wall]
    deep = max(hung.depth, 2.5 / floor.scale)
    color = palette.TEAL if marked else palette.INK
    ring = [floor.at(line.point(hung.from_left + along, off)) for along, off in
            ((0, 0), (hung.width, 0), (hung.width, deep), (0, deep))]  # fmt: skip
    fill = color if hung.what == "screen" else palette.WHITE
    pen.path([ring], {"fill": fill, "stroke": color, "stroke-width": 0.9})


def _old_places(sheet: Sheet, floor: Floor, before: Survey, after: Survey, room: str, marks: Marks) -> None:
    for name in marks:
        old, new = before.named.get(name, (None, None))[1], after.named.get(name, (None, None))[1]
        if not isinstance(old, ON_FLOOR) or old.room != room or old.wall not in floor.lines:
            continue
        was = spot_of(floor, old)
        here = spot_of(floor, new) if isinstance(new, ON_FLOOR) and new.room == room else None
        if here is None or max(abs(one - other) for one, other in zip(was, here, strict=True)) > 1:
            sheet.pen.rect(was[0], was[1], was[2] - was[0], was[3] - was[1], OLD)
        if here is not None:
            sheet.moved(_middle(was), _middle(here))
        else:
            sheet.pen.line((was[0], was[1]), (was[2], was[3]), OLD)


def _middle(box: Box) -> Point:
    return ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def _dims(sheet: Sheet, floor: Floor, before: Survey, after: Survey, room: str, marks: Marks, now: bool) -> None:
    """For what stands elsewhere or is of another size: from the left corner of its wall, and off that wall."""
    survey = after if now else before
    for name in marks:
        old, new = before.named.get(name, (None, None))[1], after.named.get(name, (None, None))[1]
        item = new if now else old
        if isinstance(item, ON_FLOOR) and item.room == room and item.wall in floor.lines and _elsewhere(old, new):
            _two_dims(sheet, floor, item, survey.household.unit)
    unit = survey.household.unit
    low_x, low_y, high_x, high_y = outline(survey, room).bounds
    x0, y0, x1, y1 = floor.box(low_x, low_y, high_x, high_y)
    sheet.dim("bottom", x0, x1, figure(high_x - low_x, unit), changed=False)
    sheet.dim("left", y0, y1, figure(high_y - low_y, unit), changed=False)


def _elsewhere(old: object, new: object) -> bool:
    fields = ("wall", "from_left", "gap", "width", "depth")
    return any(getattr(old, field, None) != getattr(new, field, None) for field in fields)


def _two_dims(sheet: Sheet, floor: Floor, item: Piece | Rug | Light, unit: str) -> None:
    line = floor.lines[item.wall]
    corner, edge = floor.at(line.point(0)), floor.at(line.point(item.from_left))
    near = floor.at(line.point(item.from_left, item.gap))
    x0, y0, x1, y1 = sheet.ground
    if abs(line.inward[0]) < 0.01:
        sheet.dim("top" if line.inward[1] > 0 else "bottom", corner[0], edge[0], figure(item.from_left, unit))
        left = _middle(spot_of(floor, item))[0] < (x0 + x1) / 2
        sheet.dim("left" if left else "right", corner[1], near[1], figure(item.gap, unit))
    elif abs(line.inward[1]) < 0.01:
        sheet.dim("left" if line.inward[0] < 0 else "right", corner[1], edge[1], figure(item.from_left, unit))
        high = _middle(spot_of(floor, item))[1] < (y0 + y1) / 2
        sheet.dim("top" if high else "bottom", corner[0], near[0], figure(item.gap, unit))


def figure(mm: float, unit: str) -> str:
    """A length without its unit, which the legend names."""
    return write_length(mm, unit).removesuffix(f" {unit}")


def _letters(sheet: Sheet, floor: Floor, survey: Survey, room: str) -> None:
    """Each wall's letter on the wall, at its middle or beside an opening there."""
    for wall in survey.walls_of(room):
        line = floor.lines[wall.wall]
        doors = [one for one in survey.openings if one.room == room and one.wall == wall.wall]
        for share in (0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95):
            at = share * wall.length
            if all(not one.from_left - 150 < at < one.from_left + one.width + 150 for one in doors):
                break
        x, y = floor.at(line.point(at, -THICK / 2 / floor.scale))
        sheet.pen.circle(x, y, 6, {"fill": palette.WHITE, "stroke": palette.INK, "stroke-width": 0.8})
        sheet.pen.text(x, y, wall.wall, SMALL, halo=False, bold=True)
        sheet.taken.take((x - 6, y - 6, x + 6, y + 6))


def _gone(floor: Floor, before: Survey, after: Survey, room: str) -> list[Named]:
    """Where things were that the plan takes away."""
    were = [*_on_floor(floor, before, room), *_at_walls(floor, before, room)]
    return [(name, box) for name, box in were if name not in after.named]


def _on_floor(floor: Floor, survey: Survey, room: str) -> list[Named]:
    things: tuple[Piece | Light | Rug, ...] = (*survey.furniture, *survey.lights, *survey.rugs)
    return [(one.name, spot_of(floor, one)) for one in things if one.room == room and one.wall in floor.lines]


def _labels(sheet: Sheet, floor: Floor, survey: Survey, room: str, marks: Marks, gone: list[Named] | None) -> None:
    """Names, and (with `gone`) the numbers of the tasks on all that changes."""
    standing = _on_floor(floor, survey, room)
    if gone is not None:
        for name, box in (*standing, *_at_walls(floor, survey, room)):
            if marks.get(name):
                sheet.tag(box, marks[name])
        for name, box in gone:
            if marks.get(name):
                sheet.tag_gone(box, marks[name])
    flat = {rug.name for rug in survey.rugs}
    solid = [box for name, box in standing if name not in flat]
    for name, box in sorted(standing, key=lambda pair: (pair[0] in flat, _area(pair[1]), pair[0])):
        smaller = [other for other in solid if _area(other) < _area(box)]
        sheet.name(box, name, clear=smaller if name not in flat and _crowded(box, solid) else solid)


def _crowded(box: Box, others: list[Box]) -> bool:
    """True where something lies on or under a thing, so that its name can only stay clear of what is smaller."""
    return any(other != box and meet(box, other, -0.5) for other in others)


def _area(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _at_walls(floor: Floor, survey: Survey, room: str) -> list[Named]:
    """What hangs at a wall or opens in it, as a strip in front of it."""
    found = [
        (hung.name, _strip(floor, floor.lines[hung.wall], hung.from_left, hung.width))
        for hung in _of(survey.pictures, room)
        if hung.wall in floor.lines
    ]
    found += [
        (one.name, _strip(floor, floor.lines[one.wall], one.from_left, one.width))
        for one in survey.openings
        if one.room == room
    ]
    for curtain in survey.curtains:
        window = survey.named.get(curtain.window, (None, None))[1]
        if isinstance(window, Opening) and window.room == room:
            found.append(
                (curtain.name, _strip(floor, floor.lines[window.wall], curtain.rod_from_left, curtain.rod_width))
            )
    return found


def _strip(floor: Floor, line: WallLine, start: float, width: float) -> Box:
    (xa, ya), (xb, yb) = floor.at(line.point(start)), floor.at(line.point(start + width, 12 / floor.scale))
    return (min(xa, xb), min(ya, yb), max(xa, xb), max(ya, yb))
