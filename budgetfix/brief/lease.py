"""What a lease allows: classes of work, holes by class, leave asked and given, what is kept, and how it ends."""

from __future__ import annotations

from datetime import date
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

Leave = Literal["given", "asked", "refused"]
"""What a landlord said: yes, nothing yet, no."""
Undo = Literal["shown", "counted"]
"""Undoing at the end: shown beside the plan, or its filler, paint and minutes counted in it."""

CLASSES = {
    "painting": "painting",
    "plugs": "holes for plugs",
    "pins": "pin holes",
    "strips": "strips on the walls",
    "things that peel off": "things that peel off",
    "drilling": "drilling",
    "holes in ceilings": "holes in ceilings",
    "screens on walls": "screens hung on walls",
    "shelves and rails": "shelves and rails on walls",
    "furniture fixed to walls": "furniture fixed to walls",
    "curtain rods": "new holes for curtain rods",
    "blinds": "blinds",
    "hard-wired lights": "changes to hard-wired lights",
    "lampholders and shades": "changes to lampholders and shades",
}
"""Classes of work that leases commonly speak of (common practice), with the words that follow "your lease forbids"."""
ASKED_FOR = frozenset({"plugs", "asks leave"})
"""What a remedy leaves that commonly needs leave where the lease is silent (common practice)."""
UNDO_LIMIT = "minutes to undo"
"""The limit that undoing counts against."""
NOT_BACK = "not back: {}"
"""The fault, in the profile handing-back, of a thing that is kept elsewhere."""
NOT_BACK_POINTS = 150
"""As much as a glaring fault of weight 1.5: a landlord misses it at once (our judgement)."""
HOLES = ("plugs", "pins")
LEAVES = ("given", "asked", "refused")


class Lease(BaseModel):
    """One lease. `forbids` holds classes, kinds or remedy ids; `leave` pairs such a word with what the landlord said.

    `plugs`, `pins`: the most holes of each class, None for no limit. `undo_minutes`: the most that undoing may take.
    `keep` pairs a thing of the survey with where it, or its old part, is kept.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    forbids: tuple[str, ...] = Field(default=(), strict=False)
    plugs: int | None = None
    pins: int | None = None
    leave: tuple[tuple[str, Leave], ...] = Field(default=(), strict=False)
    reversible_first: bool = False
    ends: date | None = None
    undo: Undo = "shown"
    undo_minutes: int | None = None
    keep: tuple[tuple[str, str], ...] = Field(default=(), strict=False)

    def said(self, words: tuple[str, ...]) -> Leave | None:
        """What the landlord said of the first of these words that the brief names; None where it names none."""
        known = dict(self.leave)
        return next((known[word] for word in words if word in known), None)
