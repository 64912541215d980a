"""Published instances through the whole walk: a table of reference and reached values.

Run from the checkout, with benchmark files (or folders of them) by path; this is no test and pytest leaves it alone:

    python -m tests.benchmarks.run_instances --seconds 60 --take 20 SET.json ... HOUSES/

Each instance that maps becomes a folder of listed faults (faults.csv, catalog.yaml, brief.yaml): an item is a remedy
that answers a fault of its own; the first limit is money, a second one hours, further ones limits of the brief; a
packing is `must: all` with one session a bin. A folder of houses holds jobs as they are, with `optima.json` (points
removed, then least spend). Seconds are wall time, the other plans and the curve included.
"""

from __future__ import annotations

import argparse
import json
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from budgetfix.outcome.book import PlanBook
from tests.pipeline.listed_job import Remedy, chosen_plan, sessions_used, write_job

Data = Mapping[str, Any]
Figure = Callable[[PlanBook], str]


@dataclass(frozen=True)
class Instance:
    """One job to write, and how its answer reads."""

    family: str
    name: str
    reference: str
    write: Callable[[Path], None]
    read: Figure


def selection(data: Data, folder: Path) -> None:
    """Items on one or more limits, with groups, conflicts, needs and shared elements."""
    scale = 10 if any(isinstance(profit, float) for profit in data["profits"]) else 1
    points = [int(Fraction(str(profit)) * scale) for profit in data["profits"]]
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
    brief = {"hours": [capacity] * _enough(sizes, capacity, data["precedence"]), "must": "all"}
    write_job(folder, [1] * len(sizes), remedies, brief)


def _enough(sizes: Sequence[int], capacity: int, order: Sequence[Sequence[int]]) -> int:
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
        return kind in ("selection", "packing")
    same = all(row == rows[0] for rows in (data.get("profits", []), data["weights"]) for row in rows)
    return same and data["rule"] == "each_at_most_once"


WRITERS: dict[str, Callable[[Data, Path], None]] = {
    "selection": selection,
    "packing": packing,
    "assignment": assignment,
}


def of_file(path: Path) -> Iterator[Instance]:
    """The instances of one set that map."""
    whole = json.loads(path.read_text(encoding="utf-8"))
    kind = whole["kind"]
    for one in whole["instances"]:
        data = one["data"]
        if not maps(kind, data):
            continue
        floats = kind == "selection" and any(isinstance(profit, float) for profit in data["profits"])
        reference = str(int(Fraction(str(one["reference_value"])) * (10 if floats else 1)))
        read = _sessions if kind == "packing" else _points
        yield Instance(whole["set"], one["name"], reference, _writer(WRITERS[kind], data), read)


def of_houses(folder: Path) -> Iterator[Instance]:
    """The houses of a folder, with points removed and least spend."""
    optima = json.loads((folder / "optima.json").read_text(encoding="utf-8"))
    for name in sorted(optima):
        text = (folder / name).read_text(encoding="utf-8")
        reference = f"{optima[name]['points']} for {optima[name]['cost_minor']}"
        yield Instance("houses", Path(name).stem, reference, _house_writer(text), _points_and_money)


def _writer(write: Callable[[Data, Path], None], data: Data) -> Callable[[Path], None]:
    return lambda folder: write(data, folder)


def _house_writer(text: str) -> Callable[[Path], None]:
    return lambda folder: house(text, folder)


def _points(book: PlanBook) -> str:
    return str(book.improvement)


def _points_and_money(book: PlanBook) -> str:
    return f"{book.improvement} for {book.spent_minor}"


def _sessions(book: PlanBook) -> str:
    return str(sessions_used(book))


def run(one: Instance, seconds: float) -> tuple[str, bool, float]:
    """(reached, proven, wall seconds) of one instance."""
    with tempfile.TemporaryDirectory() as there:
        folder = Path(there)
        one.write(folder)
        began = time.monotonic()
        book = chosen_plan(folder, seconds)
        took = time.monotonic() - began
    if not isinstance(book, PlanBook):
        return "no plan", False, took
    return one.read(book), book.proven, took


def wanted(paths: Sequence[Path], take: int, only: str) -> Iterator[Instance]:
    """Up to `take` instances of each file or folder, spread evenly over it."""
    for path in paths:
        if path.is_dir() and not (path / "optima.json").is_file():
            yield from wanted(sorted(path.glob("*.json")), take, only)
            continue
        found = [one for one in (of_houses(path) if path.is_dir() else of_file(path)) if only in one.name]
        count = min(take, len(found))
        yield from (found[at * len(found) // count] for at in range(count))


def main() -> None:
    """The command line."""
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("paths", nargs="+", type=Path)
    words.add_argument("--seconds", type=float, default=60.0, help="time for choosing, each instance")
    words.add_argument("--take", type=int, default=1000, help="so many of each set")
    words.add_argument("--only", default="", help="instances with this in their name")
    typed = words.parse_args()
    print("| set | instance | reference | reached | proven | seconds | |\n| --- | --- | --- | --- | --- | --- | --- |")
    missed = total = 0
    for one in wanted(typed.paths, typed.take, typed.only):
        reached, proven, took = run(one, typed.seconds)
        good = reached == one.reference and proven
        total, missed = total + 1, missed + (not good)
        tail = f"{'yes' if proven else 'NO'} | {took:.1f} | {'' if good else 'MISSED'}"
        print(f"| {one.family} | {one.name} | {one.reference} | {reached} | {tail} |", flush=True)
    print(f"\n{total - missed} of {total} reached and proven.")


if __name__ == "__main__":
    main()
