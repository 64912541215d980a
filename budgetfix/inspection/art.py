"""What the picture rules look at: groups of frames, the piece below, the clear span of wall."""

from __future__ import annotations

from budgetfix.inspection.look import Look
from budgetfix.room.groups import ART, PictureGroup, picture_groups
from budgetfix.room.items import Piece
from budgetfix.room.places import extent
from budgetfix.room.stretches import Stretch, clear_span, cloth_of

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
    line = look.lines[wall]
    if piece.wall == wall:
        along, _ = extent(piece, look.lines)
        return (piece.from_left, piece.from_left + along)
    own = look.lines[piece.wall]
    along, off = extent(piece, look.lines)
    corners = [own.point(piece.from_left + a, piece.gap + b) for a in (0.0, along) for b in (0.0, off)]
    reach = [line.local(x, y)[0] for x, y in corners]
    return (min(reach), max(reach))


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
    for piece in look.pieces(wall=wall):
        if piece.height > group.low and piece.name != group.over:
            blocks.append(stretch_of(look, piece, wall))
    return clear_span(look.lines[wall].length, group.middle, blocks)


def in_row(group: PictureGroup) -> bool:
    """True where the frames hang side by side: each overlaps the next one's height."""
    frames = sorted(group.frames, key=lambda frame: frame.from_left)
    return len(frames) > 1 and all(
        one.bottom < other.bottom + other.height
        and other.bottom < one.bottom + one.height
        and other.from_left >= one.from_left + one.width - 0.05
        for one, other in zip(frames, frames[1:], strict=False)
    )


def gaps(group: PictureGroup) -> tuple[float, ...]:
    """Gaps between neighbours of a row."""
    frames = sorted(group.frames, key=lambda frame: frame.from_left)
    return tuple(other.from_left - one.from_left - one.width for one, other in zip(frames, frames[1:], strict=False))
