"""Change the code in small ways and see whether a test notices: `python -m tests.mutants [--part bill] [--seed 7]`."""

from __future__ import annotations

import argparse
import importlib
import os
import subprocess
import sys
import tempfile
from fnmatch import fnmatch
from pathlib import Path

from tests.mutants.choosing import case, sampled
from tests.mutants.explained import explained, reason
from tests.mutants.judging import Verdict, judge
from tests.mutants.keeping import Kept
from tests.mutants.parts import PARTS, Part
from tests.mutants.telling import Told, line_of, page, read_lines, row, table
from tests.mutants.touched import ROOT, Touched, read

SEED = 20_261_126
AHEAD = "numpy shapely pydantic pandas pulp highspy hypothesis openpyxl xlsxwriter ruamel.yaml pytest rich"
"""What is imported once, before all forks; nothing of budgetfix is among it."""


def main() -> int:
    """Judge, and print what is left. Exit code 1 where a mutant was neither noticed nor explained."""
    asked = _asked()
    with tempfile.TemporaryDirectory(prefix="mutants-") as folder:
        wanted = [part for part in PARTS if part.slug in (asked.part or [part.slug])]
        told = {part: _part(part, asked, _touched(part, asked.map or Path(folder)), Path(folder)) for part in wanted}
    print(f"\n{table({part.slug: row(part, one) for part, one in told.items()}, asked.seed)}")
    if asked.write is not None:
        asked.write.write_text(page(asked.write.read_text("utf-8"), told, asked.seed), "utf-8")
    return int(any(one.left for one in told.values()))


def _asked() -> argparse.Namespace:
    said = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    said.add_argument("--part", action="append", choices=[part.slug for part in PARTS], help="several may be given")
    said.add_argument("--only", default="*", help="only modules whose path matches, such as '*/bill.py'")
    said.add_argument("--share", type=float, help="try this share of each module's mutants, instead of the part's own")
    said.add_argument("--seed", type=int, default=SEED, help="draws that share")
    said.add_argument("--keep", type=Path, help="a folder of kills that need not be judged again; more are added")
    said.add_argument("--seconds", type=float, default=15.0, help="tests of so many seconds at most judge a mutant")
    said.add_argument("--lanes", type=int, default=os.cpu_count() or 1, help="modules that are judged at once")
    said.add_argument(
        "--map", type=Path, help="a folder: keep which test runs which line there, or use what is kept there"
    )
    said.add_argument("--write", type=Path, help="a page whose figures are replaced by those of this run")
    return said.parse_args()


def _touched(part: Part, folder: Path) -> Touched:
    """Which test runs which line; where that is not known yet, the part's tests are run once for it."""
    path = folder / f"{part.slug}.json"
    if not path.exists():
        print(f"{part.title}\nRunning its tests once, to see which of them runs which line ...", flush=True)
        made = [sys.executable, "-m", "tests.mutants.touched", str(path), *part.tests]
        done = subprocess.run(made, cwd=ROOT, check=False, stdout=subprocess.DEVNULL)
        if done.returncode not in (0, 1):
            raise SystemExit("the tests could not be run")
    return read(path)


def _part(part: Part, asked: argparse.Namespace, touched: Touched, folder: Path) -> Told:
    """Judge the modules of a part, several at once, each in a process of its own."""
    for name in AHEAD.split():
        importlib.import_module(name)
    running: dict[int, Path] = {}
    files = []
    for module in (one for one in part.modules if fnmatch(one, asked.only)):
        while len(running) >= asked.lanes:
            running.pop(os.wait()[0])
        file = folder / module.replace("/", "_")
        files.append(file)
        running[_started(module, part, asked, touched, file)] = file
    while running:
        running.pop(os.wait()[0])
    return read_lines(files)


def _started(module: str, part: Part, asked: argparse.Namespace, touched: Touched, file: Path) -> int:
    child = os.fork()
    if child:
        return child
    try:
        _judged(module, part, asked, touched, file)
    finally:
        os._exit(0)


def _judged(module: str, part: Part, asked: argparse.Namespace, touched: Touched, file: Path) -> None:
    drawn, whole = sampled(module, asked.share or part.share, asked.seed, part.functions(module))
    known, kept = explained(), Kept(asked.keep, module)
    with file.open("w", encoding="utf-8") as lines:
        lines.write(f"{module}\t{whole}\n")

        def tell(verdict: Verdict) -> None:
            kept.note(verdict)
            lines.write(line_of(verdict, reason(verdict.mutant, known)))
            lines.flush()

        told = {one: verdict for one in drawn if (verdict := kept.verdict(one)) is not None}
        for verdict in told.values():
            tell(verdict)
        cases = [case(one, touched, asked.seconds) for one in drawn if one not in told]
        judge(module, (ROOT / module).read_text("utf-8"), cases, tell)
    kept.write()


if __name__ == "__main__":
    sys.exit(main())
