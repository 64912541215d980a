"""Listed faults from `faults.csv`: fault, points, and optionally what, where, safety."""

from __future__ import annotations

from pathlib import Path

from budgetfix.base.problems import FileProblem
from budgetfix.brief.models import ListedFault
from budgetfix.intake.csv_rows import csv_rows
from budgetfix.intake.how_much import faults_too_many
from budgetfix.intake.reader import Record

FIELDS = ("fault", "points", "what", "where", "safety")


def read_faults(path: Path) -> tuple[tuple[ListedFault, ...], list[FileProblem]]:
    """Every listed fault, those with a problem too (so that their names are known), and every problem."""
    problems: list[FileProblem] = []
    found: dict[str, ListedFault] = {}
    rows = list(csv_rows(path, "faults", list(FIELDS), FIELDS[:2], problems, frozenset({"points"})))
    problems += faults_too_many(rows)
    for row in rows:
        record = Record(row, problems)
        fault = record.id("fault")
        if not record.has("points"):
            record.problem("points", "whole points, 0 or more")
        points = record.whole("points", 0)
        if fault in found:
            record.problem("fault", "each fault once", found=f"'{fault}' a second time")
        elif fault:
            found[fault] = ListedFault(
                fault=fault,
                points=points,
                what=record.text("what"),
                where=record.text("where"),
                safety=record.yes("safety"),
            )
    return tuple(found.values()), problems
