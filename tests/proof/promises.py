"""What a set of remedies and its places cost, take and leave, worked out from the job alone."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from itertools import combinations

from tests.proof.job_files import Job, Remedy, Step, cents, half_up, number
from tests.proof.van_files import wholes

F = Fraction
Line = tuple[str, str | None, str | None, int | None, int | None, int]
"""(kind, product, shop, packs, unit price, line)."""
Key = tuple[str, int]
"""(remedy or errand, step)."""
LOUD = {"drill", "hammer", "saw"}
STEADIED = {"ladder", "drill"}
"""Whoever refuses these may still help from the floor where somebody else does not refuse."""


def kept(job: Job) -> dict[str, Remedy]:
    """Remedies that `never` leaves."""
    no = set(job.never)
    return {id: one for id, one in job.remedies.items() if no.isdisjoint({id, one.group, *one.uses})}


def errands_for(job: Job, ids: Iterable[str]) -> list[str]:
    """The errands that fetch goods of these remedies."""
    shops = {job.products[one].get("shop") for id in ids for one, units in job.remedies[id].uses.items() if units > 0}
    return sorted(id for id, one in job.errands.items() if shops & set(one.shops))


def left(job: Job, ids: Iterable[str]) -> dict[str, int]:
    """Points that remain of every fault: the exact product of what each relief leaves, within 0 and 2, half to even."""
    chosen = [job.remedies[id] for id in ids]
    found = {}
    for fault, (points, _) in job.faults.items():
        share = F(1)
        for one in chosen:
            share *= 1 - one.answers.get(fault, F(0))
        found[fault] = round(points * min(max(share, F(0)), F(2)))
    return found


def worth(job: Job, ids: Iterable[str]) -> tuple[int, int]:
    """(hazard points, points) that remain."""
    each = left(job, ids)
    hazards = sum(points for fault, points in each.items() if job.faults[fault][1])
    return hazards, sum(each.values()) - hazards


def set_problems(job: Job, ids: tuple[str, ...]) -> Iterator[str]:
    """What is wrong with a set whatever it costs and wherever it stands."""
    there, chosen = kept(job), set(ids)
    groups = Counter(job.remedies[id].group for id in ids)
    yield from (f"{id} is ruled out by `never`" for id in ids if id not in there)
    yield from (f"{count} of the group {group}" for group, count in groups.items() if group and count > 1)
    for id in ids:
        yield from (f"{id} needs {one}" for one in job.remedies[id].needs if one not in chosen)
        yield from (f"{id} excludes {one}" for one in job.remedies[id].excludes if one in chosen and one != id)
    members = {one.group: {id for id, each in there.items() if each.group == one.group} for one in there.values()}
    for name in [*there] if job.must == ("all",) else job.must:
        group = job.remedies[name].group if job.must == ("all",) else name if name not in job.remedies else None
        if chosen.isdisjoint(members.get(group, set()) if group else {name}):
            yield f"{name} must be chosen"
    if job.sessions:
        late = [id for id in ids if 0 < first_session(job, job.remedies[id]) >= (job.last or 0)]
        yield from (f"goods for {id} come too late" for id in late)
    for name, most in job.limits.items():
        spent = sum(job.remedies[id].spends.get(name, F(0)) for id in ids)
        if spent > most:
            yield f"{spent} of {name}, {most} at most"
    yield from stock_problems(job, ids)


def stock_problems(job: Job, ids: Iterable[str]) -> Iterator[str]:
    """More of a piece than there is, or more than the van carries."""
    chosen, heavy = [job.remedies[id] for id in ids], F(0)
    for name, one in job.products.items():
        use = sum((each.uses.get(name, F(0)) for each in chosen), F(0))
        packs = max(0, math.ceil((use - number(one.get("on_hand", 0))) / number(one.get("pack", 1))))
        if one.get("stock") is not None and packs > int(one["stock"]):
            yield f"{packs} packs of {name}, and {one['stock']} there"
        if one.get("stock") is not None:
            heavy += packs * number(one.get("weight_kg") or 0)
    if job.van is not None and job.van.most_kg is not None and heavy > job.van.most_kg:
        yield f"{heavy} kg for a van of {job.van.most_kg}"


def earliest(job: Job, one: Remedy, step: Step) -> int:
    """The first session for a step: its goods have come, and for pieces from stock the van has been."""
    first = first_session(job, one)
    stock = any(units > 0 and job.products[name].get("stock") is not None for name, units in one.uses.items())
    sessions = job.sessions or ()
    if job.van is not None and stock and step.from_stock:
        there = job.van.end
        first = max(first, next((at for at, session in enumerate(sessions) if session.start >= there), len(sessions)))
    if job.van is not None and job.van.task == one.id:
        first = max(first, next(iter(_with_the_van(job)), len(sessions)))
    return first


def latest(job: Job, one: Remedy) -> int:
    """The last session for a remedy: the loading stands inside the van's window."""
    last = (job.last or 0) - 1
    if job.van is None or job.van.task != one.id:
        return last
    return min(last, max(_with_the_van(job), default=-1))


