"""The jobs that are broken: the demos, and the same in the formats that no demo has."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from pathlib import Path

from budgetfix.catalog.models import Catalog
from budgetfix.intake.brief_over import Over
from budgetfix.intake.job import read_job
from budgetfix.pipeline.inspecting import inspected
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import kind_names
from tests.trials.broken_sheets import Pages, book_bytes, pages_of, without_live

DEMO = Path(__file__).parents[2] / "catalog_demo"
TODAY = date(2026, 6, 1)
BRIEFED = """\
# The briefs of the three demos in one, without the names of their rooms and products.
currency: GBP
budget: 2250.00
labour: 45.00
people:
  adult 1: {priorities: {hem-off-floor-12: 1.5}}
  adult 2: {not: [ladder], priorities: {rug-slides-6: 2, window dressing: 0.5}}
hours:
  - {date: 2026-06-05, start: '18:00', people: {adult 1: 1.5, adult 2: 0}}
  - {date: 2026-06-06, start: '09:30', people: {adult 1: 2.5, adult 2: 2.5}}
  - {date: 2026-06-06, start: '13:30', people: {adult 1: 2, adult 2: 0}, quiet: true}
  - {date: 2026-06-07, start: '09:30', hours: 7.5}
ordered: 2026-06-01
vans:
  out: {date: 2026-06-06, from: '09:00', to: '11:00', load_kg: 400, cost: 180.00, task: n01}
  back: {date: 2026-07-04, from: '09:00', to: '11:00', load_kg: 400, cost: 180.00}
photographs: {date: 2026-06-07, at: '16:00'}
fixed:
  - {name: Take back, client: Our pieces packed and carried out, people: 2, minutes: 120}
  - {name: Fee, cost: 20.00}
errands:
  - {errand: shops, name: One round of the shops, shops: [], hours: 1.5}
must: [n01, h02]
never: [n07]
limits: {holes: 12, kg: 40.5}
load: 0.85
contingency: 40.00
setup_minutes: 10
finish_by: 2026-06-07
may_worsen: [front-blocked]
hazards_first: yes
profile: listing
bands: {hem-off-floor: {sound: [null, 25], glaring: 120}, screen-glare: off}
lease:
  forbids: [n02]
  holes: {plugs: 12, pins: 20}
  leave: {plugs: given, curtain rods: asked}
  reversible_first: yes
  ends: 2027-11-30
  undo: shown
  undo_hours: 3
quote:
  for: the sellers, Maple Street
  agree: [Somebody opens the door., What we carry out stays in your garage.]
pace: {all: 1.2}
"""
LISTED = ("fault", "points", "what", "where", "safety")
HEADS = ("remedy", "name", "answers", "cost", "hours", "pick_one", "needs", "excludes", "people", "spends")


@dataclass(frozen=True, eq=False)
class Job:
    """Files by name. `command`: what is typed. `books`: its workbooks as plain cells."""

    name: str
    command: str
    files: tuple[tuple[str, bytes], ...]
    books: tuple[tuple[str, Pages], ...] = ()

    def parts(self) -> dict[str, bytes]:
        """Files of one's own."""
        return dict(self.files)

    def pages(self, name: str) -> Pages:
        """The cells of one workbook."""
        return dict(self.books)[name]


def jobs() -> tuple[Job, ...]:
    """All jobs, the same on every machine."""
    listed = _listed()
    plan = _ticked(listed)
    books = {"survey.xlsx": _demo("renter", "survey.xlsx"), "catalog.xlsx": _demo("renter", "catalog.xlsx")}
    brief = {"brief.yaml": _demo("renter", "brief.yaml")}
    return (
        _job("renter", "inspect", {**books, **brief}),
        _light("room-book", {"survey.xlsx": books["survey.xlsx"]}),
        _job("room-text", "inspect", _rooms("renter")),
        _whole("couple"),
        _whole("stager"),
        _job("starter", "inspect", {**_rooms("couple"), "catalog.yaml": _demo("starter", "catalog.yaml")}),
        _job("listed", "plan", listed),
        _job("briefed", "inspect", {**listed, "brief.yaml": BRIEFED.encode()}),
        _job("ticked", "replan", {**listed, "plan.xlsx": plan}),
    )


