"""Files as other machines save them, and folders as other people name them: the same plan of the same words."""

from __future__ import annotations

import json
import os
import shutil
import sys
import unicodedata
from pathlib import Path
from random import Random

from tests.trials.crosschecks_child import PLANNING, Came, came, unlike
from tests.trials.crosschecks_desk import JOB, TRIES_A_JOB, VERBS, Desk
from tests.trials.crosschecks_jobs import SHEETS

Tried = tuple[str, list[str]]
TEXTS = (".yaml", ".csv")
MARK = "\ufeff".encode()
ENDS = {"\\r\\n": b"\r\n", "\\r": b"\r", "\\n": b"\n"}
ODD = (
    "my room",
    unicodedata.normalize("NFC", "Zoës Küche – Höhe"),
    unicodedata.normalize("NFD", "Zoës Küche – Höhe"),
    "🛋 sofa 🪴",
    "客厅 とても",
    "غرفة",
    "-leading dash",
    "100% 'quoted' \"room\" & <b>",
    "a,b;c=d",
    "ends with a dot.",
    " spaces around ",
    "~tilde $HOME `x`",
    "[brackets] *?",
    "UPPER lower İı",
    os.fsdecode(b"caf\xe9 of old"),
)
"""Names that a folder can have."""
OLD = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
"""Python then takes names of files for ASCII."""


def line_ends(desk: Desk, place: Path, dice: Random) -> Tried:
    """Every text file of a job saved anew: with other ends of lines, a mark in front, without a last end."""
    index, verb = desk.drawn(dice, ("plan --json", "plan", "inspect"))
    index = SHEETS if dice.random() < 0.3 else index
    job = desk.copy(index, verb, place / JOB)
    name, marked, cut = dice.choice(sorted(ENDS)), dice.random() < 0.5, dice.random() < 0.3
    if name == "\\n":
        marked = True
    names = [path.name for path in sorted(job.iterdir()) if path.suffix in TEXTS]
    for one in names:
        (job / one).write_bytes(_saved((job / one).read_bytes(), ENDS[name], marked=marked, cut=cut))
    other = came(VERBS[verb], place, job)
    said = f"{name}{', a mark in front' if marked else ''}{', no last end' if cut else ''}"
    return f"{verb} of job {index} with {said}", unlike(desk.plain(index, verb), other, typed=names)


def _saved(text: bytes, end: bytes, *, marked: bool, cut: bool) -> bytes:
    lines = text.split(b"\n")
    return (MARK if marked else b"") + end.join(lines[:-1] if cut and not lines[-1] else lines)


def paths(desk: Desk, place: Path, dice: Random) -> Tried:
    """A job somewhere else, or called by another path, or of another name."""
    return (_named if dice.random() < 0.4 else _elsewhere)(desk, place, dice)


def _elsewhere(desk: Desk, place: Path, dice: Random) -> Tried:
    """The same folder name: the same bytes, wherever it stands and however the way to it is written."""
    index, _ = desk.drawn(dice)
    above = place / dice.choice((*ODD, *("deep" * 40 + f"/{'e' * 200}/" * dice.randint(1, 8),) * 4)).strip("/")
    job = desk.copy(index, "plan", above / JOB)
    (above / "link").symlink_to(JOB)
    cwd, typed = dice.choice(
        (
            (above, JOB),
            (above, f"./{JOB}"),
            (above, f"{JOB}/"),
            (above, f".//{JOB}//"),
            (above, "link"),
            (above, "link/"),
            (above, str(job)),
            (above, f"../{above.name}/{JOB}"),
            (job, "."),
            (job, "./"),
            (job, f"../{JOB}"),
            (job, str(job)),
            (place, str(job.relative_to(place))),
        )
    )
    other = came(_words(typed), cwd, job)
    return f"job {index} as {typed!r} in {str(cwd.relative_to(place))[:60]!r}", _same(desk, index, other, typed)


def _words(typed: str) -> tuple[str, ...]:
    return ("plan", "--json", *PLANNING, "--", typed)


def _same(desk: Desk, index: int, other: Came, typed: str) -> list[str]:
    """Where files differ, or the printed object in anything but the way to the files."""
    plain = desk.plain(index, "plan --json")
    wrong = unlike(plain, other, screen=False)
    return wrong or _paths_of(plain.out, other.out, typed) if plain.code == 0 else wrong


def _paths_of(plain: bytes, other: bytes, typed: str) -> list[str]:
    one, two = json.loads(plain), json.loads(other)
    wanted = [str(Path(typed) / Path(path).name) for path in one.pop("files")]
    found = two.pop("files")
    return [
        *(["the printed object says something else"] if one != two else []),
        *([f"files {found}, not {wanted}"] if found != wanted else []),
    ]


def _named(desk: Desk, place: Path, dice: Random) -> Tried:
    """Another folder name: what is written is what the walk makes of the plain folder when told that name.

    A measured room is called by its rooms, so these are listed faults.
    """
    index = dice.randrange(1, 2 + desk.tries // TRIES_A_JOB)
    name = dice.choice(ODD)
    job = desk.copy(index, "plan", place / name)
    more = OLD if dice.random() < 0.3 else {}
    other = came(_words(str(Path(name))), place, job, more)
    told = desk.copy(index, "plan", place / "told" / JOB)
    words = (sys.executable, "-m", "tests.trials.crosschecks_named")
    wanted = came((str(told), os.fsencode(name).hex()), place, told, command=words)
    shutil.rmtree(place / "told")
    said = f"job {index} named {name!r}{' in the C locale' if more else ''}"
    return said, unlike(wanted, other, screen=False)
