"""The trials, in the order in which they are told. A module that is not named here is not run."""

from __future__ import annotations

from importlib import import_module

from tests.trials.trial import Trial

SLUGS = ("broken", "hostile", "kills", "crosschecks", "laws", "limits")
SEED = 20_261_126
"""The seed of the figures in the documents."""


def trial(slug: str) -> Trial:
    """The trial of that name: `TRIAL` of the module `tests.trials.SLUG`."""
    found: Trial = import_module(f"tests.trials.{slug}").TRIAL
    return found
