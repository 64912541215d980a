"""Laws of jobs of listed faults: what may happen to a plan when one thing in its files is otherwise."""

from __future__ import annotations

import json
from decimal import Decimal
from random import Random
from typing import Any

from budgetfix.framing.options import LOUD
from tests.proof.random_jobs import draw
from tests.proof.random_vans import FROM, with_van
from tests.trials.laws_walk import ORDERED, Case, Changed, Files, Law, Raw, Told, not_better, not_worse, same

WAITS = "left more, as a wait counts from the end of a session"
"""The exception of the method: nobody knows at what time of a session a step is done, so waits begin at its end."""
ON_HAND = "left more or another plan, as goods on hand are shared"
"""The exception of the method: what is on hand is waited for only where it does not do for all candidates together."""


def listed_job(dice: Random) -> Files:
    """A random job of listed faults, one in three with a van."""
    number = dice.randrange(FROM * 3 // 2)
    text, catalog, brief = draw(number)
    if number >= FROM:
        with_van(number, catalog, brief, ORDERED)
    rows = [line.split(",") for line in text.splitlines()[1:]]
    faults = tuple({"fault": one[0], "points": int(one[1]), "safety": one[2]} for one in rows)
    return Files(json.loads(json.dumps(brief)), json.loads(json.dumps(catalog)), faults)


def more_money(case: Case) -> Changed | None:
    """A larger budget, or none."""
    budget = case.files.brief.get("budget")
    if budget is None:
        return None
    more = case.dice.choice((0.01, 1, 7.5, 40, None))
    brief = {**case.files.brief, "budget": None if more is None else float(Decimal(str(budget)) + Decimal(str(more)))}
    return Changed(case.files.with_(brief=brief))


def hour_more(case: Case) -> Changed | None:
    """An hour more in the last session, for everybody, or a session of an hour at the end of an undated list."""
    hours = case.files.brief.get("hours")
    if not hours:
        return None
    brief = case.files.with_().brief
    if not isinstance(hours[-1], dict) and case.dice.random() < 0.5:
        brief["hours"].append(1)
    else:
        brief["hours"][-1] = _longer(brief["hours"][-1])
    return Changed(case.files.with_(brief=brief))


def _longer(session: Any) -> Any:
    """A session with an hour more for everybody."""
    if not isinstance(session, dict):
        return session + 1
    if "people" in session:
        return {**session, "people": {name: one + 1 for name, one in session["people"].items()}}
    return {**session, "hours": session["hours"] + 1}


def hour_earlier(case: Case) -> Changed | None:
    """An hour more in a session before the last, for everybody."""
    hours = case.files.brief.get("hours") or ()
    if len(hours) < 2:
        return None
    fresh = case.files.with_()
    at = case.dice.randrange(len(hours) - 1)
    fresh.brief["hours"][at] = _longer(hours[at])
    steps = [step for one in case.files.catalog["remedies"] for step in one.get("steps") or ()]
    return Changed(fresh, WAITS if any(step.get("wait_hours") for step in steps) else "")


def _drawn_on(files: Files, remedy: Raw) -> bool:
    """True where a remedy draws on goods of which some are on hand."""
    used = {name for name, units in (remedy.get("uses") or {}).items() if units}
    return any(one["product"] in used and one.get("on_hand") for one in files.catalog["products"])


def one_more(case: Case) -> Changed | None:
    """One more remedy on offer, like one of the others."""
    if case.files.must_all:
        return None
    fresh = case.files.with_()
    twin = dict(case.dice.choice(fresh.catalog["remedies"]))
    twin = {**twin, "remedy": f"{case.dice.choice('az')}-new", "cost": case.dice.choice((0, 1, 2.5))}
    twin["answers"] = {name: case.dice.choice((1, 0.8, 0.5)) for name in twin["answers"]}
    fresh.catalog["remedies"].append(twin)
    return Changed(fresh, ON_HAND if _drawn_on(case.files, twin) else "")


def tighter(case: Case) -> Changed | None:
    """A limit, the load, the last day or what is held back made stricter."""
    fresh = case.files.with_()
    brief, ways = fresh.brief, []
    if brief.get("limits"):
        ways.append("limits")
    if brief.get("hours"):
        ways += ["load"] if "finish_by" in brief else ["load", "finish_by"]
    if brief.get("budget"):
        ways.append("budget")
    if not ways:
        return None
    match case.dice.choice(ways):
        case "limits":
            brief["limits"] = {name: max(0, most - 1) for name, most in brief["limits"].items()}
        case "load":
            brief["load"] = brief.get("load", 1) - 0.05
        case "finish_by":
            brief["finish_by"] = 1
        case _:
            brief["budget"] = float(Decimal(str(brief["budget"])) - Decimal("0.5") * brief["budget"])
    return Changed(fresh)


MONEY = (("tools", "buy"), ("tools", "hire_per_session"), ("shops", "delivery"), ("shops", "free_over"),
         ("products", "price"), ("remedies", "cost"))  # fmt: skip


def dearer(case: Case) -> Changed | None:
    """All prices and all money a hundred times as much; without shares and pay, where parts of a cent are rounded."""
    plain = _without_shares(case.files)
    fresh = plain.with_()
    for table, field in MONEY:
        for one in fresh.catalog.get(table, ()):
            if isinstance(one.get(field), (int, float)):
                one[field] = _hundred(one[field])
    brief = fresh.brief
    for field in ("budget", "contingency"):
        if isinstance(brief.get(field), (int, float)):
            brief[field] = _hundred(brief[field])
    for one in [*brief.get("fixed", ()), *(brief.get("vans") or {}).values()]:
        if "cost" in one:
            one["cost"] = _hundred(one["cost"])
    return Changed(fresh, instead=plain)


def _without_shares(files: Files) -> Files:
    fresh = files.with_()
    for shop in fresh.catalog["shops"]:
        shop.pop("tax", None)
        shop.pop("markup", None)
    fresh.brief.pop("labour", None)
    fresh.brief["fixed"] = [one for one in fresh.brief.get("fixed", ()) if "cost" in one]
    if str(fresh.brief.get("contingency", "")).endswith("%"):
        fresh.brief.pop("contingency")
    return fresh


def _hundred(value: float) -> float:
    return float(Decimal(str(value)) * 100)


def scaled(before: Told, after: Told, _: Changed) -> str:
    """The same choice, at a hundred times the money."""
    one, other = before.sums, after.sums
    spent = other == (one[0], one[1], one[2] * 100, one[3])
    return "" if spent and before.chosen == after.chosen else f"{before.chosen} {one} became {after.chosen} {other}"


def renamed(case: Case) -> Changed | None:
    """Every fault, remedy, group, product, tool, shop and limit by another name, in the same order.

    Tools that are known to be loud keep theirs: they rest while others sleep.
    """
    return Changed(_renamed(case.files, "k "))


ID_KEYS = ("fault", "remedy", "product", "tool", "shop", "pick_one", "task")
ID_LISTS = ("needs", "excludes", "tools", "shops", "must", "never")
ID_MAPS = ("answers", "uses", "spends", "limits", "priorities")


def _renamed(files: Files, mark: str) -> Files:
    def told_otherwise(raw: Any, key: str = "") -> Any:
        if isinstance(raw, dict):
            named = key in ID_MAPS
            return {(mark + name if named else name): told_otherwise(one, name) for name, one in raw.items()}
        if isinstance(raw, list):
            return [mark + one if isinstance(one, str) and key in ID_LISTS and one not in ("all", *LOUD)
                    else told_otherwise(one) for one in raw]  # fmt: skip
        return mark + raw if isinstance(raw, str) and key in ID_KEYS and raw not in LOUD else raw

    fresh = files.with_()
    brief = told_otherwise(fresh.brief)
    return Files(brief, told_otherwise(fresh.catalog), tuple(map(told_otherwise, fresh.faults)))


def same_but_names(before: Told, after: Told, _: Changed) -> str:
    """One plan, but for the names."""
    if before.sums != after.sums:
        return f"{before.sums} became {after.sums}"
    return "" if tuple(f"k {one}" for one in before.chosen) == after.chosen else f"{before.chosen}: {after.chosen}"


def shuffled(case: Case) -> Changed | None:
    """Every list of the catalogue, every fault and every key in another order."""
    fresh = case.files.with_()
    for rows in fresh.catalog.values():
        if isinstance(rows, list):
            case.dice.shuffle(rows)
            rows[:] = [_turned(case.dice, one) for one in rows]
    faults = list(fresh.faults)
    case.dice.shuffle(faults)
    return Changed(fresh.with_(faults=faults))


def _turned(dice: Random, row: Raw) -> Raw:
    return {name: row[name] for name in dice.sample(sorted(row), len(row))}


def _tied(files: Files) -> set[str]:
    """Remedies that others, groups or the brief speak of."""
    remedies = files.catalog["remedies"]
    named = {name for one in remedies for name in (*one.get("needs", ()), *one.get("excludes", ()))}
    named |= {one["remedy"] for one in remedies if "pick_one" in one or one.get("excludes")}
    must, task = files.brief.get("must") or (), (files.brief.get("vans") or {}).get("out", {}).get("task")
    return named | {must if isinstance(must, str) else "", *must, *(files.brief.get("never") or ()), task or ""}


def _unchosen(case: Case) -> Raw | None:
    """A remedy that the plan does without."""
    if case.before is None or case.files.must_all:
        return None
    free = [one for one in case.files.catalog["remedies"] if one["remedy"] not in case.before.chosen]
    return case.dice.choice(free) if free else None


def taken_off(case: Case) -> Changed | None:
    """A remedy that the plan does without, and that nothing else speaks of, is not on offer any more."""
    one = _unchosen(case)
    if one is None or one["remedy"] in _tied(case.files):
        return None
    fresh = case.files.with_()
    fresh.catalog["remedies"] = [other for other in fresh.catalog["remedies"] if other["remedy"] != one["remedy"]]
    return Changed(fresh, ON_HAND if _drawn_on(case.files, one) else "")


def ruled_out(case: Case) -> Changed | None:
    """`never` of a remedy that the plan does without."""
    one = _unchosen(case)
    if one is None:
        return None
    fresh = case.files.with_()
    fresh.brief["never"] = [*(fresh.brief.get("never") or ()), one["remedy"]]
    return Changed(fresh, ON_HAND if _drawn_on(case.files, one) else "")


def made_a_must(case: Case) -> Changed | None:
    """`must` of a remedy that the plan does anyway."""
    if case.before is None or not case.before.chosen or case.files.must_all:
        return None
    fresh = case.files.with_()
    must = fresh.brief.get("must") or []
    fresh.brief["must"] = [*([must] if isinstance(must, str) else must), case.dice.choice(case.before.chosen)]
    return Changed(fresh)


def dear_and_useless(case: Case) -> Changed | None:
    """A product that nothing uses, and a remedy that answers nothing for more money than there is."""
    fresh = case.files.with_()
    fresh.catalog["products"].append({"product": case.dice.choice(("aa", "zz")), "price": 9999})
    if fresh.brief.get("budget") is not None and not fresh.must_all:
        fault = fresh.faults[0]["fault"]
        fresh.catalog["remedies"].append(
            {"remedy": case.dice.choice(("aa", "zz")), "answers": {fault: 1}, "cost": 99999}
        )
    return Changed(fresh)


def unlisted(case: Case) -> Changed | None:
    """A fault is not listed any more, and no remedy speaks of it."""
    if len(case.files.faults) < 2:
        return None
    fresh = case.files.with_()
    name = case.dice.choice(fresh.faults)["fault"]
    for one in fresh.catalog["remedies"]:
        one["answers"].pop(name, None)
    fresh.brief["priorities"] = {one: factor for one, factor in (fresh.brief.get("priorities") or {}).items()
                                 if one != name}  # fmt: skip
    kept = [one for one in fresh.faults if one["fault"] != name]
    return Changed(fresh.with_(faults=kept), about=name)


def of_no_interest(case: Case) -> Changed | None:
    """A fault gets the priority 0."""
    name = case.dice.choice(case.files.faults)["fault"]
    fresh = case.files.with_()
    fresh.brief["priorities"] = {**(fresh.brief.get("priorities") or {}), name: 0}
    return Changed(fresh, about=name)


def _takes_something(remedy: Raw, there: set[str]) -> bool:
    """What takes no money and no time ties with doing without it; then the smaller id decides. `there`: tools that
    others of the plan need, so that they cost nothing more.
    """
    return any(remedy.get(field) for field in ("cost", "hours", "steps")) or not there.issuperset(
        remedy.get("tools") or ()
    )


def nowhere(_: Told, after: Told, other: Changed) -> str:
    """Where a fault of no interest turns up all the same: in what is answered, left or new, or as the only reason."""
    name, files = other.about, other.files
    said = [f"answered by {one['id']}" for one in after.plan["chosen"] if name in one["answers"]]
    said += [f"left: {one}" for one in (*after.plan["left"], *after.plan["new"]) if one.get("fault") == name]
    remedies = {one["remedy"]: one for one in files.catalog["remedies"]}
    if not files.must_all:
        for one in (remedies[id] for id in after.chosen):
            alone = not set(one["answers"]) - {name} and not _tied(files) & {one["remedy"], one.get("pick_one")}
            others = {tool for id in after.chosen if id != one["remedy"] for tool in remedies[id].get("tools") or ()}
            said += [f"chosen for it alone: {one['remedy']}"] if alone and _takes_something(one, others) else []
    return "; ".join(said)


LISTED = (
    Law("money", "More money never leaves more", more_money, not_worse, may_begin=True),
    Law("hour", "An hour more in the last session never leaves more", hour_more, not_worse, may_begin=True),
    Law("hour earlier", "An hour more in an earlier one never leaves more", hour_earlier, not_worse, may_begin=True),
    Law("candidate", "One more remedy on offer never leaves more", one_more, not_worse, may_begin=True),
    Law("tighter", "A tighter limit, load, day or budget never leaves less", tighter, not_better, may_end=True),
    Law("dearer", "All money a hundred times as much changes no choice", dearer, scaled),
    Law("renamed", "Other names in the same order change no figure", renamed, same_but_names),
    Law("shuffled", "The order of rows and keys changes nothing", shuffled, same),
    Law("taken off", "Without a remedy that the plan does not hold, the plan is the same", taken_off, same),
    Law("never", "`never` of what the plan does not hold changes nothing", ruled_out, same),
    Law("must", "`must` of what the plan holds changes nothing", made_a_must, same),
    Law("useless", "A dear and useless product or remedy changes nothing", dear_and_useless, same),
    Law("unlisted", "A fault that is not listed appears nowhere", unlisted, nowhere, may_end=True, may_begin=True),
    Law("priority 0", "A fault of priority 0 appears nowhere", of_no_interest, nowhere),
)
