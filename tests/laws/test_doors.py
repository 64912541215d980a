"""Law 2: files are read in `intake`, written in `exports`, printing and the clock stay in `cli`."""

from __future__ import annotations

import ast
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.laws.source import REPO, Source, plant, sources

READERS = {
    "openpyxl.load_workbook",
    "csv.reader",
    "csv.DictReader",
    "json.load",
    "tomllib.load",
    "ruamel.yaml.YAML",
    "zipfile.ZipFile",
}
READ_METHODS = {"read_text", "read_bytes"}
WRITERS = {
    *(f"os.{name}" for name in ("mkdir", "makedirs", "replace", "rename", "remove", "unlink", "rmdir", "truncate")),
    *(f"shutil.{name}" for name in ("copy", "copy2", "copyfile", "copytree", "move", "rmtree", "copyfileobj")),
    "xlsxwriter.Workbook",
}
WRITE_METHODS = {"write_text", "write_bytes", "mkdir", "rmdir", "unlink", "touch", "save", "to_csv", "to_excel"}
CLOCK = {"datetime.now", "datetime.today", "datetime.utcnow", "date.today"}
PRINTING = {"print", "input", "sys.stdout.write", "sys.stderr.write"}


def opening(source: Source, call: ast.Call, name: str) -> str | None:
    """Mode of a call that opens a file: `r` where none is given, `?` where it is worked out; else None."""
    if name in {"open", "io.open", "os.open", "codecs.open"}:
        if call.args and source.dotted(call.args[0]) == "os.devnull":
            return None
        if any(source.dotted(node) == "os.O_DIRECTORY" for node in ast.walk(call) if isinstance(node, ast.Attribute)):
            return None
        place = 1
    elif name.endswith(".open"):
        place = 0
    else:
        return None
    modes = [*call.args[place : place + 1], *(word.value for word in call.keywords if word.arg == "mode")]
    if not modes:
        return "r"
    return str(modes[0].value) if isinstance(modes[0], ast.Constant) else "?"


def in_memory(source: Source, call: ast.Call) -> bool:
    """Whether what is read or written is bytes that someone handed on."""
    return bool(call.args) and source.is_memory(call.args[0])


def package_data_only(source: Source) -> bool:
    """Whether a module reads package data: by importlib.resources, and each path in it comes from `files(...)`."""
    if "importlib.resources.files" not in source.bound.values():
        return False
    paths = [call for call, name in source.calls() if name in {"pathlib.Path", "open"}]
    return all("importlib.resources.files" in _called_within(source, path) for path in paths)


def _called_within(source: Source, call: ast.Call) -> set[str]:
    return {source.dotted(node.func) for node in ast.walk(call) if isinstance(node, ast.Call)}


def reads(root: Path) -> list[str]:
    """Places outside `intake` that open a file to read."""
    found = []
    for source in sources(root):
        if source.folder == "intake" or package_data_only(source):
            continue
        for call, name in source.calls():
            mode = opening(source, call, name)
            opens = mode is not None and not set(mode) & set("wax")
            method = name.split(".")[-1] in READ_METHODS and "." in name
            by_pandas = name.startswith("pandas.read_")
            if (opens or method or by_pandas or name in READERS) and not in_memory(source, call):
                found.append(source.at(call, f"reads by {name}"))
    return found


def writes(root: Path) -> list[str]:
    """Places outside `exports` that write, make, move or take away a file."""
    found = []
    for source in sources(root):
        if source.folder == "exports":
            continue
        for call, name in source.calls():
            mode = opening(source, call, name)
            opens = mode is not None and bool(set(mode) & set("wax+?"))
            method = "." in name and name.split(".")[-1] in WRITE_METHODS and bool(call.args or name[-4:] != "_csv")
            named = name in WRITERS or name.startswith("tempfile.") or moves(call, name)
            if (opens or method or named) and not in_memory(source, call):
                found.append(source.at(call, f"writes by {name}"))
    return found


def moves(call: ast.Call, name: str) -> bool:
    """Whether this is a path's `replace(target)`: one argument, where text has two and records have names."""
    plain = name.endswith(".replace") and name != "dataclasses.replace"
    return plain and len(call.args) == 1 and not call.keywords


def prints(root: Path) -> list[str]:
    """Places outside `cli` that print, ask, or know how a screen looks."""
    found = []
    for source in sources(root):
        if source.folder == "cli":
            continue
        found += [source.at(call, f"prints by {name}") for call, name in source.calls() if name in PRINTING]
        for origin in sorted(set(source.bound.values())):
            if origin.split(".")[0] in {"rich", "typer", "click", "logging"}:
                found.append(source.at(source.tree, f"imports {origin}"))
    return found


