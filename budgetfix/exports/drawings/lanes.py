"""Dimension lines outside a drawing: each on a lane of its side, so that none lies on another or on a thing."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from budgetfix.exports import palette
from budgetfix.exports.drawings.labels import Box
from budgetfix.exports.drawings.pen import SMALL, Look, Pen, wide

Side = Literal["top", "bottom", "left", "right"]
LANE, FIRST_OFF, LANES, TICK, GAP = 13.0, 9.0, 3, 3.0, 3.0


@dataclass(frozen=True, slots=True)
class Dim:
    """A length between two places along a side (in units of the drawing), with its words."""

    side: Side
    start: float
    end: float
    words: str
    changed: bool = True

    def reach(self, low: float, high: float) -> tuple[float, float, float]:
        """(from, to, middle of the words): words too wide for their line stand behind its end, or before its start."""
        one, two = sorted((self.start, self.end))
        w = wide(self.words, SMALL) + 2 * GAP
        if w <= two - one:
            return one, two, (one + two) / 2
        if two + w <= high:
            return one, two + w, two + w / 2
        return (one - w, two, one - w / 2) if one - w >= low else (low, max(two, low + w), low + w / 2)


@dataclass
class Lanes:
    """The four sides of a drawing whose ground is `box`, each with a few lanes between it and the picture's edge."""

    box: Box
    frame: Box
    taken: dict[tuple[Side, int], list[tuple[float, float]]] = field(default_factory=dict)
    placed: list[tuple[Dim, int]] = field(default_factory=list)

    def _limits(self, side: Side) -> tuple[float, float]:
        x0, y0, x1, y1 = self.frame
        return (x0, x1) if side in ("top", "bottom") else (y0, y1)

    def add(self, dim: Dim) -> bool:
        """Put a dimension on the first lane with room; False where all are full (the words tell it then)."""
        return any(self._fits(dim, lane) for lane in range(LANES))

    def _fits(self, dim: Dim, lane: int) -> bool:
        start, end, _ = dim.reach(*self._limits(dim.side))
        spans = self.taken.setdefault((dim.side, lane), [])
        if any(start < other_end + GAP and other_start < end + GAP for other_start, other_end in spans):
            return False
        spans.append((start, end))
        self.placed.append((dim, lane))
        return True

    def draw(self, pen: Pen) -> None:
        """All of them, with a slash at each end and a hair line to the drawing."""
        for dim, lane in self.placed:
            self._draw(pen, dim, FIRST_OFF + lane * LANE)

    def _draw(self, pen: Pen, dim: Dim, off: float) -> None:
        x0, y0, x1, y1 = self.box
        level = {"top": y0 - off, "bottom": y1 + off, "left": x0 - off, "right": x1 + off}[dim.side]
        edge = {"top": y0, "bottom": y1, "left": x0, "right": x1}[dim.side]
        flat = dim.side in ("top", "bottom")
        color = palette.TEAL if dim.changed else palette.QUIET
        strong: Look = {"stroke": color, "stroke-width": 1.1 if dim.changed else 0.8}
        hair: Look = {"stroke": color, "stroke-width": 0.4, "stroke-dasharray": "1.5 1.5"}

        def at(along: float, across: float) -> tuple[float, float]:
            return (along, across) if flat else (across, along)

        middle, half = dim.reach(*self._limits(dim.side))[2], wide(dim.words, SMALL) / 2 + 1
        one, two = sorted((dim.start, dim.end))
        for start, end in ((one, min(two, middle - half)), (max(one, middle + half), two)):
            if end > start:
                pen.line(at(start, level), at(end, level), strong)
        for end in (dim.start, dim.end):
            pen.line(at(end, edge), at(end, level), hair)
            x, y = at(end, level)
            pen.line((x - TICK, y + TICK), (x + TICK, y - TICK), strong)
        x, y = at(middle, level)
        pen.text(x, y, dim.words, SMALL, color, turned=not flat, bold=dim.changed)