def _with_the_van(job: Job) -> list[int]:
    van, sessions = job.van, job.sessions or ()
    assert van is not None
    return [at for at, one in enumerate(sessions) if van.begin <= one.start and one.end <= van.end]


def goods(job: Job, ids: Iterable[str]) -> list[Line]:
    """Whole packs after what is on hand, delivery and tax."""
    chosen = [job.remedies[id] for id in ids]
    lines: list[Line] = []
    for name, one in job.products.items():
        use = sum((each.uses.get(name, F(0)) for each in chosen), F(0))
        packs = math.ceil((use - number(one.get("on_hand", 0))) / number(one.get("pack", 1)))
        if packs > 0:
            price, shop = cents(one["price"]), one.get("shop")
            share = 1 + number(job.shops[shop].get("markup", 0)) if shop else F(1)
            lines.append(("product", name, shop, packs, price, half_up(packs * price * share)))
    return [*lines, *fees(job, lines)]


def fees(job: Job, lines: Iterable[Line]) -> Iterator[Line]:
    """One delivery a shop, free from a sum on; tax on its goods, half up."""
    shelf: Counter[str] = Counter()
    for _, _, place, packs, price, _ in lines:
        if place:
            shelf[place] += (packs or 0) * (price or 0)
    for name in shelf:
        shop, delivery = job.shops[name], cents(job.shops[name].get("delivery"))
        free = shop.get("free_over") is not None and shelf[name] >= cents(shop["free_over"])
        if delivery:
            yield ("delivery", None, name, None, None, 0 if free else delivery)
        if number(shop.get("tax", 0)):
            yield ("tax", None, name, None, None, half_up(shelf[name] * number(shop["tax"])))


def bill(job: Job, ids: Iterable[str], days: Mapping[str, int]) -> list[Line] | None:
    """All lines of money but the fixed ones; None where a tool cannot be had. `days`: sessions of each tool."""
    chosen = sorted(ids)
    lines = goods(job, chosen)
    for name in sorted({tool for id in chosen for tool in job.remedies[id].tools}):
        tool = job.tools[name]
        if not tool.get("own"):
            count = max(1, days.get(name, 1))
            ways: list[Line] = []
            if tool.get("buy") is not None:
                ways.append(("tool", None, None, 1, cents(tool["buy"]), cents(tool["buy"])))
            if tool.get("hire_per_session") is not None:
                price = cents(tool["hire_per_session"])
                ways.append(("hire", None, None, count, price, price * count))
            if not ways:
                return None
            lines.append(min(ways, key=lambda way: way[5]))
    lines += [("remedy", None, None, None, None, job.remedies[id].cost) for id in chosen if job.remedies[id].cost]
    everyone = [job.remedies[id] for id in chosen] + [job.errands[id] for id in errands_for(job, chosen)]
    paid = [half_up(F(job.labour * one.minutes, 60)) for one in everyone]
    return [*lines, *(("labour", None, None, None, None, pay) for pay in paid if pay)]


def money(job: Job) -> int | None:
    """What the remedies may cost: the budget less what is held back and what is spent anyhow."""
    return None if job.budget is None else job.budget - job.held - sum(job.fixed.values())


def able(job: Job, one: Remedy, step: Step) -> list[str]:
    """Who may take part in a step."""
    words = {tool.casefold() for tool in one.tools}
    refused = {name: {word.casefold() for word in no} & words for name, no in job.people.items()}
    willing = [name for name in job.people if not refused[name]]
    below = [name for name in job.people if refused[name] and refused[name] <= STEADIED][: step.people - 1]
    return [name for name in job.people if name in willing or (willing and name in below)]


