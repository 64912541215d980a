"""All commands on one hostile job, one after the other; and two hostile jobs in one folder."""

from __future__ import annotations

import random
import warnings
from collections.abc import Iterator
from pathlib import Path
from unittest.mock import patch

import openpyxl

from tests.trials import hostile_outputs, hostile_rooms, hostile_texts
from tests.trials.hostile_run import Ran, ran

Files = dict[str, bytes]
Shape = dict[str, object]
HOUSES = (
    "=cmd",
    "-job",
    "job 1'2\"",
    "[red]",
    "\x1b[31mcmd",
    "<b>b",
    'a","b',
    "%s",
    "\u202ejob",
    "A1",
    "'x'!A1",
    "&amp;",
)
"""Names of jobs in a folder."""
ROOMS = 0.25
"""How many of the walks and folders are of measured rooms; the others are of listed faults."""
HEAD = 4
"""Row of the headings of a plan's lists."""


def laid_out(folder: Path, files: Files) -> None:
    """Put the files of a job into a folder, which is made where it is not there."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, data in files.items():
        (folder / name).write_bytes(data)


def walked(folder: Path, files: Files) -> Ran:
    """Inspect, plan, compare with a larger budget, tick, replan, in this process; each must be read."""
    laid_out(folder, files)
    with patch("budgetfix.pipeline.comparing.cores", lambda: 1):
        found = _each(("inspect", "plan", "compare"), folder, files)
    if found.code == 0:
        tick(folder / "plan.xlsx")
        last = _each(("replan",), folder, dict.fromkeys((path.name for path in folder.iterdir()), b""))
        last.breaks[:0] = found.breaks
        found = last
    return found


def housed(folder: Path, files: Files, names: tuple[str, ...]) -> Ran:
    """Inspect and plan a folder of several jobs, in this process."""
    for name in names:
        laid_out(folder / name, files)
    with patch("budgetfix.pipeline.lanes.cores", lambda: 1):
        return _each(("inspect", "plan"), folder, dict.fromkeys(names, b""))


def _each(commands: tuple[str, ...], folder: Path, files: Files) -> Ran:
    """The last command that was run: what is broken in any of them is broken in it. The first to refuse is the last."""
    breaks: list[tuple[str, str]] = []
    for command in commands:
        found = ran(command, folder, files)
        breaks += found.breaks
        if found.code != 0:
            breaks.append(("read back", f"{command}: exit {found.code}: {found.said[:300]}"))
            break
    found.breaks = breaks
    return found


def tick(path: Path) -> None:
    """Everything is bought as planned, and the first step done in a quarter of an hour."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        book = openpyxl.load_workbook(path)
    wanted: tuple[tuple[str, dict[str, str | int]], ...] = (
        ("Buy", {"Bought": "bought"}),
        ("Do", {"Done": "yes", "Real minutes": 15}),
    )
    for title, headings in wanted:
        sheet = book[title]
        columns = {str(cell.value): cell.column or 0 for cell in sheet[HEAD]}
        rows = [row for row in range(HEAD + 1, sheet.max_row + 1) if _ours(sheet[f"A{row}"].value)]
        for row in rows if title == "Buy" else rows[:1]:
            for heading, value in headings.items():
                sheet.cell(row, columns[heading], value)
    book.save(path)


def _ours(id: object) -> bool:
    return bool(id) and id != "id"


def whole(sort: str, chance: random.Random, place: Path) -> Ran:
    """A measured room, a walk or a folder of jobs, with words drawn by `chance`; looked at beside harmless words."""
    what = hostile_rooms if sort == "room" or chance.random() < ROOMS else hostile_texts
    names = tuple(chance.sample(HOUSES, 2))
    found = _run(sort, place / "job", what.files(what.drawn(chance)), names)
    if found.code == 0:
        key = (sort, what.__name__)
        if key not in _harmless:
            _run(sort, place / "harmless", what.files(what.PLAIN), ("a", "b"))
            _harmless[key] = [hostile_outputs.shape_of(one) for one in _folders(place / "harmless")]
        found.breaks += _compared(place / "job", _harmless[key])
    return found


_harmless: dict[tuple[str, str], list[Shape]] = {}


def _run(sort: str, folder: Path, files: Files, names: tuple[str, ...]) -> Ran:
    match sort:
        case "walk":
            return walked(folder, files)
        case "houses":
            return housed(folder, files, names)
    laid_out(folder, files)
    return _each(("inspect", "plan"), folder, files)


def _folders(folder: Path) -> list[Path]:
    return [folder, *sorted(path for path in folder.iterdir() if path.is_dir())]


def _compared(folder: Path, wanted: list[Shape]) -> Iterator[tuple[str, str]]:
    """Breaks in the files of a folder and of those in it, beside the same with harmless words."""
    found = _folders(folder)
    if len(wanted) != len(found):
        yield "read back", f"{len(found)} folders, not {len(wanted)}"
        return
    for path, shape in zip(found, wanted, strict=True):
        yield from hostile_outputs.judged(path, shape)
