"""Give the home's own door a landing: a mat, a place for coats, a surface for keys.

Fits: what the rule misses within 6 ft (1830 mm) of the door, from the catalogue: a mat before the door, 6 in (150 mm)
off the walls; a coat stand or a rail (up to 6 in, 150 mm, deep: it is screwed to the wall); a narrow console. They
stand at a wall, nearest to the door, where the floor is free and no door is in the way. Everything that is missing in
one go, or less of it: without the console, or the mat alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from shapely.geometry import LineString

from budgetfix.catalog.models import Product
from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.moves import before_opening, edges, inside
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Opening, Piece, Rug
from budgetfix.room.places import footprint
from budgetfix.room.survey import Change

NEAR_IN, NEAR_MM, OFF_IN, OFF_MM, STEP_MM = 72.0, 1830.0, 6.0, 150.0, 100.0
RAIL_DEEP_MM, RAIL_HIGH_MM, RAIL_HOLES = 150.0, 1700.0, 4
MINUTES = {"mat": (3, 5, 10), "coat rack": (15, 25, 45), "console table": (20, 35, 60)}
"""Of each part: our judgement."""
Part = tuple[Product, Piece | Rug]


def _fit(site: Site) -> tuple[Candidate, ...]:
    door = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(door, Opening) or door.wall not in site.lines:
        return ()
    parts: dict[str, Part] = {}
    for what in MINUTES:
        part = _part(site, door, what, [_change(one) for _, one in parts.values()])
        if part is not None:
            parts[what] = part
    sets = (tuple(parts), tuple(what for what in parts if what != "console table"), ("mat",))
    wanted = [few for few in dict.fromkeys(sets) if few and set(few) <= set(parts)]
    return best(KIND, site, (_offer(site, door, [parts[what] for what in few]) for few in wanted), 2)


def _part(site: Site, door: Opening, what: str, others: list[Change]) -> Part | None:
    """The cheapest product of a sort that finds a place and that the rule misses."""
    for product in sorted(of_sort(site, what), key=lambda one: (one.price_minor, one.product)):
        if product.width is None or product.depth is None:
            continue
        for thing in _mats(site, door, product) if what == "mat" else _places(site, door, product):
            changes = (*others, _change(thing))
            if site.fits(changes) and better(site, changes, others):
                return product, thing
    return None


def _mats(site: Site, door: Opening, product: Product) -> Iterator[Rug]:
    wide, off = product.width or 0.0, site.mm(OFF_IN, OFF_MM)
    at = door.from_left + (door.width - wide) / 2
    at = min(max(at, off), site.lines[door.wall].length - wide - off)
    mat = Rug(
        name=f"mat at the {door.name}", room=site.room, wall=door.wall, from_left=site.tape(at), gap=off, width=wide,
        depth=product.depth or wide, pad=True, under=door.name,
    )  # fmt: skip
    if inside(site, mat):
        yield mat


def _places(site: Site, door: Opening, product: Product) -> Iterator[Piece]:
    """Places at the walls near the door, the nearest first."""
    line, wide = site.lines[door.wall], product.width or 0.0
    jambs = LineString([line.point(door.from_left), line.point(door.from_left + door.width)])
    found = []
    for letter in sorted(site.lines):
        for step in range(int((site.lines[letter].length - wide) / STEP_MM) + 1):
            piece = _piece(site, product, letter, site.tape(step * STEP_MM))
            far = float(footprint(piece, site.lines).distance(jambs))
            if far <= site.mm(NEAR_IN, NEAR_MM) and not before_opening(site, piece):
                found.append((far, letter, piece.from_left, piece))
    return (piece for *_, piece in sorted(found, key=lambda one: one[:3]))


def _piece(site: Site, product: Product, letter: str, at: float) -> Piece:
    rail = product.what == "coat rack" and (product.depth or 0.0) <= RAIL_DEEP_MM
    return Piece(
        name=f"new {called(product)}", room=site.room, what=product.what, wall=letter, from_left=at,
        width=product.width or 0.0, depth=product.depth or 0.0, hangs=rail, surface=product.what == "console table",
        height=RAIL_HIGH_MM if rail else product.height or 800.0,
    )  # fmt: skip


def _change(thing: Piece | Rug) -> Change:
    return Change("rugs" if isinstance(thing, Rug) else "furniture", thing.name, add=thing)


def _offer(site: Site, door: Opening, parts: list[Part]) -> Offer:
    rails = sum(isinstance(thing, Piece) and thing.hangs for _, thing in parts)
    low, likely, high = (sum(MINUTES[product.what][at] for product, _ in parts) for at in range(3))
    places = "; ".join(f"{called(product)}: {edges(site, thing)}" for product, thing in parts)
    screws = f"; screw the rail {site.words(RAIL_HIGH_MM)} above the floor" if rails else ""
    return Offer(
        f"{', '.join(called(product) for product, _ in parts)} at the {door.name}",
        tuple(_change(thing) for _, thing in parts), f"{places}{screws}",
        "~".join(product.product for product, _ in parts),
        tuple((product.product, Fraction(1)) for product, _ in parts), holes=RAIL_HOLES * rails,
        hazards=("drill",) if rails else (), leaves="plugs" if rails else "nothing", minutes=(low, likely, high),
    )  # fmt: skip


KIND = Kind(
    "hooks-and-mat", "Give the front door a mat, hooks and a surface", ("entry-no-landing",), (15, 30, 60), 8, _fit,
    bought=True, whats=("mat", "coat rack", "console table"), leaves="nothing", tools=("drill",),
    done_when="keys, coats and wet shoes have a place, and the door opens wide",
)  # fmt: skip
