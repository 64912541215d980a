"""Small jobs of listed faults drawn by number, with every wish that a household can write down."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path
from random import Random
from typing import Any

from tests.proof.random_vans import FROM, with_van

Raw = dict[str, Any]
ORDERED = date(2026, 6, 1)
TOOLS = ("drill", "ladder", "steamer")


def draw(number: int) -> tuple[str, Raw, Raw]:
    """(faults.csv, catalog, brief) of one job."""
    dice = Random(number)
    faults = {f"f{one}": dice.choice((0, 15, 100, 105, 250, 333)) for one in range(1, dice.randint(2, 4) + 1)}
    safe = {fault: dice.random() < 0.25 for fault in faults}
    lines = ["fault,points,safety", *(f"{one},{faults[one]},{'yes' if safe[one] else ''}" for one in faults)]
    catalog = {
        "currency": "USD",
        "tools": [_tool(dice, name) for name in TOOLS],
        "shops": [_shop(dice, "mill"), _shop(dice, "yard")],
        "products": [_product(dice, name) for name in ("lath", "paint", "tape")],
    }
    budget = _steps_left(dice)
    catalog["remedies"] = _remedies(dice, list(faults), budget)
    brief = _brief(dice, catalog, list(faults))
    if Random(f"whole days {number}").random() < 0.25:
        brief["whole_days"] = "all"
    return "\n".join(lines) + "\n", catalog, brief


def write(folder: Path, number: int) -> None:
    """The files of one job; JSON text is YAML."""
    faults, catalog, brief = draw(number)
    if number >= FROM:
        with_van(number, catalog, brief, ORDERED)
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "faults.csv").write_text(faults, encoding="utf-8")
    (folder / "catalog.yaml").write_text(json.dumps(catalog, indent=1), encoding="utf-8")
    (folder / "brief.yaml").write_text(json.dumps(brief, indent=1), encoding="utf-8")


def _steps_left(dice: Random) -> int:
    return dice.randint(4, 8)


def _tool(dice: Random, name: str) -> Raw:
    tool: Raw = {"tool": name}
    if dice.random() < 0.2:
        tool["own"] = True
    if dice.random() < 0.8:
        tool["buy"] = dice.choice((8, 14.5, 30))
    if dice.random() < 0.7:
        tool["hire_per_session"] = dice.choice((4, 7.25, 14.5))
    return tool


def _shop(dice: Random, name: str) -> Raw:
    shop: Raw = {"shop": name}
    if dice.random() < 0.7:
        shop["delivery"] = dice.choice((3.5, 5.9))
        if dice.random() < 0.6:
            shop["free_over"] = dice.choice((10, 24, 40))
    if dice.random() < 0.6:
        shop["tax"] = dice.choice(("8.25%", "6.5%", "20%"))
    if dice.random() < 0.15:
        shop["markup"] = "15%"
    return shop


def _product(dice: Random, name: str) -> Raw:
    product: Raw = {"product": name, "price": dice.choice((3.3, 7.99, 12, 22)), "pack": dice.choice((1, 2, 2.5))}
    if dice.random() < 0.7:
        product["shop"] = dice.choice(("mill", "yard"))
    if dice.random() < 0.4:
        product["on_hand"] = dice.choice((0.5, 1, 3))
    if dice.random() < 0.35:
        product["lead_days"] = dice.choice((1, 2, 6))
    return product


def _remedies(dice: Random, faults: list[str], steps: int) -> list[Raw]:
    made: list[Raw] = []
    for at in range(dice.randint(4, 7)):
        answered = dice.sample(faults, min(len(faults), dice.choice((1, 1, 2))))
        remedy: Raw = {"remedy": f"m{at + 1}" if dice.random() < 0.8 else f"a{at + 1}"}
        remedy["answers"] = {one: dice.choice((1, 0.8, 0.5, 0.5, 0.25, -0.2, -0.6)) for one in answered}
        if dice.random() < 0.6:
            remedy["cost"] = dice.choice((2.5, 5, 10, 19.99))
        count = min(steps, dice.choice((0, 1, 1, 1, 2, 2)))
        steps -= count
        _work(dice, remedy, count)
        _ties(dice, remedy, [one["remedy"] for one in made])
        made.append(remedy)
    dice.shuffle(made)
    return made


def _time(dice: Random) -> Any:
    if dice.random() < 0.25:
        return {"low": 0.25, "likely": 0.5, "high": dice.choice((1, 1.1, 2))}
    return dice.choice((0.25, 0.5, 0.5, 0.75, 1, 1.5))


def _work(dice: Random, remedy: Raw, count: int) -> None:
    if dice.random() < 0.2:
        remedy["people"] = dice.choice((2, 2, 3))
    if count == 1 and dice.random() < 0.6:
        remedy["hours"] = _time(dice)
    elif count:
        remedy["steps"] = [_step(dice) for _ in range(count)]
    elif dice.random() < 0.5:
        remedy["hours"] = 0
    if dice.random() < 0.5:
        remedy["uses"] = {dice.choice(("lath", "paint", "tape")): dice.choice((0, 0.7, 1, 2.4))}
    if dice.random() < 0.4:
        remedy["tools"] = dice.sample(TOOLS, dice.choice((1, 1, 2)))


def _step(dice: Random) -> Raw:
    step: Raw = {"hours": _time(dice)}
    if dice.random() < 0.2:
        step["people"] = dice.choice((1, 2))
    elif dice.random() < 0.2:
        step |= {"people": 1, "help": dice.choice((5, 10, 15))}
    if dice.random() < 0.2:
        step["wait_sessions"] = dice.choice((1, 1, 2))
    if dice.random() < 0.2:
        step["wait_hours"] = dice.choice((0.5, 4, 23, 30))
    return step


def _ties(dice: Random, remedy: Raw, others: list[str]) -> None:
    if dice.random() < 0.4:
        remedy["pick_one"] = dice.choice(("g1", "g2"))
    if others and dice.random() < 0.25:
        remedy["needs"] = dice.sample(others, dice.choice((1, 1, min(2, len(others)))))
    if others and dice.random() < 0.2:
        remedy["excludes"] = [dice.choice(others)]
    if dice.random() < 0.5:
        remedy["spends"] = {dice.choice(("holes", "kg")): dice.choice((1, 2, 2.5))}


def _brief(dice: Random, catalog: Raw, faults: list[str]) -> Raw:
    brief: Raw = {"currency": "USD", "ordered": str(ORDERED), "hours": None, "budget": None}
    if dice.random() < 0.85:
        brief["budget"] = dice.choice((0, 10, 20, 35, 60, 100))
    if dice.random() < 0.4:
        brief["contingency"] = dice.choice((2.5, "10%", "7.5%"))
    people = dice.choice(({}, {}, {"ann": None, "ben": None}, {"ann": None, "ben": {"not": ["ladder", "drill"]}}, 3, 2))
    if people:
        brief["people"] = people
    if dice.random() < 0.9:
        brief["hours"] = _hours(dice, people)
        _calendar(dice, brief)
    _wishes(dice, brief, catalog, faults)
    return brief


def _hours(dice: Random, people: Any) -> list[Any]:
    count = dice.choice((0, 1, 2, 2, 3, 3, 3))
    if dice.random() < 0.5:
        return [dice.choice((0.75, 1, 1.5, 2, 2.5)) for _ in range(count)]
    found, day, dated = [], ORDERED + timedelta(days=dice.randint(0, 2)), dice.random() < 0.8
    for _ in range(count):
        block: Raw = {}
        if dated:
            block["date"] = str(day)
            block["start"] = dice.choice(("08:00", "09:00"))
            day += timedelta(days=dice.choice((1, 2, 5)))
        names = list(people) if isinstance(people, dict) else []
        hours = (0, 0.75, 1, 1.5, 2, 2.5)
        block |= {"people": {one: dice.choice(hours) for one in names}} if names else {"hours": dice.choice(hours[1:])}
        if dice.random() < 0.2:
            block["quiet"] = True
        found.append(block)
        if dated and dice.random() < 0.2 and len(found) < count:
            found.append({**block, "start": "14:00"})
            if len(found) >= count:
                break
    return found[:count]


def _calendar(dice: Random, brief: Raw) -> None:
    if dice.random() < 0.25:
        brief["load"] = dice.choice((0.85, 0.9))
    if dice.random() < 0.35:
        brief["setup_minutes"] = dice.choice((5, 15))
    if dice.random() < 0.2:
        brief["finish_by"] = dice.choice((1, 2, str(ORDERED + timedelta(days=dice.randint(0, 5)))))


def _wishes(dice: Random, brief: Raw, catalog: Raw, faults: list[str]) -> None:
    ids = [one["remedy"] for one in catalog["remedies"]]
    groups = sorted({one["pick_one"] for one in catalog["remedies"] if "pick_one" in one})
    if dice.random() < 0.35:
        brief["errands"] = [
            {
                "errand": "round",
                "shops": ["mill", "yard"][: dice.randint(1, 2)],
                "hours": 0.5,
                "people": dice.choice((1, 1, 2)),
            }
        ]
    if dice.random() < 0.5:
        brief["limits"] = {dice.choice(("holes", "kg", "pins")): dice.choice((0, 2, 3.5, 4))}
    chance = dice.random()
    if chance < 0.2:
        brief["must"] = [dice.choice([*ids, *groups])]
    elif chance < 0.32:
        brief["must"] = "all"
    if dice.random() < 0.2:
        brief["never"] = [dice.choice([*ids, *groups, "tape"])]
    if dice.random() < 0.3:
        brief["priorities"] = {one: dice.choice((0, 0.5, 1.5, 2)) for one in dice.sample(faults, 1)}
    if dice.random() < 0.2:
        brief["hazards_first"] = False
    if dice.random() < 0.15:
        brief["labour"] = dice.choice((10, 25.5))
    if dice.random() < 0.15:
        brief["fixed"] = [{"name": "Van", "cost": dice.choice((4, 9.5))}]
