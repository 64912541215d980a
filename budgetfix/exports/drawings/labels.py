"""Where words go so that they collide with nothing and stay inside: the first free spot of those on offer."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from budgetfix.exports.drawings.pen import SIZE, wide

Box = tuple[float, float, float, float]
"""Left, top, right, bottom, in units."""
AIR = 1.0
"""Free space kept around every label."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Words whose middle stands on (x, y), one line below the other; `turned`: read from below."""

    x: float
    y: float
    lines: tuple[str, ...]
    size: float = SIZE
    turned: bool = False

    @property
    def box(self) -> Box:
        across = max(wide(line, self.size) for line in self.lines)
        along = len(self.lines) * self.size * 1.15
        w, h = (along, across) if self.turned else (across, along)
        return (self.x - w / 2, self.y - h / 2, self.x + w / 2, self.y + h / 2)


def meet(one: Box, other: Box, air: float = AIR) -> bool:
    """True where two boxes share ground, or come nearer than `air`."""
    return (
        one[0] < other[2] + air and other[0] < one[2] + air and one[1] < other[3] + air and other[1] < one[3] + air
    )  # fmt: skip


def inside(one: Box, frame: Box) -> bool:
    """True where a box lies within a frame."""
    return one[0] >= frame[0] and one[1] >= frame[1] and one[2] <= frame[2] and one[3] <= frame[3]


@dataclass
class Taken:
    """The ground of one picture that labels already stand on. `frame`: where labels may stand at all."""

    frame: Box
    boxes: list[Box] = field(default_factory=list)

    def free(self, box: Box) -> bool:
        return inside(box, self.frame) and not any(meet(box, other) for other in self.boxes)

    def take(self, box: Box) -> None:
        self.boxes.append(box)

    def first(self, spots: Iterable[Spot]) -> Spot | None:
        """The first spot that is free, taken; None where none is."""
        for spot in spots:
            if self.free(spot.box):
                self.take(spot.box)
                return spot
        return None


def halves(words: str) -> tuple[str, ...]:
    """A text as two lines of about the same length; one line where it has no space."""
    parts = words.split()
    if len(parts) < 2:
        return (words,)
    cuts = [(" ".join(parts[:at]), " ".join(parts[at:])) for at in range(1, len(parts))]
    return min(cuts, key=lambda pair: max(wide(pair[0]), wide(pair[1])))


def within(box: Box, words: str, size: float, turned: bool = False) -> list[Spot]:
    """Spots inside a box that hold the words whole, in one line or two: in the middle, then to all sides of it."""
    x0, y0, x1, y1 = box
    x, y, found = (x0 + x1) / 2, (y0 + y1) / 2, []
    shifts = (
        (0, 0),
        (0, 0.25),
        (0, -0.25),
        (0.25, 0),
        (-0.25, 0),
        (0.3, 0.36),
        (-0.3, 0.36),
        (0.3, -0.36),
        (-0.3, -0.36),
    )
    for lines in dict.fromkeys(((words,), halves(words))):
        for dx, dy in shifts:
            spot = Spot(x + dx * (x1 - x0), y + dy * (y1 - y0), lines, size, turned)
            if inside(spot.box, box):
                found.append(spot)
    return found


def beside(box: Box, words: str, size: float, steps: int = 3) -> list[Spot]:
    """Spots around a box, the near ones first."""
    x0, y0, x1, y1 = box
    own = Spot(0, 0, (words,), size).box
    w, h = own[2] - own[0], own[3] - own[1]
    found = []
    for step in range(steps):
        off = 2 + step * h
        for at in (0.5, 0.15, 0.85):
            x, y = x0 + (x1 - x0) * at, y0 + (y1 - y0) * at
            found += [Spot(x, y0 - off - h / 2, (words,), size), Spot(x, y1 + off + h / 2, (words,), size)]
            found += [Spot(x1 + off + w / 2, y, (words,), size), Spot(x0 - off - w / 2, y, (words,), size)]
    return found
