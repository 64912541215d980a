"""A plan held to its promises, from the job files and the object of `plan --json` alone.

    python -m tests.proof.checker JOB < plan.json

Of measured rooms only money and hours can be checked here; what is chosen there need not be in the catalogue.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Iterator
from itertools import product
from pathlib import Path
from typing import Any

from tests.proof.job_files import Job, Remedy, half_up, number, read_job
from tests.proof.promises import (
    LOUD,
    Key,
    Line,
    before,
    bill,
    crews,
    earliest,
    errands_for,
    fees,
    kept,
    latest,
    left,
    may_follow,
    session_problems,
    set_problems,
    set_up_only,
    setting_up,
    staying,
    work_in,
    worth,
)
from tests.proof.van_files import Session, wholes

Plan = dict[str, Any]
Places = dict[Key, int]


def broken(job: Job, plan: Plan) -> list[str]:
    """Every promise that a plan breaks, in words; empty for a good one."""
    checks = [figures, sums_of_money, calendar_sums]
    if job.measured:
        checks.append(fees_of_goods)
    else:
        unknown = [one["id"] for one in plan["chosen"] if one["id"] not in job.remedies]
        if unknown:
            return [f"not in the catalogue: {', '.join(unknown)}"]
        checks += [the_set, the_bill, the_points, the_steps, the_calendar, the_plans]
    return [words for check in checks for words in check(job, plan)]


def chosen_ids(plan: Plan) -> tuple[str, ...]:
    """The chosen remedies, by id."""
    return tuple(sorted(one["id"] for one in plan["chosen"]))


def figures(job: Job, plan: Plan) -> Iterator[str]:
    """Figures of the object that hang together whatever was chosen."""
    gain = plan["points_before"] - plan["points_after"]
    if plan["improvement"] != gain:
        yield f"improvement {plan['improvement']}, but points went down by {gain}"
    if plan["bound"] < plan["improvement"] or (plan["proven"] and plan["bound"] != plan["improvement"]):
        yield f"bound {plan['bound']} beside an improvement of {plan['improvement']}, proven {plan['proven']}"
    if plan["budget_minor"] != job.budget:
        yield f"budget {plan['budget_minor']}, the brief says {job.budget}"
    sessions = {step["session"] for one in plan["chosen"] for step in one["steps"]} - {None}
    if plan["sessions_used"] < len(sessions) or (not job.errands and plan["sessions_used"] != len(sessions)):
        yield f"{plan['sessions_used']} sessions used, steps stand in {len(sessions)}"
    best = plan["plans"]["best"]
    same = (plan["spent_minor"], plan["improvement"], plan["hazards_after"], list(chosen_ids(plan)))
    if (best["spent_minor"], best["improvement"], best["hazards_after"], sorted(best["chosen"])) != same:
        yield f"plans.best {best} is not the plan described"


def sums_of_money(job: Job, plan: Plan) -> Iterator[str]:
    """Purchases add up to what is spent, and that keeps the budget less what is held back."""
    total = sum(one["line_minor"] for one in plan["purchases"])
    if total != plan["spent_minor"]:
        yield f"purchases add up to {total}, spent {plan['spent_minor']}"
    if job.budget is not None and plan["spent_minor"] > job.budget - job.held:
        yield f"spent {plan['spent_minor']} of {job.budget} with {job.held} held back"


def _lines(plan: Plan) -> list[Line]:
    names = ("kind", "product", "shop", "packs", "unit_price_minor", "line_minor")
    return [tuple(one[name] for name in names) for one in plan["purchases"]]


def fees_of_goods(job: Job, plan: Plan) -> Iterator[str]:
    """Lines of goods, deliveries and taxes agree with each other, whatever the goods are for."""
    lines = _lines(plan)
    shelf = [one for one in lines if one[0] == "product" and (one[2] is None or one[2] in job.shops)]
    for _, name, shop, packs, price, line in shelf:
        share = 1 + number(job.shops[shop].get("markup", 0)) if shop else number(1)
        if line != half_up((packs or 0) * (price or 0) * share):
            yield f"{packs} packs of {name} at {price} are charged at {line}"
    told = [one for one in lines if one[0] in ("delivery", "tax") and one[2] in job.shops]
    yield from _unlike(told, list(fees(job, shelf)))


def _unlike(told: list[Line], wanted: list[Line]) -> Iterator[str]:
    yield from (f"a line too much: {line}" for line in Counter(told) - Counter(wanted))
    yield from (f"a line is missing: {line}" for line in Counter(wanted) - Counter(told))


def calendar_sums(job: Job, plan: Plan) -> Iterator[str]:
    """Person-minutes by session: what there is, and that no more is used."""
    there = [sum(one.minutes.values()) for one in job.sessions or ()]
    if plan["minutes_available"] != there:
        yield f"minutes available {plan['minutes_available']}, the brief says {there}"
    for at, (used, most) in enumerate(zip(plan["minutes_used"], there, strict=False), 1):
        work = sum(
            step["minutes"] * step["people"] for one in plan["chosen"] for step in one["steps"] if step["session"] == at
        )
        if used > most:
            yield f"session {at}: {used} minutes used of {most}"
        idle = not job.errands and not work and used > set_up_only(job, at - 1)
        if used < work + (setting_up(job, at - 1) if work else 0) or idle:
            yield f"session {at}: {used} minutes used for {work} minutes of work"


def the_set(job: Job, plan: Plan) -> Iterator[str]:
    """Groups, needs, excludes, must, never, limits; each remedy once; the count of candidates."""
    ids = chosen_ids(plan)
    yield from (f"{id} is chosen twice" for id, count in Counter(ids).items() if count > 1)
    yield from set_problems(job, ids)
    if plan["candidates"] != len(kept(job)):
        yield f"{plan['candidates']} candidates, the files have {len(kept(job))}"


def the_bill(job: Job, plan: Plan) -> Iterator[str]:
    """Every line of money: packs, tools, delivery, tax, costs, pay, fixed costs."""
    days: dict[str, set[int]] = {}
    for one in plan["chosen"]:
        remedy = job.remedies[one["id"]]
        pay = half_up(number(job.labour) * remedy.minutes / 60)
        if one["cost_minor"] != remedy.cost + pay:
            yield f"{remedy.id} costs {one['cost_minor']}, the files say {remedy.cost + pay}"
        for tool in remedy.tools:
            whole = dict(enumerate(wholes(job.sessions or ()), 1))
            days.setdefault(tool, set()).update(whole.get(step["session"], -1) for step in one["steps"])
    wanted = bill(job, chosen_ids(plan), {tool: len(there) for tool, there in days.items()})
    if wanted is None:
        yield "a tool is needed that can neither be bought nor hired"
        return
    fixed: list[Line] = [("fixed", None, None, None, None, cost) for cost in job.fixed.values()]
    yield from _unlike(_lines(plan), [*wanted, *fixed])


def the_points(job: Job, plan: Plan) -> Iterator[str]:
    """Points and hazards before and after, fault by fault."""
    ids = chosen_ids(plan)
    start, end = left(job, ()), left(job, ids)
    wanted = {
        "points_before": worth(job, ())[1],
        "points_after": worth(job, ids)[1],
        "hazards_before": sum(points > 0 for fault, points in start.items() if job.faults[fault][1]),
        "hazards_after": sum(points > 0 for fault, points in end.items() if job.faults[fault][1]),
        "new": [],
    }
    yield from (f"{name} {plan[name]}, worked out {one}" for name, one in wanted.items() if plan[name] != one)
    still = {fault: (points, job.faults[fault][1]) for fault, points in end.items() if points > 0 and start[fault] > 0}
    told = {one["fault"]: (one["points"], one["safety"]) for one in plan["left"]}
    if told != still or len(told) != len(plan["left"]):
        yield f"left {told}, worked out {still}"
    for one in plan["chosen"]:
        answers = job.remedies[one["id"]].answers.items()
        helped = sorted(fault for fault, share in answers if share > 0 and job.faults[fault][0] > 0)
        if sorted(one["answers"]) != helped:
            yield f"{one['id']} answers {one['answers']}, the files say {helped}"


def the_steps(job: Job, plan: Plan) -> Iterator[str]:
    """Each remedy's own steps: all there, as long and with as many hands as typed, in a session that exists."""
    for one in plan["chosen"]:
        remedy = job.remedies[one["id"]]
        told = [(step["minutes"], step["people"]) for step in one["steps"]]
        if told != [(step.minutes, step.people) for step in remedy.steps]:
            yield f"{remedy.id} has steps {told}"
        for step in one["steps"]:
            if (step["session"] is None) != (job.sessions is None):
                yield f"{remedy.id} stands in session {step['session']}"
            elif job.sessions is not None and not 1 <= step["session"] <= (job.last or 0):
                yield f"{remedy.id} stands in session {step['session']} of {job.last} that may be used"
        for step in remedy.steps:
            if not crews(job, remedy, step):
                yield f"{remedy.id}: too few people who do this"


