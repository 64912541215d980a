"""Whole commands on the terminals that people have: narrow, without colour, without UTF-8, and none at all."""

from __future__ import annotations

import json
import os
import pty
import re
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from budgetfix.cli.app import app

REPO = Path(__file__).resolve().parents[2]
COMMANDS = ("demo", "start", "inspect", "plan", "rules")
ROOM = """\
unit: cm
rooms: [{room: Stüberl, kind: living room, floor: carpet}]
walls: [{wall: A, length: 400}, {wall: B, length: 500}, {wall: C}, {wall: D}]
openings: [{name: Tür, what: door, wall: A, from_left: 20, width: 80, top: 203}]
furniture:
  - {name: "Sofa [grün]", what: sofa, wall: B, from_left: 150, width: 200, depth: 90, height: 85, seat: 43, arm: 60}
  - {name: Bücherregal aus heller Eiche, what: bookcase, wall: D, from_left: 100, width: 80, depth: 30, height: 200}
pictures:
  - {name: Bild, what: picture, wall: B, from_left: 220, width: 60, height: 80, bottom: 160, over: "Sofa [grün]"}
"""


@pytest.fixture
def desk(tmp_path: Path) -> Path:
    """A folder with one small job, its names full of letters that ASCII lacks."""
    job = tmp_path / "den"
    job.mkdir()
    (job / "survey.yaml").write_text(ROOM, encoding="utf-8")
    (job / "brief.yaml").write_text("currency: EUR\nbudget: 50\nhours: [3]\nordered: 2026-06-01\n")
    return tmp_path


def words_of(desk: Path, *words: str, **more: str) -> subprocess.CompletedProcess[bytes]:
    """A command in a pipe, in a process of its own."""
    env = {name: value for name, value in os.environ.items() if name not in ("COLUMNS", "NO_COLOR", "PYTHONIOENCODING")}
    env |= {"PYTHONPATH": str(REPO), "PYTHONUTF8": "0", **more}
    return subprocess.run(
        [sys.executable, "-m", "budgetfix", *words], cwd=desk, env=env, capture_output=True, timeout=120
    )


def on_a_terminal(desk: Path, *words: str, columns: int, **more: str) -> str:
    """What a command writes on a terminal of that many columns, both of its streams."""
    ours, theirs = pty.openpty()
    env = {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "PYTHONIOENCODING")}
    env |= {"PYTHONPATH": str(REPO), "TERM": "xterm-256color", "COLUMNS": str(columns), "PYTHONUTF8": "1", **more}
    running = subprocess.Popen(
        [sys.executable, "-m", "budgetfix", *words], cwd=desk, env=env, stdin=theirs, stdout=theirs, stderr=theirs
    )
    os.close(theirs)
    said = b""
    while True:
        try:
            part = os.read(ours, 65536)
        except OSError:
            break
        if not part:
            break
        said += part
    os.close(ours)
    assert running.wait(timeout=120) == 0
    return said.decode("utf-8").replace("\r\n", "\n")


@pytest.mark.parametrize("command", ["", *COMMANDS])
def test_help_is_one_screen_with_two_examples(command: str) -> None:
    """At most 24 lines of 80 columns, all ASCII, two commands to copy, nothing cut off."""
    done = CliRunner(env={"COLUMNS": "80"}).invoke(app, [*([command] if command else []), "--help"])
    lines = done.stdout.rstrip().split("\n")
    assert done.exit_code == 0
    assert len(lines) <= 24
    assert max(map(len, lines)) <= 80
    assert done.stdout.isascii()
    assert "..." not in done.stdout.replace("[ARGS]...", "")
    examples = lines[lines.index("  Examples:") + 1 :]
    assert len(examples) == 2
    assert all(line.startswith(f"    budgetfix {command}".rstrip()) for line in examples)


def test_the_examples_in_the_help_are_commands_that_exist() -> None:
    """Each option and each rule that an example names is known: the help of the command, or its page, comes."""
    for command in COMMANDS:
        help_text = CliRunner(env={"COLUMNS": "80"}).invoke(app, [command, "--help"]).stdout
        for line in re.findall(r"^    budgetfix (.+)$", help_text, re.MULTILINE):
            first, *rest = line.split()
            assert first == command
            assert all(word in help_text for word in rest if word.startswith("--"))
    assert CliRunner().invoke(app, ["rules", "rod-too-narrow"]).exit_code == 0


