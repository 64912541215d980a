"""Marks on paper: an SVG text put together from attributes alone, and how wide letters are."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from budgetfix.exports import palette
from budgetfix.exports.lettering import columns_of

Point = tuple[float, float]
Look = dict[str, str | float]

FONT = "DejaVu Sans, Verdana, sans-serif"
SIZE, SMALL = 10.0, 8.5
"""Letter heights in units; a picture is 360 units wide, so they stay readable on a phone."""
STAYS: Look = {"fill": palette.WHITE, "stroke": palette.INK, "stroke-width": 0.8}
OLD: Look = {"fill": "none", "stroke": palette.QUIET, "stroke-width": 1, "stroke-dasharray": "4 2.5"}
THIN: Look = {"fill": "none", "stroke": palette.INK, "stroke-width": 0.7}

_NARROW = frozenset("ijltfrI.,;:'|!()[]/- 1")
_BROAD = frozenset("mwMWQO%@…—")


def wide(text: str, size: float = SIZE) -> float:
    """How wide a text is at most, in units; on the generous side for any common sans-serif."""
    return sum(_share(letter) for letter in text) * size


def _share(letter: str) -> float:
    columns = columns_of(letter)
    if columns != 1:
        return 1.05 * (columns > 0)
    if letter in _NARROW:
        return 0.45
    return 1.0 if letter in _BROAD else 0.74 if letter.isupper() else 0.65


def number(value: float) -> str:
    """A coordinate to a tenth, without needless zeros."""
    text = f"{value:.1f}"
    text = text.removesuffix(".0")
    return "0" if text == "-0" else text


class Pen:
    """Marks in the order in which they are drawn. `key` keeps the ids of one picture apart from those of others."""

    def __init__(self, key: str) -> None:
        self._key = key
        self._marks: list[str] = []

    @property
    def changed(self) -> Look:
        """What changes: hatched and heavy, so that colour is not needed to tell."""
        return {"fill": f"url(#{self._key}-changed)", "stroke": palette.TEAL, "stroke-width": 2}

    @property
    def solid(self) -> Look:
        """Walls that are cut: hatched."""
        return {"fill": f"url(#{self._key}-wall)", "stroke": palette.INK, "stroke-width": 1}

    @property
    def woven(self) -> Look:
        """Rugs: dots."""
        return {"fill": f"url(#{self._key}-rug)", "stroke": palette.INK, "stroke-width": 0.8}

    @property
    def woven_new(self) -> Look:
        """Rugs that change: dots and a heavy line."""
        return {**self.woven, "stroke": palette.TEAL, "stroke-width": 2}

    def _mark(self, name: str, look: Look, content: str = "") -> None:
        words = " ".join(
            f'{key}="{number(value) if isinstance(value, float) else escape(str(value))}"'
            for key, value in look.items()
        )
        self._marks.append(f"<{name} {words}>{content}</{name}>" if content else f"<{name} {words}/>")

    def rect(self, x: float, y: float, w: float, h: float, look: Look, round_: float = 0.0) -> None:
        """A rectangle; `round_` is the radius of its corners."""
        self._mark("rect", {"x": float(x), "y": float(y), "width": float(w), "height": float(h),
                            **({"rx": round_} if round_ else {}), **look})  # fmt: skip

    def line(self, one: Point, two: Point, look: Look) -> None:
        """A straight line."""
        self._mark("line", {"x1": float(one[0]), "y1": float(one[1]), "x2": float(two[0]), "y2": float(two[1]), **look})

    def path(self, rings: Iterable[Iterable[Point]], look: Look, closed: bool = True) -> None:
        """Lines through points, each ring closed; holes where rings lie in one another."""
        ends = "Z" if closed else ""
        shape = "".join("M" + "L".join(f"{number(x)} {number(y)}" for x, y in ring) + ends for ring in rings)
        self._mark("path", {"d": shape, "fill-rule": "evenodd", **look})

    def arc(self, one: Point, two: Point, radius: float, sweep: bool, look: Look) -> None:
        """A part of a circle from one point to another."""
        where = f"M{number(one[0])} {number(one[1])}A{number(radius)} {number(radius)} 0 0 {int(sweep)} "
        self._mark("path", {"d": where + f"{number(two[0])} {number(two[1])}", **look})

    def circle(self, x: float, y: float, radius: float, look: Look) -> None:
        """A circle."""
        self._mark("circle", {"cx": float(x), "cy": float(y), "r": float(radius), **look})

    def text(self, x: float, y: float, words: str, size: float = SIZE, color: str = palette.INK, *,
             anchor: str = "middle", turned: bool = False, halo: bool = True, bold: bool = False) -> None:  # fmt: skip
        """Words whose middle (or start, or end) stands on (x, y), half as high above as below; a halo sets them off."""
        low = y + size * 0.35
        look: Look = {"font-size": float(size), "fill": color, "text-anchor": anchor}
        if turned:
            look |= {"transform": f"rotate(-90 {number(x)} {number(y)})"}
        if bold:
            look |= {"font-weight": "bold"}
        if halo:
            look |= {"stroke": palette.WHITE, "stroke-width": 3, "stroke-linejoin": "round", "paint-order": "stroke"}
        self._mark("text", {"x": float(x), "y": float(low), **look}, escape(words, quote=False))

    def svg(self, width: float, height: float, title: str, words: str) -> str:
        """The whole picture."""
        key = self._key
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {number(width)} {number(height)}" role="img" '
            f'aria-labelledby="{key}-title {key}-words" font-family="{FONT}">'
            f'<title id="{key}-title">{escape(title, quote=False)}</title>'
            f'<desc id="{key}-words">{escape(words, quote=False)}</desc><defs>{self._patterns()}</defs>'
            f'<rect width="{number(width)}" height="{number(height)}" fill="{palette.WHITE}"/>{"".join(self._marks)}'
            "</svg>"
        )

    def _patterns(self) -> str:
        key, slant = self._key, 'patternUnits="userSpaceOnUse" patternTransform="rotate(45)"'
        return (
            f'<pattern id="{key}-changed" width="6" height="6" {slant}>'
            f'<rect width="6" height="6" fill="{palette.CHANGED}"/>'
            f'<rect width="1" height="6" fill="{palette.TEAL}" fill-opacity="0.55"/></pattern>'
            f'<pattern id="{key}-wall" width="3" height="3" {slant}>'
            f'<rect width="3" height="3" fill="{palette.WHITE}"/><rect width="1" height="3" fill="{palette.QUIET}"/>'
            "</pattern>"
            f'<pattern id="{key}-rug" width="7" height="7" patternUnits="userSpaceOnUse">'
            f'<rect width="7" height="7" fill="{palette.STRAW}"/><circle cx="2" cy="2" r="0.8" fill="{palette.QUIET}"/>'
            f'<circle cx="5.5" cy="5.5" r="0.8" fill="{palette.QUIET}"/></pattern>'
        )
