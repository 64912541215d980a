"""Paint one wall, two coats, where old holes are many.

Fits: a wall with six old holes or more; wall paint in the catalogue that is sold by volume (unit l, gal or qt). The
holes are filled first. The paint is worked out from the wall's whole length and height, openings taken solid
(published value P3), two coats at 350 sq ft a gallon and coat (P7; other sources span 250 to 450, P1 to P6: the tin
decides). One session a coat, the second not before the next session. Renters ask first, and get the colour that they
hand back agreed in writing. No sanding: see the caution on old paint.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.holes import counted, litres, paint_for, patches, repair
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on, work_of
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Hung

MANY, COATS = 6, 2
FIRST, SECOND = (90, 140, 210), (60, 100, 150)
"""Taping, covering, filling and the first coat; the second coat and clearing up: 150 / 240 / 360 together."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    found: list[Candidate] = []
    for letter in sorted(site.lines):
        holes = tuple(one for one in patches(site) if one.wall == letter)
        if holes and (site.finding is None or sum(one.things for one in holes) >= MANY):
            found += [_in_two(one) for one in best(KIND, site, _offers(site, letter, holes), 1)]
    return tuple(found)


def _offers(site: Site, letter: str, holes: tuple[Hung, ...]) -> Iterator[Offer]:
    area = site.lines[letter].length * site.survey.facts(site.room).ceiling
    plugs, pins = counted(holes)
    changes = tuple(set_on("pictures", one.name, things=0) for one in holes)
    for product in of_sort(site, "wall paint"):
        units = paint_for(product, area, COATS)
        if units is None:
            continue
        yield Offer(
            f"Paint wall {letter} with {called(product)}", changes,
            _text(site, letter, area, plugs + pins), f"wall {letter}~{product.product}",
            ((product.product, units), *_filler(site, plugs, pins)), wall=letter,
        )  # fmt: skip


def _filler(site: Site, plugs: int, pins: int) -> tuple[tuple[str, Fraction], ...]:
    """Filler alone: the whole wall is painted, so nothing is touched up."""
    fillers = {product.product for product in of_sort(site, "filler")}
    return tuple(one for one in repair(site, plugs, pins) if one[0] in fillers)


def _text(site: Site, letter: str, area: float, holes: int) -> str:
    wide, tall = site.lines[letter].length, site.survey.facts(site.room).ceiling
    volume = litres(area, COATS)
    amount = f"{volume:.1f} l" if site.metric else f"{volume / 3.785411784:.2f} gal"
    return (
        f"Wall {letter}, {site.words(wide)} by {site.words(tall)}: take down what hangs, cover the floor, tape edges "
        f"and sockets, fill the {holes} old holes and let them dry, cut in, first coat ({amount} for two coats at "
        "350 sq ft a gallon; the tin decides)"
    )


def _in_two(one: Candidate) -> Candidate:
    """The first coat with all that goes before it, and the second in a later session."""
    again = "Second coat when the first is dry; pull the tape while it is damp, clear up"
    second = replace(work_of(KIND, again, minutes=SECOND), wait_sessions=1)
    return replace(one, work=(work_of(KIND, one.work[0].text, minutes=FIRST), second))


KIND = Kind(
    "paint-wall", "Paint one wall, two coats", ("old-holes-show",), (150, 240, 360), 5, _fit, hazards=("ladder",),
    tools=("ladder",), bought=True, whats=("wall paint", "filler"), leaves="asks leave",
    done_when="the wall is one even colour in daylight, and no old hole shows",
)  # fmt: skip
