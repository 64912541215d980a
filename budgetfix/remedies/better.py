"""Whether changes are worth an offer, and what stays although its size changes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Site
from budgetfix.room.survey import Change


def better(site: Site, changes: Iterable[Change], than: Iterable[Change] = ()) -> bool:
    """True where the changes leave less of the finding than others do (or than nothing does).

    Always where a user's remedy is sized: it answers no finding.
    """
    return site.finding is None or site.severity(changes) < site.severity(than)


def stays(one: Candidate) -> Candidate:
    """Without the question where the old thing goes: it is the same picture or bed, only larger than before."""
    first, *rest = one.work
    words = "; ".join(part for part in first.text.split("; ") if not part.startswith("say where the old "))
    return replace(one, work=(replace(first, text=words), *rest))
