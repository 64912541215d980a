"""How long an inspection takes, and another one after a single change: a table of the rooms of the demo jobs.

Run from the checkout; this is no test, times depend on the machine, and pytest leaves it alone:

    python -m tests.benchmarks.bench_inspect
    python -m tests.benchmarks.bench_inspect --rounds 20 --worst

A whole inspection is timed with every cache of shapes and ways emptied first, after one that loads what is loaded once.
One change: a thing slid by 100 mm, or taken away; every thing of the room in turn, each time after a whole inspection
with empty caches. "Again" judges only what asked about it (`look_at_moved`); the share is the usual one's time over a
whole inspection's.
"""

from __future__ import annotations

import argparse
import statistics
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from budgetfix.brief.models import Brief
from budgetfix.inspection.again import moved_between
from budgetfix.inspection.inspect import Seen, look_at_all, look_at_moved
from budgetfix.inspection.judging import Block, blocks, judges
from budgetfix.inspection.look import Look
from budgetfix.inspection.registry import RULES
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.room import places, routes, zones
from budgetfix.room.items import TABLES
from budgetfix.room.survey import Change, Survey

JOBS = ("renter", "stager", "couple")
SLIDE_MM = 100.0
INSPECT_MS, AGAIN_MS = 50.0, 5.0
"""What is aimed at: one room with all rules; again after one change."""
HEAD = "{:<28}{:>6}{:>10}{:>9}{:>14}{:>9}{:>8}{:>8}"
CACHES = (places.footprint_of, zones.inside_door, zones.near_piece, zones.away_from, zones.in_room, zones.area_of,
          routes.floor_of, routes.best_of, routes.widest_way, routes.passes)  # fmt: skip


@dataclass(frozen=True)
class Bench:
    """One room of one job, and the rules as the job's brief has them."""

    name: str
    survey: Survey
    room: str
    brief: Brief
    blocks: tuple[Block, ...]


def benches() -> Iterator[Bench]:
    """Every room of the demo jobs."""
    demo = Path(__file__).resolve().parents[2] / "catalog_demo"
    for name in JOBS:
        job = read(demo / name, JobOptions(), date(2026, 6, 1))
        if job.survey is None:
            continue
        judged = judges(RULES, job.brief)
        for facts in job.survey.rooms:
            found = blocks([facts.room], judged)
            yield Bench(f"{name}: {facts.room}", job.survey, facts.room, job.brief, found)


def changes(bench: Bench) -> Iterator[tuple[str, Survey]]:
    """Every thing of the room slid along its wall, and every thing taken away."""
    for table in TABLES:
        for item in bench.survey.table(table):
            if item.room != bench.room:
                continue
            if table != "openings":
                yield f"{item.name} away", bench.survey.changed((Change(table, item.name, remove=True),))
            start = getattr(item, "from_left", None)
            if start is not None and table not in ("openings", "sockets"):
                slid = Change(table, item.name, (("from_left", start + SLIDE_MM),))
                yield f"{item.name} slid", bench.survey.changed((slid,))


def again(bench: Bench, after: Survey, before: tuple[Seen, ...]) -> tuple[Seen, ...]:
    """The room inspected again after a change."""
    moved, room = moved_between(bench.survey, after, bench.room), Look(after, bench.room)
    return tuple(
        look_at_moved(block, after, bench.brief, seen, moved, room)
        for block, seen in zip(bench.blocks, before, strict=True)
    )


def emptied() -> None:
    """No shape and no way is known."""
    for cache in CACHES:
        cache.cache_clear()


def seconds(work: Callable[[], object]) -> float:
    """Wall time of one call."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def measured(bench: Bench, rounds: int) -> tuple[float, list[tuple[float, str]]]:
    """Milliseconds of a whole inspection, and of one again after each change, the slowest last; best of the rounds."""

    def whole() -> tuple[Seen, ...]:
        return look_at_all(bench.blocks, bench.survey, bench.brief)

    before, best = whole(), float("inf")
    times: dict[str, float] = {}
    for _ in range(rounds):
        for name, after in changes(bench):
            emptied()
            best = min(best, seconds(whole))
            times[name] = min(times.get(name, best), seconds(partial(again, bench, after, before)))
    return best * 1000, sorted((time * 1000, name) for name, time in times.items())


def main() -> None:
    """Print the table."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--rounds", type=int, default=3)
    asked.add_argument("--worst", action="store_true", help="name the five slowest changes of each room")
    wish = asked.parse_args()
    print(HEAD.format("room", "rules", "inspect", "changes", "again: usual", "9 in 10", "worst", "share"))
    for bench in benches():
        whole, found = measured(bench, wish.rounds)
        times = [ms for ms, _ in found]
        usual, most = statistics.median(times), times[int(len(times) * 0.9)]
        rules = sum(len(block.judges) for block in bench.blocks)
        print(
            f"{bench.name:<28}{rules:>6}{whole:>8.1f}ms{len(times):>9}{usual:>12.2f}ms{most:>7.2f}ms"
            f"{times[-1]:>6.1f}ms{usual / whole:>8.3f}"
        )
        for ms, name in found[-5:] if wish.worst else ():
            print(f"    {ms:6.2f} ms  {name}")
    print(f"Aimed at: {INSPECT_MS:g} ms and {AGAIN_MS:g} ms.")


if __name__ == "__main__":
    main()
