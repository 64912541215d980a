"""Small random jobs with the largest money and points there can be, and budgets that are met or missed by one."""

from __future__ import annotations

import json
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from random import Random
from shutil import rmtree
from typing import Any

from budgetfix.base.limits import MOST_MONEY_MINOR
from budgetfix.optimize import SolverDisagrees
from budgetfix.outcome.check import ClaimFails
from tests.proof.checker import broken
from tests.proof.comparing import tool_plan, unlike
from tests.proof.every_plan import best_plan, subsets
from tests.proof.job_files import read_job
from tests.proof.random_jobs import draw

Raw = dict[str, Any]
MONEY = ("buy", "hire_per_session", "delivery", "free_over", "price", "cost")
TIMES_MONEY = 10**8
"""Prices of up to 40.00 become such of up to 4 x 10^11 minor units, and their sums come to 10^12 and more."""
TIMES_POINTS = 3 * 10**6
"""Faults of up to 333 points become such of up to 10^9."""
WHAT = ("money", "points", "both")


def write_large(folder: Path, seed: int, number: int) -> tuple[str, bool]:
    """The files of one job; what is large in it, and whether its budget is met or missed by one minor unit."""
    dice = Random(f"{seed}/{number}")
    what = WHAT[number % len(WHAT)]
    faults, catalog, brief = draw(dice.randrange(10**9))
    if what != "points":
        _dearer(dice, catalog)
        brief = _without_old_money(dice, brief)
    if what != "money":
        faults = _heavier(dice, faults)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "faults.csv").write_text(faults, encoding="utf-8")
    (folder / "catalog.yaml").write_text(json.dumps(catalog, indent=1), encoding="utf-8")
    _write_brief(folder, brief)
    edge = what != "points" and dice.random() < 0.9
    if edge:
        _write_brief(folder, {**brief, "budget": _on_the_edge(dice, folder)})
    return what, edge


@dataclass(frozen=True)
class Tried:
    """One job: what is large in it, whether its budget is at an edge, and every disagreement in words."""

    number: int
    what: str
    edge: bool
    words: str


def tried(folder: Path, seed: int, number: int, seconds: float = 120.0) -> Tried:
    """One large job through the tool and through every plan. The folder is taken away again."""
    what, edge = write_large(folder, seed, number)
    words = "; ".join(differences(folder, seconds))
    rmtree(folder)
    return Tried(number, what, edge, words)


def differences(folder: Path, seconds: float) -> list[str]:
    """Everything on which the tool and the slow way disagree about one job."""
    job = read_job(folder)
    try:
        plan = tool_plan(folder, seconds)
    except (ClaimFails, SolverDisagrees) as words:
        return [f"the tool: {words}"]
    best = best_plan(job)
    if best is None or plan is None:
        return [] if best is None and plan is None else [f"tool: {plan}; every plan: {best}"]
    return [*broken(job, plan), *unlike(job, plan, best)]


def _dearer(dice: Random, catalog: Raw) -> None:
    for table in ("tools", "shops", "products", "remedies"):
        for one in catalog[table]:
            for field in MONEY:
                if one.get(field):
                    one[field] = _large(dice, one[field])


def _large(dice: Random, typed: float) -> str:
    """So much money many times over, and a few minor units more or less."""
    minor = int(Decimal(str(typed)) * 100) * TIMES_MONEY + dice.choice((0, 0, 1, 1, 2, 3, 7, -1, -2))
    return f"{minor // 100}.{minor % 100:02}"


def _heavier(dice: Random, faults: str) -> str:
    first, *rows = faults.splitlines()
    lines = [first]
    for row in rows:
        fault, points, safety = row.split(",")
        large = int(points) * TIMES_POINTS + (dice.choice((0, 1, 2, 3, 5)) if int(points) else 0)
        lines.append(f"{fault},{large},{safety}")
    return "\n".join(lines) + "\n"


def _without_old_money(dice: Random, brief: Raw) -> Raw:
    """What was small in it goes, or is made large."""
    kept = {name: value for name, value in brief.items() if name not in ("budget", "contingency", "fixed", "labour")}
    if brief.get("fixed"):
        kept["fixed"] = [{"name": "Van", "cost": _large(dice, 4)}]
    return kept


def _write_brief(folder: Path, brief: Raw) -> None:
    (folder / "brief.yaml").write_text(json.dumps(brief, indent=1), encoding="utf-8")


def _on_the_edge(dice: Random, folder: Path) -> str:
    """A budget that the best set for some sum meets exactly, or misses by one minor unit, or keeps with one left."""
    job = read_job(folder)
    sets = list(subsets(job))
    most = max((one.least for one in sets), default=0) * dice.randint(1, 9) // 9
    within = [(one.hazards, one.points, one.least) for one in sets if one.least <= most]
    least = min(within, default=(0, 0, 0))[2]
    minor = max(0, least + dice.choice((-1, -1, 0, 0, 1))) + sum(job.fixed.values())
    minor = min(minor, MOST_MONEY_MINOR)
    return f"{minor // 100}.{minor % 100:02}"
