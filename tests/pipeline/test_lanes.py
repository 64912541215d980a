"""Several processes: the same bytes as one, a job's error told by its name, and none left behind after Ctrl-C."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest

from budgetfix.base.problems import FilesRefused
from budgetfix.pipeline.lanes import Ask, LaneEnded, Lanes, Sit
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.portfolio import Together
from tests.laws.source import REPO
from tests.pipeline.street import JUNE, plan_street, read_street, write_house, write_street

WISH = Wish(60.0, time.monotonic)
PRINTED = """
import hashlib, sys
from pathlib import Path
from tests.pipeline.street import plan_street
if __name__ == "__main__":
    found = plan_street(Path(sys.argv[1]), lanes=int(sys.argv[2]))
    for made in found.made:
        for name, data in made.files.items():
            print(name, hashlib.sha256(data).hexdigest())
"""


def hashes(folder: Path, lanes: int, seed: str) -> str:
    """Names and hashes of every file of every job, planned by a fresh interpreter."""
    script = folder.parent / "printed.py"
    script.write_text(PRINTED, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, script, folder, str(lanes)],
        cwd=REPO,
        env={**os.environ, "PYTHONPATH": str(REPO), "PYTHONHASHSEED": seed},
        capture_output=True,
        text=True,
        timeout=300,
        check=True,
    )
    return done.stdout


@pytest.mark.slow
def test_the_same_bytes_on_one_process_and_on_three(tmp_path: Path) -> None:
    """Every file of every job is the same, however many processes there are and however sets are ordered."""
    write_street(tmp_path / "street")
    one = hashes(tmp_path / "street", 1, "1")
    assert one.count("plan.xlsx") == 3
    assert hashes(tmp_path / "street", 3, "2") == one
    assert hashes(tmp_path / "street", 2, "77") == one


def test_two_processes_plan_what_one_does(tmp_path: Path) -> None:
    """The books are equal, part by part."""
    write_street(tmp_path)
    here, there = plan_street(tmp_path, 1), plan_street(tmp_path, 2)
    assert isinstance(here, Together)
    assert isinstance(there, Together)
    assert here.made == there.made


def test_a_job_on_its_own_needs_no_other_process(tmp_path: Path) -> None:
    """One job, or one core: everything is done right here."""
    write_street(tmp_path)
    jobs = read_street(tmp_path)
    for names, lanes in ((["Elm Street"], 8), (["Elm Street", "Oak Lane"], 1)):
        with Lanes(names, lanes) as running:
            assert running.each([(0, Sit(jobs[0], WISH))], "Planning")
            assert running.processes == 0


@pytest.mark.parametrize("lanes", [1, 2])
def test_an_error_is_told_by_the_name_of_its_job(tmp_path: Path, lanes: int) -> None:
    """Whatever goes wrong inside a job says which one it was."""
    write_street(tmp_path)
    with Lanes(["Elm Street", "Oak Lane"], lanes) as running, pytest.raises(KeyError) as told:
        running.each([(1, Ask((), WISH))], "Asking")
    assert told.value.__notes__ == ["This happened in the job Oak Lane."]


def test_a_must_that_means_nothing_comes_back_as_a_problem(tmp_path: Path) -> None:
    """What the files get wrong is handed on from another process whole."""
    write_street(tmp_path)
    jobs = [
        replace(job, brief=type(job.brief)(**{**dict(job.brief), "must": ("nothing",)}))
        for job in read_street(tmp_path)
    ]
    with Lanes(["Elm Street", "Oak Lane"], 2) as running:
        found = running.each([(at, Sit(jobs[at], WISH)) for at in (0, 1)], "Planning")
    assert all(isinstance(one, FilesRefused) for one in found)
    assert [str(one.problems[0])[:38] for one in found if isinstance(one, FilesRefused)] == [
        "brief.yaml [must] found 'nothing', wan"
    ] * 2


def test_how_many_are_done_is_told(tmp_path: Path) -> None:
    """Beside other processes a line says how many are done; right here it names the job."""
    write_street(tmp_path)
    jobs = read_street(tmp_path)
    for lanes, first in ((2, "Planning: 1 of 2"), (1, "Planning: Elm Street, 1 of 2")):
        lines: list[str] = []
        with Lanes(["Elm Street", "Oak Lane"], lanes, lines.append) as running:
            running.each([(at, Sit(jobs[at], WISH)) for at in (0, 1)], "Planning")
        assert lines[0] == first
        assert any("2 of 2" in line for line in lines)


def test_a_process_that_is_ended_from_outside(tmp_path: Path) -> None:
    """The job whose process was ended is named."""
    write_street(tmp_path)
    jobs = read_street(tmp_path)
    with Lanes(["Elm Street", "Oak Lane"], 2) as running:
        running.each([(0, Sit(jobs[0], WISH))], "Planning")
        os.kill(running.pids[0], signal.SIGKILL)
        with pytest.raises(LaneEnded, match="Elm Street"):
            running.each([(0, Ask((("rug", 0),), WISH))], "Asking")


SLOW_HOUSE = [
    {"remedy": f"r{number}", "cost": number % 97 + 3, "answers": {f"f{number % 40 + 1}": 0.3}} for number in range(400)
]


@pytest.mark.slow
@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="NOT RUN: no /proc here")
def test_ctrl_c_leaves_nothing_behind(tmp_path: Path) -> None:
    """Interrupted in the middle of two long plans: both processes end at once, and no file was written."""
    write_street(tmp_path)
    whole = {"currency": "USD", "products": [], "remedies": SLOW_HOUSE}
    (tmp_path / "catalog.yaml").write_text(json.dumps(whole), encoding="utf-8")
    for name in ("elm-street", "oak-lane", "pine"):
        write_house(tmp_path / name, [number % 13 * 7 + 5 for number in range(40)], JUNE, budget=900)
    before = sorted(tmp_path.rglob("*"))
    running = subprocess.Popen(
        [sys.executable, "-m", "budgetfix", "plan", tmp_path, "--seconds", "300"],
        env={**os.environ, "PYTHONPATH": str(REPO)},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        start_new_session=True,
        preexec_fn=interruptible,
    )
    children = wait_for(running.pid)
    os.killpg(running.pid, signal.SIGINT)
    running.communicate(timeout=60)
    assert running.returncode != 0
    assert gone(children)
    assert sorted(tmp_path.rglob("*")) == before


def interruptible() -> None:
    """What a shell begins in the background ignores Ctrl-C, and so would all that it begins."""
    signal.signal(signal.SIGINT, signal.default_int_handler)


def gone(pids: list[int]) -> bool:
    """True once none of these processes is there any more."""
    for _ in range(100):
        if not any(Path(f"/proc/{pid}").exists() for pid in pids):
            return True
        time.sleep(0.1)
    return False


def wait_for(pid: int) -> list[int]:
    """The processes that another one began, once there are two that work."""
    for _ in range(600):
        found = [int(each) for each in Path(f"/proc/{pid}/task/{pid}/children").read_text().split()]
        busy = [one for one in found if working(one)]
        if len(busy) >= 2:
            return found
        time.sleep(0.1)
    raise AssertionError("no two processes began to work")


def working(pid: int) -> bool:
    """True for one that has had two seconds of a core: it is past its start."""
    fields = Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()
    return int(fields[11]) / os.sysconf("SC_CLK_TCK") >= 2.0
