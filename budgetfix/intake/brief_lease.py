"""The lease of a brief: read part by part, and its words held against what there is."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import date
from fractions import Fraction
from typing import TypeVar, cast

from budgetfix.base.problems import FileProblem
from budgetfix.brief.lease import CLASSES, HOLES, LEAVES, UNDO_LIMIT, Lease, Leave, Undo
from budgetfix.brief.models import Brief
from budgetfix.intake.brief_hours import as_day, as_hours
from budgetfix.intake.inside import Inside, Part, at, each, only, place_in
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.intake.reader import as_names, as_text, as_whole, as_yes
from budgetfix.intake.yaml_lines import Key

T = TypeVar("T")
WANTED_LEASE = "a lease such as {forbids: [painting], holes: {plugs: 12}, leave: {curtain rods: asked}}"
FIELDS = ("forbids", "holes", "leave", "reversible_first", "ends", "undo", "undo_hours", "keep")
WARDROBE = "in the wardrobe"


def read_lease(value: object) -> Lease:
    """The lease; every part that cannot be read is told at once. Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")
    wrong: list[Part] = []

    def part(key: str, otherwise: T, how: Callable[[object], T]) -> T:
        if value.get(key) is None:
            return otherwise
        try:
            return at(key, value[key], how)
        except Inside as inside:
            wrong.extend(inside.parts)
            return otherwise

    try:
        only(value, FIELDS)
    except Inside as inside:
        wrong += inside.parts
    none: dict[str, int] = {}
    holes = part("holes", none, _holes)
    lease = Lease(
        forbids=part("forbids", (), as_names),
        plugs=holes.get("plugs"),
        pins=holes.get("pins"),
        leave=part("leave", (), _leave),
        reversible_first=part("reversible_first", False, _yes),
        ends=part("ends", None, _day),
        undo=part("undo", "shown", _undo),
        undo_minutes=part("undo_hours", None, _minutes),
        keep=part("keep", (), _keep),
    )
    if wrong:
        raise Inside(*wrong)
    return lease


def _holes(value: object) -> dict[str, int]:
    if not isinstance(value, dict):
        raise ValueError("holes by class such as {plugs: 12, pins: 20}")
    return dict(each(value.items(), _most))


def _most(name: Key, value: object) -> tuple[str, int]:
    if name not in HOLES:
        raise Inside(Part(name, f"known here: {', '.join(HOLES)}"))
    try:
        return str(name), as_whole(value)
    except ValueError:
        raise ValueError("a whole number, 0 or more") from None


def _leave(value: object) -> tuple[tuple[str, Leave], ...]:
    if not isinstance(value, dict):
        raise ValueError("what the landlord said, such as {plugs: given, curtain rods: asked, blinds: refused}")

    def how(name: Key, said: object) -> tuple[str, Leave]:
        if said not in LEAVES:
            raise ValueError(f"one of: {', '.join(LEAVES)}")
        return str(name), cast(Leave, said)

    return tuple(sorted(each(value.items(), how)))


def _yes(value: object) -> bool:
    try:
        return as_yes(value)
    except ValueError:
        raise ValueError("yes or no") from None


def _day(value: object) -> date | None:
    return as_day(value)


def _undo(value: object) -> Undo:
    if value == "shown" or value == "counted":
        return value
    raise ValueError("one of: shown, counted")


def _minutes(value: object) -> int | None:
    return int(as_hours(value) * 60)


def _keep(value: object) -> tuple[tuple[str, str], ...]:
    """Things, or things with the place where they are kept."""
    if isinstance(value, dict):
        return tuple(sorted(each(value.items(), lambda name, where: (str(name), as_text(where or WARDROBE)))))
    return tuple(sorted((name, WARDROBE) for name in as_names(value)))


def holes_within(lease: Lease | None, limits: tuple[tuple[str, Fraction], ...]) -> tuple[tuple[str, Fraction], ...]:
    """The limits with the lease's own: of two for the same holes the smaller counts. Plugs are `holes` there."""
    if lease is None:
        return limits
    found = dict(limits)
    for name, most in (("holes", lease.plugs), ("pins", lease.pins), (UNDO_LIMIT, lease.undo_minutes)):
        if most is not None:
            found[name] = min(Fraction(most), found.get(name, Fraction(most)))
    return tuple(sorted(found.items()))


def check_lease(
    row: RawRow, brief: Brief, words: Iterable[str], things: Iterable[str], problems: list[FileProblem]
) -> None:
    """Note every word of the lease that means nothing. `words`: kinds and remedies; `things`: names of the survey.

    What the tool itself will fit is not known yet: its id starts with its kind.
    """
    if brief.lease is None:
        return
    wanted = f"a kind, a remedy, or one of: {', '.join(CLASSES)}"
    known = [*CLASSES, *words]
    named: list[tuple[tuple[Key, ...], str]] = [
        (("forbids", index), word) for index, word in enumerate(brief.lease.forbids)
    ]
    named += [(("leave", word), word) for word, _ in brief.lease.leave]
    problems += [
        FileProblem(place_in(row, "lease", *keys), f"'{word}'", wanted, close_to(word, known))
        for keys, word in named
        if word not in known and word.split("/")[0] not in known
    ]
    there = list(things)
    problems += [
        FileProblem(
            place_in(row, "lease", "keep", thing), f"'{thing}'", "a thing of the survey", close_to(thing, there)
        )
        for thing, _ in brief.lease.keep
        if thing not in there
    ]
