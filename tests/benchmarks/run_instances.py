"""Published instances and houses through the whole walk: a table of reference and reached values.

Run from the checkout, with benchmark files or folders of them by path; this is no test and pytest leaves it alone:

    python -m tests.benchmarks.run_instances --seconds 60 --take 20 FOLDER
    python -m tests.benchmarks.run_instances --seconds 600 FOLDER --keep results.json --write reports/instances.md

Each instance that can be said so becomes a job of listed faults (`as_jobs.py` says how) and is planned as
`budgetfix plan --json --seconds N` plans it: read, planned, checked and put into the object that is printed, and its
figures are read from that object. A folder with `optima.json` holds houses. `--keep` remembers what was done, so that
a run that was stopped goes on where it was. Seconds are wall time, the other plans, ties and marks included;
`--beside 0.01` gives those a hundredth of the seconds instead of their usual share, and changes nothing in what is
proven about the best plan.
"""

from __future__ import annotations

import argparse
import json
import tempfile
import time
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from unittest import mock

from budgetfix.base.problems import FilesRefused
from budgetfix.cli.say import DONE, NO_PLAN, REFUSED, STOPPED
from budgetfix.exports.plan_json import plan_object
from budgetfix.optimize import answering
from budgetfix.optimize.problem import NoPlan
from budgetfix.optimize.recount import SolverDisagrees
from budgetfix.pipeline import around
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from tests.benchmarks.instance_table import Result, line, page, summary
from tests.benchmarks.instances import Family, Instance, found
from tests.pipeline.listed_job import TODAY

OUR_ERROR = -1
"""Stands for an exit code where the walk contradicts itself."""


def run(one: Instance, seconds: float) -> Result:
    """One instance, planned as `plan --json` does it."""
    with tempfile.TemporaryDirectory() as there:
        one.write(Path(there))
        began = time.monotonic()
        try:
            code, told = plan_json(Path(there), seconds)
            reached = _reached(one.kind, told) if told else "-"
        except SolverDisagrees as why:
            code, told, reached = OUR_ERROR, {}, f"our error: {str(why)[:60]}"
        took = time.monotonic() - began
    return Result(
        one.family, one.name, one.reference, reached, code, bool(told.get("proven")), round(took, 1), one.may_stop
    )


def plan_json(folder: Path, seconds: float) -> tuple[int, dict[str, object]]:
    """(exit code, the printed object; empty where none is printed) of `budgetfix plan --json --seconds N FOLDER`."""
    try:
        book = planned(read(folder, JobOptions(), TODAY), Wish(seconds, time.monotonic))
    except FilesRefused:
        return REFUSED, {}
    if isinstance(book, NoPlan):
        return NO_PLAN, {}
    told: dict[str, object] = json.loads(json.dumps(plan_object(book, ())))
    return (DONE if book.proven else STOPPED), told


def _reached(kind: str, told: dict[str, object]) -> str:
    if kind == "sessions":
        return str(told["sessions_used"])
    money = f" for {told['spent_minor']}" if kind == "points and money" else ""
    return f"{told['improvement']}{money}"


@contextmanager
def sparing(share: float | None) -> Iterator[None]:
    """At most this share of the seconds for ties, and for everything beside the best plan; None: as `plan` has it."""
    if share is None:
        yield
        return
    beside = mock.patch.multiple(around, BESIDE=share, GOODS=share)
    with beside, mock.patch.object(answering, "TIES_SHARE", share):
        yield


def wanted(sets: Iterable[Family], take: int, only: str, name: str) -> Iterator[Instance]:
    """Up to `take` instances of each set, spread evenly over it."""
    for one in sets:
        if only and only not in one.name:
            continue
        fitting = [instance for instance in one.instances if name in instance.name]
        count = min(take, len(fitting))
        yield from (fitting[at * len(fitting) // count] for at in range(count))


def results(wished: Sequence[Instance], seconds: float, keep: Path | None) -> Iterator[Result]:
    """Each result as it comes; what `keep` holds is taken from there, what is new is put there at once."""
    known: dict[str, dict[str, object]] = {}
    if keep is not None and keep.is_file():
        known = json.loads(keep.read_text(encoding="utf-8"))
    for one in wished:
        if one.key not in known:
            known[one.key] = run(one, seconds).as_dict()
            if keep is not None:
                keep.write_text(json.dumps(known, indent=1, sort_keys=True) + "\n", encoding="utf-8")
        yield Result.of(known[one.key])


def main() -> None:
    """The command line."""
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("paths", nargs="+", type=Path, metavar="FOLDER")
    words.add_argument("--seconds", type=float, default=60.0, help="time for choosing, each instance")
    words.add_argument("--take", type=int, default=1000, help="so many of each set")
    words.add_argument("--only", default="", metavar="SET", help="sets with this in their name")
    words.add_argument("--name", default="", help="instances with this in their name")
    words.add_argument("--beside", type=float, metavar="SHARE", help="of the seconds, for what is not the best plan")
    words.add_argument("--keep", type=Path, metavar="FILE", help="remember results, and skip what is in there")
    words.add_argument("--write", type=Path, metavar="FILE", help="write the page")
    typed = words.parse_args()
    sets = tuple(found(typed.paths))
    wished = tuple(wanted(sets, typed.take, typed.only, typed.name))
    done = []
    with sparing(typed.beside):
        for number, result in enumerate(results(wished, typed.seconds, typed.keep), 1):
            print(f"{number}/{len(wished)} {line(result)}", flush=True)
            done.append(result)
    text = page(done, sets, typed.seconds)
    if typed.write is not None:
        typed.write.write_text(text, encoding="utf-8")
    print(f"\n{summary(done)}" if typed.write is not None else f"\n{text}")


if __name__ == "__main__":
    main()
