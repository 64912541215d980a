"""Run the trials and print their figures: `python -m tests.trials [--seed 7] [--only kills] [--tries 100]`."""

from __future__ import annotations

import argparse
import os
import sys
import tempfile
from pathlib import Path

import budgetfix
from tests.trials.page import figures, placed
from tests.trials.registry import SEED, SLUGS, trial
from tests.trials.trial import Asked, Result


def main() -> int:
    """Print every trial's figures, and a line for each break. Exit code 1 where there is one."""
    asked = _asked()
    done: dict[str, Result] = {}
    for slug in asked.only or SLUGS:
        one = trial(slug)
        tries = asked.tries or one.long
        print(f"## {one.title} (seed {asked.seed}, {tries:,} tries)", flush=True)
        with tempfile.TemporaryDirectory(prefix="trials-") as folder:
            done[slug] = one.run(Asked(asked.seed, tries, Path(folder), asked.lanes))
        print(f"\n{figures(done[slug])}\n", flush=True)
        for line in done[slug].broken:
            print(f"BROKEN: {line}", flush=True)
    if asked.write is not None:
        _write(asked.write, asked.seed, done)
    bad = sum(len(result.broken) for result in done.values())
    tried = sum(row.tried for result in done.values() for row in result.rows)
    print(f"{tried:,} tried, {bad:,} broken. The same again: python -m tests.trials --seed {asked.seed}")
    return int(bad > 0)


def _asked() -> argparse.Namespace:
    said = argparse.ArgumentParser(prog="python -m tests.trials", description=__doc__)
    said.add_argument("--seed", type=int, default=SEED)
    said.add_argument("--only", action="append", choices=SLUGS, help="one trial; may be given several times")
    said.add_argument("--tries", type=int, help="instead of each trial's own number")
    said.add_argument("--lanes", type=int, default=os.cpu_count() or 1, help="processes at most")
    said.add_argument("--write", type=Path, help="a page whose figures are replaced by those of this run")
    return said.parse_args()


def _write(page: Path, seed: int, done: dict[str, Result]) -> None:
    text = page.read_text("utf-8")
    for slug, result in done.items():
        text = placed(text, slug, figures(result))
    run = f"Figures of budgetfix {budgetfix.__version__}, seed {seed}."
    page.write_text(placed(text, "run", run), "utf-8")


if __name__ == "__main__":
    sys.exit(main())
