"""The rest of a random job by a path of its own: the same files, what is done as remedies that cost and take nothing.

Nothing of `budgetfix.pipeline` is asked. What is done stays in the job, forced, so that groups, needs, excludes, limits
and reliefs are those of the whole job; goods that were bought are on hand; sessions have the minutes that are left.
What this cannot say (errands, hire, days of waiting, waits on something that is done, learning) is left out.
"""

from __future__ import annotations

import json
import math
from dataclasses import dataclass, replace
from datetime import date, timedelta
from fractions import Fraction
from pathlib import Path
from random import Random
from typing import Any

from budgetfix.outcome.so_far import LineBack, SoFar, State, StepBack
from tests.proof.every_plan import Best, best_plan
from tests.proof.job_files import Job, Remedy, half_up, number
from tests.proof.random_jobs import ORDERED, draw

F = Fraction
Raw = dict[str, Any]
GONE = ("returned", "sold out")


def write_plain(folder: Path, at: int) -> None:
    """One random job without what the outside path cannot say."""
    faults, catalog, brief = draw(at)
    for tool in catalog["tools"]:
        tool.pop("hire_per_session", None)
        tool.setdefault("buy", 8)
    for product in catalog["products"]:
        product.pop("lead_days", None)
    for remedy in catalog["remedies"]:
        for step in remedy.get("steps") or ():
            step["hours"] = step["hours"] or 0.25
        if "hours" in remedy:
            remedy["hours"] = remedy["hours"] or 0.25
    brief.pop("errands", None)
    brief.pop("whole_days", None)
    brief["learn"] = False
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "faults.csv").write_text(faults, encoding="utf-8")
    (folder / "catalog.yaml").write_text(json.dumps(catalog), encoding="utf-8")
    (folder / "brief.yaml").write_text(json.dumps(brief), encoding="utf-8")


@dataclass(frozen=True)
class Typed:
    """What somebody typed into the workbook of a plan, and the day of replanning."""

    so_far: SoFar
    day: date


def typed(so_far: SoFar, dice: Random, job: Job) -> Typed:
    """Random ticks, sums and minutes: steps in their order, whole sessions lost, goods dear, gone, or given back."""
    steps, stopped = [], set[str]()
    share = dice.choice((0.0, 0.3, 0.6, 1.0))
    for one in so_far.steps:
        id = one.planned.task.candidate
        done = id not in stopped and dice.random() < share and not _waits(job, id, one.planned.task.step)
        stopped |= set() if done else {id}
        real = dice.choice((None, None, 5, 40, 2 * one.planned.task.minutes)) if done else None
        steps.append(StepBack(one.planned, done, real))
    lines = [_line(one, dice) for one in so_far.lines]
    days = dice.choice((0, 0, 1, 3, 9))
    return Typed(replace(so_far, lines=tuple(lines), steps=tuple(steps)), ORDERED + timedelta(days=days))


def _waits(job: Job, id: str, step: int) -> bool:
    """True where doing this would start a wait that the outside path cannot count."""
    steps = job.remedies[id].steps
    after = [steps[step]] if 0 < step < len(steps) else []
    after += [one.steps[0] for one in job.remedies.values() if id in one.needs and one.steps]
    return any(one.wait_sessions or one.wait_minutes for one in after)


def _line(one: LineBack, dice: Random) -> LineBack:
    line = one.planned.line
    if line.kind in ("labour", "fixed", "delivery", "tax"):
        return replace(one, paid_minor=dice.choice((None, None, None, line.line_minor + 150)))
    states: tuple[State | None, ...] = (None, None, "bought", "bought", "bought", "returned", "sold out")
    state = dice.choice(states)
    sums = (None, None, line.line_minor, line.line_minor + 325, max(0, line.line_minor - 275))
    paid = dice.choice(sums) if state == "bought" else dice.choice((None, 125)) if state == "returned" else None
    return replace(one, state=state, paid_minor=paid)


