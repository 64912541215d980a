"""One random job through the tool and through every plan, and where the two tell different things."""

from __future__ import annotations

import json
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from budgetfix.exports.plan_json import plan_object
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from tests.proof.checker import broken
from tests.proof.every_plan import Best, best_plan, free, recommended
from tests.proof.job_files import Job, read_job
from tests.proof.promises import kept, worth
from tests.proof.random_jobs import ORDERED, write

Plan = dict[str, Any]


def tool_plan(folder: Path, seconds: float = 60.0) -> Plan | None:
    """What the tool makes of a folder, as its JSON object; None where it says that there is no plan."""
    book = planned(read(folder, JobOptions(), ORDERED), Wish(seconds, time.monotonic))
    return json.loads(json.dumps(plan_object(book, ()))) if isinstance(book, PlanBook) else None


def differences(folder: Path, number: int) -> list[str]:
    """Everything on which the tool and the slow way disagree about one random job; its files stay in the folder."""
    write(folder, number)
    job, plan = read_job(folder), tool_plan(folder)
    best = best_plan(job)
    if best is None or plan is None:
        return [] if best is None and plan is None else [f"tool: {plan}; every plan: {best}"]
    return [*broken(job, plan), *unlike(job, plan, best)]


def unlike(job: Job, plan: Plan, best: Best) -> Iterator[str]:
    """Where a plan is not the one best plan, with the two cheaper ones."""
    start = worth(job, ())[1]
    mine = {
        "proven": True,
        "chosen": [*best.chosen],
        "spent_minor": best.spent + sum(job.fixed.values()),
        "points_after": best.points,
        "candidates": len(kept(job)),
        "places": [[*one] for one in best.places if one[0] in job.remedies],
    }
    places = [(one["id"], at, step["session"]) for one in plan["chosen"] for at, step in enumerate(one["steps"])]
    there = [[id, at, session - 1] for id, at, session in sorted(places) if session is not None]
    theirs = {**plan, "chosen": sorted(one["id"] for one in plan["chosen"]), "places": there}
    yield from (f"{name}: tool {theirs[name]}, every plan {mine[name]}" for name in mine if theirs[name] != mine[name])
    for name, other in (("best", best), ("recommended", recommended(job, best)), ("free", free(job))):
        found = plan["plans"][name]
        told = (
            None if found is None else (found["spent_minor"], found["improvement"], found["minutes"], found["chosen"])
        )
        fixed = sum(job.fixed.values())
        want = other and (other.spent + fixed, start - other.points, other.minutes, [*other.chosen])
        if told != want:
            yield f"plans.{name}: tool {told}, every plan {want}"
