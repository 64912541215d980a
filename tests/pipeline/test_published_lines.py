"""Lines of work with published answers: everything done, in order, in the fewest equal sessions; and bins."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from tests.pipeline.listed_job import one_each, proven_plan, sessions_used, with_hours, write_job

MERTENS = (1, 5, 4, 3, 5, 6, 5)
MERTENS_ORDER = ((0, 1), (0, 3), (1, 2), (1, 4), (3, 6), (4, 5))
JACKSON = (6, 2, 5, 7, 1, 2, 3, 6, 5, 5, 4)
JACKSON_ORDER = (
    (0, 1), (0, 2), (0, 3), (0, 4), (1, 5), (2, 6), (3, 6), (4, 6), (5, 7), (6, 8), (7, 9), (8, 10), (9, 10),
)  # fmt: skip
BOWMAN = (11, 17, 9, 5, 8, 12, 10, 3)
BOWMAN_ORDER = ((0, 1), (1, 2), (1, 3), (2, 4), (2, 5), (3, 5), (4, 6), (5, 7))
JAESCHKE = (5, 3, 4, 5, 4, 5, 1, 4, 6)
JAESCHKE_ORDER = (
    (0, 1), (0, 2), (1, 3), (2, 3), (3, 4), (3, 5), (3, 6), (4, 7), (5, 8), (6, 8), (7, 8),
)  # fmt: skip
MANSOOR = (4, 38, 45, 12, 10, 8, 12, 10, 2, 10, 34)
MANSOOR_ORDER = (
    (0, 3), (1, 3), (1, 4), (2, 10), (3, 5), (4, 6), (5, 7), (6, 8), (7, 9), (8, 9), (9, 10),
)  # fmt: skip
SCHOLL_B = (
    100, 99, 97, 97, 97, 93, 93, 92, 92, 88, 83, 83, 79, 76, 76, 75, 72, 71, 70, 69, 67, 66, 63, 62, 62, 61, 61, 51, 50,
    44, 44, 43, 43, 40, 39, 37, 37, 30, 23, 20, 19, 18, 17, 15, 14, 13, 13, 12, 8, 8,
)  # fmt: skip


def line_of_work(folder: Path, hours: Sequence[int], order: Sequence[tuple[int, int]], session: int) -> int:
    """Sessions that everything takes, each task no earlier than those before it."""
    before: dict[int, list[str]] = {index: [] for index in range(len(hours))}
    for first, then in order:
        before[then].append(f"i{first + 1}")
    remedies = with_hours(one_each((1,) * len(hours), (0,) * len(hours)), hours)
    for index, remedy in enumerate(remedies):
        remedy["needs"] = before[index]
    brief = {"hours": [session] * len(hours), "must": "all"}
    write_job(folder, (1,) * len(hours), remedies, brief)
    book = proven_plan(folder)
    at = {task.candidate: task.session or 0 for task in book.tasks}
    assert all(at[f"i{first + 1}"] <= at[f"i{then + 1}"] for first, then in order)
    return sessions_used(book)


@pytest.mark.parametrize(("session", "best"), [(6, 6), (7, 5), (8, 5), (10, 3), (15, 2), (18, 2)])
def test_seven_tasks_in_order(tmp_path: Path, session: int, best: int) -> None:
    """Fewest sessions for the seven tasks of Mertens.

    A. Scholl, Data of assembly line balancing problems, TH Darmstadt 1993.
    """
    assert line_of_work(tmp_path, MERTENS, MERTENS_ORDER, session) == best


@pytest.mark.parametrize(("session", "best"), [(7, 8), (9, 6), (10, 5), (13, 4), (14, 4), (21, 3)])
def test_eleven_tasks_in_order(tmp_path: Path, session: int, best: int) -> None:
    """Fewest sessions for the eleven tasks of Jackson.

    A. Scholl, Data of assembly line balancing problems, TH Darmstadt 1993.
    """
    assert line_of_work(tmp_path, JACKSON, JACKSON_ORDER, session) == best


def test_eight_tasks_in_order(tmp_path: Path) -> None:
    """Five sessions of 20 for the eight tasks of Bowman.

    A. Scholl, Data of assembly line balancing problems, TH Darmstadt 1993.
    """
    assert line_of_work(tmp_path, BOWMAN, BOWMAN_ORDER, 20) == 5


@pytest.mark.parametrize(("session", "best"), [(6, 8), (7, 7), (8, 6), (10, 4), (18, 3)])
def test_nine_tasks_in_order(tmp_path: Path, session: int, best: int) -> None:
    """Fewest sessions for the nine tasks of Jaeschke.

    A. Scholl, Data of assembly line balancing problems, TH Darmstadt 1993.
    """
    assert line_of_work(tmp_path, JAESCHKE, JAESCHKE_ORDER, session) == best


@pytest.mark.parametrize(("session", "best"), [(48, 4), (62, 3), (94, 2)])
def test_eleven_longer_tasks_in_order(tmp_path: Path, session: int, best: int) -> None:
    """Fewest sessions for the eleven tasks of Mansoor.

    A. Scholl, Data of assembly line balancing problems, TH Darmstadt 1993.
    """
    assert line_of_work(tmp_path, MANSOOR, MANSOOR_ORDER, session) == best


def test_fifty_tasks_without_order(tmp_path: Path) -> None:
    """Fifty tasks fill 31 sessions of 100, and no fewer; they stand for no points, so any order of them will do.

    A. Scholl, R. Klein and C. Juergens, BISON, Computers & Operations Research 24, 1997 (N1C1W1_B).
    """
    nothing = (0,) * len(SCHOLL_B)
    brief = {"hours": [100] * 33, "must": "all"}
    write_job(tmp_path, nothing, with_hours(one_each(nothing, nothing), SCHOLL_B), brief)
    assert sessions_used(proven_plan(tmp_path)) == 31
