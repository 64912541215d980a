"""What remedies say about things of the survey: the things are there, and can be what the remedy makes of them."""

from __future__ import annotations

from pydantic import ValidationError

from budgetfix.base.problems import FileProblem
from budgetfix.catalog.models import Catalog, Remedy
from budgetfix.forms.catalog_form import FIELDS_OF
from budgetfix.intake.catalog_raw import RawCatalog
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.intake.reader import named_rows
from budgetfix.room.items import Item
from budgetfix.room.survey import Survey, Value, moved

Fields = tuple[tuple[str, Value], ...]


def link_things(raw: RawCatalog, catalog: Catalog, survey: Survey, problems: list[FileProblem]) -> None:
    """Note every name that the survey does not know, and every field or value that its thing cannot have."""
    added = {change.item for remedy in catalog.remedies for change in remedy.changes if change.add}
    rooms = {facts.room for facts in survey.rooms}
    known = sorted({*survey.named, *added})
    rows = named_rows(raw.rows.get("remedies", []), "remedy")
    for remedy, row in zip(catalog.remedies, rows, strict=True):
        for field, name, fields in _mentions(remedy):
            if name in survey.named:
                _fits(row, field, survey.named[name], fields, problems)
            elif name not in added and not (field == "on" and name in rooms and not fields):
                place = row.place_of(field)
                problems.append(FileProblem(place, f"'{name}'", "a name from the survey", close_to(name, known)))


def _mentions(remedy: Remedy) -> list[tuple[str, str, Fields]]:
    """(field of the file, name of a thing, what it is set to)."""
    own: list[tuple[str, str, Fields]] = [("on", remedy.on, remedy.set)] if remedy.on is not None else []
    return own + [("changes", change.item, change.set) for change in remedy.changes if not change.add]


def _fits(row: RawRow, field: str, there: tuple[str, Item], fields: Fields, problems: list[FileProblem]) -> None:
    table, thing = there
    typed = "set" if field == "on" else field
    strange = [name for name, _ in fields if name not in FIELDS_OF[table]]
    for name in strange:
        wanted = f"a field that {thing.name} has in the survey ({table})"
        problems.append(FileProblem(row.place_of(typed), f"'{name}'", wanted, close_to(name, list(FIELDS_OF[table]))))
    for name, value in fields:
        if name in strange:
            continue
        try:
            moved(thing, **{name: value})
        except ValidationError:
            shown = "nothing" if value is None else f"'{value}'"
            wanted = f"{thing.name}: {name} as {FIELDS_OF[table][name].wanted}"
            problems.append(FileProblem(row.place_of(typed), shown, wanted))
