"""Hostile files: two thousand runs on jobs made to hurt, with words that would run, and files that would grow."""

from __future__ import annotations

import random
import resource
import shutil
from collections import Counter
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from multiprocessing import get_context
from pathlib import Path

from tests.trials import hostile_files, hostile_outputs, hostile_texts, hostile_walks
from tests.trials.hostile_run import Ran, ran, watch
from tests.trials.trial import Asked, Result, Row, Trial

OFTEN = ("book", "words", "yaml", "path", "never", "table", "instead", "book", "hidden plan", "yaml")
SORTS = tuple({7: "room", 17: "houses", 27: "walk"}.get(at, sort) for at, sort in enumerate(OFTEN * 3))
"""What a try is about, by its number. Whole walks, measured rooms and folders of jobs take long."""
WHOLE = ("room", "walk", "houses")
PIECE = 9
MEMORY_BYTES = 6_000_000_000
"""Of addresses, for a whole process, so that no bomb takes the machine down with it."""
FOLDERS = ("job", "=cmd", "<b>zqx", "\x1b[31mzqx", "zqx\u202e", "[red]", "-job", "job 1'2\"", "\n\nPROOF zqx", "..zqx")
PROMISES = {
    "words": "Whatever the files do, a command ends in words of its own, within bounded time and memory",
    "taken": "What is past a limit, or would do something, is refused (exit 3) with what was found and what was wanted",
    "outside": "No file beside the job folder is written, moved or made, no other program is begun",
    "screen": "The screen is sent nothing but signs to read and ends of lines",
    "formulas": "No user's word is a formula or a link in a workbook or a table that is written",
    "page": "No user's word is an element, a script or a link of a page: a page has as many as with harmless words",
    "read back": "Tables and calendars hold as many rows, entries and keys as with harmless words",
    "socket": "No socket is opened",
}
EVERY = ("words", "outside", "screen", "socket")
WRITTEN = ("formulas", "page", "read back")


@dataclass
class Counted:
    """What came of some tries."""

    tried: Counter[str] = field(default_factory=Counter)
    broken: Counter[str] = field(default_factory=Counter)
    ends: Counter[str] = field(default_factory=Counter)
    lines: list[str] = field(default_factory=list)


def run(asked: Asked) -> Result:
    """Every try by its number alone, in processes of little memory; as many as there are lanes."""
    pieces = [range(first, min(first + PIECE, asked.tries)) for first in range(0, asked.tries, PIECE)]
    counted = Counted()
    with ProcessPoolExecutor(asked.lanes, mp_context=get_context("spawn"), initializer=_small) as pool:
        for part in pool.map(some, [(asked.seed, piece, asked.folder) for piece in pieces]):
            counted.tried += part.tried
            counted.broken += part.broken
            counted.ends += part.ends
            counted.lines += part.lines
    seen = {"words": f"{counted.ends['refused']:,} refused, {counted.ends['read']:,} read"}
    rows = tuple(
        Row(promise, counted.tried[name], counted.broken[name], seen.get(name, ""))
        for name, promise in PROMISES.items()
    )
    return Result(rows, tuple(counted.lines))


def _small() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY_BYTES, MEMORY_BYTES))


def some(task: tuple[int, Iterable[int], Path]) -> Counted:
    """The tries of these numbers."""
    seed, numbers, folder = task
    counted = Counted()
    for number in numbers:
        sort = SORTS[number % len(SORTS)]
        place = folder / f"try-{number}"
        found, promises = one(seed, number, sort, place)
        shutil.rmtree(place)
        counted.tried.update((*EVERY, *promises))
        counted.ends["refused" if found.refused else "read"] += 1
        told = dict(found.breaks)
        for promise, words in sorted(told.items()):
            counted.broken[promise] += 1
            again = f"python -m tests.trials --only hostile --seed {seed}; try {number} ({sort})"
            counted.lines.append(f"{promise}: {words[:300]} | {again}")
    return counted


def one(seed: int, number: int, sort: str, place: Path) -> tuple[Ran, tuple[str, ...]]:
    """One try, by its seed and number alone: what came of it, and what it tried beyond what every try does."""
    chance = random.Random(f"{seed}/{number}")
    folder = place / (chance.choice(FOLDERS) if chance.random() < 0.3 else "job")
    folder.mkdir(parents=True)
    (place / "canary.yaml").write_text("zqx: 1")
    if sort in WHOLE:
        return hostile_walks.whole(sort, chance, place), WRITTEN
    words = hostile_texts.drawn(chance, never=sort == "never")
    files = hostile_texts.files(words if sort in ("words", "never") else hostile_texts.PLAIN)
    command = "plan"
    match sort:
        case "book":
            command = chance.choice(("inspect", "plan"))
            name = chance.choice(("survey.xlsx", "catalog.xlsx"))
            files[name] = chance.choice(list(hostile_files.BOOKS.values()))(chance)
            files["brief.yaml"] = files["brief.yaml"].replace(b"catalog.yaml", b"catalog.xlsx")
        case "yaml":
            command = chance.choice(("inspect", "plan"))
            name = chance.choice(("survey.yaml", "catalog.yaml", "brief.yaml"))
            text = chance.choice(list(hostile_files.YAMLS.values()))(chance)
            files[name] = text.encode("utf-8", "surrogatepass")
        case "table":
            command = "inspect"
            text = chance.choice(list(hostile_files.TABLES.values()))(chance)
            files["faults.csv"] = text.encode("utf-8", "surrogatepass")
        case "path":
            files["brief.yaml"] = b"catalog: " + _quoted(chance.choice(hostile_files.PATHS)) + b"\n"
        case "hidden plan":
            command = chance.choice(("replan", "plan"))
            files["plan.xlsx"] = chance.choice(list(hostile_files.BOOKS.values()))(chance)
    for name, data in files.items():
        (folder / name).write_bytes(data)
    if sort == "path":
        hostile_files.traps(folder)
    if sort == "instead":
        hostile_files.instead(folder, chance.choice(("catalog.yaml", "brief.yaml", "faults.csv", "plan.xlsx")), chance)
    found = ran(command, folder, dict.fromkeys([*files, *(path.name for path in folder.iterdir())], b""))
    return found, _more(sort, found, folder, place)


def _more(sort: str, found: Ran, folder: Path, place: Path) -> tuple[str, ...]:
    """What this sort of try tries beyond what every one does; breaks are added to `found`."""
    if sort == "never":
        if not found.refused:
            found.breaks.append(("taken", f"exit {found.code}"))
        return ("taken",)
    if sort != "words":
        return ()
    if found.code != 0:
        found.breaks.append(("read back", f"exit {found.code}: {found.said[:300]}"))
        return WRITTEN
    found.breaks += hostile_outputs.judged(folder, _shape(place / "harmless"))
    return WRITTEN


_shapes: list[dict[str, object]] = []


def _shape(folder: Path) -> dict[str, object]:
    """That of the job with harmless words, planned once a process."""
    if not _shapes:
        folder.mkdir()
        files = hostile_texts.files(hostile_texts.PLAIN)
        for name, data in files.items():
            (folder / name).write_bytes(data)
        ran("plan", folder, files)
        _shapes.append(hostile_outputs.shape_of(folder))
    return _shapes[0]


def _quoted(text: str) -> bytes:
    return (
        ("'" + text.replace("'", "''") + "'").encode() if text.isprintable() else repr(text).replace("'", '"').encode()
    )


TRIAL = Trial("hostile", "Hostile files", 18, 2_000, run)
__all__ = ["TRIAL", "one", "run", "some", "watch"]
