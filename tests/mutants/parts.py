"""What is mutated, part by part, and the tests that judge it: quick ones, since they judge hundreds of mutants.

Whole walks of a job are left out: they would notice more, and take minutes for each mutant.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Part:
    """`modules`: from the root of the project. `share`: of their mutants, tried where nothing else is said."""

    slug: str
    title: str
    modules: tuple[str, ...]
    tests: tuple[str, ...]
    share: float = 1.0


def _in(folder: str, names: str) -> tuple[str, ...]:
    return tuple(f"budgetfix/{folder}/{name}.py" for name in names.split())


def _tests(folder: str, names: str) -> tuple[str, ...]:
    return tuple(f"tests/{folder}/test_{name}.py" for name in names.split())


BILL = Part(
    "bill",
    "The bill: packs, delivery, tax, terms, shares, exact numbers",
    (
        *_in("catalog", "bill bill_by_date stay"),
        *_in("base", "money numbers three_point"),
        *_in("outcome", "sharing"),
    ),
    ("tests/base", "tests/catalog", "tests/outcome/test_sharing.py"),
)
GEOMETRY = Part(
    "geometry",
    "Geometry: walls, footprints, ways, overlaps, groups, seats",
    (
        *_in("room", "places stretches zones overlaps sides seating routes groups figures"),
        *_in("inspection", "ways windows screens art grouping judging look guard inspect"),
    ),
    (
        "tests/room",
        *_tests("inspection", "cases floor_geometry wall_geometry published_floors published_more published_walls"),
        *_tests("inspection", "guard errata eyes again not_asked reads"),
    ),
)
ROWS = Part(
    "rows",
    "The choice: what can be, its rows, the order of the steps, and the count afterwards",
    _in(
        "optimize",
        "buying cannot choice_rows cuts facts hire_counts hours_rows in_order model money_rows order phase_count"
        " phase_places phase_rows place_rows recount setting_up timetable windows wishes worth_rows",
    ),
    _tests(
        "optimize",
        "brute buying by_date cannot cuts in_order lp packing placing recount relax setting_up solver stock timetable"
        " whole_days",
    ),
    0.1,
)
SEARCH = Part(
    "search",
    "The search: trees, rounds, bounds, other questions to one problem",
    _in(
        "optimize",
        "answering asking ceilings curve fair finish flow growth linear listing losses merging packing placing"
        " problem relax search sharing solver start stock why_not",
    ),
    ("tests/optimize",),
    0.05,
)
PARTS = (BILL, GEOMETRY, ROWS, SEARCH)
