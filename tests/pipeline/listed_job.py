"""A job of listed faults, written as the files that a household would write, and planned through the whole walk."""

from __future__ import annotations

import json
import time
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read

TODAY = date(2026, 6, 1)
Remedy = dict[str, object]


def one_each(points: Sequence[int], costs: Sequence[float]) -> list[Remedy]:
    """Remedies i1, i2, ... that each answer the fault of their own number whole, for a cost."""
    return [
        {"remedy": f"i{number}", "answers": {f"f{number}": 1}, "cost": cost}
        for number, (_, cost) in enumerate(zip(points, costs, strict=True), 1)
    ]


def with_hours(remedies: list[Remedy], hours: Sequence[float]) -> list[Remedy]:
    """The same remedies, each with one step of so many hours."""
    return [{**remedy, "hours": length} for remedy, length in zip(remedies, hours, strict=True)]


def write_job(
    folder: Path,
    points: Sequence[int],
    remedies: Sequence[Remedy],
    brief: Mapping[str, object],
    catalog: Mapping[str, object] | None = None,
) -> None:
    """Faults f1, f2, ... with these points; JSON text is YAML, so the other two files are written as that."""
    lines = ["fault,points", *(f"f{number},{worth}" for number, worth in enumerate(points, 1))]
    (folder / "faults.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    whole = {"currency": "USD", **(catalog or {}), "remedies": list(remedies)}
    (folder / "catalog.yaml").write_text(json.dumps(whole), encoding="utf-8")
    (folder / "brief.yaml").write_text(json.dumps({"currency": "USD", **brief}), encoding="utf-8")


def chosen_plan(folder: Path, seconds: float = 60.0) -> PlanBook | NoPlan:
    """The job of a folder, read and planned."""
    return planned(read(folder, JobOptions(), TODAY), Wish(seconds, time.monotonic))


def proven_plan(folder: Path) -> PlanBook:
    """The plan of a folder, where it must be there and proven."""
    book = chosen_plan(folder)
    assert isinstance(book, PlanBook)
    assert book.proven
    return book


def ids(book: PlanBook) -> list[str]:
    """What was chosen, by id."""
    return [row.id for row in book.chosen]


def sessions_used(book: PlanBook) -> int:
    """Sessions with a step in them."""
    return len({task.session for task in book.tasks if task.session is not None})
