"""Put a thing of the landlord's back where it was, before moving out.

Offered in the profile handing-back for each thing that the brief's lease keeps (`keep`): it is taken from where it is
kept, cleaned, and put back. Holes of what hangs there instead are a fault of their own, to be listed as marks once it
is down. Usual minutes: a rod with its cloth 30, furniture and rugs 20, a light or a picture 15, a blind 30.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.brief.lease import NOT_BACK, Lease
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.cares import cares_for
from budgetfix.remedies.kind import Kind, Site, work_of
from budgetfix.room.items import Table
from budgetfix.room.survey import Survey

MINUTES: dict[Table, tuple[int, int, int]] = {
    "curtains": (20, 30, 45), "openings": (20, 30, 45), "furniture": (10, 20, 30), "rugs": (10, 20, 30),
    "lights": (10, 15, 25), "pictures": (10, 15, 25), "sockets": (10, 15, 25),
}  # fmt: skip
LADDER: tuple[Table, ...] = ("curtains", "openings", "lights")


def _fit(_site: Site) -> tuple[Candidate, ...]:
    return ()


def put_back(survey: Survey, lease: Lease) -> tuple[Candidate, ...]:
    """One candidate for each thing that the lease keeps and the survey knows, by name."""
    made = []
    for name, where in lease.keep:
        table, thing = survey.named.get(name, (None, None))
        if table is None or thing is None:
            continue
        place = where.removeprefix("in ").removeprefix("on ")
        high = ("ladder",) if table in LADDER else ()
        text = f"Take the landlord's {name} out of {place}, clean it, and put it back as it was"
        made.append(
            Candidate(
                f"{KIND.kind}/{name}", KIND.kind, f"Put the landlord's {name} back", subject=name, room=thing.room,
                key=f"{KIND.kind}/{name}", work=(work_of(KIND, text, minutes=MINUTES[table]),),
                answers=((NOT_BACK.format(name), Fraction(1)),), hazards=high, cares=cares_for(high, survey.household),
                done_when="it is where it was when you moved in, clean and whole", own=True,
            )
        )  # fmt: skip
    return tuple(made)


KIND = Kind(
    "put-back", "Put a thing of the landlord's back", (), (10, 20, 30), 6, _fit,
    done_when="it is where it was when you moved in, clean and whole",
)  # fmt: skip
