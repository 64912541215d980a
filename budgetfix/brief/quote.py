"""What a quote says that no plan knows."""

from __future__ import annotations

from datetime import date

from pydantic import BaseModel, ConfigDict, Field


class QuoteWords(BaseModel):
    """Whom the quote is for, who makes it, until when it stands, and further sentences that the client agrees to."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    addressee: str = ""
    maker: str = ""
    until: date | None = None
    agree: tuple[str, ...] = Field(default=(), strict=False)
