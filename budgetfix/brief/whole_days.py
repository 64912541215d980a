"""Rooms that are never left half done: what is begun there on a day is finished on that day."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict, Field


class WholeDays(BaseModel):
    """Rooms by name, or all of them. Sessions without a date are each a day of their own."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    rooms: tuple[str, ...] = Field(default=(), strict=False)
    everywhere: bool = False

    def covers(self, room: str) -> bool:
        """Whether a remedy in that room is done within one day, or not at all."""
        return self.everywhere or room in self.rooms