def the_calendar(job: Job, plan: Plan) -> Iterator[str]:
    """Goods, quiet, waits; then errands and crews: some way must exist that uses just the minutes told."""
    if job.sessions is None or any(the_steps(job, plan)):
        return
    places = {(one["id"], at): step["session"] - 1 for one in plan["chosen"] for at, step in enumerate(one["steps"])}
    for (id, at), session in places.items():
        remedy = job.remedies[id]
        if not earliest(job, remedy, remedy.steps[at]) <= session <= latest(job, remedy):
            yield f"{id} stands before its goods are there, or without the van"
        if job.sessions[session].quiet and LOUD & set(remedy.tools):
            yield f"{id} is loud in quiet session {session + 1}"
        first = job.sessions[places[id, 0]].start // (24 * 60)
        if job.whole_days and job.sessions[session].start // (24 * 60) != first:
            yield f"{id} is left half done overnight"
        for key in before(job, (id, at), chosen_ids(plan)):
            if key in places and not may_follow(job, remedy.steps[at], places[key], session):
                yield f"{id}, step {at + 1}, comes too early after {key[0]}"
    errands = [(id, 0) for id in errands_for(job, chosen_ids(plan))]
    used = plan["minutes_used"]
    for spots in product(range(job.last or 0), repeat=len(errands)):
        if _possible(job, plan, {**places, **dict(zip(errands, spots, strict=True))}, used):
            return
    yield f"no crews and places of errands make {used} minutes in {plan['sessions_used']} sessions of this"


