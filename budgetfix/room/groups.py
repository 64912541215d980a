"""Pictures in groups: by the name that the survey gives, else frames at most 4 in apart on one wall."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.base.twin import Twin
from budgetfix.room.items import Hung

JOINED = Twin(4)
ART = ("picture", "mirror")


@dataclass(frozen=True, slots=True)
class PictureGroup:
    """One or more frames that are seen as one. `name` is the group's, else the first frame's."""

    name: str
    named: bool
    frames: tuple[Hung, ...]

    @property
    def wall(self) -> str:
        return self.frames[0].wall

    @property
    def left(self) -> float:
        return min(frame.from_left for frame in self.frames)

    @property
    def right(self) -> float:
        return max(frame.from_left + frame.width for frame in self.frames)

    @property
    def low(self) -> float:
        return min(frame.bottom for frame in self.frames)

    @property
    def high(self) -> float:
        return max(frame.bottom + frame.height for frame in self.frames)

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def middle(self) -> float:
        return (self.left + self.right) / 2

    @property
    def over(self) -> str:
        """The piece that the group hangs over; empty for a bare wall."""
        return next((frame.over for frame in self.frames if frame.over), "")


def picture_groups(hung: Iterable[Hung], metric: bool) -> tuple[PictureGroup, ...]:
    """All groups of pictures, by name. A name that is used on two walls stands for two groups."""
    art = sorted((one for one in hung if one.what in ART), key=lambda one: (one.wall, one.from_left, one.name))
    named: dict[tuple[str, str], list[Hung]] = {}
    loose: list[list[Hung]] = []
    for frame in art:
        if frame.group:
            named.setdefault((frame.group, frame.wall), []).append(frame)
            continue
        near = [frames for frames in loose if any(apart(one, frame) <= JOINED.in_mm(metric) + 0.1 for one in frames)]
        loose = [frames for frames in loose if frames not in near]
        loose.append([*(one for frames in near for one in frames), frame])
    walls = Counter(name for name, _ in named)
    groups = [
        PictureGroup(name if walls[name] == 1 else f"{name}, wall {wall}", True, _from_left(frames))
        for (name, wall), frames in named.items()
    ]
    groups += [PictureGroup(_from_left(frames)[0].name, False, _from_left(frames)) for frames in loose]
    return tuple(sorted(groups, key=lambda group: group.name))


def _from_left(frames: Iterable[Hung]) -> tuple[Hung, ...]:
    return tuple(sorted(frames, key=lambda one: (one.from_left, one.bottom, one.name)))


def apart(one: Hung, other: Hung) -> float:
    """The gap between two frames, the wider of across and up; endless on different walls, below 0 if they overlap."""
    if one.wall != other.wall:
        return math.inf
    across = max(other.from_left - one.from_left - one.width, one.from_left - other.from_left - other.width)
    up = max(other.bottom - one.bottom - one.height, one.bottom - other.bottom - other.height)
    return max(across, up)
