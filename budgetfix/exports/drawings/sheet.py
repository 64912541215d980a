"""One picture being drawn: its pen, the ground that labels take, its dimension lanes, and its legend."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from budgetfix.exports import palette
from budgetfix.exports.drawings.labels import Box, Spot, Taken, beside, inside, meet, within
from budgetfix.exports.drawings.lanes import Dim, Lanes, Side
from budgetfix.exports.drawings.pen import OLD, SIZE, SMALL, STAYS, Look, Pen, Point, wide
from budgetfix.exports.lettering import UNITS
from budgetfix.outcome.shopping import letters

WIDTH = 360.0
MARGIN = 49.0
"""Room for a wall's thickness and three dimension lanes on each side."""
TAG = 6.8
TINY = 7.5
SHORTEST = 2.0
"""Lengths of fewer units get no dimension line."""
ARROW = 14.0
"""Moves shorter than this many units get no arrow."""


@dataclass
class Keys:
    """Letters for things whose names find no room; both pictures of a pair use the same ones."""

    letters: dict[str, str] = field(default_factory=dict)

    def of(self, name: str) -> str:
        """The thing's letter, a new one where it has none yet."""
        return self.letters.setdefault(name, letter(len(self.letters)))


@dataclass
class Sheet:
    """`ground` is the drawing without its margins, `frame` the whole picture above the legend."""

    pen: Pen
    ground: Box
    frame: Box
    keys: Keys
    taken: Taken = field(init=False)
    lanes: Lanes = field(init=False)
    lettered: list[str] = field(default_factory=list)
    tagged: set[int] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.taken = Taken(self.frame)
        self.lanes = Lanes(self.ground, self.frame)

    def tag(self, box: Box, numbers: tuple[int, ...]) -> None:
        """The number of the last task that changes a thing, in a circle at a corner of it or next to it."""
        words = str(numbers[-1])
        self.tagged.add(numbers[-1])
        spots = [Spot(spot.x, spot.y, ("00",), TAG * 1.55) for spot in (*_over(box), *beside(box, "00", TAG * 1.55, 6))]
        spot = self.taken.first(spots)
        if spot is not None:
            self.pen.circle(spot.x, spot.y, TAG, {"fill": palette.TEAL, "stroke": palette.WHITE, "stroke-width": 1})
            self.pen.text(spot.x, spot.y, words, SMALL, palette.WHITE, halo=False, bold=True)

    def tag_gone(self, box: Box, numbers: tuple[int, ...]) -> None:
        """The same where a thing was; not needed where the picture has that number already."""
        if numbers[-1] not in self.tagged:
            self.tag(box, numbers)

    def name(self, box: Box, words: str, clear: Iterable[Box] = ()) -> None:
        """A thing's name in it or next to it, clear of the boxes given; else a letter that the legend explains.

        Names stay within the drawing, so that they never meet its dimension lines.
        """
        avoid = [other for other in clear if other != box]
        spots = [
            *(spot for turned in (False, True) for size in (SMALL, TINY) for spot in within(box, words, size, turned)),
            *beside(box, words, TINY, 1),
        ]
        spot = self._clear(spots, avoid)
        if spot is not None:
            self._write(spot)
            return
        key = self.keys.of(words)
        near = [*within(box, key, SIZE), *_corners(box, key), *beside(box, key, SIZE, 5)]
        spot = self._clear(near, avoid) or self._clear(near, [])
        if spot is not None:
            self.lettered.append(words)
            self._write(spot, strong=True)

    def _clear(self, spots: Iterable[Spot], avoid: list[Box]) -> Spot | None:
        inner = (spot for spot in spots if inside(spot.box, self.ground))
        return self.taken.first(spot for spot in inner if not any(meet(spot.box, other, 0) for other in avoid))

    def _write(self, spot: Spot, strong: bool = False) -> None:
        step = spot.size * 1.15
        first = -(len(spot.lines) - 1) / 2 * step
        for at, line in enumerate(spot.lines):
            off = first + at * step
            x, y = (spot.x + off, spot.y) if spot.turned else (spot.x, spot.y + off)
            self.pen.text(x, y, line, spot.size, turned=spot.turned, bold=strong)

    def dim(
        self, side: Side, start: float, end: float, words: str, changed: bool = True, least: float = SHORTEST
    ) -> None:
        """A dimension outside the drawing; one that is too short, or finds no lane, is left to the words."""
        if abs(end - start) >= least:
            self.lanes.add(Dim(side, start, end, words, changed))

    def moved(self, old: Point, new: Point) -> None:
        """An arrow from where the middle of a thing was to where it is."""
        dx, dy = new[0] - old[0], new[1] - old[1]
        far = (dx * dx + dy * dy) ** 0.5
        if far < ARROW:
            return
        ux, uy = dx / far, dy / far
        look: Look = {"stroke": palette.TEAL, "stroke-width": 1.1}
        self.pen.line(old, (new[0] - 4 * ux, new[1] - 4 * uy), look)
        tip = (new[0] - 1 * ux, new[1] - 1 * uy)
        back = (new[0] - 7 * ux, new[1] - 7 * uy)
        self.pen.path(
            [[tip, (back[0] - 3 * uy, back[1] + 3 * ux), (back[0] + 3 * uy, back[1] - 3 * ux)]],
            {"fill": palette.TEAL, "stroke": palette.WHITE, "stroke-width": 0.5},
        )

    def close(self, unit: str, when: str) -> float:
        """The last marks: lengths, and the legend below; returns where the picture ends."""
        self.lanes.draw(self.pen)
        keys = [(self.keys.of(name), name) for name in self.lettered]
        return _legend(self.pen, self.frame[3] + 4, keys, UNITS[unit], when)