def _possible(job: Job, plan: Plan, places: Places, used: list[int]) -> bool:
    if len(set(places.values())) != plan["sessions_used"]:
        return False
    for (id, at), session in places.items():
        step = _one(job, id).steps[at]
        if any(not may_follow(job, step, places[key], session) for key in before(job, (id, at), chosen_ids(plan))):
            return False
    return all(
        _crewed(job, plan, _ordered(job, plan, places, at), {}, at, used[at]) for at, _ in enumerate(job.sessions or ())
    )


def _one(job: Job, id: str) -> Remedy:
    return job.errands[id] if id in job.errands else job.remedies[id]


def _ordered(job: Job, plan: Plan, places: Places, session: int) -> list[Key]:
    """Steps of a session, each after those that come before it."""
    waiting = sorted(key for key, place in places.items() if place == session)
    found: list[Key] = []
    while waiting:
        key = next(one for one in waiting if not set(before(job, one, chosen_ids(plan))) & set(waiting))
        waiting.remove(key)
        found.append(key)
    return found


def _crewed(
    job: Job, plan: Plan, keys: list[Key], where: dict[Key, tuple[int, tuple[str, ...]]], session: int, used: int
) -> bool:
    """True where crews exist: hours kept, nobody joins late, and just so many minutes with setting up."""
    if not keys:
        work, _ = work_in(job, where, session)
        least = sum(minutes + setting_up(job, session) for minutes in work.values() if minutes)
        return used == least or least < used <= least + set_up_only(job, session)
    key = keys[0]
    one = _one(job, key[0])
    for crew in crews(job, one, one.steps[key[1]]):
        earlier = [other for other in before(job, key, chosen_ids(plan)) if other in where]
        same = [staying(_one(job, id).steps[at], where[id, at][1]) for id, at in earlier]
        if all(set(crew) <= set(other) for other in same):
            there = {**where, key: (session, crew)}
            if not any(session_problems(job, there, session)) and _crewed(job, plan, keys[1:], there, session, used):
                return True
    return False


def the_plans(job: Job, plan: Plan) -> Iterator[str]:
    """The two cheaper plans: sets that keep the promises, with the figures told."""
    best = plan["plans"]["best"]
    for name, one in plan["plans"].items():
        if one is None:
            continue
        ids = tuple(sorted(one["chosen"]))
        yield from (f"plans.{name}: {words}" for words in set_problems(job, ids))
        everyone = [*ids, *errands_for(job, ids)]
        end = left(job, ids)
        wanted = {
            "improvement": plan["points_before"] - worth(job, ids)[1],
            "hazards_after": sum(points > 0 for fault, points in end.items() if job.faults[fault][1]),
            "minutes": sum(_one(job, id).minutes for id in everyone),
        }
        yield from (f"plans.{name}: {key} {one[key]}, {value}" for key, value in wanted.items() if one[key] != value)
        if job.budget is not None and one["spent_minor"] > job.budget - job.held:
            yield f"plans.{name} spends {one['spent_minor']}"
    cheaper, nothing = plan["plans"]["recommended"], plan["plans"]["free"]
    if cheaper is not None:
        short = best["improvement"] > 0 and cheaper["improvement"] * 10 < best["improvement"] * 9
        if short or cheaper["hazards_after"] > best["hazards_after"] or cheaper["spent_minor"] > best["spent_minor"]:
            yield f"plans.recommended {cheaper} beside {best}"
    if nothing is not None and nothing["spent_minor"] > sum(job.fixed.values()):
        yield f"plans.free spends {nothing['spent_minor']}"


def main() -> int:
    """Print what is broken. Exit code 1 where anything is."""
    found = broken(read_job(Path(sys.argv[1])), json.load(sys.stdin))
    print("\n".join(found) or "every promise kept")
    return int(bool(found))


__all__ = ["Session", "broken"]

if __name__ == "__main__":
    sys.exit(main())