@dataclass(frozen=True)
class Outside:
    """The rest as a job of its own. `forced`: what is done or begun. `spent`: what is paid, in minor units."""

    job: Job
    done: frozenset[str]
    begun: frozenset[str]
    spent: int
    barred: frozenset[str] = frozenset()
    """What is begun and cannot be ended, since its own cost was given back or could not be spent."""

    def stuck(self, ids: frozenset[str]) -> Outside:
        """The same where some of what is begun stays as it is: it does nothing more, and keeps what it has taken.

        What needs it is out: half of a remedy is no foundation.
        """
        found = self
        for id in sorted(ids):
            found = found._stuck(id)
        return found

    def _stuck(self, id: str) -> Outside:
        remedies, products = dict(self.job.remedies), dict(self.job.products)
        one = remedies[id]
        for product, amount in one.uses.items():
            there = number(products[product].get("on_hand", 0))
            products[product] = {**products[product], "on_hand": str(max(F(0), there - amount))}
        remedies[id] = replace(one, answers={}, cost=0, steps=(), tools=(), needs=(), uses={})
        lost = (other.id for other in self.job.remedies.values() if id in other.needs)
        never = (*(name for name in self.job.never if name != id), *lost)
        job = replace(self.job, remedies=remedies, products=products, never=never)
        return replace(self, job=job, begun=self.begun - {id}, done=self.done | {id})

    def best(self) -> Best | None:
        """The best plan that holds what is done and ends what is begun."""
        forced = self.done | self.begun
        return best_plan(self.job, lambda some: forced <= set(some.ids))


def outside(job: Job, told: Typed) -> Outside:
    """The rest by plain arithmetic."""
    ticked: dict[str, set[int]] = {}
    for one in told.so_far.steps:
        if one.done:
            ticked.setdefault(one.planned.task.candidate, set()).add(one.planned.task.step)
    done = frozenset(id for id, found in ticked.items() if found >= set(range(1, len(job.remedies[id].steps) + 1)))
    begun = frozenset(ticked) - done
    paid = _paid(job, told, done, begun)
    remedies = {id: _left(one, ticked.get(id, set()), id in done, paid.own) for id, one in job.remedies.items()}
    remedies |= {id: _prepaid(remedies[id], job) for id in paid.ahead - done}
    over = max(0, paid.spent - paid.due)
    fixed = {name: minor for name, minor in job.fixed.items() if name not in paid.fixed}
    money = None if job.budget is None else max(job.budget - paid.spent, sum(fixed.values()), 0)
    held = 0 if money is None else min(max(0, job.held - over), money - sum(fixed.values()))
    rest = replace(
        job,
        remedies=remedies,
        shops={id: _shop(one, paid.open) for id, one in job.shops.items()},
        products={id: _product(one, paid, [job.remedies[id] for id in done]) for id, one in job.products.items()},
        tools={
            id: {**one, "own": True} if id in paid.tools else _tool(one, id in paid.gone)
            for id, one in job.tools.items()
        },
        never=(*job.never, *(id for id in paid.barred if id not in done)),
        sessions=_sessions(job, told),
        budget=money,
        held=held,
        fixed=fixed,
    )
    barred = begun & set(paid.barred)
    return Outside(rest, done, begun - barred, paid.spent, barred)


@dataclass(frozen=True)
class Paid:
    """What the lines say: money, units of products, tools, own costs, and what is gone."""

    spent: int
    due: int
    units: dict[str, Fraction]
    tools: frozenset[str]
    own: dict[str, bool]
    gone: frozenset[str]
    barred: tuple[str, ...]
    """Remedies whose own cost was given back, or could not be spent."""
    fixed: frozenset[str]
    ahead: frozenset[str]
    """Remedies whose pay was typed."""
    open: frozenset[tuple[str, str | None]]
    """(delivery or tax, shop) that was typed though nothing of the order was had."""


