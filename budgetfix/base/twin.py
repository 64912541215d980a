"""A length stated once with its twin: exact in a survey kept in inches, a round number in a metric one."""

from __future__ import annotations

from dataclasses import dataclass

MM_PER_INCH = 25.4
"""Exactly: international inch, 1959 (NBS Circular 572, Addendum)."""


def round_mm(inches: float) -> float:
    """The metric twin of an inch value: to 5 mm below 100 mm, to 10 mm above (halves away from zero)."""
    mm = abs(inches) * MM_PER_INCH
    step = 5 if mm < 100 else 10
    rounded = float(int(mm / step + 0.5) * step)
    return rounded if inches >= 0 else -rounded


@dataclass(frozen=True, slots=True)
class Twin:
    """`inches` and its printed metric twin `mm` (worked out by `round_mm` when the trade prints none)."""

    inches: float
    mm: float | None = None

    def in_mm(self, metric: bool) -> float:
        """The value in millimetres as it holds in a survey of that kind."""
        if not metric:
            return self.inches * MM_PER_INCH
        return round_mm(self.inches) if self.mm is None else self.mm
