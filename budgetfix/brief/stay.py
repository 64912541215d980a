"""How long the pieces of a job stay in the house."""

from __future__ import annotations

from datetime import date

from pydantic import BaseModel, ConfigDict


class Stay(BaseModel):
    """The days from which and until which pieces from stock, or hired, stand in the house."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    first: date
    until: date
    turnaround_days: int = 0
    """Days after the last one before another house may have the pieces: to fetch, clean and load them."""

    @property
    def days(self) -> int:
        """Days that are paid for: the day of taking back is not counted."""
        return (self.until - self.first).days
