"""Every fault before and after, measured and listed."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from budgetfix.brief.models import Brief, ListedFault
from budgetfix.framing.frame import Ground
from budgetfix.framing.listed import remaining
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.words import measured_words, sound_words
from budgetfix.outcome.book import FaultRow


def fault_rows(base: Ground, after: tuple[Finding, ...], listed: Mapping[str, int]) -> tuple[FaultRow, ...]:
    """Hazards first, then by points before, ties by id. Sound findings that stay sound are left out."""
    before = {(one.room, one.id): one for seen in base.seen for one in seen.findings}
    later = {(one.room, one.id): one for one in after}
    unit = base.survey.household.unit if base.survey is not None else "mm"
    keys = sorted(key for key in before | later if _fault(before.get(key)) or _fault(later.get(key)))
    rows = [_measured(before.get(key), later.get(key), unit) for key in keys]
    rows += [_listed(fault, base.brief, listed[fault.fault]) for fault in base.faults]
    return tuple(sorted(rows, key=lambda row: (not row.safety, -row.points_before, -row.points_after, row.fault)))


def _fault(finding: Finding | None) -> bool:
    return finding is not None and finding.fault


def state_of(before: Fraction, after: Fraction) -> str:
    """fixed, better, still there, worse or new, by severity (or by points of a listed fault)."""
    if after == 0:
        return "fixed"
    if before == 0:
        return "new"
    if after < before:
        return "better"
    return "worse" if after > before else "still there"


def _measured(before: Finding | None, after: Finding | None, unit: str) -> FaultRow:
    one = before or after
    assert one is not None
    was = before.severity if before is not None else Fraction(0)
    now = after.severity if after is not None else Fraction(0)
    gone = "taken away" if after is not None and after.kept else None
    was_words = measured_words(before, unit) if before is not None else "not there"
    now_words = gone or (measured_words(after, unit) if after is not None else "no longer asked")
    state = state_of(was, now)
    return FaultRow(
        fault=one.id,
        rule=one.rule,
        subject=one.subject,
        title=one.title,
        room=one.room,
        before=was_words,
        sound=sound_words(one, unit),
        after=now_words,
        points_before=before.points if before is not None else 0,
        points_after=after.points if after is not None else 0,
        severity_before=float(was),
        severity_after=float(now),
        safety=one.safety,
        certain=one.certain,
        listed=False,
        state="still there" if state == "better" and was_words == now_words else state,
        kept=gone is not None,
    )


def _listed(fault: ListedFault, brief: Brief, after: int) -> FaultRow:
    before = remaining(fault, (), brief)
    return FaultRow(
        fault=fault.fault,
        rule=None,
        subject=fault.where,
        title=fault.what or fault.fault,
        room="",
        before="listed",
        sound="",
        after="gone" if after == 0 else "listed",
        points_before=before,
        points_after=after,
        severity_before=1.0 if before else 0.0,
        severity_after=after / before if before else 0.0,
        safety=fault.safety,
        certain=True,
        listed=True,
        state="still there" if before == after else state_of(Fraction(before), Fraction(after)),
    )
