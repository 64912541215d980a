"""A job folder, read whole: survey, catalog, brief, listed faults, and every problem of every file."""

from __future__ import annotations

import os
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.base.limits import YAML_BYTES
from budgetfix.base.problems import FileProblem, Place
from budgetfix.brief.models import Brief, ListedFault
from budgetfix.catalog.models import Catalog
from budgetfix.catalog.stay import staying
from budgetfix.inspection.registry import RULES
from budgetfix.intake.brief_over import Over
from budgetfix.intake.brief_yaml import brief_row, read_brief
from budgetfix.intake.catalog_build import build_catalog
from budgetfix.intake.catalog_raw import RawCatalog, quick_json, raw_csv_catalog, raw_xlsx_catalog, raw_yaml_catalog
from budgetfix.intake.door import there
from budgetfix.intake.faults_csv import read_faults
from budgetfix.intake.how_much import job_too_dear
from budgetfix.intake.job_names import Known, check_names
from budgetfix.intake.raw_rows import RawCell, RawRow
from budgetfix.intake.reader import Record
from budgetfix.room.survey import Survey

if TYPE_CHECKING:
    from budgetfix.intake.survey_file import SurveyFile

SURVEYS = ("survey.xlsx", "survey.yaml")
CATALOGS = ("catalog.xlsx", "catalog.yaml", "catalog.csv")
YAML = (".yaml", ".yml", ".json")
SUFFIXES = (*YAML, ".csv", ".xlsx")
WANTED_CATALOG = "a catalogue that is there (.xlsx, .yaml or .csv)"


@dataclass(frozen=True)
class Ground:
    """What a catalog is read against."""

    currency: str
    unit: str
    faults: tuple[ListedFault, ...]
    kinds: tuple[str, ...]
    survey: Survey | None

    def build(self, raw: RawCatalog) -> tuple[Catalog, list[FileProblem]]:
        """The catalog and its problems."""
        names = [fault.fault for fault in self.faults]
        return build_catalog(raw, self.currency, self.unit, names, self.kinds, self.survey)


@dataclass(frozen=True)
class Job:
    """Everything that a folder says. `marked`: copies with notes on the bad cells, by file name."""

    name: str
    survey: Survey | None
    brief: Brief
    catalog: Catalog
    faults: tuple[ListedFault, ...]
    notes: tuple[str, ...]
    problems: tuple[FileProblem, ...]
    marked: tuple[tuple[str, bytes], ...] = ()
    catalog_file: str = ""
    """Where its catalog stands, the same for every job that has the same one; empty for none."""


def read_job(folder: Path, over: Over, today: date, kinds: tuple[str, ...]) -> Job:
    """Read every file of a job."""
    problems: list[FileProblem] = []
    notes: list[str] = []
    file = _survey(folder, problems, notes)
    listed = _faults(folder, file, problems)
    if file is None and not there(folder / "faults.csv"):
        problems.append(FileProblem(Place(str(folder)), "no survey", "survey.xlsx, survey.yaml or faults.csv"))
    unit = file.unit if file is not None else "mm"
    units = {rule.slug: rule.unit for rule in RULES}
    typed = folder / "brief.yaml" if over.brief is None else over.brief
    row = brief_row(typed if there(typed) else None, file.brief_fields if file is not None else {}, over, problems)
    notes += _overridden(file, row)
    noted: list[FileProblem] = []
    brief = read_brief(row, noted, today, unit, units)
    survey = file.survey if file is not None else None
    path = _catalog_path(folder, brief, over.catalog, notes)
    if path is not None and folder not in path.parents and _elsewhere(str(path)):
        problems.append(FileProblem(row.place_of("catalog"), f"'{path.name}'", WANTED_CATALOG))
        path = None
    catalog = _catalog(path, row.place_of("catalog"), Ground(brief.currency, unit, listed, kinds, survey), problems)
    if catalog.currency is not None and not Record(row, []).has("currency"):
        noted.clear()
        brief = read_brief(_with_currency(row, catalog.currency), noted, today, unit, units)
    elif path is not None and catalog.currency not in (None, brief.currency) and _sound(typed.name, problems):
        wanted = f"one currency: the brief says {brief.currency}"
        problems.append(FileProblem(Place(path.name), catalog.currency, wanted))
    check_names(row, brief, Known(catalog, listed, survey, kinds, whole=not problems), noted)
    noted += job_too_dear(path.name if path is not None else typed.name, catalog, brief)
    catalog = staying(catalog, brief.stay)
    found = tuple(sorted({*problems, *noted}))
    books = [folder / "survey.xlsx", *([path] if path is not None else [])]
    shared = os.path.realpath(path) if path is not None and os.path.isfile(path) else ""
    name, marked = folder.resolve().name, _marked(books, found)
    return Job(name, survey, brief, catalog, listed, tuple(notes), found, marked, shared)


