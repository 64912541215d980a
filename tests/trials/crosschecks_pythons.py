"""Other Pythons of this machine, each with budgetfix installed as its own pip does it, in an environment of its own.

The running Python is one of them once more, with the oldest libraries that pyproject.toml allows.

Looked for are `python3.11` to `python3.19` on the path, and those in the folders that BUDGETFIX_PYTHONS names (parted
as in PATH): executables, folders with `bin/python3`, or folders of such folders.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from random import Random

from tests.trials.crosschecks_child import REPO, Came, came, unlike
from tests.trials.crosschecks_desk import JOB, VERBS, Desk
from tests.trials.crosschecks_jobs import DEMO

FOLDERS = "BUDGETFIX_PYTHONS"
FIRST, LAST = 11, 19
WHICH = "import sys; print(*sys.version_info[:2])"
WHAT = "import sys, importlib.metadata as m; print('%d.%d.%d with PuLP' % sys.version_info[:3], m.version('pulp'))"
INSTALL = ("-m", "pip", "--quiet", "--disable-pip-version-check", "install")
MINUTES = 15
OLDEST = "oldest"
WHOLE = 0.12
"""Share of the tries that plan the renter's room, which takes half a minute."""


@dataclass(frozen=True)
class Made:
    """An environment with budgetfix in it, and what is in there.

    `same`: whether all is held to the byte. Older libraries write the same cells of a workbook in other words, fold
    the lines of a calendar elsewhere, and may take other rounds to the same plan.
    """

    python: Path
    said: str
    same: bool = True


@dataclass
class Pythons:
    """Other Pythons, set up when made. `few`: none is asked."""

    folder: Path
    few: bool
    made: list[Made] = field(default_factory=list)
    not_run: str = ""

    def __post_init__(self) -> None:
        if self.few:
            self.not_run = "one Python is enough for so few tries"
            return
        failed = []
        wanted = [(python, version, ()) for version, python in sorted(others().items())]
        for python, name, more in (*wanted, (Path(sys.executable), OLDEST, oldest())):
            made = environment(python, self.folder / name, more)
            if isinstance(made, Made):
                self.made.append(made)
            else:
                failed.append(made)
        if not self.made:
            self.not_run = failed[0] if failed else f"no other Python was found; {FOLDERS} can name folders"

    @property
    def seen(self) -> str:
        """The Pythons that are held against the running one."""
        return ", ".join(one.said for one in self.made)

    def tried(self, desk: Desk, place: Path, dice: Random) -> tuple[str, list[str]]:
        """A command on a job of the pool under another Python; now and then on the renter's whole room."""
        other, whole = dice.choice(self.made), dice.random() < WHOLE
        index, verb = (DEMO, "plan --json") if whole else desk.drawn(dice)
        job = desk.copy(index, verb, place / JOB)
        ran = came(VERBS[verb], place, job, {"PYTHONPATH": None}, command=(str(other.python), "-m", "budgetfix"))
        plain = desk.plain(index, verb)
        pair = (plain, ran) if other.same else (loosely(plain), loosely(ran))
        return f"{verb} of job {index} by {other.said}", unlike(*pair)


def loosely(one: Came) -> Came:
    """What came, without workbooks and rounds, and with calendars unfolded (RFC 5545, 3.1)."""
    kept = {name: data.replace(b"\r\n ", b"") for name, data in one.files.items() if not name.endswith(".xlsx")}
    return replace(one, files=kept, out=re.sub(rb'"rounds": \{[^}]*\}', b"", one.out))


def others() -> dict[str, Path]:
    """Pythons by version, such as `3.13`, none of them the running one's."""
    found: dict[str, Path] = {}
    for python in _candidates():
        version = _version(python)
        if version is not None and version != sys.version_info[:2] and FIRST <= version[1] <= LAST and version[0] == 3:
            found.setdefault(f"{version[0]}.{version[1]}", python)
    return found


def _candidates() -> Iterator[Path]:
    for minor in range(FIRST, LAST + 1):
        named = shutil.which(f"python3.{minor}")
        if named is not None:
            yield Path(named)
    for part in os.environ.get(FOLDERS, "").split(os.pathsep):
        folder = Path(part)
        if part and folder.is_file():
            yield folder
        elif part and folder.is_dir():
            yield from (one for one in sorted((folder / "bin/python3", *folder.glob("*/bin/python3"))) if one.is_file())


def _version(python: Path) -> tuple[int, int] | None:
    try:
        done = subprocess.run([python, "-c", WHICH], capture_output=True, text=True, timeout=60)
    except OSError:
        return None
    words = done.stdout.split()
    return (int(words[0]), int(words[1])) if done.returncode == 0 and len(words) == 2 else None


def oldest(pyproject: str = "pyproject.toml") -> tuple[str, ...]:
    """The least version of each library that budgetfix asks for, as pip takes it."""
    with (REPO / pyproject).open("rb") as file:
        asked: list[str] = tomllib.load(file)["project"]["dependencies"]
    return tuple(one.replace(">=", "==") for one in asked)


def environment(python: Path, folder: Path, more: tuple[str, ...] = ()) -> Made | str:
    """A new environment with this very budgetfix and whatever pip gives it; or, in words, why there is none.

    `more`: versions that it must be.
    """
    own = folder / "bin" / "python"
    for words in ((python, "-m", "venv", folder), (own, *INSTALL, *more, REPO)):
        done = subprocess.run([*map(str, words)], capture_output=True, text=True, timeout=60 * MINUTES)
        if done.returncode:
            why = (done.stderr.strip() or done.stdout.strip()).rsplit("\n", 1)[-1]
            return f"{python.name}: {why[:120]}"
    done = subprocess.run([str(own), "-c", WHAT], capture_output=True, text=True, timeout=60, check=True)
    return Made(own, done.stdout.strip() + (f", {OLDEST} libraries" if more else ""), not more)
