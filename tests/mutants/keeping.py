"""What was killed before and need not be judged again: as long as the module and the test that noticed are the same."""

from __future__ import annotations

import hashlib
import json
from functools import lru_cache
from pathlib import Path

from tests.mutants.judging import KILLED, Verdict
from tests.mutants.operators import Mutant
from tests.mutants.touched import ROOT


class Kept:
    """The kills of one module in a file of a folder; `folder` None keeps nothing."""

    def __init__(self, folder: Path | None, module: str) -> None:
        self.path = None if folder is None else folder / f"{module.replace('/', '_')}.json"
        self.source = _fingerprint(module)
        self.kills: dict[str, tuple[str, str]] = {}
        if self.path is not None and self.path.exists():
            told = json.loads(self.path.read_text("utf-8"))
            if told["source"] == self.source:
                self.kills = {key: (by, mark) for key, (by, mark) in told["kills"].items() if _is_as(by, mark)}

    def verdict(self, mutant: Mutant) -> Verdict | None:
        """Killed, by whom; None where that is not known."""
        known = self.kills.get(_key(mutant))
        return None if known is None else Verdict(mutant, KILLED, known[0])

    def note(self, verdict: Verdict) -> None:
        """Keep a kill."""
        if verdict.verdict == KILLED and verdict.by:
            self.kills[_key(verdict.mutant)] = (verdict.by, _fingerprint(verdict.by.split("::")[0]))

    def write(self) -> None:
        """Into its file."""
        if self.path is not None:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            self.path.write_text(json.dumps({"source": self.source, "kills": self.kills}, indent=1), "utf-8")


def _key(mutant: Mutant) -> str:
    return f"{mutant.line} {mutant.place} {mutant.change}"


def _is_as(test: str, mark: str) -> bool:
    return _fingerprint(test.split("::")[0]) == mark


@lru_cache(maxsize=4096)
def _fingerprint(path: str) -> str:
    file = ROOT / path
    return hashlib.sha256(file.read_bytes()).hexdigest()[:16] if file.exists() else ""
