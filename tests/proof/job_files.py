"""A job of listed faults as plain figures, read from its files and nothing else: what a stranger would do.

Money is read to minor units of two digits, times to minutes, everything else to exact fractions.
"""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass, field
from datetime import date, timedelta
from fractions import Fraction
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML

from tests.proof.van_files import (
    Session,
    Van,
    as_day,
    cut,
    for_the_stay,
    van_costs,
    van_of,
    wholes,
)

F = Fraction
Raw = dict[str, Any]


@dataclass(frozen=True)
class Step:
    """One step: clock minutes, hands, and its waits."""

    minutes: int
    people: int = 1
    wait_sessions: int = 0
    wait_minutes: int = 0
    help: int = 0
    """Minutes of a second pair of hands at its start; one person does the rest."""
    from_stock: bool = True


@dataclass(frozen=True)
class Remedy:
    """A remedy, or an errand: then `shops` says whose goods it fetches."""

    id: str
    steps: tuple[Step, ...]
    answers: dict[str, F] = field(default_factory=dict)
    cost: int = 0
    uses: dict[str, F] = field(default_factory=dict)
    tools: tuple[str, ...] = ()
    group: str | None = None
    needs: tuple[str, ...] = ()
    excludes: tuple[str, ...] = ()
    spends: dict[str, F] = field(default_factory=dict)
    shops: tuple[str, ...] = ()

    @property
    def minutes(self) -> int:
        """Person-minutes."""
        return sum(step.minutes * step.people + step.help for step in self.steps)


@dataclass(frozen=True)
class Job:
    """Everything that a plan of listed faults can be held to."""

    faults: dict[str, tuple[F, bool]]
    """Points times priority, and whether it is a matter of safety."""
    remedies: dict[str, Remedy]
    errands: dict[str, Remedy]
    products: dict[str, Raw]
    tools: dict[str, Raw]
    shops: dict[str, Raw]
    sessions: tuple[Session, ...] | None
    people: dict[str, tuple[str, ...]]
    """Who works, and what each does not do."""
    budget: int | None
    held: int
    fixed: dict[str, int]
    labour: int
    limits: dict[str, F]
    must: tuple[str, ...]
    never: tuple[str, ...]
    last: int | None
    """Sessions that may be used, from the first."""
    setup: int
    hazards_first: bool
    measured: bool
    van: Van | None = None
    whole_days: bool = False
    """What is begun on a day is finished on that day, or not done at all."""


def number(value: object) -> F:
    """A number as typed; `8.25%` is a share."""
    text = str(value).strip()
    return F(text[:-1]) / 100 if text.endswith("%") else F(text)


def half_up(value: F) -> int:
    """To the nearest whole, halves up."""
    return math.floor(value + F(1, 2))


def cents(value: object) -> int:
    """An amount of money in minor units."""
    return half_up(number(value or 0) * 100)


def minutes_of(raw: Raw) -> int:
    """Planned minutes: the number, or the mean of the three, rounded up."""
    key, per = ("minutes", 1) if "minutes" in raw else ("hours", 60)
    typed = raw.get(key, 0)
    parts = [number(one) for one in (typed.values() if isinstance(typed, dict) else [typed])]
    return math.ceil(sum(parts) / len(parts) * per)


def load_yaml(path: Path) -> Raw:
    """A YAML or JSON file as plain objects."""
    found = YAML(typ="safe", pure=True).load(path.read_text(encoding="utf-8")) if path.exists() else None
    return dict(found or {})


def read_job(folder: Path, catalog: Path | None = None) -> Job:
    """The job of a folder."""
    brief = load_yaml(folder / "brief.yaml")
    shelf = _catalog(catalog or next((folder / one for one in NAMES if (folder / one).exists()), folder / NAMES[0]))
    budget = None if brief.get("budget") is None else cents(brief["budget"])
    held = brief.get("contingency", 0)
    share = number(held) if str(held).endswith("%") else F(0)
    people = _people(brief)
    van, labour = van_of(brief), number(brief.get("labour") or 0)
    sessions = _sessions(brief, people)
    sessions = None if sessions is None else cut(sessions, brief, van, number(brief.get("load", 1)))
    must = brief.get("must") or ()
    return Job(
        faults=_faults(folder / "faults.csv", brief.get("priorities") or {}),
        remedies={str(raw["remedy"]): _remedy(raw) for raw in shelf.get("remedies") or ()},
        errands=_errands(brief.get("errands") or ()),
        products={one["product"]: for_the_stay(one, brief) for one in shelf.get("products") or ()},
        tools={one["tool"]: one for one in shelf.get("tools") or ()},
        shops={one["shop"]: one for one in shelf.get("shops") or ()},
        sessions=sessions,
        people=people,
        budget=budget,
        held=0 if budget is None else half_up(share * budget) if share else cents(str(held).rstrip("%")),
        fixed={
            **{name: cents(cost) for name, cost in van_costs(brief).items()},
            **{one["name"]: _fixed(one, labour) for one in brief.get("fixed") or ()},
        },
        labour=cents(brief.get("labour", 0)),
        limits={name: number(most) for name, most in (brief.get("limits") or {}).items()},
        must=(must,) if isinstance(must, str) else tuple(must),
        never=tuple(brief.get("never") or ()),
        last=_last(brief, sessions),
        setup=int(brief.get("setup_minutes") or 0),
        hazards_first=bool(brief.get("hazards_first", True)),
        whole_days=brief.get("whole_days") == "all",
        measured=any((folder / one).exists() for one in ("survey.yaml", "survey.xlsx")),
        van=van,
    )


