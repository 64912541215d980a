"""Values that are surely wrong, several at once, in different places and files of a job: each must be told there."""

from __future__ import annotations

import random
from datetime import date

from tests.trials.broken_fields import LIVE, NO_LENGTHS, TIMES, WRONG
from tests.trials.broken_jobs import Job
from tests.trials.broken_run import Seen
from tests.trials.broken_sites import Site, sites, spoilt

Planted = list[tuple[Site, object]]


def planted(job: Job, chance: random.Random) -> Planted:
    """Two to five sites at different labels, each with a wrong value."""
    there = [site for site in sites(job) if site.sort]
    picked: list[Site] = []
    for site in chance.sample(there, min(len(there), 40)):
        if len(picked) < chance.choice((2, 3, 4, 5)) and _fits(site, picked):
            picked.append(site)
    taken = {site.line for site in picked}
    return [(site, _value(job, site, taken, chance)) for site in picked]


def _value(job: Job, site: Site, taken: set[tuple[str | int, ...]], chance: random.Random) -> object:
    """A wrong value, or the name of an earlier line, where that line stays as it is."""
    before = _before(job, site) if site.sort == "id" else None
    doubled = before is not None and before.line not in taken
    return chance.choice((*wrong(site), before.held)) if before is not None and doubled else chance.choice(wrong(site))


def _before(job: Job, site: Site) -> Site | None:
    """The name before this one in its table."""
    names = [one for one in sites(job) if one.sort == "id" and (one.file, one.table) == (site.file, site.table)]
    at = names.index(site)
    return names[at - 1] if at else None


def wrong(site: Site) -> tuple[object, ...]:
    """Values that cannot stand at a site, in the way of its file."""
    values = WRONG[site.sort]
    if site.file.endswith(".csv"):
        if site.sort == "id":
            return ("",)
        return tuple(str(value) for value in values if isinstance(value, str | int | float) and value is not True)
    if site.file.endswith(".xlsx"):
        plain = tuple(value for value in values if isinstance(value, str | int | float | date))
        return (*plain, *LIVE, *(TIMES if site.sort in NO_LENGTHS else ()))
    return values


def _fits(site: Site, picked: list[Site]) -> bool:
    """At a label of its own; a wrong wall is sure only where the walls are as they were, a name on a line by itself."""
    if any(site.file == other.file and site.label == other.label for other in picked):
        return False
    if any(site.line == other.line and "id" in (site.sort, other.sort) for other in picked):
        return False
    tables = {site.table, *(other.table for other in picked)}
    named = site.sort == "wall" or any(other.sort == "wall" for other in picked)
    return not (named and tables & {"walls", "rooms"})


def files_of(job: Job, what: Planted) -> dict[str, bytes]:
    """The job with the wrong values in it."""
    return spoilt(job, what)


def judge(found: Seen, what: Planted) -> None:
    """Refused, and every planted value told at its own place."""
    shown = "; ".join(f"{site.file} [{site.label}] {site.sort} {value!r}" for site, value in what)
    if not found.refused:
        found.fault("sure", f"read: {shown}")
        return
    told = {(one.file, one.label) for one in found.told}
    lost = [
        f"{site.file} [{site.label}] {site.sort} {value!r}"
        for site, value in what
        if (site.file, site.label) not in told
    ]
    if lost:
        found.fault("all", f"not told: {'; '.join(lost)}, of {shown}")
