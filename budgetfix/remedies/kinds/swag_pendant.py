"""Lead a pendant's cord over a hook in the ceiling, so that it hangs over the table's middle.

Fits: a pendant off the middle of its table; hooks in the catalogue. No wire is touched: the same cord runs along the
ceiling, so the lamp comes up by as much as it goes aside. Kept only where that leaves less of both faults (middle and
height). A hook in a ceiling asks leave, and wants a joist or a plug that carries the lamp.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.lamps import over_middle, pendant_at
from budgetfix.remedies.products import called, cheapest
from budgetfix.room.items import Light, Piece
from budgetfix.room.survey import Change

FARTHEST_IN, FARTHEST_MM, BELOW_CEILING_MM = 36.0, 910.0, 300.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found, hook = pendant_at(site), cheapest(site, "ceiling hook")
    if found is None or found[1] is None or hook is None:
        return ()
    return best(KIND, site, _offers(site, found[0], found[1], hook), 1)


def _offers(site: Site, light: Light, table: Piece, hook: Product) -> Iterator[Offer]:
    moves, aside = over_middle(site, light, table)
    most = site.survey.facts(site.room).ceiling - BELOW_CEILING_MM
    changes = tuple(_higher(site, change, aside) for change in moves)
    after = site.survey.changed(changes)
    lamps = [one for one in after.lights if one.name in {change.item for change in changes}]
    if aside > site.mm(FARTHEST_IN, FARTHEST_MM) or any(one.bottom > most for one in lamps):
        return
    now, then = (site.left(each, KIND.targets, site.subject) for each in ((), changes))
    if site.finding is not None and then >= now:
        return
    places = "; ".join(
        f"{one.name}: hook {site.words(one.from_left + one.width / 2)} from the left corner of wall {one.wall} and "
        f"{site.words(one.gap + one.depth / 2)} off it, lower edge then {site.words(one.bottom)} above the floor"
        for one in lamps
    )
    text = f"Switch off; screw the hook into a joist or a plug, lead the same cord over it. {places}"
    uses = ((hook.product, Fraction(len(lamps))),)
    yield Offer(f"{called(hook)}: the {light.name} over the middle", changes, text, "", uses, holes=len(lamps))


def _higher(site: Site, change: Change, aside: float) -> Change:
    """What goes aside along the ceiling is missing below."""
    light = site.survey.named[change.item][1]
    assert isinstance(light, Light)
    bottom = site.tape(light.bottom + aside) if light.bottom > 0 else light.bottom
    return replace(change, set=tuple(sorted({**dict(change.set), "bottom": bottom}.items())))


KIND = Kind(
    "swag-pendant", "Lead a pendant over a hook", ("pendant-off-center", "pendant-off-height"), (20, 35, 60), 12, _fit,
    holes=1, hazards=("drill", "ladder", "lamp"), tools=("drill", "ladder"), bought=True, whats=("ceiling hook",),
    leaves="asks leave", done_when="a thread from the lamp meets the table's middle",
)  # fmt: skip
