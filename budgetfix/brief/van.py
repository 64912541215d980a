"""The van that brings the stock and takes it back, and the hour at which the photographs are taken."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from pydantic import BaseModel, ConfigDict

VAN_COSTS = {"out": "Van out", "back": "Van back"}
"""What the fixed cost of each way is called, in every list."""


class _Frozen(BaseModel):
    """Records do not change, and refuse what they do not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, arbitrary_types_allowed=True)


class Slot(_Frozen):
    """One window of the van, in minutes of its day; what it may carry, and its price in minor units.

    `task`: the remedy that loads and unloads; it is done within the window.
    """

    on: date
    start_minute: int
    end_minute: int
    load_kg: Fraction | None = None
    cost_minor: int = 0
    task: str | None = None
    van: str = ""
    """Which van, where there are several; all slots without a name are of one."""


class Vans(_Frozen):
    """The slot that brings the stock, and the one that takes it back."""

    out: Slot | None = None
    back: Slot | None = None

    @property
    def slots(self) -> tuple[tuple[str, Slot], ...]:
        """Those that there are, by name."""
        return tuple((name, slot) for name, slot in (("out", self.out), ("back", self.back)) if slot is not None)


class Photographs(_Frozen):
    """A hard hour: no work is done after it."""

    on: date
    minute: int
