"""Small streets: a folder of jobs of listed faults over one catalogue with a stock, written as their files."""

from __future__ import annotations

import json
import random
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path
from unittest.mock import patch

from budgetfix.intake.houses import houses
from budgetfix.intake.job import Job
from budgetfix.outcome.portfolio import house_names
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.portfolio import NoPlans, NotTogether, Together, planned_together
from budgetfix.pipeline.portfolio_reading import read_jobs
from tests.pipeline.listed_job import TODAY

Raw = dict[str, object]
Stay = tuple[str, str] | None
JUNE, OVERLAPPING, LATER = ("2026-06-04", "2026-07-04"), ("2026-06-20", "2026-07-20"), ("2026-07-05", "2026-08-04")
RUG: Raw = {"product": "rug", "name": "Ivory rug", "price": 60, "stock": 1, "place": "bay 3", "weight_kg": 12}
LAMP: Raw = {"product": "lamp", "name": "Table lamp", "price": 20, "stock": 3, "place": "bay 1"}
REMEDIES: list[Raw] = [
    {"remedy": "hall", "name": "Rug in the hall", "answers": {"f1": 1}, "uses": {"rug": 1}, "hours": 1},
    {"remedy": "study", "name": "Lamps in the study", "answers": {"f2": 1}, "uses": {"lamp": 2}, "hours": 0.5},
    {"remedy": "paint", "name": "Paint the study", "answers": {"f2": 0.5}, "cost": 10, "hours": 2},
]
"""The hall wants the rug, the study two lamps; paint does half of what the lamps do."""


def write_catalog(folder: Path, products: Sequence[Raw] = (RUG, LAMP), remedies: Sequence[Raw] = REMEDIES) -> None:
    """One catalogue for the whole street."""
    whole = {"currency": "USD", "products": list(products), "remedies": list(remedies)}
    (folder / "catalog.yaml").write_text(json.dumps(whole), encoding="utf-8")


def write_house(folder: Path, points: Sequence[int], days: Stay, **brief: object) -> None:
    """A job of listed faults f1, f2, ... that names the street's catalogue."""
    folder.mkdir(parents=True, exist_ok=True)
    lines = ["fault,points", *(f"f{number},{worth}" for number, worth in enumerate(points, 1))]
    (folder / "faults.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    stay: Mapping[str, object] = {"stay": {"from": days[0], "until": days[1]}} if days else {}
    whole = {"currency": "USD", "budget": 500, "hours": [4], "ordered": "2026-06-01", "catalog": "../catalog.yaml"}
    (folder / "brief.yaml").write_text(json.dumps({**whole, **stay, **brief}), encoding="utf-8")


def write_street(folder: Path) -> None:
    """Elm Street in June, Oak Lane overlapping it, Pine after Elm Street: the rug does most in Oak Lane."""
    folder.mkdir(parents=True, exist_ok=True)
    write_catalog(folder)
    write_house(folder / "elm-street", (20, 10), JUNE)
    write_house(folder / "oak-lane", (30, 10), OVERLAPPING)
    write_house(folder / "pine", (5, 50), LATER)


def read_street(folder: Path) -> tuple[Job, ...]:
    """All jobs of a street."""
    found = houses(folder)
    assert found is not None
    return read_jobs(folder, found.jobs, TODAY)


def plan_street(folder: Path, lanes: int = 1, seconds: float = 60.0) -> Together | NoPlans | NotTogether:
    """A street read and planned."""
    jobs = read_street(folder)
    return planned_together(jobs, house_names([job.name for job in jobs]), Wish(seconds, time.monotonic), lanes)


@contextmanager
def only_plans() -> Iterator[None]:
    """Nothing beside the plans, and no files: in this process."""
    none: AbstractContextManager[object] = patch("budgetfix.pipeline.lanes.plan_files", lambda _: {})
    with none, patch("budgetfix.pipeline.around.BESIDE", 0.0), patch("budgetfix.pipeline.around.GOODS", 0.0):
        yield


def write_random_street(folder: Path, number: int) -> None:
    """Two or three small jobs without hours: groups, needs, hazards, pieces of which there are one to three."""
    dice = random.Random(f"street {number}")
    products: list[Raw] = [
        {"product": name, "price": dice.randint(1, 40), "stock": dice.randint(1, 3), "pack": dice.choice((1, 1, 2))}
        for name in ("lamp", "mirror", "rug")
    ]
    products.append({"product": "tape", "price": 3})
    remedies = [_remedy(dice, place) for place in range(6)]
    folder.mkdir(parents=True, exist_ok=True)
    write_catalog(folder, products, remedies)
    for place in range(dice.choice((2, 2, 3))):
        first = dice.randint(1, 15)
        days = (f"2026-06-{first:02}", f"2026-06-{first + dice.choice((1, 4, 9)):02}")
        house = folder / f"house-{place}"
        budget = dice.choice((None, 40, 120))
        first_wish = {"hazards_first": False} if dice.random() < 0.2 else {}
        must: Raw = {"must": ["r1"]} if dice.random() < 0.15 else {}
        stay = None if dice.random() < 0.15 else days
        write_house(house, (), stay, budget=budget, hours=None, **first_wish, **must)
        rows = [f"f{at},{dice.randint(0, 50)},{'yes' if dice.random() < 0.2 else ''}" for at in range(1, 5)]
        (house / "faults.csv").write_text("\n".join(["fault,points,safety", *rows]) + "\n", encoding="utf-8")


def _remedy(dice: random.Random, place: int) -> Raw:
    faults = dice.sample(range(1, 5), dice.randint(1, 2))
    return {
        "remedy": f"r{place}",
        "answers": {f"f{at}": dice.choice((0.25, 0.5, 1)) for at in sorted(faults)},
        "uses": {name: dice.randint(1, 3) for name in ("lamp", "mirror", "rug", "tape") if dice.random() < 0.4},
        "cost": dice.choice((0, 0, 5, 30)),
        **({"pick_one": "g"} if dice.random() < 0.3 else {}),
    }
