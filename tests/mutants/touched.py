"""Which test runs which line, and how long each test takes: made once by running them under `coverage`.

Run as `python -m tests.mutants.touched FILE TESTS...`; FILE becomes a table in JSON.
"""

from __future__ import annotations

import importlib
import json
import pkgutil
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

import budgetfix

ROOT = Path(__file__).parents[2]
BETWEEN = "between tests"
ENOUGH_SECONDS = 4.0
"""Cases of one test that take so long together are enough; the rest of its cases judge no mutants."""


@dataclass(frozen=True)
class Touched:
    """`seconds`: of each test, by its id. `lines`: of each module, line by line, the tests that run it.

    The id "" stands for what runs while modules are imported.
    """

    seconds: dict[str, float]
    lines: dict[str, dict[int, tuple[str, ...]]]

    def tests(self, module: str, first: int, last: int) -> frozenset[str]:
        """The tests that run any of these lines."""
        of = self.lines.get(module, {})
        return frozenset(test for line in range(first, last + 1) for test in of.get(line, ()))


class Watch:
    """A pytest plugin: each test is a context of its own in what coverage writes down."""

    def __init__(self) -> None:
        import coverage

        self.coverage = coverage.Coverage(data_file=None, source=[str(ROOT / "budgetfix")], config_file=False)
        self.seconds: dict[str, float] = {}
        self.failed: set[str] = set()
        self.spent: dict[str, float] = {}

    def pytest_collection(self) -> None:
        """Import the whole package first: what runs then is told apart from what test modules run when collected."""
        for one in pkgutil.walk_packages(budgetfix.__path__, "budgetfix."):
            if not one.name.endswith("__main__"):
                importlib.import_module(one.name)
        self.coverage.switch_context(BETWEEN)

    def pytest_runtest_setup(self, item: pytest.Item) -> None:
        """Of a test with very many cases the first are enough."""
        if self.spent.get(_function(item), 0.0) > ENOUGH_SECONDS:
            pytest.skip("its first cases are enough here")

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        """Count the processor's seconds of a test, and lay what it runs to its name."""
        self.coverage.switch_context(item.nodeid)
        began = time.process_time()
        done = yield
        took = self.seconds[item.nodeid] = time.process_time() - began
        self.spent[_function(item)] = self.spent.get(_function(item), 0.0) + took
        self.coverage.switch_context(BETWEEN)
        return done

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Note what did not pass: it cannot judge anything."""
        if not report.passed:
            self.failed.add(report.nodeid)

    def touched(self) -> Touched:
        """What was seen of the tests that passed."""
        data = self.coverage.get_data()
        lines = {}
        for name in sorted(data.measured_files()):
            data.set_query_contexts(None)
            of = {
                line: tuple(sorted(test for test in tests if test not in self.failed and test != BETWEEN))
                for line, tests in data.contexts_by_lineno(name).items()
            }
            lines[str(Path(name).relative_to(ROOT))] = of
        seconds = {test: round(took, 3) for test, took in self.seconds.items() if test not in self.failed}
        return Touched(seconds, lines)


def _function(item: pytest.Item) -> str:
    return item.nodeid.split("[")[0]


def read(path: Path) -> Touched:
    """What was written down before."""
    told = json.loads(path.read_text("utf-8"))
    names = tuple(told["seconds"])
    return Touched(
        told["seconds"],
        {
            module: {int(line): tuple("" if at < 0 else names[at] for at in tests) for line, tests in of.items()}
            for module, of in told["lines"].items()
        },
    )


def write(path: Path, touched: Touched) -> None:
    """Tests by number, so that the file stays small."""
    number = {"": -1} | {test: at for at, test in enumerate(touched.seconds)}
    lines = {
        module: {str(line): [number[test] for test in tests if test in number] for line, tests in of.items()}
        for module, of in touched.lines.items()
    }
    path.write_text(json.dumps({"seconds": touched.seconds, "lines": lines}), "utf-8")


def main() -> int:
    """Run these tests once, watching them. Exit code: pytest's own."""
    path, tests = Path(sys.argv[1]), sys.argv[2:]
    watch = Watch()
    watch.coverage.start()
    code = int(pytest.main(["-q", "-p", "no:cacheprovider", *tests], plugins=[watch]))
    watch.coverage.stop()
    write(path, watch.touched())
    return code


if __name__ == "__main__":
    sys.exit(main())
