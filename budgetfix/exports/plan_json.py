"""The objects that `--json` prints. Lengths in millimetres, money in minor units."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.inspection.finding import Finding
from budgetfix.inspection.rule import Band, Edge, Rule, edge_mm
from budgetfix.outcome.book import ChosenRow, FaultRow, PlanBook, Sums

SCHEMA = 1


def plan_object(book: PlanBook, files: tuple[str, ...]) -> dict[str, object]:
    """`plan --json`: all keys but `plans` describe the best plan."""
    sessions = book.sessions or ()
    return {
        "schema": SCHEMA,
        "currency": book.currency,
        "budget_minor": book.budget_minor,
        "spent_minor": book.spent_minor,
        "minutes_available": [row.minutes_available for row in sessions],
        "minutes_used": [row.minutes_used for row in sessions],
        "hazards_before": book.hazards_before,
        "hazards_after": book.hazards_after,
        "points_before": book.points_before,
        "points_after": book.points_after,
        "improvement": book.improvement,
        "proven": book.proven,
        "bound": book.bound,
        "rounds": {"inspections": book.inspections, "placings": book.placings},
        "candidates": book.candidates,
        "chosen": [_chosen(book, row) for row in book.chosen],
        "purchases": [
            {
                "kind": line.kind,
                "product": line.product,
                "shop": line.shop,
                "packs": line.packs,
                "unit_price_minor": line.unit_price_minor,
                "line_minor": line.line_minor,
            }
            for line in book.money
        ],
        "left": [_left(row) for row in book.faults if _still(row)],
        "new": [_left(row) for row in book.faults if row.state == "new"],
        "sessions_used": len({task.session for task in book.tasks if task.session is not None}),
        "plans": {"best": _sums(book.best), "recommended": _sums(book.recommended), "free": _sums(book.free)},
        "files": list(files),
    }


def _still(row: FaultRow) -> bool:
    before = row.points_before > 0 or row.severity_before > 0
    after = row.points_after > 0 or row.severity_after > 0
    return before and after and row.state != "new"


def _left(row: FaultRow) -> dict[str, object]:
    name: dict[str, object] = {"fault": row.fault} if row.listed else {"rule": row.rule}
    return {**name, "subject": row.subject, "points": row.points_after, "safety": row.safety}


def _chosen(book: PlanBook, row: ChosenRow) -> dict[str, object]:
    steps = sorted((task for task in book.tasks if task.candidate == row.id and task.step), key=lambda task: task.step)
    return {
        "id": row.id,
        "name": row.name,
        "answers": list(row.answers),
        "cost_minor": row.cost_minor,
        "steps": [{"session": task.session, "minutes": task.minutes, "people": task.people} for task in steps],
        "cares": list(row.cares),
    }


def _sums(sums: Sums | None) -> dict[str, object] | None:
    if sums is None:
        return None
    return {
        "spent_minor": sums.spent_minor,
        "improvement": sums.improvement,
        "hazards_after": sums.hazards_after,
        "minutes": sums.minutes,
        "chosen": list(sums.chosen),
    }


def inspect_object(findings: Iterable[Finding], points: int, hazards: int, metric: bool = True) -> dict[str, object]:
    """`inspect --json`: every finding, sound ones too; hazards are a count."""
    return {
        "schema": SCHEMA,
        "points": points,
        "hazards": hazards,
        "findings": [
            {
                "rule": one.rule,
                "subject": one.subject,
                "room": one.room,
                "measured": round(one.value, 3),
                "unit": one.unit,
                "band": _band(one.band, metric),
                "severity": round(float(one.severity), 4),
                "points": one.points,
                "certain": one.certain,
                "basis": one.basis,
                "safety": one.safety,
            }
            for one in findings
        ],
    }


def _band(band: Band, metric: bool) -> dict[str, object]:
    def ends(low: Edge, high: Edge) -> list[float | None]:
        return [edge_mm(low, metric), edge_mm(high, metric)]

    return {"sound": ends(band.low, band.high), "glaring": ends(band.bad_low, band.bad_high)}


def rules_object(rules: Iterable[Rule]) -> list[dict[str, object]]:
    """`rules --json`. Bands with their inch and millimetre twins."""
    return [
        {
            "slug": rule.slug,
            "title": rule.title,
            "measures": rule.measures,
            "unit": rule.unit,
            "band": {"mm": _band(rule.band, True)["sound"], "in": _band(rule.band, False)["sound"]},
            "aim": [edge_mm(rule.band.aim[0], True), edge_mm(rule.band.aim[1], True)],
            "glaring": _band(rule.band, True)["glaring"],
            "weight": float(rule.weight),
            "family": rule.family,
            "safety": rule.safety,
            "profiles": {name: float(factor) for name, factor in sorted(rule.profiles.items())},
            "basis": rule.basis,
            "source": rule.basis,
        }
        for rule in rules
    ]
