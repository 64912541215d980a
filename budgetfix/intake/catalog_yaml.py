"""A catalog of ours, from bytes: what travels in the package is read like what a user typed."""

from __future__ import annotations

from budgetfix.catalog.models import Catalog
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import raw_bytes_catalog


def read_catalog_bytes(data: bytes, name: str, currency: str) -> Catalog:
    """The catalog, its prices in `currency`; it names no kinds and no listed faults.

    Errors: ValueError with every problem, one a line.
    """
    catalog, problems = build_catalog(raw_bytes_catalog(data, name), currency, "mm", (), ())
    if problems:
        raise ValueError("\n".join(str(problem) for problem in sorted(problems)))
    return catalog