def clocks(root: Path) -> list[str]:
    """Places outside `cli` that read the clock."""
    found = []
    for source in sources(root):
        if source.folder == "cli":
            continue
        found += [
            source.at(call, f"reads the clock by {name}")
            for call, name in source.calls()
            if ".".join(name.split(".")[-2:]) in CLOCK
        ]
        if any(origin == "time" or origin.startswith("time.") for origin in source.bound.values()):
            found.append(source.at(source.tree, "imports time"))
    return found


@pytest.mark.parametrize("law", [reads, writes, prints, clocks])
def test_the_doors_are_kept(law: Callable[[Path], list[str]]) -> None:
    """No folder reads, writes, prints or looks at the clock but the one whose job it is."""
    assert law(REPO) == []


PLANTED = [
    (reads, "open('survey.yaml')"),
    (reads, "from pathlib import Path\nPath('a').read_text()"),
    (reads, "from pathlib import Path\nPath('a').read_bytes()"),
    (reads, "def f(path):\n    with path.open() as file:\n        return file"),
    (reads, "import openpyxl as o\no.load_workbook('a.xlsx')"),
    (reads, "from csv import DictReader\nDictReader(lines)"),
    (reads, "from ruamel.yaml import YAML\nYAML().load(path)"),
    (reads, "import pandas as pd\npd.read_excel('a.xlsx')"),
    (reads, "from importlib.resources import files\nfrom pathlib import Path\nPath('a').read_text()"),
    (writes, "open('plan.csv', 'w')"),
    (writes, "open('plan.csv', mode='r+b')"),
    (writes, "def f(path, mode):\n    path.open(mode)"),
    (writes, "from pathlib import Path\nPath('a').write_text('b')"),
    (writes, "from pathlib import Path\nPath('a').mkdir()"),
    (writes, "from shutil import copytree as grow\ngrow('a', 'b')"),
    (writes, "import os\nos.replace('a', 'b')"),
    (writes, "def f(path, new):\n    path.replace(new)"),
    (writes, "import xlsxwriter\nxlsxwriter.Workbook('plan.xlsx')"),
    (writes, "def f(book):\n    book.save('plan.xlsx')"),
    (writes, "def f(table):\n    table.to_csv('plan.csv')"),
    (prints, "print('hello')"),
    (prints, "import sys\nsys.stdout.write('hello')"),
    (prints, "from rich.console import Console"),
    (clocks, "from datetime import datetime\ndatetime.now()"),
    (clocks, "import datetime\ndatetime.date.today()"),
    (clocks, "from time import monotonic as now\nnow()"),
]


@pytest.mark.parametrize(("law", "text"), PLANTED, ids=[text.splitlines()[-1] for _, text in PLANTED])
def test_a_planted_door_is_found(law: Callable[[Path], list[str]], text: str, tmp_path: Path) -> None:
    """Each way to read, write, print or tell the time is seen in a folder that may not."""
    found = law(plant(tmp_path, {"budgetfix/room/planted.py": text}))
    assert [line.split(":")[0] for line in found] == ["budgetfix.room.planted"]


@pytest.mark.parametrize(
    ("module", "text"),
    [
        (
            "base/beside.py",
            "from importlib.resources import files\nfrom pathlib import Path\nPath(str(files('b'))).read_text()",
        ),
        ("intake/yes.py", "from pathlib import Path\nPath('a').read_bytes()"),
        ("exports/yes.py", "from pathlib import Path\nPath('a').write_bytes(b'')"),
        ("exports/marked.py", "import io, openpyxl\nopenpyxl.load_workbook(io.BytesIO(given))"),
        ("intake/marked.py", "import io\nsaved = io.BytesIO()\nbook.save(saved)"),
        ("cli/yes.py", "import time\nprint(time.monotonic())"),
        ("base/yes.py", "from importlib.resources import files\nfiles('budgetfix').joinpath('a').read_text()"),
        ("room/yes.py", "from dataclasses import replace\n'a'.replace('a', 'b')\nreplace(wall, length_mm=1.0)"),
        ("optimize/yes.py", "import os\nos.open(os.devnull, os.O_WRONLY)"),
        ("exports/folder.py", "import os\nos.open(folder, os.O_RDONLY | os.O_DIRECTORY)"),
    ],
)
def test_what_is_allowed_is_not_found(module: str, text: str, tmp_path: Path) -> None:
    """Doors, bytes in memory, package data, the null device and a folder held open are no breach."""
    root = plant(tmp_path, {f"budgetfix/{module}": text})
    assert [law(root) for law in (reads, writes, prints, clocks)] == [[], [], [], []]
