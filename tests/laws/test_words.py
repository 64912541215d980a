"""What no file of the project may say: words that are barred, paths of one machine, promises to finish later."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from tests.laws.source import REPO, plant

# Barred words are put together from pieces, so that this file does not hold them.
BARRED = ("trans" + "cript", "seed" + " " + "document", "TO" + "DO", "FIX" + "ME", "XX" + "X:")
PATHS = r"(?<![\w.\-/])/(?:{})/\w".format("|".join(("wor" + "k", "tm" + "p", "hom" + "e", "roo" + "t", "User" + "s")))
HOSTS = ("py" + "pi.org", "python" + "hosted", "npm" + "js", "git" + "hub.com", "conda" + ".org", "local" + "host")
TOP = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "budgetfix",
    "catalog_demo",
    "tests",
    "reports",
    "Makefile",
    "LICENSE",
    ".ci",
    ".gitignore",
}
FORBIDDEN = re.compile("|".join([*map(re.escape, BARRED), PATHS, *map(re.escape, HOSTS)]))
DEMO_FILES = re.compile(r"(survey|brief|catalog)\.(yaml|xlsx)|catalog\.csv|faults\.csv|README\.md")


def listed(root: Path, *words: str) -> set[str]:
    """Names that `git ls-files` gives below `root`, whoever owns the checkout."""
    command = ["git", "-c", "safe.directory=*", "ls-files", "-z", *words]
    done = subprocess.run(command, cwd=root, capture_output=True, text=True, check=True)
    return {name for name in done.stdout.split("\0") if name and (root / name).is_file()}


def files(root: Path) -> tuple[str, ...]:
    """Files that git tracks, and new ones in planned places that it would take in."""
    new = {name for name in listed(root, "--others", "--exclude-standard") if name.split("/")[0] in TOP}
    return tuple(sorted(listed(root) | new))


def strangers(root: Path) -> list[str]:
    """Names at the top of what git tracks that nobody planned."""
    return sorted({name.split("/")[0] for name in listed(root)} - TOP)


def barred(root: Path) -> list[str]:
    """Places in readable files, and file names, that hold a barred word, a machine's path or a host."""
    found = [name for name in files(root) if FORBIDDEN.search(name)]
    for name in files(root):
        data = (root / name).read_bytes()
        if b"\0" in data:
            continue
        for number, line in enumerate(data.decode("utf-8").splitlines(), start=1):
            if match := FORBIDDEN.search(line):
                found.append(f"{name}:{number} {match[0]}")
    return found


def littered(root: Path) -> list[str]:
    """Files in `catalog_demo` that are not part of a job as typed: plans made there would end up in the wheel."""
    jobs = [path for path in sorted((root / "catalog_demo").rglob("*")) if path.is_file()]
    return [path.relative_to(root).as_posix() for path in jobs if not DEMO_FILES.fullmatch(path.name)]


@pytest.fixture
def checkout() -> Path:
    """The git checkout the tests run in."""
    if not (REPO / ".git").exists():
        pytest.skip("not a git checkout: files of the project cannot be told from others")
    return REPO


@pytest.fixture
def planted(tmp_path: Path) -> Path:
    """An empty git checkout."""
    subprocess.run(["git", "init", "--quiet"], cwd=tmp_path, check=True)
    return tmp_path


def test_the_top_level_holds_only_what_was_planned(checkout: Path) -> None:
    """Someone who opens the project sees eleven names, all of them known."""
    assert strangers(checkout) == []


def test_no_file_holds_a_barred_word(checkout: Path) -> None:
    """No barred words, no paths of one machine, no hosts, no promises to finish later."""
    assert barred(checkout) == []


def test_demo_jobs_hold_only_what_people_typed() -> None:
    """The demo folders are as they were before any plan."""
    assert littered(REPO) == []


def test_a_stranger_at_the_top_is_found(planted: Path) -> None:
    """A folder `tools` and a stray note are seen once git tracks them; planned names and mere litter are not."""
    plant(planted, {"tools/a.py": "", "notes.md": "", "tests/b.py": "", "Makefile": ""})
    subprocess.run(["git", "add", "."], cwd=planted, check=True)
    plant(planted, {"scratch.txt": ""})
    assert strangers(planted) == ["notes.md", "tools"]


@pytest.mark.parametrize("text", [*BARRED, "see " + "/wor" + "k/main", "'/tm" + "p/a'", "https://" + HOSTS[0]])
def test_a_planted_word_is_found(planted: Path, text: str) -> None:
    """Each barred word, path and host is seen, with its line."""
    plant(planted, {"README.md": f"Fine.\nNot fine: {text}\n"})
    assert [line.split(" ")[0] for line in barred(planted)] == ["README.md:2"]


def test_ordinary_words_and_paths_are_allowed(planted: Path) -> None:
    """Homework, relative paths, a shebang and a book in bytes are fine."""
    plant(planted, {"a.md": "#!/usr/bin/env bash\nhomework at/home/ and reports/demo/renter, rooms/home/a\n"})
    (planted / "plan.xlsx").write_bytes(b"PK\0 " + BARRED[0].encode())
    assert barred(planted) == []


def test_litter_in_a_demo_job_is_found(tmp_path: Path) -> None:
    """A plan made inside a demo job is seen."""
    plant(tmp_path, {"catalog_demo/renter/survey.yaml": "", "catalog_demo/renter/plan.xlsx": ""})
    assert littered(tmp_path) == ["catalog_demo/renter/plan.xlsx"]
