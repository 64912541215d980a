"""The guard of the trade: no plan leaves a measured finding more than a quarter worse than it was."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from budgetfix.inspection.finding import Finding
from budgetfix.inspection.inspect import Seen

WORSE = Fraction(1, 4)
"""A plan leaves no measured finding worse by more than this (the guard of the trade page)."""


def worse_than(before: Seen, after: Seen, may_worsen: Iterable[str], now: Seen | None = None) -> tuple[Finding, ...]:
    """Findings left more than a quarter worse than they were; a new one counts from 0.

    `now`: the room as it stands, where something was done since `before`: what is no worse than that may stay.
    """
    free = frozenset(may_worsen)
    most = {finding.id: finding.severity + WORSE for finding in before.findings}
    for finding in now.findings if now is not None else ():
        most[finding.id] = max(most.get(finding.id, WORSE), finding.severity)
    return tuple(
        finding
        for finding in after.findings
        if finding.rule not in free and finding.severity > most.get(finding.id, WORSE)
    )


def too_much_worse(before: Seen, after: Seen, may_worsen: Iterable[str], now: Seen | None = None) -> bool:
    """True where the guard forbids what is left."""
    return bool(worse_than(before, after, may_worsen, now))
