"""Laws of measured rooms: in a mirror, from another wall, in another unit, by other names, with a rule that is off."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

from budgetfix.room.items import TABLES, Item
from budgetfix.room.survey import Household, Survey, moved
from tests.inspection.turned import mirrored, rebuilt, rotated
from tests.trials.laws_listed import dearer, hour_more, more_money, scaled
from tests.trials.laws_rooms import starter
from tests.trials.laws_walk import Case, Changed, Law, Told, not_better, not_worse, same

NAMED = ("name", "over", "on", "at", "under", "socket", "window", "also_window")


def _survey(case: Case) -> Survey:
    assert case.files.survey is not None
    return case.files.survey


def product_more(case: Case) -> Changed | None:
    """One more product of the starter catalogue, with all that can be done with it."""
    there = {one["product"] for one in case.files.catalog["products"]}
    rest = [one for one in starter()["products"] if one["product"] not in there]
    fresh = case.files.with_()
    fresh.catalog["products"].append(case.dice.choice(rest))
    return Changed(fresh)


def useless_product(case: Case) -> Changed | None:
    """A dear product that nothing asks for."""
    fresh = case.files.with_()
    fresh.catalog["products"].append({"product": case.dice.choice(("aa", "zz")), "price": 9999})
    return Changed(fresh)


def tighter(case: Case) -> Changed | None:
    """Fewer holes, a smaller load, an earlier last day, or half of the budget."""
    fresh = case.files.with_()
    ways = [
        "holes",
        *(["load", "finish_by"] if fresh.brief["hours"] else []),
        *(["budget"] if fresh.brief["budget"] else []),
    ]
    match case.dice.choice(ways):
        case "holes":
            fresh.brief["limits"] = {"holes": max(0, (fresh.brief.get("limits") or {}).get("holes", 3) - 1)}
        case "load":
            fresh.brief["load"] = 0.85
        case "finish_by":
            fresh.brief["finish_by"] = 1
        case _:
            fresh.brief["budget"] = fresh.brief["budget"] / 2
    return Changed(fresh)


def in_a_mirror(case: Case) -> Changed | None:
    """The same room in a mirror."""
    survey = _survey(case)
    if any(one.panels < 2 for one in survey.curtains):
        return None
    return Changed(case.files.with_(survey=mirrored(survey, survey.rooms[0].room)), _two_corners(case))


def turned(case: Case) -> Changed | None:
    """The survey of somebody who began with another wall: each wall has the next letter."""
    survey = _survey(case)
    return Changed(case.files.with_(survey=rotated(survey, survey.rooms[0].room)), _two_corners(case))


def _two_corners(case: Case) -> str:
    """Of two empty corners that are alike the first is filled, though something else may see a difference."""
    chosen = () if case.before is None else case.before.chosen
    return "filled another of two empty corners" if any(id.startswith("corner-filler/") for id in chosen) else ""


def alike(before: Told, after: Told, _: Changed) -> str:
    """As much is left, for the same money and the same minutes."""
    return "" if before.sums == after.sums else f"{before.sums} {before.chosen} became {after.sums} {after.chosen}"


def same_but_words(before: Told, after: Told, other: Changed) -> str:
    """The two plans are one, but for lengths in the names of what is done."""
    return same(_wordless(before), _wordless(after), other)


def _wordless(told: Told) -> Told:
    chosen = [{**one, "name": ""} for one in told.plan["chosen"]]
    return replace(told, plan={**told.plan, "chosen": chosen})


def in_cm(case: Case) -> Changed | None:
    """A survey in millimetres kept in centimetres."""
    survey = _survey(case)
    if survey.household.unit != "mm":
        return None
    home = Household.model_validate({**dict(survey.household), "unit": "cm"})
    return Changed(case.files.with_(survey=rebuilt(survey, household=home)))


def shuffled(case: Case) -> Changed | None:
    """Every list of the survey and of the catalogue in another order, but the walls."""
    fresh, survey = case.files.with_(), _survey(case)
    for rows in fresh.catalog.values():
        if isinstance(rows, list):
            case.dice.shuffle(rows)
    tables = {table: tuple(case.dice.sample(survey.table(table), len(survey.table(table)))) for table in TABLES}
    return Changed(fresh.with_(survey=rebuilt(survey, **tables)))


def renamed(case: Case) -> Changed | None:
    """Every thing by another name, in the same order."""
    survey = _survey(case)
    tables = {table: tuple(map(_called, survey.table(table))) for table in TABLES}
    guessed = frozenset((_mark(name) if name in survey.named else name, field) for name, field in survey.guessed)
    return Changed(case.files.with_(survey=rebuilt(survey, guessed=guessed, **tables)))


def _mark(name: str) -> str:
    return f"k {name}" if name else ""


def _called(one: Item) -> Item:
    return moved(one, **{field: _mark(getattr(one, field)) for field in NAMED if hasattr(one, field)})


def ruled_out(case: Case) -> Changed | None:
    """`never` of a candidate that the plan does without."""
    if case.before is None:
        return None
    rest = [id for id in case.before.offered if id not in case.before.chosen and not id.startswith("errand:")]
    fresh = case.files.with_()
    if rest:
        fresh.brief["never"] = [case.dice.choice(rest)]
    return Changed(fresh) if rest else None


def made_a_must(case: Case) -> Changed | None:
    """`must` of a candidate that the plan holds anyway."""
    if case.before is None or not case.before.chosen:
        return None
    fresh = case.files.with_()
    fresh.brief["must"] = [case.dice.choice(case.before.chosen)]
    return Changed(fresh)


def rule_off(case: Case) -> Changed | None:
    """A rule with a fault in this room is turned off."""
    return _without(case, lambda rule: {"bands": {rule: "off"}})


def rule_of_no_interest(case: Case) -> Changed | None:
    """A rule with a fault in this room gets the priority 0."""
    return _without(case, lambda rule: {"priorities": {rule: 0}})


def _without(case: Case, how: Any) -> Changed | None:
    if case.before is None:
        return None
    rules = sorted({row.rule for row in case.before.book.faults if row.rule is not None})
    if not rules:
        return None
    rule = case.dice.choice(rules)
    fresh = case.files.with_()
    fresh.brief.update(how(rule))
    return Changed(fresh, about=rule)


def nowhere(_: Told, after: Told, other: Changed) -> str:
    """Where a rule that is off turns up all the same."""
    rule, off = other.about, "bands" in other.files.brief
    said = [f"answered by {one['id']}" for one in after.plan["chosen"] for name in one["answers"]
            if name.split("/")[0] == rule]  # fmt: skip
    if off:
        said += ["found"] if rule in after.findings else []
        said += [f"left: {one}" for one in (*after.plan["left"], *after.plan["new"]) if one.get("rule") == rule]
    else:
        left = (*after.plan["left"], *after.plan["new"])
        said += [f"left with points: {one}" for one in left if one.get("rule") == rule and one["points"]]
    said += [f"{one['id']} answers nothing" for one in after.plan["chosen"] if not one["answers"] and one["steps"]]
    return "; ".join(said)


MEASURED = (
    Law("money", "More money never leaves more", more_money, not_worse, may_begin=True),
    Law("hour", "An hour more in the last session never leaves more", hour_more, not_worse, may_begin=True),
    Law("candidate", "One more product on offer never leaves more", product_more, not_worse, may_begin=True),
    Law("tighter", "A tighter limit, load, day or budget never leaves less", tighter, not_better, may_end=True),
    Law("dearer", "All money a hundred times as much changes no choice", dearer, scaled),
    Law("mirror", "A mirrored room gets the mirrored plan", in_a_mirror, alike),
    Law("turned", "A room surveyed from another wall gets the same plan", turned, alike),
    Law("unit", "Millimetres or centimetres make no difference", in_cm, same_but_words),
    Law("shuffled", "The order of rows changes nothing", shuffled, same),
    Law("renamed", "Other names in the same order change no figure", renamed, alike),
    Law("never", "`never` of what the plan does not hold changes nothing", ruled_out, same),
    Law("must", "`must` of what the plan holds changes nothing", made_a_must, same),
    Law("useless", "A dear and useless product changes nothing", useless_product, same),
    Law("off", "A rule that is off appears nowhere", rule_off, nowhere),
    Law("weightless", "A rule of priority 0 weighs nothing, and nothing is done for it", rule_of_no_interest, nowhere),
)


def drawn(dice: Random, count: int) -> tuple[Law, ...]:
    """The room in a mirror, and some of the other laws, in their order."""
    others = [law.slug for law in MEASURED if law.slug != "mirror"]
    some = {"mirror", *dice.sample(others, count)}
    return tuple(law for law in MEASURED if law.slug in some)
