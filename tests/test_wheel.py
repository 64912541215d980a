"""The built wheel, installed outside the checkout, holds the demo jobs, runs the demo and plans."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import zipfile
from dataclasses import dataclass
from pathlib import Path

import pytest

REPO = Path(__file__).resolve().parents[1]
PIP = [sys.executable, "-m", "pip", "--quiet", "--disable-pip-version-check"]

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("wheel")]


@dataclass(frozen=True)
class Installed:
    """A wheel, the folder it was installed into, and an empty folder to work in."""

    wheel: Path
    target: Path
    desk: Path

    def run(self, *words: str) -> str:
        """Standard output of `python WORDS` with the installed package, far from the checkout."""
        surroundings = os.environ | {"PYTHONPATH": str(self.target), "COLUMNS": "79"}
        command = [sys.executable, *words]
        done = subprocess.run(command, cwd=self.desk, env=surroundings, capture_output=True, text=True, timeout=300)
        assert done.returncode == 0, done.stderr
        return done.stdout


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Installed:
    """The wheel, built by hatchling and installed without its dependencies, which are here already."""
    base = tmp_path_factory.mktemp("wheel")
    building = [*PIP, "wheel", str(REPO), "--no-deps", "--no-build-isolation", "--wheel-dir", str(base)]
    subprocess.run(building, check=True, timeout=300)
    (wheel,) = base.glob("budgetfix-*.whl")
    target, desk = base / "installed", base / "desk"
    desk.mkdir()
    subprocess.run([*PIP, "install", "--no-deps", "--target", str(target), str(wheel)], check=True, timeout=300)
    return Installed(wheel, target, desk)


def test_the_demo_jobs_are_in_the_wheel(installed: Installed) -> None:
    """Each file of each demo job and the starter catalogue travels, byte for byte, and no plan does."""
    home = REPO / "catalog_demo"
    here = {path.relative_to(home).as_posix(): path.read_bytes() for path in home.rglob("*") if path.is_file()}
    with zipfile.ZipFile(installed.wheel) as wheel:
        inside = {
            name.removeprefix("budgetfix/catalog_demo/"): wheel.read(name)
            for name in wheel.namelist()
            if name.startswith("budgetfix/catalog_demo/")
        }
    assert inside == here
    assert {"renter/survey.yaml", "stager/survey.yaml", "couple/survey.yaml", "starter/catalog.yaml"} <= set(inside)


def test_only_the_package_is_in_the_wheel(installed: Installed) -> None:
    """Tests, reports and the gate stay in the checkout."""
    with zipfile.ZipFile(installed.wheel) as wheel:
        tops = {name.split("/")[0] for name in wheel.namelist()}
    assert {top for top in tops if not top.endswith(".dist-info")} == {"budgetfix"}


def test_the_installed_package_is_the_one_that_runs(installed: Installed) -> None:
    """The checkout is not what answers from another folder."""
    assert Path(installed.run("-c", "import budgetfix; print(budgetfix.__file__)").strip()).is_relative_to(
        installed.target
    )


def test_the_installed_package_runs_the_demo_and_plans(installed: Installed) -> None:
    """`demo` writes a plan into a folder of one's own; `plan --json` prints one object and nothing else."""
    said = installed.run("-m", "budgetfix", "demo", "renter-room", "--scenario", "renter")
    assert "renter-room/plan.xlsx" in said
    assert (installed.desk / "renter-room" / "plan.xlsx").is_file()
    plan = json.loads(installed.run("-m", "budgetfix", "plan", "renter-room", "--json"))
    assert plan["schema"] == 1
    assert plan["spent_minor"] == sum(line["line_minor"] for line in plan["purchases"]) <= plan["budget_minor"]
    assert plan["improvement"] == plan["points_before"] - plan["points_after"] > 0
