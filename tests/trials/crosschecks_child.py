"""One run of the command in a process of its own, and all that came of it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

REPO = Path(__file__).resolve().parents[2]
COMMAND = (sys.executable, "-m", "budgetfix")
SECONDS = 900
"""For one run; the jobs need a few."""
PLANNING = ("--seconds", "600")
"""So many that the clock leaves nothing out, however busy the machine is."""
FORGOTTEN = ("PYTHON", "LC_", "TTY_", "BUDGETFIX_", "COV_")
"""Beginnings of variables that a run is not to inherit."""
PLAIN = {
    "PYTHONHASHSEED": "0",
    "LC_ALL": "C.UTF-8",
    "TZ": "UTC",
    "COLUMNS": "80",
}
"""What the run that all others are held against gets."""


@dataclass(frozen=True)
class Came:
    """Exit code, both streams as bytes, and every file of the job's folder afterwards, by its path in it."""

    code: int
    out: bytes
    err: bytes
    files: Mapping[str, bytes]


def surroundings(more: Mapping[str, str | None]) -> dict[str, str]:
    """The plain environment with some variables set, or taken away where None."""
    path = os.pathsep.join(part for part in (str(REPO), os.environ.get("PYTHONPATH", "")) if part)
    kept = {name: value for name, value in os.environ.items() if not name.startswith(FORGOTTEN) and name != "LANGUAGE"}
    found = {**kept, **PLAIN, "PYTHONPATH": path, **more}
    return {name: value for name, value in found.items() if value is not None}


def came(
    words: Sequence[str],
    cwd: Path,
    job: Path,
    more: Mapping[str, str | None] | None = None,
    *,
    command: Sequence[str] = COMMAND,
    umask: int = -1,
) -> Came:
    """Run the command with `words` in `cwd`; `job`: whose files are looked at afterwards."""
    env = surroundings(more or {})
    done = subprocess.run([*command, *words], cwd=cwd, env=env, capture_output=True, timeout=SECONDS, umask=umask)
    return Came(done.returncode, done.stdout, done.stderr, dict(_files(job)))


def _files(job: Path) -> Iterator[tuple[str, bytes]]:
    for path in sorted(job.rglob("*")):
        if path.is_file():
            yield path.relative_to(job).as_posix(), path.read_bytes()


def unlike(plain: Came, other: Came, *, screen: bool = True, typed: Iterable[str] = ()) -> list[str]:
    """Where a run came to something else. `screen`: its words as well; `typed`: files that were given otherwise."""
    found = [] if plain.code == other.code else [f"exit code {other.code}, not {plain.code}: {_last(other.err)}"]
    apart = set(typed)
    for name in sorted({*plain.files, *other.files} - apart):
        if name not in other.files:
            found.append(f"{name} is missing")
        elif name not in plain.files:
            found.append(f"{name} is there too")
        elif plain.files[name] != other.files[name]:
            found.append(f"{name} differs {_where(plain.files[name], other.files[name])}")
    if screen:
        streams = (("standard output", plain.out, other.out), ("standard error", plain.err, other.err))
        found += [f"{name} differs {_where(one, two)}" for name, one, two in streams if one != two]
    return found


def same_object(plain: Came, other: Came) -> list[str]:
    """Where two printed objects say different things, in whichever way their letters are written."""
    if plain.code not in (0, 4) or other.code != plain.code:
        return []
    try:
        return [] if json.loads(plain.out) == json.loads(other.out) else ["the printed object says something else"]
    except ValueError as error:
        return [f"the printed object cannot be read: {error}"]


def _last(err: bytes) -> str:
    return err.decode("utf-8", "replace").strip().rsplit("\n", 1)[-1][:160]


def _where(one: bytes, two: bytes) -> str:
    at = next(
        (at for at, pair in enumerate(zip(one, two, strict=False)) if pair[0] != pair[1]), min(len(one), len(two))
    )
    return f"from byte {at}: {two[max(0, at - 10) : at + 30]!r}, not {one[max(0, at - 10) : at + 30]!r}"
