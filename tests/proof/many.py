"""Random jobs, as many as you like: `python -m tests.proof.many --jobs 1000 --start 0 [--keep FOLDER]`."""

from __future__ import annotations

import argparse
import shutil
import sys
import tempfile
import time
from pathlib import Path

from tests.proof.comparing import differences


def main() -> int:
    """Print every disagreement and one line of summary. Exit code 1 where there is any."""
    said = argparse.ArgumentParser(description=__doc__)
    said.add_argument("--jobs", type=int, default=200)
    said.add_argument("--start", type=int, default=0)
    said.add_argument("--keep", type=Path, help="folder in which the files of jobs with a disagreement stay")
    asked = said.parse_args()
    bad, begun = 0, time.process_time()
    with tempfile.TemporaryDirectory() as there:
        for number in range(asked.start, asked.start + asked.jobs):
            folder = Path(there) / str(number)
            found = differences(folder, number)
            bad += bool(found)
            for words in found:
                print(f"job {number}: {words}", flush=True)
            if found and asked.keep:
                shutil.copytree(folder, asked.keep / str(number), dirs_exist_ok=True)
            shutil.rmtree(folder)
    spent = time.process_time() - begun
    print(f"{asked.jobs} jobs from {asked.start}: {bad} with a disagreement, {spent:.0f} s")
    return int(bad > 0)


if __name__ == "__main__":
    sys.exit(main())
