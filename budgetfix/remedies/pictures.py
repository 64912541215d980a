"""Picture groups at a site: the wall they have, and where each frame goes. Millimetres."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.inspection.art import clear_of
from budgetfix.inspection.look import Look
from budgetfix.remedies.kind import Site, set_on
from budgetfix.room.groups import ART, PictureGroup, picture_groups
from budgetfix.room.items import Hung, Piece
from budgetfix.room.places import extent
from budgetfix.room.survey import Change, Value

LADDER_MM = 2000.0
"""Whoever hangs something higher stands on a ladder (common practice)."""
GAP_IN, GAP_MM = 2.0, 50.0
COUNTED_IN, COUNTED_MM = 96.0, 2440.0
"""Bare wall counts up to this width (art-too-small)."""


@dataclass(frozen=True, slots=True)
class Span:
    """The stretch that a picture is judged against: a piece, or the clear wall. `low`: where its lower edge goes."""

    middle: float
    width: float
    piece: Piece | None
    ceiling: float

    def low(self, site: Site, tall: float) -> float:
        """7 in (180 mm) above the piece, or with its middle 58 1/2 in (1490 mm) up on a bare wall."""
        if self.piece is not None:
            return self.piece.height + site.mm(7, 180)
        return site.mm(58.5, 1490) - tall / 2


def group_at(site: Site) -> PictureGroup | None:
    """The group that the site is about, named by itself or by one of its frames."""
    hung = [one for one in site.survey.pictures if one.room == site.room and one.what in ART]
    for group in picture_groups(hung, site.metric):
        if site.subject == group.name or any(frame.name == site.subject for frame in group.frames):
            return group
    return None


def piece_below(site: Site, group: PictureGroup) -> Piece | None:
    """The piece below a group."""
    piece = site.survey.named.get(group.over, (None, None))[1]
    return piece if isinstance(piece, Piece) else None


def span_of(site: Site, group: PictureGroup) -> Span:
    """The piece below a group, else the clear wall around it."""
    ceiling = site.survey.facts(site.room).ceiling
    piece = piece_below(site, group)
    if piece is not None:
        return span_over(site, piece)
    low, high = clear_of(Look(site.survey, site.room), group)
    return Span((low + high) / 2, min(high - low, site.mm(COUNTED_IN, COUNTED_MM)), None, ceiling)


def span_over(site: Site, piece: Piece) -> Span:
    """The stretch over a piece."""
    along, _ = extent(piece, site.lines)
    return Span(piece.from_left + along / 2, piece.width, piece, site.survey.facts(site.room).ceiling)


def moved_frames(group: PictureGroup, aside: float, up: float) -> tuple[Change, ...]:
    """Every frame moved by the same amount; () where that is nothing."""
    if abs(aside) < 1 and abs(up) < 1:
        return ()
    return tuple(
        set_on("pictures", frame.name, from_left=frame.from_left + aside, bottom=frame.bottom + up)
        for frame in group.frames
    )


def in_a_row(
    site: Site, frames: Iterable[Hung], span: Span, gap: float, extra: Iterable[tuple[str, Value]] = ()
) -> tuple[Change, ...]:
    """Frames side by side about the middle of a span, middles on one line, the lowest edge where it belongs."""
    row = tuple(frames)
    tall = max(frame.height for frame in row)
    low = span.low(site, tall)
    at = span.middle - (sum(frame.width for frame in row) + gap * (len(row) - 1)) / 2
    changes = []
    for frame in row:
        bottom = site.tape(low + (tall - frame.height) / 2)
        changes.append(set_on("pictures", frame.name, from_left=site.tape(at), bottom=bottom, **dict(extra)))
        at += frame.width + gap
    return tuple(changes)


def ladder(site: Site, changes: Iterable[Change]) -> tuple[str, ...]:
    """("ladder",) where a frame ends above 2 m."""
    after = site.survey.changed(changes)
    names = {change.item for change in changes}
    high = [one for one in after.pictures if one.name in names and one.bottom + one.height > LADDER_MM]
    return ("ladder",) if high else ()


def says(site: Site, changes: Iterable[Change]) -> str:
    """Where each frame goes: lower edge above the floor, left edge from the left corner."""
    after = site.survey.changed(changes)
    parts = []
    for change in changes:
        frame = after.named[change.item][1]
        if isinstance(frame, Hung):
            parts.append(
                f"{frame.name}: lower edge {site.words(frame.bottom)} above the floor, left edge "
                f"{site.words(frame.from_left)} from the left corner of wall {frame.wall}"
            )
    return "; ".join(parts)
