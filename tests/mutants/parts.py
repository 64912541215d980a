"""What is mutated, part by part, and the tests that judge it: quick ones, since they judge hundreds of mutants.

Whole walks of a job are left out: they would notice more, and take minutes for each mutant.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Part:
    """`modules`: from the root of the project. `share`: of their mutants, tried where nothing else is said.

    `narrowed`: (module, functions of it that belong to the part); the rest of such a module is not counted.
    """

    slug: str
    title: str
    modules: tuple[str, ...]
    tests: tuple[str, ...]
    share: float = 1.0
    narrowed: tuple[tuple[str, tuple[str, ...]], ...] = ()

    def functions(self, module: str) -> tuple[str, ...]:
        """The functions of a module that belong to the part; empty: all of the module does."""
        return dict(self.narrowed).get(module, ())


def _in(folder: str, names: str) -> tuple[str, ...]:
    return tuple(f"budgetfix/{folder}/{name}.py" for name in names.split())


def _tests(folder: str, names: str) -> tuple[str, ...]:
    return tuple(f"tests/{folder}/test_{name}.py" for name in names.split())


OPTIONS = "budgetfix/framing/options.py"
BILL = Part(
    "bill",
    "The bill: packs, delivery, tax, terms, shares, exact numbers, money as the chooser sees it",
    (
        *_in("catalog", "bill bill_by_date stay"),
        *_in("base", "money numbers three_point"),
        *_in("outcome", "sharing"),
        OPTIONS,
    ),
    ("tests/base", "tests/catalog", "tests/outcome/test_sharing.py", "tests/framing/test_options.py"),
    narrowed=((OPTIONS, ("products", "_charge", "labour_minor", "tools", "shops", "limits")),),
)
GEOMETRY_TESTS = (
    "tests/room",
    *_tests("inspection", "cases floor_geometry wall_geometry published_floors published_more published_walls ways"),
    *_tests(
        "inspection", "absence guard errata eyes again inspect not_asked reads screens windows art grouping judging"
    ),
)
ROOM = Part(
    "room",
    "The room: walls, footprints, sides, overlaps, groups, seats",
    _in("room", "places stretches zones overlaps sides seating groups figures"),
    GEOMETRY_TESTS,
    0.2,
)
WAYS = Part(
    "ways",
    "Ways across the floor, and what the rules look at",
    (
        *_in("room", "routes"),
        *_in("inspection", "ways windows screens art grouping judging look guard inspect"),
    ),
    GEOMETRY_TESTS,
    0.1,
)
ROWS = Part(
    "rows",
    "The choice: what can be, the rows of choice, money and hours, and the count afterwards",
    _in("optimize", "buying cannot choice_rows facts hours_rows money_rows order recount windows worth_rows"),
    _tests(
        "optimize",
        "brute buying by_date cannot cuts facts hours_rows in_order lp money_rows order packing placing recount"
        " relax rows_closely setting_up solver stock timetable whole_days windows worth_rows",
    ),
    0.12,
)
PLACES = Part(
    "places",
    "The choice: sessions, money by date, steps in their order",
    _in(
        "optimize",
        "cuts hire_counts in_order model phase_count phase_places phase_rows place_rows setting_up timetable wishes",
    ),
    ROWS.tests,
    0.05,
)
DIGITS = Part(
    "digits",
    "The choice: large numbers in small ones, programs as data",
    _in("optimize", "digits program"),
    _tests("optimize", "digits digits_closely program lp"),
    0.15,
)
SEARCH = Part(
    "search",
    "The search: trees, rounds, bounds, other questions to one problem",
    _in(
        "optimize",
        "answering asking ceilings curve fair finish flow greedy growth linear listing losses merging packing"
        " placing problem relax search sharing solver start stock why_not",
    ),
    ("tests/optimize",),
    0.05,
)
PARTS = (BILL, ROOM, WAYS, ROWS, PLACES, DIGITS, SEARCH)
