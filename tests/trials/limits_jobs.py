"""Job folders as large as they may be, one for each thing that there can be much of."""

from __future__ import annotations

import json
import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from ruamel.yaml import YAML

Raw = dict[str, Any]
DEMOS = Path(__file__).parents[2] / "catalog_demo"
FIRST = date(2026, 6, 6)
TABLES = ("openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets")
NAMES = ("name", "wall_of", "window", "at", "over", "on", "group", "under", "beside")
SIZES = ("width", "width_to", "depth", "height", "drop")


@dataclass(frozen=True)
class Axis:
    """One thing that there can be much of. `write(folder, size)` writes a job with so much of it."""

    name: str
    size: int
    write: Callable[[Path, int], None]


@cache
def _demo(name: str) -> Raw:
    found: Raw = YAML(typ="safe").load((DEMOS / name).read_text("utf-8"))
    return found


def _save(folder: Path, **files: Raw) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for name, raw in files.items():
        (folder / f"{name}.yaml").write_text(json.dumps(raw, indent=1, default=str), encoding="utf-8")


def _faults(folder: Path, points: list[int]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    lines = ["fault,points", *(f"f{number},{worth}" for number, worth in enumerate(points, 1))]
    (folder / "faults.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")


def _brief(budget: object, hours: object, **more: object) -> Raw:
    return {"currency": "USD", "budget": budget, "hours": hours, "ordered": "2026-06-01", **more}


def products(folder: Path, size: int) -> None:
    """The renter's room and a shop's whole list: the starter catalogue over and over, in other sizes."""
    survey, starter = _demo("renter/survey.yaml"), _demo("starter/catalog.yaml")
    dice, listed = Random("products"), []
    for number in range(size):
        one = dict(starter["products"][number % len(starter["products"])])
        one |= {name: round(one[name] * dice.uniform(0.75, 1.3)) for name in SIZES if name in one}
        one |= {"product": f"p{number}", "price": round(one["price"] * dice.uniform(0.7, 1.6), 2), "example": False}
        listed.append(one)
    brief = _brief(450, [4, 3.5, 4.5], limits={"holes": 12})
    _save(folder, survey=survey, brief=brief, catalog={**starter, "products": listed})


def remedies(folder: Path, size: int) -> None:
    """Listed faults with three or four remedies each, some of them in groups, with goods of two shops."""
    dice = Random("remedies")
    faults = max(1, size * 3 // 10)
    _faults(folder, [dice.randint(10, 400) for _ in range(faults)])
    _save(folder, catalog=_listed(dice, size, faults), brief=_brief(4000, [6] * 10))


def _listed(dice: Random, size: int, faults: int, dearer: int = 1) -> Raw:
    made = []
    for number in range(1, size + 1):
        fault = (number - 1) % faults + 1
        one: Raw = {
            "remedy": f"m{number}",
            "name": f"Remedy {number}",
            "answers": {f"f{fault}": dice.choice((1, 0.8, 0.5))},
        }
        one["cost"] = _money(dice.randint(500, 9000), dearer, dice)
        one["minutes"] = dice.choice((10, 20, 30, 45, 60, 90))
        if dice.random() < 0.6:
            one["pick_one"] = f"g{fault}"
        if dice.random() < 0.3:
            one["uses"] = {f"p{dice.randint(1, 20)}": dice.choice((0.5, 1, 2))}
        made.append(one)
    shops = [
        {"shop": "mill", "delivery": _money(590, dearer), "free_over": _money(6000, dearer), "tax": "8.25%"},
        {"shop": "yard"},
    ]
    goods = [
        {
            "product": f"p{number}",
            "price": _money(dice.randint(300, 4000), dearer, dice),
            "pack": dice.choice((1, 2.5, 4)),
            "shop": dice.choice(("mill", "yard")),
        }
        for number in range(1, 21)
    ]
    return {"currency": "USD", "shops": shops, "products": goods, "remedies": made}


def _money(minor: int, dearer: int, dice: Random | None = None) -> str:
    """Typed so that no digit is lost; a few minor units more or less where it is large."""
    much = minor * dearer + (dice.randint(-9, 9) if dice is not None and dearer > 1 else 0)
    return f"{much // 100}.{much % 100:02}"


def sessions(folder: Path, size: int) -> None:
    """Dated sessions of two people, and as many remedies as find room in about half of them."""
    dice = Random("sessions")
    hours = [
        {
            "date": FIRST + timedelta(days=3 * number),
            "start": "09:00",
            "people": {"ann": 3, "ben": 2 if number % 3 else 0},
        }
        for number in range(size)
    ]
    count = size * 5 // 2
    _faults(folder, [dice.randint(10, 400) for _ in range(count)])
    catalog = _listed(dice, count, count)
    for one in catalog["remedies"]:
        one["minutes"] = dice.choice((30, 45, 60, 90, 120))
    _save(folder, catalog=catalog, brief=_brief(9000, hours, people={"ann": {}, "ben": {"not": ["ladder"]}}))


def rooms(folder: Path, size: int) -> None:
    """The renter's living room many times over, with the starter catalogue."""
    one = _demo("renter/survey.yaml")
    survey: Raw = {"unit": one["unit"], "home": one["home"], "rooms": [], "walls": []}
    for number in range(1, size + 1):
        name = f"room {number}"
        survey["rooms"] += [{**room, "room": name} for room in one["rooms"]]
        survey["walls"] += [{**wall, "room": name} for wall in one["walls"]]
        for table in TABLES:
            survey.setdefault(table, [])
            survey[table] += [_renamed(thing, name, number) for thing in one[table]]
    brief = _brief(200 * size, [8] * min(30, size))
    _save(folder, survey=survey, catalog=_demo("starter/catalog.yaml"), brief=brief)


def _renamed(thing: Raw, room: str, number: int) -> Raw:
    return {
        field: room if field == "room" else f"{value} {number}" if field in NAMES and isinstance(value, str) else value
        for field, value in thing.items()
    }


def corners(folder: Path, size: int) -> None:
    """A round room of so many walls, seven metres across, with furniture on its walls and in its middle."""
    step = 360 / size
    length = round(7000 * math.sin(math.pi / size), 1)
    walls = [{"room": "tower", "wall": f"W{number}", "length": length, "turn": step} for number in range(1, size + 1)]
    every = max(1, size // 10)
    spots = [f"W{number}" for number in range(1, size + 1, every)]
    wide = min(600, int(length))
    furniture = [
        {
            "name": f"shelf {wall}", "room": "tower", "what": "bookcase", "wall": wall, "from_left": 0, "gap": 60,
            "width": wide, "depth": 250, "height": 1800,
        }
        for wall in spots[2:]
    ]  # fmt: skip
    door = {
        "name": "door",
        "room": "tower",
        "wall": "W1",
        "from_left": 0,
        "width": min(800, int(length)),
        "what": "door",
        "top": 2000,
    }
    survey = {
        "unit": "mm",
        "home": {"rent": True},
        "rooms": [{"room": "tower", "kind": "living room", "ceiling": 2600, "floor": "hard"}],
        "walls": walls,
        "openings": [door],
        "furniture": furniture,
    }
    _save(folder, survey=survey, catalog=_demo("starter/catalog.yaml"), brief=_brief(400, [4, 4]))


def money(folder: Path, size: int) -> None:
    """Forty remedies of up to so many minor units each, and a budget of as many."""
    dice = Random("money")
    _faults(folder, [dice.randint(10, 400) for _ in range(30)])
    catalog = _listed(dice, 40, 30, dearer=max(1, size // 9000))
    _save(folder, catalog=catalog, brief=_brief(_money(size, 1), [4, 4, 4]))


def points(folder: Path, size: int) -> None:
    """Forty remedies of thirty faults of up to so many points."""
    dice = Random("points")
    _faults(folder, [dice.randint(size // 2, size) for _ in range(30)])
    _save(folder, catalog=_listed(dice, 40, 30), brief=_brief(500, [4, 4, 4]))


def minutes(folder: Path, size: int) -> None:
    """Forty remedies in three sessions of so many minutes."""
    dice = Random("minutes")
    _faults(folder, [dice.randint(10, 400) for _ in range(30)])
    catalog = _listed(dice, 40, 30)
    for one in catalog["remedies"]:
        one["minutes"] = dice.randint(size // 20, size // 3)
    _save(folder, catalog=catalog, brief=_brief(2000, [size // 60] * 3))


def together(folder: Path, size: int) -> None:
    """All at once: rooms, twenty sessions, and for each room sixty listed remedies of large sums and points."""
    rooms(folder, size)
    dice = Random("together")
    catalog, starter = _listed(dice, 60 * size, 20 * size, dearer=10**6), _demo("starter/catalog.yaml")
    _faults(folder, [dice.randint(10**7, 10**8) for _ in range(20 * size)])
    for table in ("shops", "products"):
        catalog[table] += starter[table]
    hours = [{"date": FIRST + timedelta(days=7 * number), "people": {"ann": 6, "ben": 3}} for number in range(20)]
    brief = _brief(_money(4 * 10**10 * size, 1), hours, people={"ann": {}, "ben": {}})
    _save(folder, catalog={**catalog, "unit": "cm", "tools": starter["tools"]}, brief=brief)


AXES = (
    Axis("products for one measured room", 2000, products),
    Axis("remedies", 2000, remedies),
    Axis("sessions", 60, sessions),
    Axis("rooms", 32, rooms),
    Axis("walls of a room", 60, corners),
    Axis("minor units", 10**12, money),
    Axis("points", 10**9, points),
    Axis("minutes", 10**6, minutes),
    Axis("rooms, each with 60 remedies of large sums and points", 4, together),
)
