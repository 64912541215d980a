"""What the picture rules look at: groups of frames, the piece below, the clear span of wall."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.room.groups import ART, PictureGroup, apart, picture_groups
from budgetfix.room.items import Hung, Piece
from budgetfix.room.stretches import Stretch, along_wall, clear_span, cloth_of, wall_strip

AGAINST = Twin(6)
"""A piece this near a wall sticks out of it (common practice)."""
STICKS_OUT = ("shelf", "screen", "sconce")


def group_names(look: Look) -> tuple[str, ...]:
    """Names of the picture groups at walls of this room."""
    return tuple(group.name for group in _groups(look) if group.wall in look.lines)


def group_of(look: Look, name: str) -> PictureGroup | None:
    """One group; None when it is gone."""
    return next((group for group in _groups(look) if group.name == name and group.wall in look.lines), None)


def _groups(look: Look) -> tuple[PictureGroup, ...]:
    return picture_groups(look.hung(whats=ART), look.household.metric)


def piece_below(look: Look, group: PictureGroup) -> Piece | None:
    """The piece that the group hangs over."""
    piece = look.piece(group.over) if group.over else None
    return piece if piece is not None and piece.wall in look.lines else None


def stretch_of(look: Look, piece: Piece, wall: str) -> Stretch:
    """From where to where along a wall a piece stands."""
    start, end, _ = along_wall(piece, look.lines, wall)
    return (start, end)


def clear_of(look: Look, group: PictureGroup) -> Stretch:
    """The clear span around a group: between corners, frames of openings, open cloth, shelves, tall pieces, art."""
    wall = group.wall
    mine = {frame.name for frame in group.frames}
    windows = {one.name: one for one in look.openings(wall=wall)}
    blocks: list[Stretch] = [(one.from_left, one.from_left + one.width) for one in windows.values()]
    blocks += [cloth for one in look.curtains() if one.window in windows for cloth in cloth_of(one)]
    for one in look.hung(whats=(*ART, *STICKS_OUT), wall=wall):
        if one.name not in mine and one.bottom < group.high and one.bottom + one.height > group.low:
            blocks.append((one.from_left, one.from_left + one.width))
    line = look.lines[wall]
    for piece in look.pieces(box=wall_strip(line, (0.0, line.length), look.mm(AGAINST))):
        if piece.wall in look.lines and piece.height > group.low and piece.name != group.over:
            blocks.append(stretch_of(look, piece, wall))
    return clear_span(line.length, group.middle, blocks)


def rows_of(group: PictureGroup) -> tuple[tuple[Hung, ...], ...]:
    """The rows of a row, a column or a grid, from the top; nothing where the frames hang freely.

    A grid has equal rows, and each frame hangs below one of the row above.
    """
    rows: list[list[Hung]] = []
    for frame in sorted(group.frames, key=lambda one: (-one.bottom - one.height, one.from_left, one.name)):
        if rows and min(one.bottom for one in rows[-1]) < frame.bottom + frame.height - 0.05:
            rows[-1].append(frame)
        else:
            rows.append([frame])
    ordered = tuple(tuple(sorted(row, key=lambda one: (one.from_left, one.name))) for row in rows)
    return ordered if len(group.frames) > 1 and _regular(ordered) else ()


def _regular(rows: tuple[tuple[Hung, ...], ...]) -> bool:
    beside = all(_shares(one, other, up=True) for row in rows for one, other in pairwise(row))
    clear = all(other.from_left >= one.from_left + one.width - 0.05 for row in rows for one, other in pairwise(row))
    equal = all(len(above) == len(below) for above, below in pairwise(rows))
    if not (beside and clear and equal):
        return False
    below = [two for pair in pairwise(rows) for two in zip(*pair, strict=True)]
    return all(_shares(one, other, up=False) for one, other in below)


def _shares(one: Hung, other: Hung, *, up: bool) -> bool:
    """True where two frames share some height (`up`), or some width."""
    if up:
        return one.bottom < other.bottom + other.height and other.bottom < one.bottom + one.height
    return one.from_left < other.from_left + other.width and other.from_left < one.from_left + one.width


def gaps(group: PictureGroup) -> tuple[float, ...]:
    """Gaps between neighbours of a row, a column or a grid, across and up; nothing where the frames hang freely."""
    rows = rows_of(group)
    across = [other.from_left - one.from_left - one.width for row in rows for one, other in pairwise(row)]
    up = [
        high.bottom - low.bottom - low.height
        for above, below in pairwise(rows)
        for high, low in zip(above, below, strict=True)
    ]
    return (*across, *up)


def widest_gap(group: PictureGroup) -> float:
    """The widest gap that must be crossed to go from frame to frame through the whole group."""
    reached, rest, widest = [group.frames[0]], list(group.frames[1:]), 0.0
    while rest:
        gap, _, nearest = min(
            ((min(apart(one, frame) for one in reached), frame.name, frame) for frame in rest), key=lambda one: one[:2]
        )
        widest = max(widest, gap)
        reached.append(nearest)
        rest.remove(nearest)
    return widest


def lit_by(lamp: Hung, groups: Iterable[PictureGroup]) -> PictureGroup | None:
    """The group that a picture light is for: the one that the survey names, else the nearest below it."""
    several = tuple(groups)
    for group in several:
        if lamp.group == group.name or lamp.over in [frame.name for frame in group.frames]:
            return group
    middle = lamp.from_left + lamp.width / 2
    below = [one for one in several if one.left <= middle <= one.right and one.low < lamp.bottom]
    return max(below, key=lambda one: (one.high, one.name), default=None)