def _paid(job: Job, told: Typed, done: frozenset[str], begun: frozenset[str]) -> Paid:
    spent = due = 0
    units: dict[str, Fraction] = {}
    tools, gone, fixed, own = set(), set(), set(), dict[str, bool]()
    barred: list[str] = []
    had: dict[str | None, list[LineBack]] = {}
    shelf: dict[str | None, list[LineBack]] = {}
    for one in told.so_far.lines:
        line, state = one.planned.line, one.state
        if line.kind not in ("product", "tool", "remedy"):
            continue
        if state is None and (one.paid_minor is not None or _needed(one, done, begun)):
            state = "bought"
        if line.kind == "product" and state is None and (part := _part(job, one, done)):
            state, one = "bought", part
        if line.kind == "product":
            shelf.setdefault(line.shop, []).append(one)
            if state in ("bought", "returned"):
                had.setdefault(line.shop, []).append(replace(one, state=state))
        if state is None:
            continue
        if state == "bought":
            line = one.planned.line
            minor = line.line_minor if one.paid_minor is None else one.paid_minor
            spent, due = spent + minor, due + line.line_minor
            if line.kind == "product" and line.product is not None:
                packs = (line.packs or 0) * number(job.products[line.product].get("pack", 1))
                units[line.product] = units.get(line.product, F(0)) + packs
            elif line.kind == "tool":
                tools.add(line.of)
            else:
                own[line.of] = True
        else:
            spent += one.paid_minor or 0
            gone.add(line.product or line.of)
            barred += [line.of] if line.kind == "remedy" else []
    all_done = bool(told.so_far.steps) and all(one.done for one in told.so_far.steps)
    for one in told.so_far.lines:
        line = one.planned.line
        counted = _other(job, one, told, done, had, shelf, all_done)
        if counted is not None:
            spent, due = spent + counted[0], due + counted[1]
            fixed |= {line.name} if line.kind == "fixed" else set()
    sums = [one.planned.line for one in told.so_far.lines if one.paid_minor is not None]
    on_top = [line for line in sums if line.kind in ("delivery", "tax")]
    ahead = frozenset(line.of for line in sums if line.kind == "labour")
    open = frozenset((line.kind, line.shop) for line in on_top if not had.get(line.shop))
    return Paid(spent, due, units, frozenset(tools), own, frozenset(gone), tuple(barred), frozenset(fixed), ahead, open)


def _needed(one: LineBack, done: frozenset[str], begun: frozenset[str]) -> bool:
    """A tool of work that is begun, an own cost of work that is done."""
    if one.planned.line.kind == "tool":
        return bool(set(one.planned.users) & (done | begun))
    return one.planned.line.kind == "remedy" and one.planned.line.of in done


