"""The words of a quote in a brief."""

from __future__ import annotations

from budgetfix.brief.quote import QuoteWords
from budgetfix.intake.brief_hours import as_day
from budgetfix.intake.inside import at, only
from budgetfix.intake.reader import as_names, as_text

WANTED_QUOTE = "words such as {for: the seller, by: our firm, until: 2026-06-02, agree: [the keys stay with us]}"


def read_quote(value: object) -> QuoteWords:
    """Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")
    only(value, ("for", "by", "until", "agree"))
    return QuoteWords(
        addressee=at("for", value.get("for") or "", as_text),
        maker=at("by", value.get("by") or "", as_text),
        until=at("until", value["until"], as_day) if value.get("until") is not None else None,
        agree=at("agree", value.get("agree") or [], as_names),
    )
