"""The limits in the gate: fewer jobs, all refusals, no clock; and the trial is shown to catch what is planted."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.optimize import digits
from tests.trials.limits import LONG, SMALL, TRIAL, run
from tests.trials.limits_exact import tried
from tests.trials.trial import Asked
