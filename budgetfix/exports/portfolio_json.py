"""The object that `plan --json` prints for several jobs: the keys of one job, put together, and `jobs`.

Jobs stand in the order of their folders' names. What holds for each key:
- `schema`, `currency`: the same for all; jobs of several currencies are refused.
- `budget_minor`: the sum; null where one job has no limit. `spent_minor`, `hazards_*`, `points_*`, `improvement`,
  `candidates`, `sessions_used`: sums. `rounds`: sums of its two counts, of the solves behind the plans given here.
- `minutes_available`, `minutes_used`, `chosen`, `purchases`, `left`, `new`: the lists of the jobs, one after the other.
  `session` in a step stays that of its job, and counts from 1 in each; ids may stand there once for each job.
- `proven`: every job's plan is, and no other way to share the stock leaves less. `bound`: no way to share it takes away
  more points; equal to `improvement` when proven.
- `plans`: sums of money, points, hazards and minutes, lists of ids joined; null where one job has none. The recommended
  and the free plans are each job's own beside the best plans of the others.
- `files`: those of the jobs, then the portfolio's own. `jobs`: by folder, the object of each job.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from budgetfix.exports.plan_json import SCHEMA, plan_object
from budgetfix.outcome.portfolio import Portfolio

SUMMED = (
    "spent_minor", "hazards_before", "hazards_after", "points_before", "points_after", "improvement", "candidates",
    "sessions_used",
)  # fmt: skip
JOINED = ("minutes_available", "minutes_used", "chosen", "purchases", "left", "new")
PLANS = ("best", "recommended", "free")


def portfolio_object(portfolio: Portfolio) -> dict[str, object]:
    """`plan --json` of a folder of jobs."""
    jobs: dict[str, dict[str, Any]] = {house.folder: plan_object(house.book, house.files) for house in portfolio.houses}
    each = list(jobs.values())
    whole: dict[str, object] = {
        **{key: sum(one[key] for one in each) for key in SUMMED},
        **{key: [item for one in each for item in one[key]] for key in JOINED},
        "schema": SCHEMA,
        "currency": portfolio.currency,
        "budget_minor": portfolio.budget_minor,
        "proven": portfolio.proven,
        "bound": portfolio.bound,
        "rounds": {key: sum(one["rounds"][key] for one in each) for key in ("inspections", "placings")},
        "plans": {name: _plan([one["plans"][name] for one in each]) for name in PLANS},
        "files": [*(file for one in each for file in one["files"]), *portfolio.files],
    }
    return {**{key: whole[key] for key in each[0]}, "jobs": jobs}


def _plan(plans: list[dict[str, Any] | None]) -> dict[str, object] | None:
    there = [one for one in plans if one is not None]
    if len(there) < len(plans):
        return None
    summed = {key: sum(one[key] for one in there) for key in there[0] if key != "chosen"}
    return {**summed, "chosen": [id for one in there for id in one["chosen"]]}


def inspections_object(jobs: Mapping[str, Mapping[str, Any]]) -> dict[str, object]:
    """`inspect --json` of a folder of jobs: sums, every finding with its job's name, and `jobs`."""
    findings: Iterable[object] = [{"job": name, **finding} for name, one in jobs.items() for finding in one["findings"]]
    return {
        "schema": SCHEMA,
        "points": sum(one["points"] for one in jobs.values()),
        "hazards": sum(one["hazards"] for one in jobs.values()),
        "findings": list(findings),
        "jobs": dict(jobs),
    }