def letter(at: int) -> str:
    """a, b, ... z, aa, ab, ...; bags have the large ones."""
    return letters(at).lower()


def _over(box: Box) -> list[Spot]:
    """Spots for a tag: inside the corners of a large box, else on them; then its middle."""
    x0, y0, x1, y1 = box
    found = []
    for deep in (TAG + 1.5, 0.0):
        if deep and min(x1 - x0, y1 - y0) < 3 * TAG:
            continue
        found += [(x, y) for y in (y0 + deep, y1 - deep) for x in (x0 + deep, x1 - deep)]
    found.append(((x0 + x1) / 2, (y0 + y1) / 2))
    return [Spot(x, y, ("",)) for x, y in found]


def _corners(box: Box, key: str) -> list[Spot]:
    x0, y0, x1, y1 = box
    return [Spot(x, y, (key,)) for x in (x0 + 4, x1 - 4) for y in (y0 + 5, y1 - 5)]


def _legend(pen: Pen, y: float, keys: list[tuple[str, str]], unit: str, when: str) -> float:
    """Signs and letters explained, line by line; returns where it ends."""
    x, y = 8.0, y + 6
    signs: tuple[tuple[Look, str], ...] = ((STAYS, "stays"),)
    if when == "after":
        signs = ((pen.changed, "changed"), (OLD, "where it was"), (STAYS, "stays"))
    for look, words in signs:
        pen.rect(x, y - 4, 15, 8, look)
        pen.text(x + 19, y, words, SMALL, anchor="start", halo=False)
        x += 19 + wide(words, SMALL) + 12
    pen.text(x, y, f"lengths in {unit}", SMALL, palette.QUIET, anchor="start", halo=False)
    x, y = 8.0, y + 14
    for key, words in keys:
        text = shortened(f"{key}  {words}", WIDTH - 16, SMALL)
        if x > 8 and x + wide(text, SMALL) > WIDTH - 8:
            x, y = 8.0, y + 12
        pen.text(x, y, text, SMALL, anchor="start", halo=False)
        x += wide(text, SMALL) + 14
    return y + (10 if keys else -4)


def shortened(text: str, room: float, size: float) -> str:
    """A text cut to a width, with an ellipsis where something is missing."""
    if wide(text, size) <= room:
        return text
    while text and wide(text + "…", size) > room:
        text = text[:-1]
    return text.rstrip() + "…"
