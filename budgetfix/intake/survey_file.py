"""Read one survey, workbook or YAML, into records and problems."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from budgetfix.base.problems import FileProblem, Place
from budgetfix.brief.models import ListedFault
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.intake.how_much import survey_too_large
from budgetfix.intake.raw_rows import RawSurvey
from budgetfix.intake.survey_build import Line, Reading, read_cells
from budgetfix.intake.survey_checks import check_sizes
from budgetfix.intake.survey_links import THINGS, link_names, link_rooms, need_places, place_lamps
from budgetfix.intake.survey_walls import settle_walls
from budgetfix.intake.survey_yaml import raw_yaml
from budgetfix.room.items import ITEM_OF
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall


@dataclass(frozen=True)
class SurveyFile:
    """A survey file, read. `survey` is None when something in it was refused.

    `brief_fields`: the brief's simple fields as typed, with their places. `places`: where each figure stands,
    by (name of the thing, field). `unit`: of bare numbers.
    """

    survey: Survey | None
    brief_fields: dict[str, tuple[object, Place]]
    faults: tuple[ListedFault, ...]
    problems: tuple[FileProblem, ...]
    places: dict[tuple[str, str], Place]
    unit: str


def read_survey(path: Path) -> SurveyFile:
    """Read `survey.xlsx` or `survey.yaml`. Errors: OSError."""
    if path.suffix.lower() == ".xlsx":
        from budgetfix.intake.survey_xlsx import raw_xlsx

        return judge_raw(raw_xlsx(path))
    return judge_raw(raw_yaml(path))


def judge_raw(raw: RawSurvey) -> SurveyFile:
    """Records, or every problem of the file at once, sorted by place."""
    large = survey_too_large(raw)
    if large:
        return SurveyFile(None, dict(raw.brief), (), tuple(sorted({*raw.problems, *large})), {}, "mm")
    reading = read_cells(raw)
    link_rooms(reading)
    settle_walls(reading)
    link_names(reading)
    place_lamps(reading)
    need_places(reading)
    if reading.unit_known:
        check_sizes(reading)
    survey = _survey(reading)
    if reading.unit_known and reading.sound("furniture", "rugs"):
        from budgetfix.intake.survey_floor import check_floor

        check_floor(reading, survey)
    problems = tuple(sorted(set(reading.problems)))
    return SurveyFile(
        survey=None if problems else survey,
        brief_fields=dict(raw.brief),
        faults=tuple(_fault(line) for line in reading.sound("faults")),
        problems=problems,
        places=_places(reading),
        unit=reading.unit,
    )


def _survey(reading: Reading) -> Survey:
    """The survey of everything that was not refused."""
    things = {table: tuple(_thing(line) for line in reading.sound(table)) for table in THINGS}
    walls = [line for line in reading.sound("walls") if line.text("room") not in reading.bad_rooms]
    rooms = tuple(_facts(line) for line in reading.sound("rooms"))
    guessed = set(reading.guessed)
    if not rooms and (walls or any(things.values())):
        rooms = (RoomFacts(ceiling=2400.0 if reading.unit != "in" else 2438.4),)
        guessed.add(("", "ceiling"))
    return Survey.model_validate(
        {
            **things,
            "household": _household(reading),
            "rooms": rooms,
            "walls": tuple(_wall(line) for line in walls),
            "guessed": frozenset(guessed),
        }
    )


def _fields(line: Line, *leave: str) -> dict[str, object]:
    models = {column.field for column in FORM_OF[line.table] if column.model and column.field not in leave}
    return {name: value for name, value in line.values.items() if name in models}


def _thing(line: Line) -> object:
    return ITEM_OF[line.table].model_validate({**_fields(line), "name": line.name, "room": line.text("room")})  # type: ignore[index]


def _facts(line: Line) -> RoomFacts:
    return RoomFacts.model_validate(_fields(line))


def _known(value: object) -> object:
    return None if value == "not sure" else value


def _wall(line: Line) -> Wall:
    return Wall.model_validate({name: _known(value) for name, value in _fields(line).items()})


def _household(reading: Reading) -> Household:
    home = reading.lines["home"][0]
    return Household.model_validate({"unit": reading.unit, **{n: _known(v) for n, v in home.values.items()}})


def _fault(line: Line) -> ListedFault:
    return ListedFault.model_validate(_fields(line))


def _places(reading: Reading) -> dict[tuple[str, str], Place]:
    return {
        (line.name, name): line.row.place_of(name)
        for table in FORM_OF
        for line in reading.lines[table]
        for name in ("", *line.row.cells, *line.row.empty)
    }
