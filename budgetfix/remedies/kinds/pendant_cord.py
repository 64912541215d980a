"""Take a pendant's cord up, or let it down, without opening anything that is wired.

Fits: a pendant too high or too low for its table (or too low for heads), that goes up, or down by no more than 12 in
(300 mm), which is what a cord grip usually hides: measure before you count on it. Its lower edge goes to 32 in (815
mm) above the table and 3 in (75) more for each foot of ceiling above 8 ft; over the floor to 82 in (2085). Where the
cord has no grip, or the canopy would have to be opened, it is the electrician's.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.lamps import by_cord, pendant_at


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = pendant_at(site)
    bottom = by_cord(site, *found) if found is not None else None
    if found is None or bottom is None:
        return ()
    light, table = found
    down = light.bottom - bottom
    way = f"let the cord down by {site.words(down)}" if down > 0 else f"take the cord up by {site.words(-down)}"
    above = f", {site.words(bottom - table.height)} above the {table.name}" if table is not None else ""
    text = (
        f"Switch off and let it cool; {way} at its grip: lower edge {site.words(bottom)} above the floor{above}; if "
        "there is no grip, or a canopy would have to be opened, leave it to a licensed electrician"
    )
    change = set_on("lights", light.name, bottom=bottom)
    return best(KIND, site, (Offer(f"Hang the {light.name} {'lower' if down > 0 else 'higher'}", (change,), text),))


KIND = Kind(
    "pendant-cord", "Set a pendant's cord", ("pendant-off-height",), (10, 15, 20), 12, _fit,
    hazards=("lamp", "ladder"), tools=("ladder",), fills=("bottom",), leaves="nothing",
    done_when="nobody at the table looks into the lamp, and nobody's head meets it",
)  # fmt: skip
