"""Hang a shelf, screen or wall light elsewhere on its wall, where nobody walks into it.

Fits: what stands out into a narrow way at the height of head or shoulder, and a free stretch of the same wall within
80 in (2 m) where it does so no longer, in steps of 4 in (100 mm); its height stays. A screen on a bench goes with its
bench, and a light that is wired into the wall is the electrician's.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import ladder, says
from budgetfix.room.items import Hung

STEP_MM, FARTHEST_MM = 100.0, 2000.0
PLUGS = {"screen": 5, "shelf": 4, "sconce": 2}
"""New plug holes (common practice)."""
MINUTES = {"screen": (90, 150, 240)}


def _fit(site: Site) -> tuple[Candidate, ...]:
    hung = site.survey.named.get(site.subject, (None, None))[1]
    movable = isinstance(hung, Hung) and hung.wall in site.lines and hung.what in PLUGS and not hung.on
    return best(KIND, site, _offers(site, hung), 2) if isinstance(hung, Hung) and movable else ()


def _offers(site: Site, hung: Hung) -> Iterator[Offer]:
    room, now, found = site.lines[hung.wall].length - hung.width, site.severity(()), 0
    for at in _places(hung.from_left):
        left = site.tape(at)
        change = set_on("pictures", hung.name, from_left=left)
        if found == 2 or not 0 <= left <= room or not site.fits((change,)):
            continue
        severity = site.severity((change,))
        if severity < now and severity == 0:
            found += 1
            text = f"Take it down and hang it again. {says(site, (change,))}"
            yield Offer(
                f"Hang the {hung.name} elsewhere on wall {hung.wall}", (change,), text, site.words(left),
                holes=PLUGS[hung.what], minutes=MINUTES.get(hung.what), hazards=ladder(site, (change,)), wall=hung.wall,
                people=2 if hung.what == "screen" else 1,
            )  # fmt: skip


def _places(start: float) -> Iterator[float]:
    """The nearest first, both ways."""
    for count in range(1, int(FARTHEST_MM / STEP_MM) + 1):
        yield from (start + count * STEP_MM, start - count * STEP_MM)


KIND = Kind(
    "move-hung", "Hang a shelf or light where nobody meets it", ("juts-into-route",), (20, 35, 60), 11, _fit, holes=2,
    hazards=("drill",), tools=("drill",), leaves="plugs", done_when="nobody's shoulder or head meets it in the dark",
)  # fmt: skip
