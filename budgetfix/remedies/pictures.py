"""Picture groups at a site, moved frame by frame."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.remedies.kind import Site, set_on
from budgetfix.room.groups import ART, PictureGroup, picture_groups
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change


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


def moved_frames(site: Site, group: PictureGroup, aside: float, up: float) -> tuple[Change, ...]:
    """Every frame moved by the same amount; () where that is nothing."""
    if abs(aside) < 1 and abs(up) < 1:
        return ()
    return tuple(
        set_on("pictures", frame.name, from_left=frame.from_left + aside, bottom=frame.bottom + up)
        for frame in group.frames
    )


def says(site: Site, changes: Iterable[Change]) -> str:
    """Where each frame goes: lower edge above the floor, left edge from the left corner."""
    parts = []
    for change in changes:
        frame = site.survey.named[change.item][1]
        if isinstance(frame, Hung):
            fields = {**dict(frame), **dict(change.set)}
            parts.append(
                f"{frame.name}: lower edge {site.words(float(fields['bottom']))} above the floor, left edge "
                f"{site.words(float(fields['from_left']))} from the left corner of wall {fields['wall']}"
            )
    return "; ".join(parts)
