"""A survey typed as YAML: `unit`, `home`, and one list of lines for each table."""

from __future__ import annotations

from pathlib import Path

from budgetfix.base.problems import FileProblem
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import FORM_OF, HOME, MONEY
from budgetfix.intake.raw_rows import RawCell, RawRow, RawSurvey, close_to
from budgetfix.intake.yaml_lines import Key, YamlFile, load_yaml

TOP = ("unit", "home", "brief", *FORM_OF)


def raw_yaml(path: Path) -> RawSurvey:
    """Every value of the file with its line, and every key that means nothing. Errors: OSError."""
    file = load_yaml(path)
    raw = RawSurvey(file.file, RawRow("home", file.place()), problems=list(file.problems))
    _unknown(raw, file, (), file.data, list(TOP))
    if "unit" in file.data:
        raw.home.cells["unit"] = RawCell(_typed(file, "unit"), file.place("unit"))
    elif file.problems and not file.data:
        raw.home.cells["unit"] = RawCell("mm", file.place())  # what could not be read is told already
    _row(raw, file, raw.home, ("home",), tuple(column for column in HOME if column.field != "unit"))
    money = RawRow("brief", file.place("brief"))
    _row(raw, file, money, ("brief",), MONEY)
    raw.brief = {name: (cell.value, cell.place) for name, cell in money.cells.items()}
    for table, columns in FORM_OF.items():
        raw.rows[table] = _table(raw, file, table, columns)
    return raw


def _at(data: object, keys: tuple[Key, ...]) -> object:
    for key in keys:
        if isinstance(data, dict):
            data = data.get(key)
        elif isinstance(data, list) and isinstance(key, int):
            data = data[key]
    return data


def _typed(file: YamlFile, *keys: Key) -> object:
    """The value; a plain `yes` or `2.50` keeps its type, everything odd is text."""
    return _at(file.data, keys)


def _table(raw: RawSurvey, file: YamlFile, table: str, columns: tuple[Column, ...]) -> list[RawRow]:
    lines = file.data.get(table)
    if lines is None:
        return []
    if not isinstance(lines, list):
        raw.problems.append(FileProblem(file.place(table), "no list", f"a list of {table}, each with a dash"))
        return []
    rows = []
    for number in range(len(lines)):
        row = RawRow(table, file.place(table, number))
        _row(raw, file, row, (table, number), columns)
        if row.cells:
            rows.append(row)
    return rows


def _row(raw: RawSurvey, file: YamlFile, row: RawRow, keys: tuple[Key, ...], columns: tuple[Column, ...]) -> None:
    values = _at(file.data, keys)
    if values is None:
        return
    if not isinstance(values, dict):
        raw.problems.append(FileProblem(file.place(*keys), f"'{values}'", "keys and values, such as `name: Sofa`"))
        return
    _unknown(raw, file, keys, values, [column.field for column in columns])
    for column in columns:
        if values.get(column.field) is not None:
            where = (*keys, column.field)
            row.cells[column.field] = RawCell(_typed(file, *where), file.place(*where))


def _unknown(
    raw: RawSurvey, file: YamlFile, keys: tuple[Key, ...], values: dict[str, object], known: list[str]
) -> None:
    for key in values:
        if key not in known:
            wanted = "one of: " + ", ".join(known)
            raw.problems.append(FileProblem(file.place(*keys, key), f"the key '{key}'", wanted, close_to(key, known)))