def _demo(scenario: str, name: str) -> bytes:
    return (DEMO / scenario / name).read_bytes()


def _rooms(scenario: str) -> dict[str, bytes]:
    return {"survey.yaml": _demo(scenario, "survey.yaml")}


def _whole(scenario: str) -> Job:
    files = {path.name: path.read_bytes() for path in sorted((DEMO / scenario).iterdir())}
    return _job(scenario, "inspect", files)


def _job(name: str, command: str, files: dict[str, bytes]) -> Job:
    books = {file: pages_of(data) for file, data in files.items() if file.endswith(".xlsx")}
    light = {file: book_bytes(pages) for file, pages in books.items()}
    return Job(name, command, tuple(sorted({**files, **light}.items())), tuple(sorted(books.items())))


def _light(name: str, files: dict[str, bytes]) -> Job:
    """Workbooks as another program writes them: what was typed, and no more."""
    books = {file: without_live(pages_of(data)) for file, data in files.items()}
    return Job(name, "inspect", tuple((file, book_bytes(pages)) for file, pages in books.items()), tuple(books.items()))


@lru_cache(maxsize=1)
def looked() -> tuple[tuple[str, bytes], ...]:
    """The demo's workbooks with all their looks, for damage to bytes."""
    return tuple((name, _demo("renter", name)) for name in ("survey.xlsx", "catalog.xlsx"))


def _listed() -> dict[str, bytes]:
    """What `inspect` finds in the couple's rooms as listed faults, answered by the couple's own remedies as a CSV."""
    job = read_job(DEMO / "couple", Over(), TODAY, kind_names())
    found = [one for one in inspected(job).findings if one.points > 0][:14]
    names = [f"{one.rule}-{at}" for at, one in enumerate(found, start=1)]
    faults: list[tuple[str, ...]] = [LISTED]
    faults += [
        (name, str(one.points), one.rule, one.subject, "yes" if one.safety else "no")
        for name, one in zip(names, found, strict=True)
    ]
    brief = {
        "currency": "GBP", "budget": 120, "hours": [3, 2.5], "ordered": "2026-06-01", "limits": {"holes": 8},
        "people": {"ann": {}, "ben": {"not": ["ladder"]}}, "setup_minutes": 10, "contingency": "5%",
    }  # fmt: skip
    return {
        "faults.csv": _csv(faults),
        "catalog.csv": _csv([HEADS, *_remedies(job.catalog, names)]),
        "brief.yaml": "".join(f"{name}: {json.dumps(value)}\n" for name, value in brief.items()).encode(),
    }


def _remedies(catalog: Catalog, faults: list[str]) -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = []
    for at, one in enumerate(catalog.remedies[:16]):
        before = catalog.remedies[at - 1].remedy
        rows.append((
            one.remedy, one.name, f"{faults[at % len(faults)]}:0.8; {faults[(at * 5 + 1) % len(faults)]}:0.25",
            f"{(at * 7) % 23 + 0.5:.2f}", f"{0.25 * (at % 7 + 1)}", one.pick_one or "", before if at % 5 == 4 else "",
            before if at % 7 == 6 else "", str(1 + at % 2), f"holes:{at % 4}",
        ))  # fmt: skip
    return rows


def _csv(rows: list[tuple[str, ...]]) -> bytes:
    saved = io.StringIO()
    csv.writer(saved).writerows(rows)
    return saved.getvalue().encode()


def _ticked(files: dict[str, bytes]) -> bytes:
    """The workbook of a plan for the listed job."""
    import tempfile

    from budgetfix.exports.plan_book import plan_book
    from budgetfix.optimize.problem import NoPlan

    with tempfile.TemporaryDirectory() as folder:
        for name, data in files.items():
            (Path(folder) / name).write_bytes(data)
        job = read_job(Path(folder), Over(), TODAY, kind_names())
    assert not job.problems, job.problems
    found = planned(job, Wish(1.0, lambda: 0.0))
    assert not isinstance(found, NoPlan)
    return plan_book(found)
