"""Put brighter lamps into the fittings that are there.

Fits: LED lamps in the catalogue that give at least a tenth more light than a ceiling light or pendant has now. For
each fitting: the smallest that makes the room bright enough by itself (else the brightest), and the next smaller one.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Light

FITTINGS = ("ceiling", "pendant")
BRIGHTER = 1.1


def _fit(site: Site) -> tuple[Candidate, ...]:
    lights = [one for one in site.survey.lights if one.room == site.room and one.what in FITTINGS]
    if site.subject in site.survey.named:
        lights = [one for one in lights if one.name == site.subject]
    found: list[Candidate] = []
    for light in sorted(lights, key=lambda one: one.name):
        better = [one for one in of_sort(site, "lamp") if (one.lumens or 0.0) > light.lumens * BRIGHTER]
        better.sort(key=lambda one: (one.lumens or 0.0, one.price_minor, one.product))
        found += [candidate(KIND, site, _offer(light, lamp)) for lamp in _two(site, light, better)]
    return tuple(found)


def _two(site: Site, light: Light, better: list[Product]) -> list[Product]:
    cures = [at for at, lamp in enumerate(better) if site.severity(_offer(light, lamp).changes) == 0]
    last = cures[0] if cures else len(better) - 1
    return better[max(0, last - 1) : last + 1]


def _offer(light: Light, lamp: Product) -> Offer:
    change = set_on("lights", light.name, lumens=lamp.lumens, kelvin=lamp.kelvin or light.kelvin)
    text = f"Switch off, let it cool, change the lamp in the {light.name}"
    use = ((lamp.product, Fraction(1)),)
    return Offer(f"{called(lamp)} in the {light.name}", (change,), text, lamp.product, use, subject=light.name)


KIND = Kind(
    "brighter-lamps", "Put in brighter lamps", ("room-dim",), (3, 5, 10), 12, _fit, hazards=("lamp", "ladder"),
    tools=("ladder",), bought=True, whats=("lamp",), done_when="every corner of the room is lit",
)  # fmt: skip
