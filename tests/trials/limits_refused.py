"""One step past each limit: jobs that are refused, and the same jobs at the limit, which are not."""

from __future__ import annotations

import json
from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from shutil import rmtree
from typing import Any

from typer.testing import CliRunner

from budgetfix.base import limits
from budgetfix.base.problems import FilesRefused
from budgetfix.cli.app import app
from budgetfix.pipeline.reading import JobOptions, read

Raw = dict[str, Any]
Write = Callable[[Raw, int], None]
TODAY = date(2026, 6, 1)
BASE: Raw = {
    "survey": {
        "unit": "mm",
        "rooms": [{"room": "study"}],
        "walls": [{"room": "study", "wall": wall, "length": 3000} for wall in "ABCD"],
        "sockets": [],
    },
    "catalog": {
        "currency": "USD",
        "tools": [{"tool": "drill", "buy": 30}],
        "shops": [{"shop": "mill"}],
        "products": [{"product": "paint", "price": 9, "shop": "mill"}],
        "remedies": [
            {"remedy": "m", "answers": {"f1": 1}, "cost": 5, "uses": {"paint": 1}, "steps": [{"minutes": 30}]}
        ],
    },
    "brief": {"currency": "USD", "budget": 100, "hours": [4], "ordered": "2026-06-01"},
    "faults": [("f1", 100)],
}


@dataclass(frozen=True)
class Limit:
    """One limit: `write(job, size)` gives a job so much of it. `told`: what the refusal names."""

    name: str
    most: int
    write: Write
    file: str
    told: tuple[str, ...]


def _more(table: str, field: str, **fields: object) -> Write:
    def write(job: Raw, size: int) -> None:
        rows = job["catalog"][table]
        rows += [{field: f"{field}-{number}", **fields} for number in range(size - len(rows))]

    return write


def _rooms(job: Raw, size: int) -> None:
    for number in range(1, size):
        job["survey"]["rooms"].append({"room": f"room {number}"})
        job["survey"]["walls"] += [{"room": f"room {number}", "wall": wall, "length": 3000} for wall in "ABCD"]


def _walls(job: Raw, size: int) -> None:
    turn = 360 / size
    job["survey"]["walls"] = [
        {"room": "study", "wall": f"W{number}", "length": 400, "turn": turn} for number in range(size)
    ]


def _things(job: Raw, size: int) -> None:
    job["survey"]["sockets"] = [
        {"name": f"s{number}", "room": "study", "wall": "A", "from_left": 20 * number} for number in range(size)
    ]


def _faults(job: Raw, size: int) -> None:
    job["faults"] = [(f"f{number}", 5) for number in range(1, size + 1)]


def _steps(job: Raw, size: int) -> None:
    job["catalog"]["remedies"][0]["steps"] = [{"minutes": 5}] * size


def _remedy(field: str, of: Callable[[int], object]) -> Write:
    def write(job: Raw, size: int) -> None:
        job["catalog"]["remedies"][0][field] = of(size)

    return write


def _product(field: str, of: Callable[[int], object] = int) -> Write:
    def write(job: Raw, size: int) -> None:
        job["catalog"]["products"][0][field] = of(size)

    return write


def _brief(field: str, of: Callable[[int], object]) -> Write:
    def write(job: Raw, size: int) -> None:
        job["brief"][field] = of(size)

    return write


def _points(job: Raw, size: int) -> None:
    job["faults"] = [("f1", size)]


def _everything(job: Raw, size: int) -> None:
    """So many minor units in all, at a price of a million million, with what the other things cost."""
    job["catalog"] |= {"tools": [], "products": [], "shops": []}
    one = {"answers": {"f1": 1}}
    count, rest = divmod(size, limits.MOST_MONEY_MINOR)
    costs = [limits.MOST_MONEY_MINOR] * count + [rest] * (rest > 0)
    job["catalog"]["remedies"] = [{**one, "remedy": f"m{at}", "cost": minor(cost)} for at, cost in enumerate(costs)]


def minor(size: int) -> str:
    """Minor units as people write them."""
    return f"{size // 100}.{size % 100:02}"