@pytest.mark.parametrize("words", [("inspect", "den"), ("plan", "den"), ("rules",), ("rules", "rod-too-narrow")])
def test_a_pipe_gets_plain_text(desk: Path, words: tuple[str, ...]) -> None:
    """No escape, no progress, nothing on standard error, 79 columns."""
    done = words_of(desk, *words, PYTHONIOENCODING="utf-8")
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"\x1b" not in done.stdout
    assert b"\r" not in done.stdout
    assert max(map(len, done.stdout.decode("utf-8").split("\n"))) <= 79


@pytest.mark.parametrize("words", [("inspect", "den"), ("plan", "den"), ("rules",), ("plan", "--help")])
def test_where_there_is_only_ascii(desk: Path, words: tuple[str, ...]) -> None:
    """The same lines, each as wide as before; letters that are lacking become question marks."""
    wide = words_of(desk, *words, PYTHONIOENCODING="utf-8")
    bare = words_of(desk, *words, PYTHONIOENCODING="ascii")
    assert (wide.returncode, bare.returncode, bare.stderr) == (0, 0, b"")
    assert bare.stdout.isascii()
    lines = [text.split("\n") for text in (wide.stdout.decode("utf-8"), bare.stdout.decode("ascii"))]
    assert [len(line) for line in lines[0]] == [len(line) for line in lines[1]]


@pytest.mark.parametrize("encoding", ["ascii", "utf-8", "latin-1"])
@pytest.mark.parametrize("words", [("inspect", "den", "--json"), ("plan", "den", "--json"), ("rules", "--json")])
def test_the_object_parses_in_every_encoding(desk: Path, words: tuple[str, ...], encoding: str) -> None:
    """One value and nothing else, its accents whole: as letters or as escapes."""
    done = words_of(desk, *words, PYTHONIOENCODING=encoding)
    assert (done.returncode, done.stderr) == (0, b"")
    found = json.loads(done.stdout.decode(encoding))
    if words[0] == "inspect":
        assert "Bücherregal aus heller Eiche" in {one["subject"] for one in found["findings"]}


def test_a_refusal_where_there_is_only_ascii(desk: Path) -> None:
    """The user's own words come back as far as they can be written; exit 3, nothing on standard output."""
    (desk / "den" / "survey.yaml").write_text(ROOM.replace("width: 80,", "width: breitweg ü,"), encoding="utf-8")
    done = words_of(desk, "inspect", "den", PYTHONIOENCODING="ascii")
    assert (done.returncode, done.stdout) == (3, b"")
    assert b"survey.yaml [line 4] found 'breitweg ?', wanted a length" in done.stderr


@pytest.mark.parametrize("columns", [40, 60])
@pytest.mark.parametrize(
    "words", [("inspect", "den"), ("plan", "den", "--quiet"), ("rules", "rod-too-narrow"), ("rules",)]
)
def test_a_narrow_terminal_is_not_overrun(desk: Path, words: tuple[str, ...], columns: int) -> None:
    """No line is wider than the terminal, whatever is printed."""
    said = on_a_terminal(desk, *words, columns=columns)
    assert max(map(len, said.split("\n"))) < columns


def test_a_plan_on_a_narrow_terminal(desk: Path) -> None:
    """Steps, sums and the proof, all there; progress is wiped and leaves nothing behind."""
    said = on_a_terminal(desk, "plan", "den", columns=44)
    text = " ".join(re.sub(r"^.*\r", "", said, flags=re.MULTILINE).split())
    assert "PROOF no other set of these" in text
    assert "Wrote den/plan.xlsx, den/plan.html, den/plan.ics, den/buy.csv, den/do.csv" in text
    shown = [re.sub(r"^.*\r", "", line) for line in said.split("\n")]
    assert max(map(len, shown)) < 44


def test_no_color_is_kept_on_a_terminal(desk: Path) -> None:
    """NO_COLOR (no-color.org): not one escape, also on a terminal that could; and none without it, by the house."""
    for more in ({"NO_COLOR": "1"}, {}):
        assert "\x1b" not in on_a_terminal(desk, "inspect", "den", columns=80, **more)