def first_session(job: Job, one: Remedy) -> int:
    """The first session after its goods have come; goods of which all remedies together find enough do not wait."""
    lead = 0
    for name, units in one.uses.items():
        use = sum((each.uses.get(name, F(0)) for each in kept(job).values()), F(0))
        if units > 0 and use > number(job.products[name].get("on_hand", 0)):
            lead = max(lead, int(job.products[name].get("lead_days", 0)))
    sessions = job.sessions or ()
    return next((at for at, session in enumerate(sessions) if session.day >= lead), len(sessions)) if lead else 0


def before(job: Job, key: Key, chosen: Iterable[str]) -> list[Key]:
    """The steps that come before one: of the same remedy, else the last ones of all that it needs, errands too."""
    id, index = key
    if index:
        return [(id, index - 1)]
    if id in job.errands:
        return []
    needs = [one for one in job.remedies[id].needs if one in set(chosen)]
    everyone = {**job.remedies, **job.errands}
    return [(one, len(everyone[one].steps) - 1) for one in [*needs, *errands_for(job, [id])] if everyone[one].steps]


def may_follow(job: Job, step: Step, first: int, then: int) -> bool:
    """True where the wait between two sessions is long enough; in the same session only without a wait."""
    sessions = job.sessions or ()
    whole = wholes(sessions)
    if then < first or whole[then] < whole[first] + step.wait_sessions:
        return False
    return not step.wait_minutes or sessions[then].start >= sessions[first].end + step.wait_minutes


def crews(job: Job, one: Remedy, step: Step) -> list[tuple[str, ...]]:
    """Every crew for a step: so many who may, or (who does it, who helps)."""
    if not step.help:
        return list(combinations(able(job, one, step), step.people))
    words = {tool.casefold() for tool in one.tools} - STEADIED
    hands = [name for name, no in job.people.items() if not {word.casefold() for word in no} & words]
    return [(main, other) for main in able(job, one, step) for other in hands if other != main]


def staying(step: Step, crew: tuple[str, ...]) -> tuple[str, ...]:
    """Who is still at a step when it ends."""
    return crew[:1] if step.help else crew


def work_in(job: Job, where: Mapping[Key, tuple[int, tuple[str, ...]]], session: int) -> tuple[dict[str, int], int]:
    """Minutes of each person in a session without setting up, and of joint steps together."""
    used, joint = dict.fromkeys(job.people, 0), 0
    everyone = {**job.remedies, **job.errands}
    for (id, index), (place, crew) in where.items():
        if place == session:
            step = everyone[id].steps[index]
            joint += (step.help or step.minutes) * (len(crew) > 1)
            for name in crew:
                used[name] += step.help if step.help and name == crew[1] else step.minutes
    return used, joint


def setting_up(job: Job, session: int) -> int:
    """Minutes of setting up: the first of a session that the van cuts, however short its first part is."""
    left, sessions = job.setup, job.sessions or ()
    whole = wholes(sessions)
    for one in (one for at, one in enumerate(sessions[:session]) if whole[at] == whole[session]):
        left = max(0, left - max(one.minutes.values()))
    return left


def set_up_only(job: Job, session: int) -> int:
    """The most minutes of people who set up here and work in a later part of the same session."""
    whole = wholes(job.sessions or ())
    here = (job.sessions or ())[session].minutes.values()
    return sum(min(setting_up(job, session), there) for there in here) * (whole.count(whole[session]) > 1)


def session_problems(job: Job, where: Mapping[Key, tuple[int, tuple[str, ...]]], session: int) -> Iterator[str]:
    """What does not fit into a session: setting up counts for each person with work, joint steps one after another."""
    used, joint = work_in(job, where, session)
    there, setup = (job.sessions or ())[session].minutes, setting_up(job, session)
    for name, minutes in used.items():
        if minutes and minutes + setup > there[name]:
            yield f"session {session + 1}: {name} works {minutes} minutes of {there[name]}"
    if joint and joint > max(there.values()) - setup:
        yield f"session {session + 1}: joint steps take {joint} minutes"