CATALOG, BRIEF, SURVEY, FAULTS = "catalog.yaml", "brief.yaml", "survey.yaml", "faults.csv"
LIMITS = (
    Limit(
        "products",
        limits.MOST_PRODUCTS,
        _more("products", "product", price=1),
        CATALOG,
        ("2,001 products", "2,000 at most"),
    ),
    Limit(
        "remedies",
        limits.MOST_REMEDIES,
        _more("remedies", "remedy", answers={"f1": 0.1}),
        CATALOG,
        ("2,001 remedies", "2,000 at most"),
    ),
    Limit("tools", limits.MOST_TOOLS, _more("tools", "tool", buy=1), CATALOG, ("201 tools", "200 at most")),
    Limit("shops", limits.MOST_SHOPS, _more("shops", "shop"), CATALOG, ("201 shops", "200 at most")),
    Limit("steps of a remedy", limits.MOST_STEPS, _steps, CATALOG, ("41 steps", "40 at most")),
    Limit("listed faults", limits.MOST_FAULTS, _faults, FAULTS, ("2,001 faults", "2,000 at most")),
    Limit(
        "sessions",
        limits.MOST_SESSIONS,
        _brief("hours", lambda size: [1] * size),
        BRIEF,
        ("60 sessions at most, not 61",),
    ),
    Limit("people", limits.MOST_PEOPLE, _brief("people", int), BRIEF, ("found 7", "6 people at most")),
    Limit(
        "errands",
        limits.MOST_ERRANDS,
        _brief("errands", lambda size: [{"errand": f"e{at}", "shops": ["mill"]} for at in range(size)]),
        BRIEF,
        ("20 errands at most, not 21",),
    ),
    Limit("rooms", limits.MOST_ROOMS, _rooms, SURVEY, ("33 rooms", "32 at most", "two jobs")),
    Limit("walls of a room", limits.MOST_WALLS, _walls, SURVEY, ("61 walls of study", "60 at most")),
    Limit("things in a room", limits.MOST_THINGS_IN_ROOM, _things, SURVEY, ("101 things in study", "100 at most")),
    Limit(
        "a cost",
        limits.MOST_MONEY_MINOR,
        _remedy("cost", minor),
        CATALOG,
        ("'10000000000.01'", "no sum is above 10000000000.00"),
    ),
    Limit(
        "a price",
        limits.MOST_MONEY_MINOR,
        _product("price", minor),
        CATALOG,
        ("'10000000000.01'", "no sum is above 10000000000.00"),
    ),
    Limit(
        "a budget",
        limits.MOST_MONEY_MINOR,
        _brief("budget", minor),
        BRIEF,
        ("'10000000000.01'", "no sum is above 10000000000.00"),
    ),
    Limit(
        "everything together",
        limits.MOST_ALL_MINOR,
        _everything,
        CATALOG,
        ("10000000000000.01 for everything together", "10000000000000.00 at most"),
    ),
    Limit("points of a fault", limits.MOST_WHOLE, _points, FAULTS, ("1000000001", "1,000,000,000 at most")),
    Limit(
        "minutes of a step",
        limits.MOST_MINUTES,
        _remedy("steps", lambda size: [{"minutes": size}]),
        CATALOG,
        ("1000001", "no step takes more than 1,000,000 minutes"),
    ),
    Limit(
        "hours of a session",
        limits.MOST_MINUTES // 60,
        _brief("hours", lambda size: [size]),
        BRIEF,
        ("16667", "16,666 hours at most"),
    ),
    Limit("days until goods come", limits.MOST_DAYS, _product("lead_days"), CATALOG, ("36501", "36,500 at most")),
    Limit("an amount", limits.MOST_WHOLE, _product("on_hand"), CATALOG, ("1000000001", "1,000,000,000 at most")),
)


@dataclass(frozen=True)
class Refused:
    """What came of one limit: words where it did not hold."""

    name: str
    words: tuple[str, ...]


def at_the_edge(folder: Path, limit: Limit) -> Refused:
    """A job at a limit is read; one past it is refused by `plan` with the words that say so, nothing written."""
    words = [*_read(folder / "at", limit), *_past(folder / "past", limit)]
    rmtree(folder)
    return Refused(limit.name, tuple(words))


def _read(folder: Path, limit: Limit) -> list[str]:
    write(folder, limit, limit.most)
    try:
        read(folder, JobOptions(), TODAY)
    except FilesRefused as refused:
        return [f"refused at the limit: {refused.problems[0]}"]
    return []


def _past(folder: Path, limit: Limit) -> list[str]:
    write(folder, limit, limit.most + 1)
    before = sorted(path.name for path in folder.iterdir())
    done = CliRunner().invoke(app, ["plan", str(folder), "--json", "--seconds", "1"])
    lacking = [words for words in (limit.file, *limit.told, "Nothing was written") if words not in done.stderr]
    found = [f"exit {done.exit_code}"] if done.exit_code != 3 else []
    found += [f"not said: {lacking}; but {done.stderr[:200]}"] if lacking else []
    found += ["something stands on stdout"] if done.stdout else []
    after = sorted(path.name for path in folder.iterdir())
    return found + ([f"written: {after}"] if after != before else [])


def write(folder: Path, limit: Limit, size: int) -> None:
    """The files of a small job with so much of one thing; JSON text is YAML."""
    job = deepcopy(BASE)
    limit.write(job, size)
    folder.mkdir(parents=True)
    for name in ("survey", "catalog", "brief"):
        (folder / f"{name}.yaml").write_text(json.dumps(job[name], indent=1), encoding="utf-8")
    lines = ["fault,points", *(f"{fault},{points}" for fault, points in job["faults"])]
    (folder / "faults.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
