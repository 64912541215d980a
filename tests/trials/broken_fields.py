"""What each field of a job's files may hold, and values that are surely wrong there, by construction."""

from __future__ import annotations

from datetime import date, time

from budgetfix.forms.catalog_form import CATALOG_SHEETS
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import FORM_OF, SHEETS, START_TITLE
from tests.trials.broken_sheets import Error, Formula

LONG = 10**41
WRONG: dict[str, tuple[object, ...]] = {
    "length": (-5, "long", True, "5O", LONG, "1/0", [1, 2], {"a": 1}, date(2026, 5, 8), "12 parsecs", 1e308, "inf"),
    "length>0": (0, -5, "long", True, "5O", "1/3", [1, 2], date(2026, 5, 8), "nan", 1e308),
    "hem": ("long", True, "5O", LONG, [1, 2], date(2026, 5, 8), "nan"),
    "count": (-1, 2.5, "many", True, [1], LONG, date(2026, 5, 8)),
    "number": (-1, "heavy", True, [1], "nan", "2,5", date(2026, 5, 8)),
    "choice": ("zzz", 17, [1], {"a": 1}),
    "yes-no": ("perhaps", 17, [1], 0.5),
    "yes-no-unknown": ("perhaps", 17, [1]),
    "turn": ("backwards", 400, [1], "nan"),
    "name": ("no such thing",),
    "wall": ("ZZ",),
    "money": (-1, "12,5O", "cheap", True, [1], "nan", 0.00001),
    "amount": (-1, "much", True, [1], "nan", "inf", "1e5"),
    "any amount": ("much", True, "nan", [1]),
    "pack": (0, -1, "many", True),
    "whole": (-1, 1.5, "many", True, [1], "nan"),
    "people": (0, -1, 1.5, "many", [1]),
    "share": ("150%", -1, "much", True, [1]),
    "date": ("soon", "2026-13-45", "2026-02-30", 17, True, [1]),
    "clock": ("25:00", "noon", 17, [1]),
    "hours": (-2, "long", True, "2,5", "nan"),
    "priority": (-1, 4, "much", True),
    "currency": ("XXQ", 17, "EURO"),
    "word": ("zzz", 17),
    "id": (True, [1], {"a": 1}),
}
"""By sort. `word`: one of a few known words. `id`: a name to which others point; an earlier one is wrong too."""
IDS = {"tools": "tool", "shops": "shop", "products": "product", "remedies": "remedy", "faults": "fault"}
NAMED = ("openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets")
LIVE: tuple[object, ...] = (Error("#REF!"), Error("#DIV/0!"), Error("#N/A"), Formula("=B2*2"))
"""What only a workbook can hold: wrong in every field that is read."""
NO_LENGTHS = ("length", "length>0", "hem")
TIMES: tuple[object, ...] = (time(9, 30),)

CATALOG = {
    **dict.fromkeys(
        ("cost", "cost_low", "cost_high", "price", "price_low", "price_high", "buy", "hire_per_session", "delivery",
         "free_over"), "money"),
    **dict.fromkeys(("on_hand", "lumens", "kelvin", "carries", "weight_kg", "wait_hours"), "amount"),
    **dict.fromkeys(("lead_days", "return_days", "stock", "phase", "wait_sessions", "help"), "whole"),
    **dict.fromkeys(("own", "example", "round", "from_stock"), "yes-no"),
    **dict.fromkeys(("width", "width_to", "depth", "height", "drop", "lead"), "length"),
    **dict.fromkeys(("free_from", "free_until"), "date"),
    **dict.fromkeys(("tax", "markup"), "share"),
    **dict.fromkeys(("hours", "minutes"), "hours"),
    **dict.fromkeys(("low", "likely", "high"), "any amount"),
    "pack": "pack", "people": "people", "shop": "name", "kind": "word", "what": "word", "currency": "currency",
    "unit": "word",
}  # fmt: skip
FAULTS = {"fault": "id", "points": "whole", "safety": "yes-no"}
BRIEF = {
    "currency": "currency", "budget": "money", "labour": "money", "cost": "money", "load": "share", "date": "date",
    "ordered": "date", "ends": "date", "start": "clock", "from": "clock", "to": "clock", "at": "clock",
    "load_kg": "amount", "setup_minutes": "whole", "minutes": "whole", "plugs": "whole", "hazards_first": "yes-no",
    "reversible_first": "yes-no", "quiet": "yes-no", "profile": "word", "undo": "word", "hours": "hours",
}  # fmt: skip


def role(file: str) -> str:
    """`survey.xlsx` is a survey."""
    return file.partition(".")[0]


def survey_sort(column: Column) -> str:
    """The sort of a field of the survey."""
    if column.kind == "length":
        return "hem" if column.negative else "length>0" if column.positive else "length"
    return column.kind if column.kind in WRONG else ""


SURVEY = {(table, one.field): survey_sort(one) for table, columns in FORM_OF.items() for one in columns}
HEADINGS: dict[str, dict[str, tuple[str, dict[str, str]]]] = {
    "survey": {
        **{sheet.title: (sheet.key, {one.heading: one.field for one in sheet.columns}) for sheet in SHEETS},
        START_TITLE: ("rooms", {one.heading: one.field for one in FORM_OF["rooms"]}),
    },
    "catalog": {
        sheet.title: (sheet.key, {one.heading: one.field for one in sheet.columns}) for sheet in CATALOG_SHEETS
    },
}
"""Of a workbook, by role and sheet: its table, and its fields by heading."""


def sort_of(file: str, path: tuple[str | int, ...]) -> str:
    """The sort of the value at these keys; empty where no value is surely wrong."""
    last = str(path[-1])
    match role(file):
        case "survey":
            if path[0] == "home":
                return "yes-no-unknown"
            own = (last == "name" and path[0] in NAMED) or (last == "fault" and path[0] == "faults")
            return "id" if own else SURVEY.get((str(path[0]), last), "") if len(path) == 3 else ""
        case "catalog":
            return _catalog_sort(path, last)
        case "faults":
            return FAULTS.get(last, "")
    return _brief_sort(path, last)


def _catalog_sort(path: tuple[str | int, ...], last: str) -> str:
    if len(path) == 1:
        return CATALOG.get(last, "")
    if len(path) == 3 and IDS.get(str(path[0])) == last:
        return "id"
    match path[2]:
        case "uses" | "spends":
            return "amount" if len(path) == 4 else ""
        case "answers":
            return "any amount" if len(path) == 4 else ""
        case "set" | "changes":
            return ""
        case "shop" if path[0] == "shops":
            return ""
        case "unit" | "kind" | "shop" | "currency" if len(path) > 3 or path[2] == "unit":
            return ""
    return CATALOG.get(last, "")


def _brief_sort(path: tuple[str | int, ...], last: str) -> str:
    match path[0]:
        case "hours":
            return "hours" if len(path) == 2 or "people" in path else BRIEF.get(last, "")
        case "limits":
            return "amount"
        case "people":
            return "priority" if "priorities" in path else ""
        case "fixed" | "errands":
            return "people" if last == "people" else BRIEF.get(last, "")
        case "quote" | "must" | "whole_days" | "may_worsen":
            return ""
    return BRIEF.get(last, "")
