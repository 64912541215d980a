"""The brief: `brief.yaml` over the survey's first sheet, the command line over both."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from fractions import Fraction
from functools import partial
from pathlib import Path
from typing import Literal, cast, get_args

from budgetfix.base.limits import MOST_MINUTES
from budgetfix.base.money import digits_of, read_money
from budgetfix.base.problems import FileProblem, Place
from budgetfix.brief.models import Brief, FixedCost, Hours, Profile
from budgetfix.brief.quote import QuoteWords
from budgetfix.intake.brief_bands import (
    WANTED_BANDS,
    WANTED_ERRANDS,
    WANTED_FIXED,
    read_bands,
    read_errands,
    read_finish,
    read_fixed,
)
from budgetfix.intake.brief_days import WANTED_DAYS, read_days
from budgetfix.intake.brief_hours import (
    WANTED_HOURS,
    WANTED_PEOPLE,
    as_day,
    named_people,
    read_hours,
    read_people,
    read_priorities,
)
from budgetfix.intake.brief_lease import WANTED_LEASE, holes_within, read_lease
from budgetfix.intake.brief_money import money_of
from budgetfix.intake.brief_over import Over, typed_over
from budgetfix.intake.brief_pace import WANTED_PACE, read_pace
from budgetfix.intake.brief_quote import WANTED_QUOTE, read_quote
from budgetfix.intake.brief_stay import WANTED_STAY, read_stay
from budgetfix.intake.brief_van import (
    WANTED_PHOTOGRAPHS,
    WANTED_VANS,
    cut_sessions,
    last_part,
    read_photographs,
    read_vans,
    stay_of,
    van_costs,
)
from budgetfix.intake.raw_rows import RawCell, RawRow
from budgetfix.intake.reader import Record, as_share, as_text, unknown_fields
from budgetfix.intake.yaml_lines import load_yaml

FIELDS = (
    "currency", "budget", "hours", "people", "limits", "must", "never", "priorities", "bands", "profile",
    "contingency", "load", "setup_minutes", "errands", "finish_by", "ordered", "may_worsen", "hazards_first",
    "catalog", "holes", "labour", "fixed", "stay", "vans", "photographs", "lease", "quote",
    "whole_days", "learn", "pace", "money",
)  # fmt: skip


def brief_row(
    path: Path | None, sheet: Mapping[str, tuple[object, Place]], over: Over, problems: list[FileProblem]
) -> RawRow:
    """The wishes of all three sources, field by field, the later ones over the earlier."""
    row = RawRow("brief", Place(path.name if path is not None else "brief.yaml"))
    for field, (value, place) in sheet.items():
        row.cells[field] = RawCell(value, place)
    if path is not None:
        file = load_yaml(path)
        problems += file.problems
        for field, value in file.data.items():
            row.cells[field] = RawCell(value, file.place(field), at=partial(file.place, field))
    typed_over(row, over, problems)
    return row


def read_brief(
    row: RawRow, problems: list[FileProblem], today: date, unit: str, rule_units: Mapping[str, str]
) -> Brief:
    """The brief of one row of wishes; what cannot be read is noted and left at its default."""
    record = Record(row, problems)
    unknown_fields(record, FIELDS, row.cells)
    currency = _currency(record)
    ordered = record.read("ordered", today, as_day, "a date")
    load = record.read("load", Fraction(1), as_share, "a share such as 0.85")
    if load == 0:
        record.problem("load", "a share above 0")
        load = Fraction(1)
    hours_typed = row.cells["hours"].value if "hours" in row.cells else None
    people = named_people(record.read("people", None, read_people, WANTED_PEOPLE), hours_typed)
    hours = record.read("hours", None, lambda value: read_hours(value, people, load, ordered), WANTED_HOURS)
    vans = record.read("vans", None, lambda value: read_vans(value, currency), WANTED_VANS)
    photographs = record.read("photographs", None, read_photographs, WANTED_PHOTOGRAPHS)
    hours = cut_sessions(hours, vans, photographs, load, ordered)
    budget, incomes = money_of(record, currency, hours)
    labour = record.money("labour", currency)
    must = record.names("must")
    lease = record.read("lease", None, read_lease, WANTED_LEASE)
    share, fixed = record.read("contingency", (Fraction(0), 0), lambda value: _held(value, currency), "40.00 or 10%")
    return Brief(
        currency=currency,
        budget_minor=budget,
        contingency_minor=fixed,
        contingency_share=share,
        hours=hours,
        people=people,
        limits=holes_within(lease, _limits(record)),
        must=() if must == ("all",) else must,
        must_all=must == ("all",),
        never=record.names("never"),
        priorities=record.read("priorities", (), read_priorities, "priorities such as {rod-too-narrow: 1.5}"),
        bands=record.read("bands", (), lambda value: read_bands(value, rule_units, unit), WANTED_BANDS),
        profile=_profile(record),
        load=load,
        setup_minutes=record.whole("setup_minutes", 0, MOST_MINUTES),
        errands=record.read("errands", (), read_errands, WANTED_ERRANDS),
        finish_by=_finish(record, hours, ordered),
        ordered=ordered,
        ordered_typed=record.has("ordered"),
        may_worsen=record.names("may_worsen"),
        hazards_first=record.yes("hazards_first", True),
        catalog=record.text("catalog") or None,
        labour_minor_hour=labour,
        fixed=(*van_costs(vans), *_fixed(record, currency, labour)),
        stay=record.read("stay", stay_of(vans), read_stay, WANTED_STAY),
        vans=vans,
        photographs=photographs,
        lease=lease,
        quote=record.read("quote", QuoteWords(), read_quote, WANTED_QUOTE),
        whole_days=record.read("whole_days", None, read_days, WANTED_DAYS),
        learn=record.yes("learn", True),
        pace=record.read("pace", (), read_pace, WANTED_PACE),
        incomes=incomes,
    )


def _fixed(record: Record, currency: str, labour: int | None) -> tuple[FixedCost, ...]:
    none: tuple[FixedCost, ...] = ()
    return record.read("fixed", none, lambda value: read_fixed(value, currency, labour), WANTED_FIXED)


def _currency(record: Record) -> str:
    currency = record.text("currency").upper() or "USD"
    try:
        digits_of(currency)
    except KeyError:
        record.problem("currency", "a currency code such as EUR")
        return "USD"
    return currency


def _held(value: object, currency: str) -> tuple[Fraction, int]:
    text = as_text(value)
    return (as_share(text), 0) if text.endswith("%") else (Fraction(0), read_money(value, currency))


def _limits(record: Record) -> tuple[tuple[str, Fraction], ...]:
    limits = dict(record.pairs("limits"))
    if record.has("holes"):
        limits.setdefault("holes", Fraction(record.whole("holes", 0)))
    return tuple(sorted(limits.items()))


def _profile(record: Record) -> Profile:
    choices = get_args(Profile)
    word = record.text("profile") or "living"
    if word not in choices:
        record.problem("profile", f"one of: {', '.join(choices)}")
        return "living"
    return cast(Literal["living", "listing", "handing-back"], word)


def _finish(record: Record, hours: tuple[Hours, ...] | None, ordered: date) -> int | None:
    """The number of the last session on or before a date, or the number as typed; 0 where no session is in time.

    Undated sessions follow the day of the order, one a day. Without a list of hours there is nothing to number.
    """
    by = record.read("finish_by", None, read_finish, "a date, or the number of a session")
    if isinstance(by, date):
        by = sum(1 for session in hours or () if (session.on or ordered + timedelta(days=session.day)) <= by)
        return by if hours is not None else None
    return None if hours is None or by is None else last_part(hours, by)
