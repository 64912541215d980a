"""What to take along to the shop for each sort of goods, with the figures that the survey knows. Common practice."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from budgetfix.base.tape import write_length
from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Curtain, Opening
from budgetfix.room.survey import Survey

LARGE_MM = 1200.0
"""A piece with a side longer than this is measured against the car and the stairs (common practice)."""

SORT_BY_NAME = (
    ("hem tape", "hem tape"), ("clip ring", "clip rings"), ("clamp rod", "clamp rod"), ("rod", "rod"),
    ("curtain", "panels"), ("panel", "panels"), ("floor lamp", "floor lamp"), ("table lamp", "table lamp"),
    ("shade", "shade"), ("lamp", "lamp"), ("bulb", "lamp"), ("pad", "pad"), ("rug", "rug"), ("strip", "strips"),
    ("hook", "hooks"), ("strap", "strap"), ("anchor", "strap"), ("filler", "filler"), ("touch-up", "paint"),
    ("paint", "wall paint"), ("mount board", "frame"), ("frame", "frame"), ("canvas", "picture"), ("print", "picture"),
    ("mirror", "picture"), ("cable", "cable cover"),
    ("table", "console"), ("bench", "console"), ("sideboard", "console"), ("headboard", "headboard"),
    ("nightstand", "nightstand"), ("blind", "blind"), ("plant", "plant"), ("tree", "plant"),
)  # fmt: skip
"""What a product is where the catalogue does not say: the first of these words in its name."""
FURNITURE = ("console", "coffee table", "side table", "nightstand", "console table", "headboard", "coat rack", "rug")
RODS, CLOTH = ("rod", "clamp rod"), ("panels", "hem tape", "clip rings")
BULBS, LAMPS = ("lamp",), ("floor lamp", "table lamp")
CAP = re.compile(r"\b(?:E1[0-7]|E2[5-7]|E39|E40|B15|B22d?|GU10|GU5\.3|G4|G9)\b")
"""Caps as they are marked on the box (IEC 60061-1)."""
PLAIN = {
    "pad": "the rug's real length and width",
    "strips": "the weight of each picture; a look at the paint, smooth or rough",
    "hooks": "the weight of each picture",
    "picture": "the tape; the wall's free width",
    "frame": "the picture's own size",
    "strap": "what the wall is made of; the height of the piece",
    "screen strap": "what the wall is made of; the holes on the screen's back",
    "paint": "a chip of the old paint, as large as a coin",
    "wall paint": "a chip of the old paint; the wall's length and height",
    "filler": "how deep and wide the holes are",
    "shade": "the old shade, or its ring and height",
    "cable cover": "the length of the way that the cable takes",
    "cable channel": "the length of the way that the cable takes",
    "sconce": "the height, and the way to the socket",
    "basket": "the free width and depth",
    "plant": "the tape; how light the corner is",
}


def sort_of(product: Product) -> str:
    """What it is, as the catalogue says, else by its name; empty where neither tells."""
    if product.what:
        return product.what
    name = product.name.casefold()
    return next((sort for word, sort in SORT_BY_NAME if word in name), "")


def take_along(
    product: Product, buyers: Iterable[Candidate], before: Survey | None, after: Survey | None
) -> str:  # fmt: skip
    """What to have in the bag for it, in words; empty where nothing special is needed."""
    sort = sort_of(product)
    if before is None or after is None:
        return PLAIN.get(sort, "")
    unit = before.household.unit
    curtains = [one for one in after.curtains if one.name in _changed(buyers)]

    def words(mm: float) -> str:
        return write_length(mm, unit)

    if sort in RODS:
        return "; ".join(_rod(one, after, words) for one in curtains) or "the tape; the width of the window frame"
    if sort in CLOTH:
        return "; ".join(_cloth(one, words) for one in curtains) or "rod height, and from the rod to the floor"
    if sort in BULBS:
        cap = _cap(product)
        return f"the old lamp{f', to compare its cap with {cap}' if cap else ': its cap'}; the most watts on each shade"
    if sort in LAMPS:
        return "the way from the lamp's place to its socket; the old lamp for its cap"
    if sort in FURNITURE and _large(product, after, buyers):
        return f"the tape; {_doors(before, buyers, words)}stairs and car, measured"
    return PLAIN.get(sort, "the tape; the free width and depth" if sort in FURNITURE else "")


def _cap(product: Product) -> str:
    """The cap of a lamp where its name or label says it: E27, B22, GU10."""
    found = CAP.search(f"{product.name} {product.label}")
    return found[0] if found else ""


def _changed(buyers: Iterable[Candidate]) -> frozenset[str]:
    """Names of the things that the buyers set, add or take away."""
    return frozenset(change.item for one in buyers for change in one.changes)


def _rod(curtain: Curtain, room: Survey, words: Callable[[float], str]) -> str:
    windows = [room.named[name][1] for name in (curtain.window, curtain.also_window) if name in room.named]
    frames = [words(one.width) for one in windows if isinstance(one, Opening)]
    ends = f"{words(curtain.rod_from_left)} to {words(curtain.rod_from_left + curtain.rod_width)} from the left"
    frame = f"frame {' and '.join(frames)} wide, " if frames else ""
    return f"{curtain.window}: {frame}rod {words(curtain.rod_width)}, {ends}, {words(curtain.rod_height)} up"


def _cloth(curtain: Curtain, words: Callable[[float], str]) -> str:
    drop = curtain.rod_height - curtain.hem
    up = f"rod {words(curtain.rod_height)} up, {words(curtain.rod_width)} wide"
    return f"{curtain.window}: {up}, hem {words(curtain.hem)} off the floor ({words(drop)} below the rod)"


def _large(product: Product, room: Survey, buyers: Iterable[Candidate]) -> bool:
    """True where the product, or a thing that it becomes, is long; a rug is rolled, and longer still."""
    things = [room.named[name][1] for name in sorted(_changed(buyers)) if name in room.named]
    sides = [side for side in (product.width, product.depth, product.height) if side is not None]
    sides += [side for one in things for side in (getattr(one, "width", 0.0), getattr(one, "depth", 0.0))]
    return max(sides, default=0.0) >= LARGE_MM


def _doors(survey: Survey, buyers: Iterable[Candidate], words: Callable[[float], str]) -> str:
    """Clear widths of the doors of the rooms that it goes into: "doors 750 mm and 800 mm; ", narrowest first."""
    rooms = {one.room for one in buyers}
    doors = [one for one in survey.openings if one.what in ("door", "opening") and one.room in rooms]
    widths = list(dict.fromkeys(words(one.width) for one in sorted(doors, key=lambda one: one.width)))
    if not widths:
        return ""
    return f"{'door' if len(widths) == 1 else 'doors'} {' and '.join(widths)} wide; "
