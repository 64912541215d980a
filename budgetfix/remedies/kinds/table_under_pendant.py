"""Slide the table, with the chairs that are pushed in, under the middle of its pendant. Costs nothing.

Fits: a table whose pendant hangs off its middle, and free floor under the pendant; else as near to it as the floor
allows, in steps of 2 in (50 mm) along the straight line. The pendant stays where it is wired.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.lamps import off_pendant, pendant_at
from budgetfix.remedies.moves import after, edges, inside, slide, with_chairs
from budgetfix.room.items import Light, Piece

STEP_MM, FARTHEST_MM = 50.0, 1500.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = pendant_at(site)
    if found is None or found[1] is None or found[1].fixed:
        return ()
    return best(KIND, site, _offers(site, found[0], found[1]), 1)


def _offers(site: Site, light: Light, table: Piece) -> Iterator[Offer]:
    dx, dy = off_pendant(site, light, table)
    far = (dx * dx + dy * dy) ** 0.5
    if not 1.0 < far <= FARTHEST_MM:
        return
    for short in range(int(far / STEP_MM) + 1):
        share = 1 - short * STEP_MM / far
        changes = with_chairs(site, table, slide(site, table, dx * share, dy * share))
        if all(inside(site, after(site, one)) for one in changes) and site.fits(changes) and better(site, changes):
            chairs = "; its chairs go with it" if len(changes) > 1 else ""
            text = f"Slide the {table.name} under the {light.name}: {edges(site, after(site, changes[0]))}{chairs}"
            yield Offer(f"Slide the {table.name} under the {light.name}", changes, text, subject=table.name)
            return


KIND = Kind(
    "table-under-pendant", "Slide the table under its pendant", ("pendant-off-center",), (15, 25, 40), 6, _fit,
    people=2, hazards=("lifting",), leaves="nothing", done_when="a thread from the lamp meets the table's middle",
)  # fmt: skip
