"""Stock, hire, a van and photographs put into a random job."""

from __future__ import annotations

from datetime import date, timedelta
from random import Random
from typing import Any

Raw = dict[str, Any]
FROM = 10_000
"""Jobs with this number and above have a van."""


def with_van(number: int, catalog: Raw, brief: Raw, ordered: date) -> None:
    """Pieces from stock among the products, a slot out on one of the days, and the hour of the photographs."""
    dice = Random(f"van {number}")
    days = sorted({one["date"] for one in brief["hours"] or () if isinstance(one, dict) and "date" in one})
    days = days or [str(ordered + timedelta(days=dice.randint(0, 2)))]
    for product in catalog["products"]:
        _stock(dice, product, ordered)
    for remedy in catalog["remedies"]:
        for step in remedy.get("steps") or ():
            if dice.random() < 0.3:
                step["from_stock"] = False
    out: Raw = {"date": dice.choice(days), "from": "08:00", "to": dice.choice(("09:30", "10:00", "12:00"))}
    if dice.random() < 0.5:
        out["cost"] = dice.choice((3, 7.5))
    if dice.random() < 0.5:
        out["load_kg"] = dice.choice((0, 10, 20.5))
    if dice.random() < 0.4:
        out["task"] = dice.choice(catalog["remedies"])["remedy"]
    brief["vans"] = {"out": out}
    if dice.random() < 0.5:
        back = {"date": str(ordered + timedelta(days=dice.choice((20, 30)))), "from": "09:00", "to": "10:00"}
        brief["vans"]["back"] = back | ({"load_kg": 15} if dice.random() < 0.3 else {})
    if dice.random() < 0.4:
        brief["photographs"] = {"date": days[-1], "at": dice.choice(("09:45", "10:30"))}
    if "labour" in brief and dice.random() < 0.5:
        brief["fixed"] = [{"name": "Take back", "people": 2, "minutes": 25}]
    if "task" in out:
        out["from"] = dice.choice(("08:00", "09:15"))


def _stock(dice: Random, product: Raw, ordered: date) -> None:
    if dice.random() < 0.7:
        product["stock"] = dice.choice((0, 1, 1, 2))
        if dice.random() < 0.7:
            product["weight_kg"] = dice.choice((5, 7.25, 12))
    if dice.random() < 0.4:
        product["term_days"] = dice.choice((7, 30))
        if dice.random() < 0.5:
            product["least_days"] = dice.choice((10, 31))
    if dice.random() < 0.15:
        product[dice.choice(("free_from", "free_until"))] = str(ordered + timedelta(days=dice.choice((0, 2, 25))))