def _part(job: Job, one: LineBack, done: frozenset[str]) -> LineBack | None:
    """As many whole packs of an unticked line as done work has used above what was there."""
    line, id = one.planned.line, str(one.planned.line.product)
    used = sum((job.remedies[name].uses.get(id, F(0)) for name in done), F(0))
    lack = used - number(job.products[id].get("on_hand", 0))
    pack = number(job.products[id].get("pack", 1))
    packs = min(line.packs or 0, -(-lack // pack)) if lack > 0 else 0
    if not packs:
        return None
    minor = half_up(F(line.line_minor * packs, line.packs or 1))
    return replace(one, planned=replace(one.planned, line=replace(line, packs=packs, line_minor=minor)))


def _other(
    job: Job,
    one: LineBack,
    told: Typed,
    done: frozenset[str],
    had: dict[str | None, list[LineBack]],
    shelf: dict[str | None, list[LineBack]],
    all_done: bool,
) -> tuple[int, int] | None:
    """(paid, planned) of pay, fixed costs, delivery and tax; None where nothing of it is paid."""
    line = one.planned.line
    if line.kind not in ("labour", "fixed", "delivery", "tax"):
        return None
    if one.paid_minor is not None:
        return one.paid_minor, line.line_minor
    if line.kind == "fixed":
        return (line.line_minor, line.line_minor) if all_done else None
    if line.kind == "labour":
        tasks = [
            back.planned.task for back in told.so_far.steps if back.done and back.planned.task.candidate == line.of
        ]
        minutes = sum(task.minutes * task.people + task.help_minutes for task in tasks)
        pay = line.line_minor if line.of in done else half_up(F(job.labour * minutes, 60))
        return (pay, pay) if pay else None
    mine = had.get(line.shop, [])
    if line.kind == "delivery":
        return (line.line_minor, line.line_minor) if mine else None
    bought = [back for back in mine if back.state == "bought"]
    if not bought:
        return None
    packs = sum(back.planned.line.packs or 0 for back in bought)
    if packs == sum(back.planned.line.packs or 0 for back in shelf[line.shop]):
        return line.line_minor, line.line_minor
    goods = sum((back.planned.line.packs or 0) * (back.planned.line.unit_price_minor or 0) for back in bought)
    tax = half_up(goods * number(job.shops[str(line.shop)].get("tax", 0)))
    return tax, tax


def _left(one: Remedy, ticked: set[int], done: bool, own: dict[str, bool]) -> Remedy:
    cost = 0 if done or own.get(one.id) else one.cost
    steps = tuple(step for at, step in enumerate(one.steps, 1) if at not in ticked)
    needs = () if done else one.needs
    return replace(
        one, cost=cost, steps=steps, tools=() if done else one.tools, needs=needs, uses={} if done else one.uses
    )


def _prepaid(one: Remedy, job: Job) -> Remedy:
    """A remedy whose cost makes up for the pay of what is left of it."""
    return replace(one, cost=one.cost - half_up(F(job.labour * one.minutes, 60)))


def _shop(one: Raw, open: frozenset[tuple[str, str | None]]) -> Raw:
    return {name: value for name, value in one.items() if (name, one["shop"]) not in open}


def _product(one: Raw, paid: Paid, done: list[Remedy]) -> Raw:
    """On hand is what was bought, less what is used up."""
    used = sum((remedy.uses.get(one["product"], F(0)) for remedy in done), F(0))
    there = number(one.get("on_hand", 0)) + paid.units.get(one["product"], F(0)) - used
    more = {**one, "on_hand": str(max(F(0), there))}
    return {**more, "stock": 0} if one["product"] in paid.gone else more


def _tool(one: Raw, gone: bool) -> Raw:
    return {name: value for name, value in one.items() if name != "buy"} if gone else one


def _sessions(job: Job, told: Typed) -> Any:
    if job.sessions is None:
        return None
    ticks = [one.planned.task.session or 1 for one in told.so_far.steps if one.done]
    dated = any(one.planned.on is not None for one in told.so_far.steps)
    first = max(ticks, default=1) - 1
    left = []
    for at, session in enumerate(job.sessions):
        gone = ORDERED + timedelta(days=session.day) < told.day if dated else at < first
        mine = [one for one in told.so_far.steps if one.done and one.planned.task.session == at + 1]
        real = _took([one for one in mine if one.real_minutes is not None])
        plain = _took([one for one in mine if one.real_minutes is None])
        minutes = {}
        for name, there in session.minutes.items():
            loaded = math.floor((session.whole[name] - real[name]) * session.load) if name in real else there
            minutes[name] = 0 if gone else max(0, loaded - plain.get(name, 0))
        left.append(replace(session, minutes=minutes))
    return tuple(left)


def _took(steps: list[StepBack]) -> dict[str, int]:
    """What these steps took of each person, planned or real."""
    found: dict[str, int] = {}
    for one in steps:
        task = one.planned.task
        took = task.minutes if one.real_minutes is None else one.real_minutes
        for place, name in enumerate(one.planned.people):
            found[name] = found.get(name, 0) + (min(task.help_minutes, took) if place and task.help_minutes else took)
    return found