def _fixed(one: Raw, labour: F) -> int:
    """A sum of money, or people and minutes at the rate of labour."""
    if "minutes" not in one:
        return cents(one["cost"])
    return half_up(labour * 100 * int(one.get("people", 1)) * int(one["minutes"]) / 60)


NAMES = ("catalog.yaml", "catalog.csv")


def _faults(path: Path, priorities: Raw) -> dict[str, tuple[F, bool]]:
    if not path.exists():
        return {}
    with path.open(encoding="utf-8", newline="") as lines:
        return {
            row["fault"]: (
                F(row["points"]) * number(priorities.get(row["fault"], 1)),
                str(row.get("safety") or "").strip().lower() in ("yes", "true", "1"),
            )
            for row in csv.DictReader(lines)
        }


def _catalog(path: Path) -> Raw:
    if path.suffix != ".csv":
        return load_yaml(path)
    with path.open(encoding="utf-8", newline="") as lines:
        return {"remedies": [_csv_row(row) for row in csv.DictReader(lines)]}


def _csv_row(row: Raw) -> Raw:
    raw: Raw = {name: text for name, text in row.items() if text}
    for name in ("answers", "spends"):
        if name in raw:
            raw[name] = dict(part.strip().split(":") for part in raw[name].split(";") if part.strip())
    for name in ("needs", "excludes"):
        if name in raw:
            raw[name] = [part.strip() for part in raw[name].split(";")]
    return raw


def _exact(raw: Raw, name: str) -> dict[str, F]:
    return {key.strip(): number(value) for key, value in (raw.get(name) or {}).items()}


def _remedy(raw: Raw) -> Remedy:
    hands = int(raw.get("people") or 1)
    listed = [one if isinstance(one, dict) else {"hours": one} for one in raw.get("steps") or ()]
    steps = listed or ([raw] if minutes_of(raw) else [])
    return Remedy(
        id=str(raw["remedy"]),
        steps=tuple(
            Step(
                minutes_of(one),
                1 if one.get("help") else int(one.get("people") or hands),
                int(one.get("wait_sessions") or 0),
                math.ceil(number(one.get("wait_hours") or 0) * 60),
                int(one.get("help") or 0),
                str(one.get("from_stock", True)).lower() not in ("no", "false"),
            )
            for one in steps
        ),
        answers=_exact(raw, "answers"),
        cost=cents(raw.get("cost")),
        uses=_exact(raw, "uses"),
        tools=tuple(raw.get("tools") or ()),
        group=raw.get("pick_one"),
        needs=tuple(raw.get("needs") or ()),
        excludes=tuple(raw.get("excludes") or ()),
        spends=_exact(raw, "spends"),
    )


def _errands(rows: Any) -> dict[str, Remedy]:
    made = [
        Remedy(
            f"errand:{one['errand']}", (Step(minutes_of(one), int(one.get("people", 1))),), shops=tuple(one["shops"])
        )
        for one in rows
    ]
    return {one.id: one for one in made}


def _people(brief: Raw) -> dict[str, tuple[str, ...]]:
    typed, hours = brief.get("people"), brief.get("hours")
    blocks = hours if isinstance(hours, list) else []
    named = [one["people"] for one in blocks if isinstance(one, dict) and isinstance(one.get("people"), dict)]
    if isinstance(typed, dict):
        found = {str(name): tuple((facts or {}).get("not") or ()) for name, facts in typed.items()}
    else:
        found = {} if named and len(named) == len(blocks) else {str(one + 1): () for one in range(int(typed or 1))}
    for block in named:
        for name in block:
            found.setdefault(str(name), ())
    return found


def _sessions(brief: Raw, people: dict[str, tuple[str, ...]]) -> tuple[Session, ...] | None:
    if brief.get("hours") is None:
        return None
    load = number(brief.get("load", 1))
    made = []
    for index, typed in enumerate(brief["hours"]):
        block = typed if isinstance(typed, dict) else {"hours": typed}
        own = block.get("people") or dict.fromkeys(people, block.get("hours", 0))
        hours = {name: number(own.get(name, 0)) for name in people}
        day = (as_day(block["date"]) - as_day(brief["ordered"])).days if "date" in block else index
        clock = str(block.get("start") or ("09:00" if "date" in block else "00:00")).split(":")
        start = day * 1440 + int(clock[0]) * 60 + int(clock[1])
        given = {name: math.floor(one * 60 * load) for name, one in hours.items()}
        length = max(math.ceil(one * 60) for one in hours.values())
        whole = {name: math.floor(one * 60) for name, one in hours.items()}
        quiet = bool(block.get("quiet"))
        made.append(Session(start, start + length, given, quiet, day, whole=whole, load=load))
    return tuple(made)


def _last(brief: Raw, sessions: tuple[Session, ...] | None) -> int | None:
    by = brief.get("finish_by")
    if sessions is None:
        return None
    if by is None:
        return len(sessions)
    if isinstance(by, date) or "-" in str(by):
        ordered = as_day(brief["ordered"])
        return sum(ordered + timedelta(days=one.day) <= as_day(by) for one in sessions)
    return sum(number < int(by) for number in wholes(sessions))
