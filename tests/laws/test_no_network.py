"""No network, ever: no module can open a socket or start a program, and no command does."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.laws.source import REPO, plant, sources
from tests.trials.hostile_texts import PLAIN, files

NEVER = frozenset({
    "socket", "socketserver", "ssl", "select", "selectors", "asyncio", "http", "urllib", "ftplib", "smtplib", "poplib",
    "imaplib", "xmlrpc", "webbrowser", "wsgiref", "requests", "httpx", "aiohttp", "urllib3", "subprocess", "pty",
    "pickle",
    "marshal", "shelve", "dbm", "code", "codeop", "importlib.util", "runpy",
})  # fmt: skip
"""Modules that reach other computers, begin other programs, or run what they read."""
RUNS = frozenset({"eval", "exec", "compile", "__import__", "os.system", "os.popen", "os.startfile"})
BEGIN = ("os.exec", "os.spawn", "os.posix_spawn", "os.fork")
CTYPES = ("ctypes.CDLL(None)",)
"""All that is done with ctypes: the C library's buffers are emptied after the solver's greeting."""
WRAPPER = """
import os, sys
def hear(event, args):
    if event.startswith(("socket.", "urllib.", "http.", "ftplib.", "smtplib.", "webbrowser.")):
        with open(os.environ["HEARD"], "a") as file:
            file.write(f"{os.getpid()} {event} {sys.argv[1:]}\\n")
        os._exit(97)
sys.addaudithook(hear)
"""
COMMANDS = (
    ("start", "new"),
    ("inspect", "jobs/one"),
    ("plan", "jobs/one"),
    ("replan", "jobs/one", "--day", "2026-06-06"),
    ("compare", "jobs/one", "--budget", "+9"),
    ("rules", "rod-too-narrow"),
    ("inspect", "jobs"),
    ("plan", "jobs"),
)


def reaches(root: Path) -> list[str]:
    """Places that import what is never needed, or call what runs words."""
    found = []
    for source in sources(root):
        for origin in sorted(set(source.bound.values())):
            parts = origin.split(".")
            if parts[0] in NEVER or ".".join(parts[:2]) in NEVER:
                found.append(source.at(source.tree, f"imports {origin}"))
        for call, name in source.calls():
            if name in RUNS or name.startswith(BEGIN):
                found.append(source.at(call, f"calls {name}"))
            if name.startswith("ctypes.") and f"{name}({', '.join(map(ast.unparse, call.args))})" not in CTYPES:
                found.append(source.at(call, f"calls {name}"))
    return found


def test_no_module_reaches_out() -> None:
    """Not one import of sockets, of programs to begin, of what runs words that it read."""
    assert reaches(REPO) == []


@pytest.mark.parametrize(
    "text",
    ["import socket", "from urllib.request import urlopen", "import http.client as h", "import subprocess as s",
     "from importlib import util", "import pickle", "import webbrowser", "import asyncio", "eval('1')",
     "import os\nos.system('x')", "from os import popen\npopen('x')", "import os\nos.execv('x', [])",
     "import ctypes\nctypes.CDLL('libc.so.6')", "import requests"],
)  # fmt: skip
def test_a_planted_way_out_is_found(text: str, tmp_path: Path) -> None:
    """Each of them, in any folder."""
    assert len(reaches(plant(tmp_path, {"budgetfix/exports/planted.py": text}))) == 1


def _run(folder: Path, words: tuple[str, ...], before: str = "") -> tuple[int, str, str]:
    """A command in a process that ends at its first socket, as do all processes that it begins."""
    (folder / "ears").mkdir(exist_ok=True)
    (folder / "ears" / "sitecustomize.py").write_text(WRAPPER)
    heard = folder / "heard.txt"
    heard.write_text("")
    paths = os.pathsep.join((str(folder / "ears"), str(REPO), os.environ.get("PYTHONPATH", "")))
    told = {**os.environ, "PYTHONPATH": paths, "HEARD": str(heard)}
    line = f"{before}\nfrom budgetfix.cli import main\nmain()"
    done = subprocess.run(
        [sys.executable, "-c", line, *words],
        cwd=folder,
        env=told,
        capture_output=True,
        text=True,
        timeout=600,
        check=False,
    )
    return done.returncode, done.stderr, heard.read_text()


def _jobs(folder: Path) -> None:
    for name in ("one", "two"):
        (folder / "jobs" / name).mkdir(parents=True)
        for file, data in files(PLAIN).items():
            (folder / "jobs" / name / file).write_bytes(data)


def test_no_command_opens_a_socket(tmp_path: Path) -> None:
    """Every command, also with several processes, which are ended at the first socket; each of them ends well."""
    _jobs(tmp_path)
    for words in COMMANDS:
        code, said, heard = _run(tmp_path, words)
        assert heard == ""
        assert code == 0, (words, said)


@pytest.mark.parametrize("words", [("rules",), ("plan", "jobs")], ids=["here", "in another process"])
def test_a_planted_socket_is_heard(words: tuple[str, ...], tmp_path: Path) -> None:
    """One opened by the command itself, and one by the processes that plan a folder of jobs."""
    _jobs(tmp_path)
    if words == ("rules",):
        code, _, heard = _run(tmp_path, words, "import socket; socket.socket()")
        assert code == 97
    else:
        code, _, heard = _run(tmp_path, words, PLANTED)
        assert code != 0
    assert "socket.__new__" in heard


PLANTED = """
import socket
from concurrent.futures import ProcessPoolExecutor as Pool
was = Pool.submit
Pool.submit = lambda self, task, *words: was(self, socket.socket)
"""
