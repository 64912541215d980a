"""What a drawing holds, read back from its SVG text without the code that drew it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from xml.etree import ElementTree

SVG = "{http://www.w3.org/2000/svg}"
Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Word:
    """A text and the ground that it takes at most, by letters of 0.6 of their height on average."""

    text: str
    box: Box
    size: float


def parsed(svg: str) -> ElementTree.Element:
    """The picture as XML. Errors: ParseError where it is not well formed."""
    return ElementTree.fromstring(svg)


def view(svg: str) -> Box:
    """The picture's frame: left, top, right, bottom."""
    x, y, w, h = (float(part) for part in parsed(svg).attrib["viewBox"].split())
    return (x, y, x + w, y + h)


def words(svg: str) -> list[Word]:
    """Every text of a picture, in the order in which it is drawn."""
    found = []
    for node in parsed(svg).iter(f"{SVG}text"):
        text, size = node.text or "", float(node.attrib["font-size"])
        x, low = float(node.attrib["x"]), float(node.attrib["y"])
        across, middle = 0.6 * size * len(text), low - 0.35 * size
        left = x if node.attrib["text-anchor"] == "start" else x - across / 2
        box = (left, middle - size / 2, left + across, middle + size / 2)
        if "rotate(-90" in node.attrib.get("transform", ""):
            box = (x - size / 2, middle - across / 2, x + size / 2, middle + across / 2)
        found.append(Word(text, box, size))
    return found


def texts(svg: str) -> list[str]:
    """The texts alone."""
    return [word.text for word in words(svg)]


def marks(svg: str, attribute: str, value: str) -> int:
    """How many marks have an attribute that ends with a value."""
    return sum(1 for node in parsed(svg).iter() if node.attrib.get(attribute, "").endswith(value))


def ids(svg: str) -> list[str]:
    """Every id."""
    return re.findall(r' id="([^"]+)"', svg)


def overlap(one: Box, other: Box) -> float:
    """The ground that two boxes share, in square units."""
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide * high if wide > 0 and high > 0 else 0.0
