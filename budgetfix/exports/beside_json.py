"""Two plans side by side as one JSON object. Money in minor units, minutes of every person."""

from __future__ import annotations

from dataclasses import asdict

from budgetfix.outcome.beside import Beside, OnePlan


def beside_object(found: Beside) -> dict[str, object]:
    """`first` and `second` in figures, then what differs."""
    return {
        "schema": 1,
        "currency": found.first.book.currency,
        "first": _figures(found.first),
        "second": _figures(found.second),
        "alike": found.alike,
        "only_first": [asdict(one) for one in found.only_first],
        "only_second": [asdict(one) for one in found.only_second],
        "otherwise": [asdict(one) for one in found.otherwise],
        "goods": [asdict(one) for one in found.goods],
        "faults": [asdict(one) for one in found.faults],
    }


def _figures(plan: OnePlan) -> dict[str, object]:
    book = plan.book
    return {
        "name": plan.name,
        "catalog": plan.catalog,
        "budget_minor": book.budget_minor,
        "spent_minor": book.spent_minor,
        "minutes": book.best.minutes,
        "hazards_before": book.hazards_before,
        "hazards_after": book.hazards_after,
        "points_before": book.points_before,
        "points_after": book.points_after,
        "improvement": book.improvement,
        "proven": book.proven,
        "bound": book.bound,
        "chosen": [one.id for one in plan.chosen],
    }
