"""A finding: one rule judged on one subject, and its points."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from budgetfix.base.numbers import MeasureUnit
from budgetfix.inspection.look import Question
from budgetfix.inspection.rule import Band


@dataclass(frozen=True, slots=True)
class Finding:
    """What one rule measured on one subject, before points are shared out.

    `raw` = 100 x severity x weight x priority x profile, exact. `points` = raw x family share x subject share,
    rounded once, halves to even. `kept`: the subject was taken away without the absence rule passing.
    """

    rule: str
    title: str
    subject: str
    room: str
    value: float
    unit: MeasureUnit
    band: Band
    severity: Fraction
    raw: Fraction
    certain: bool
    safety: bool
    family: str | None
    family_scope: str
    basis: str
    note: str = ""
    points: int = 0
    kept: bool = False
    asked: tuple[Question, ...] = ()

    @property
    def fault(self) -> bool:
        return self.severity > 0

    @property
    def id(self) -> str:
        return f"{self.rule}/{self.subject}"
