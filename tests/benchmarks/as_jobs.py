"""Published instances and houses as job folders: faults.csv, catalog.yaml, brief.yaml.

An item is a remedy that answers a fault of its own; the first limit is money, a second one the hours of one session,
further ones limits of the brief; a packing is `must: all` with one session a bin; a multiple knapsack is a list of
unequal hours. A house is a job already, in one file.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from tests.pipeline.listed_job import Remedy, write_job

Data = Mapping[str, Any]


def selection(data: Data, folder: Path) -> None:
    """Items on one or more limits, with groups, conflicts, needs and shared elements."""
    points = [int(Fraction(str(profit)) * scale(data)) for profit in data["profits"]]
    remedies: list[Remedy] = [{"remedy": f"i{item}", "answers": {f"f{item}": 1}} for item in range(1, len(points) + 1)]
    brief: dict[str, object] = {}
    _limits(data, remedies, brief)
    _groups(data, remedies, brief)
    for one, other in data.get("conflicts", []):
        _listed(remedies[one], "excludes").append(f"i{other + 1}")
    for one, other in data.get("requires", []):
        _listed(remedies[one], "needs").append(f"i{other + 1}")
    catalog: dict[str, object] = {}
    if "elements" in data:
        elements = data["elements"]
        catalog["tools"] = [{"tool": f"t{at}", "buy": price} for at, price in enumerate(elements["weights"])]
        for remedy, needed in zip(remedies, elements["of_item"], strict=True):
            remedy["tools"] = [f"t{at}" for at in needed]
        brief["budget"] = elements["capacity"]
    write_job(folder, points, remedies, brief, catalog)


def scale(data: Data) -> int:
    """Points for each unit of profit: tens where profits have a decimal."""
    return 10 if any(isinstance(profit, float) for profit in data.get("profits", [])) else 1


def _limits(data: Data, remedies: list[Remedy], brief: dict[str, object]) -> None:
    rows = list(zip(data["weights"], data["capacities"], strict=True))
    for number, (weights, capacity) in enumerate(rows, 1):
        for remedy, weight in zip(remedies, weights, strict=True):
            if number == 1:
                remedy["cost"] = weight
            elif len(rows) == 2:
                remedy["hours"] = weight
            else:
                remedy["spends"] = {**_spent(remedy), f"limit {number}": weight}
        if number == 1:
            brief["budget"] = capacity
        elif len(rows) == 2:
            brief["hours"] = [capacity]
        else:
            limits = brief.setdefault("limits", {})
            assert isinstance(limits, dict)
            limits[f"limit {number}"] = capacity


def _groups(data: Data, remedies: list[Remedy], brief: dict[str, object]) -> None:
    groups = data.get("groups", [])
    for number, items in enumerate(groups, 1):
        for item in items:
            remedies[item]["pick_one"] = f"group {number}"
    if groups and data["group_rule"] == "exactly_one":
        brief["must"] = [f"group {number}" for number in range(1, len(groups) + 1)]


def _listed(remedy: Remedy, field: str) -> list[object]:
    found = remedy.setdefault(field, [])
    assert isinstance(found, list)
    return found


def _spent(remedy: Remedy) -> dict[str, object]:
    found = remedy.get("spends", {})
    assert isinstance(found, dict)
    return found


def packing(data: Data, folder: Path) -> None:
    """Everything in the fewest sessions, no task before those that it needs."""
    sizes, capacity = data["sizes"], data["capacity"]
    remedies: list[Remedy] = [
        {"remedy": f"i{item}", "answers": {f"f{item}": 1}, "hours": size} for item, size in enumerate(sizes, 1)
    ]
    for first, then in data["precedence"]:
        _listed(remedies[then], "needs").append(f"i{first + 1}")
    brief = {"hours": [capacity] * enough(sizes, capacity, data["precedence"]), "must": "all"}
    write_job(folder, [1] * len(sizes), remedies, brief)


def enough(sizes: Sequence[int], capacity: int, order: Sequence[Sequence[int]]) -> int:
    """Sessions that first fit takes, in an order that keeps the needs: a list of hours that is long enough."""
    free: list[int] = []
    at: dict[int, int] = {}
    while len(at) < len(sizes):
        ready = [i for i in range(len(sizes)) if i not in at and all(a in at for a, b in order if b == i)]
        item = max(ready, key=lambda i: (sizes[i], -i))
        spot = max((at[a] for a, b in order if b == item), default=0)
        while spot < len(free) and free[spot] < sizes[item]:
            spot += 1
        free += [capacity] * (spot + 1 - len(free))
        free[spot] -= sizes[item]
        at[item] = spot
    return len(free)


def assignment(data: Data, folder: Path) -> None:
    """Choose, and place in sessions of unequal hours."""
    points = data["profits"][0]
    remedies: list[Remedy] = [
        {"remedy": f"i{item}", "answers": {f"f{item}": 1}, "hours": hours}
        for item, hours in enumerate(data["weights"][0], 1)
    ]
    write_job(folder, points, remedies, {"hours": data["capacities"]})


def house(text: str, folder: Path) -> None:
    """A house is a job already, in one file."""
    whole = json.loads(text)
    points = [f"{fault['fault']},{fault['points']}" for fault in whole["faults"]]
    (folder / "faults.csv").write_text("\n".join(["fault,points", *points]) + "\n", encoding="utf-8")
    for name in ("catalog", "brief"):
        (folder / f"{name}.yaml").write_text(json.dumps(whole[name]), encoding="utf-8")


def maps(kind: str, data: Data) -> bool:
    """Whether an instance can be said as a job of listed faults."""
    if "max_copies" in data or "pair_profits" in data:
        return False
    if kind != "assignment":
        return kind in WRITERS
    same = all(row == rows[0] for rows in (data.get("profits", []), data["weights"]) for row in rows)
    return same and data["rule"] == "each_at_most_once"


WRITERS: dict[str, Callable[[Data, Path], None]] = {
    "selection": selection,
    "packing": packing,
    "assignment": assignment,
}
"""How an instance of each kind becomes a folder."""
