"""The chooser measured in ratios, all in one run on one machine: what, target, measured.

Run from the checkout; this is no test, times depend on the machine, and pytest leaves it alone:

    python -m tests.benchmarks.bench_choice
    python -m tests.benchmarks.bench_choice --only 3 --only 8
    python -m tests.benchmarks.bench_choice --write reports/choice.md
"""

from __future__ import annotations

import argparse
import platform
import time
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path

from tests.benchmarks import (
    part_big,
    part_by_hand,
    part_chain,
    part_curve,
    part_lazy,
    part_merged,
    part_proof,
    part_pulp,
    part_why_not,
)
from tests.benchmarks.figures import HEAD, Line, Part, peak_mb

PARTS: dict[int, Part] = {
    1: part_pulp.PART,
    2: part_chain.PART,
    3: part_big.PART,
    4: part_lazy.PART,
    5: part_merged.PART,
    6: part_why_not.PART,
    7: part_curve.PART,
    8: part_by_hand.PART,
    9: part_proof.PART,
}
Section = tuple[int, Sequence[Line]]


def page(sections: Sequence[Section], seconds: float) -> str:
    """The whole page."""
    rows = [row for _, some in sections for row in some]
    missed = [(number, row) for number, some in sections for row in some if row.held is False]
    peak = peak_mb()
    used = ", ".join(f"{name} {version(name)}" for name in ("pulp", "highspy"))
    lines = [
        "# The chooser, measured",
        "",
        "Made by `make bench`; nobody edits it. Each ratio is of two times from this one run, one thread to a solver,",
        f"gap 0. Python {platform.python_version()}, {used}. The whole run took {seconds:.0f} s, and at most",
        f"{peak:.0f} MB (each house has a process of its own in the last part).",
        "",
        f"{sum(row.held is True for row in rows)} targets met, {len(missed)} missed"
        + (": " + "; ".join(f"{number}, {row.what}" for number, row in missed) if missed else "")
        + ".",
    ]
    for number, some in sections:
        part = PARTS[number]
        lines += ["", f"## {number} {part.title}", "", part.how, "", HEAD, *(row.text() for row in some)]
    return "\n".join(lines) + "\n"


def main() -> None:
    """The command line."""
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--only", type=int, action="append", choices=sorted(PARTS), help="this part")
    words.add_argument("--write", type=Path, metavar="FILE", help="write the page")
    typed = words.parse_args()
    began = time.perf_counter()
    sections: list[Section] = []
    for number in typed.only or sorted(PARTS):
        print(f"\n{number} {PARTS[number].title}", flush=True)
        rows = []
        for row in PARTS[number].lines():
            print(row.text(), flush=True)
            rows.append(row)
        sections.append((number, rows))
    text = page(sections, time.perf_counter() - began)
    if typed.write is not None:
        typed.write.write_text(text, encoding="utf-8")
    print("\n" + text.split("\n\n")[2])


if __name__ == "__main__":
    main()