def _sound(name: str, problems: list[FileProblem]) -> bool:
    """True where nothing was wrong with a file: what it says can be held against another."""
    return not any(problem.place.file == name for problem in problems)


def _overridden(file: SurveyFile | None, row: RawRow) -> list[str]:
    """Wishes of the survey's first sheet that brief.yaml or the command line say otherwise."""
    fields = file.brief_fields if file is not None else {}
    told = []
    for field, (value, place) in sorted(fields.items()):
        cell = row.cells.get(field)
        if cell is not None and cell.place != place and str(cell.value) != str(value):
            told.append(f"The survey says {field} {value}; {cell.place.file} says otherwise and counts.")
    return told


def _survey(folder: Path, problems: list[FileProblem], notes: list[str]) -> SurveyFile | None:
    found = [name for name in SURVEYS if there(folder / name)]
    if not found:
        return None
    from budgetfix.intake.survey_file import read_survey

    if len(found) > 1:
        notes.append(f"Read {found[0]}; {found[1]} is there too and was not read.")
    file = read_survey(folder / found[0])
    problems += file.problems
    if not file.problems and file.survey is not None and not file.survey.walls:
        todo = "fill in the sheet Walls first" if found[0].endswith(".xlsx") else "list them under walls:"
        problems.append(FileProblem(Place(found[0]), "no walls", "the length of every wall", todo))
    return file


def _faults(folder: Path, file: SurveyFile | None, problems: list[FileProblem]) -> tuple[ListedFault, ...]:
    """From the survey and from faults.csv; a fault that stands in both is a problem."""
    listed = {fault.fault: fault for fault in (file.faults if file is not None else ())}
    path = folder / "faults.csv"
    if there(path):
        typed, found = read_faults(path)
        problems += found
        for fault in typed:
            if fault.fault in listed:
                wanted = "faults that the survey does not list"
                problems.append(FileProblem(Place(path.name), f"'{fault.fault}'", wanted))
            listed[fault.fault] = fault
    return tuple(listed[name] for name in sorted(listed))


def _catalog_path(folder: Path, brief: Brief, typed: str | None, notes: list[str]) -> Path | None:
    """A catalog named in the brief is looked for from the job, one on the command line from where one stands first."""
    if typed is not None and not _elsewhere(typed) and os.path.isfile(typed):
        return Path(typed)
    if brief.catalog is not None:
        return folder / brief.catalog
    found = [name for name in CATALOGS if there(folder / name)]
    if len(found) > 1:
        notes.append(f"Read {found[0]}; {', '.join(found[1:])} is there too and was not read.")
    return folder / found[0] if found else None


def _catalog(path: Path | None, place: Place, ground: Ground, problems: list[FileProblem]) -> Catalog:
    if path is None:
        return Catalog()
    if not os.path.isfile(path) or path.suffix.lower() not in SUFFIXES:
        problems.append(FileProblem(place, f"'{path.name}'", WANTED_CATALOG))
        return Catalog()
    if path.suffix.lower() in YAML:
        quick = quick_json(path)
        if quick is not None:
            catalog, found = ground.build(quick)
            if not found or path.stat().st_size > YAML_BYTES:
                problems += found
                return catalog
        raw = raw_yaml_catalog(path)
    else:
        raw = raw_csv_catalog(path) if path.suffix.lower() == ".csv" else raw_xlsx_catalog(path)
    catalog, found = ground.build(raw)
    problems += found
    return catalog


def _elsewhere(path: str) -> bool:
    """True for a name that a system may look for on another computer."""
    return path.replace("\\", "/").startswith("//")


def _with_currency(row: RawRow, currency: str) -> RawRow:
    """The same wishes with the catalog's currency, where the brief names none."""
    return replace(row, cells={**row.cells, "currency": RawCell(currency, row.place)})


def _marked(books: list[Path], problems: tuple[FileProblem, ...]) -> tuple[tuple[str, bytes], ...]:
    """Marked copies of the workbooks in which something was refused."""
    found = []
    for path in books:
        its = [problem for problem in problems if problem.place.file == path.name and problem.place.sheet_index > 0]
        if its and path.suffix.lower() == ".xlsx" and path.is_file():
            from budgetfix.intake.survey_xlsx import marked

            found.append((f"{path.stem}.marked.xlsx", marked(path, its)))
    return tuple(found)
