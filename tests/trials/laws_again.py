"""The room after a plan, written as a survey and inspected afresh: the plan's own figures must come out."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML
from typer.testing import CliRunner

from budgetfix.cli.app import app
from budgetfix.pipeline.writing import write_room
from tests.trials.laws_walk import BROKEN, HELD, NONE, Told, Tried

SLUG = "again"
PROMISE = "A fresh inspection of the room after the plan finds what the plan leaves"
TAKEN = "what was taken away is listed instead"
Rows = list[tuple[str, str, int, bool]]


def room_again(before: Told | None, folder: Path) -> Tried:
    """Write the room after a plan beside copies of the brief and the catalogue, and inspect it by the command."""
    if before is None:
        return Tried(SLUG, NONE)
    fresh = folder.with_name(f"{folder.name}-after")
    shutil.rmtree(fresh, ignore_errors=True)
    write_room(fresh / "survey.yaml", before.job, before.book)
    for name in ("brief.yaml", "catalog.yaml", "catalog.xlsx"):
        if (folder / name).is_file():
            shutil.copy(folder / name, fresh / name)
    _forget_the_gone(fresh / "catalog.yaml", before)
    return found_again(before.plan, before.book.hazard_points_after, fresh)


def _forget_the_gone(path: Path, told: Told) -> None:
    """As the head of the file says: remedies that speak of what is gone leave the catalogue."""
    assert told.book.drawn is not None
    gone = set(told.book.drawn.before.named) - set(told.book.drawn.after.named)
    text = path.read_text("utf-8") if gone and path.is_file() else ""
    if not any(name in text for name in gone):
        return
    data = YAML(typ="safe", pure=True).load(text)
    out = {one["remedy"] for one in data["remedies"] if _speaks_of(one, gone)}
    data["remedies"] = [one for one in data["remedies"] if one["remedy"] not in out]
    for one in data["remedies"]:
        one |= {name: [id for id in one[name] if id not in out] for name in ("needs", "excludes") if name in one}
    path.write_text(json.dumps(data, default=str), "utf-8")


def _speaks_of(remedy: dict[str, Any], gone: set[str]) -> bool:
    items = [remedy.get("on"), *(one.get("item") or one.get("remove") for one in remedy.get("changes") or ())]
    return not gone.isdisjoint(str(one) for one in items)


def found_again(plan: dict[str, Any], hazard_points: int, fresh: Path) -> Tried:
    """Inspect a folder by the command, and hold it against what a plan says it leaves."""
    came = CliRunner().invoke(app, ["inspect", str(fresh), "--json"])
    if came.exit_code:
        return Tried(SLUG, BROKEN, f"exit {came.exit_code}: {came.stderr[:300]}")
    seen = json.loads(came.stdout)
    sums = (plan["points_after"], plan["hazards_after"], hazard_points)
    safe = sum(one["points"] for one in seen["findings"] if one["safety"])
    left = _rows(one for one in (*plan["left"], *plan["new"]) if "rule" in one)
    again = _rows(one for one in seen["findings"] if one["severity"] > 0)
    words = [] if left == again else [f"only in the plan {_less(left, again)}, only found {_less(again, left)}"]
    words += (
        []
        if (seen["points"], seen["hazards"], safe) == sums
        else [f"{sums} became {seen['points']}, {seen['hazards']}, {safe}"]
    )
    return Tried(SLUG, BROKEN if words else HELD, "; ".join(words))


def _rows(rows: Any) -> Rows:
    return sorted((one.get("rule") or one["fault"], one["subject"], one["points"], one["safety"]) for one in rows)


def _less(rows: Rows, others: Rows) -> Rows:
    return [one for one in rows if one not in others]
