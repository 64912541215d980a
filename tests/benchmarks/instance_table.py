"""What came out of planning published instances, as one page."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from budgetfix.cli.say import STOPPED
from tests.benchmarks.instances import Family

HEAD = """| set | instance | reference | reached | proven | exit | seconds | |
| --- | --- | --- | --- | --- | --- | --- | --- |"""


@dataclass(frozen=True)
class Result:
    """One instance planned. `reached` is a dash where no object was printed."""

    family: str
    name: str
    reference: str
    reached: str
    code: int
    proven: bool
    seconds: float
    may_stop: bool

    @classmethod
    def of(cls, kept: Mapping[str, Any]) -> Result:
        """One result as it was kept."""
        return cls(**kept)

    def as_dict(self) -> dict[str, object]:
        """One result to keep."""
        return asdict(self)

    @property
    def right(self) -> bool:
        """Whether the reference value was reached."""
        return self.reached == self.reference

    @property
    def good(self) -> bool:
        """Reached, and proven or allowed to stop."""
        return self.right and (self.proven or (self.may_stop and self.code == STOPPED))

    @property
    def remark(self) -> str:
        """What a reader must see."""
        if not self.right:
            return "**not reached**"
        if not self.proven:
            return "reached, not proven (allowed)" if self.good else "**reached, not proven**"
        return ""


def line(one: Result) -> str:
    """One row of the table."""
    proven = "yes" if one.proven else "no"
    return (
        f"| {one.family} | {one.name} | {one.reference} | {one.reached} | {proven} | {one.code} | {one.seconds:.1f} "
        f"| {one.remark} |"
    )


def summary(done: Sequence[Result]) -> str:
    """How many were reached and proven, and which were not."""
    reached = sum(one.right for one in done)
    proven = sum(one.right and one.proven for one in done)
    bad = [f"{one.family} {one.name}" for one in done if not one.good]
    allowed = [f"{one.family} {one.name}" for one in done if one.good and not one.proven]
    text = f"{reached} of {len(done)} reached, {proven} proven."
    if allowed:
        text += f" Reached without proof, as is allowed for them: {', '.join(allowed)}."
    if bad:
        text += f" Not reached, or not proven where that is asked for: {', '.join(bad)}."
    return text


def page(done: Sequence[Result], sets: Iterable[Family], seconds: float) -> str:
    """The whole page."""
    shown = {one.family for one in done}
    of = [one for one in sets if one.name in shown]
    quickest = sorted(one.seconds for one in done)
    median = quickest[len(quickest) // 2] if quickest else 0.0
    lines = [
        "# Published instances through `budgetfix plan --json`",
        "",
        "Made by `python -m tests.benchmarks.run_instances`; nobody edits it. Each instance is a job of listed faults,",
        f"planned with `--seconds {seconds:g}`. Reached: points (times 10 where profits have a decimal), sessions of a",
        "packing, or points and least spend in minor units of a house. Seconds are wall time on the machine at hand,",
        "the other plans, ties and marks included.",
        "",
        summary(done),
        "",
        f"Half of them took {median:.1f} s or less, the longest {max(quickest, default=0.0):.1f} s.",
        "",
        HEAD,
        *map(line, done),
        "",
        "## Sources",
        "",
        *(f"- {one.name}: {one.citation}{_unmapped(one)}" for one in of),
    ]
    return "\n".join(lines) + "\n"


def _unmapped(one: Family) -> str:
    if not one.unmapped:
        return ""
    names = ", ".join(one.unmapped)
    return f" (cannot be said as a job of listed faults, and is left out: {names})"
