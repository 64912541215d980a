"""Changes told with a tape: heights from the floor, distances from the left corner."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from budgetfix.base.tape import write_length
from budgetfix.room.survey import Change, Survey, Value

SAID = {
    "rod_height": "rod {} above the floor",
    "hem": "hem {} above the floor",
    "bottom": "lower edge {} above the floor",
    "width": "{} wide",
    "depth": "{} deep",
    "height": "{} high",
    "gap": "{} off the wall",
}

WORDS = {
    "faces": "turned to look at wall {}",
    "on": "on {}",
    "panels": "{} panels",
    "lumens": "lamp of {} lm",
    "kelvin": "light of {} K",
}
DONE = {
    ("fixed", True): "a strap at each side near its top, into the wall and into its frame, pulled tight",
    ("pad", True): "a pad under it, a little shorter than it on every side",
    ("lead_covered", True): "its lead in a cover",
    ("lead_over_route", False): "its lead off the way that people walk",
    ("undressed", False): "made up",
    ("tucked", True): "pushed in",
    ("personal", False): "a neutral print in its frame",
    ("cord", 0): "its cord or loop tied down, nothing hanging free",
    ("cables", 0): "its cables tied up, no loop in view",
}
"""Fields without a length, as somebody does them."""
HELD = {"strap": "strapped", "none": "held by nothing", "unknown": "not known what holds it"}
"""Ways of holding that need other words than `held by`."""


def told(survey: Survey, changes: Iterable[Change]) -> str:
    """Where every changed thing goes, in the survey's unit; empty where nothing can be measured."""
    return "; ".join(text for change in changes if (text := _told(survey, change)))


def _told(survey: Survey, change: Change) -> str:
    if change.remove:
        return f"{change.item}: take it away"
    item = change.add if change.add is not None else survey.named.get(change.item, (None, None))[1]
    if item is None:
        return ""
    fields = dict(item) if change.add is not None else {**dict(item), **dict(change.set)}
    names = set(fields) if change.add is not None else {name for name, _ in change.set}
    parts = [*_from_corner(fields, names, survey), *_measures(fields, names, survey)]
    parts += _other(fields, names) if change.add is None else []
    return f"{change.item}: {', '.join(parts)}" if parts else ""


def _from_corner(fields: Mapping[str, Value], names: set[str], survey: Survey) -> list[str]:
    unit = survey.household.unit
    if names & {"rod_from_left", "rod_width"}:
        start, wide = float(fields["rod_from_left"] or 0), float(fields["rod_width"] or 0)
        window = survey.named.get(str(fields.get("window")), (None, None))[1]
        wall = f" of wall {window.wall}" if window is not None and hasattr(window, "wall") else ""
        return [
            f"rod from {write_length(start, unit)} to {write_length(start + wide, unit)} from the left corner{wall}"
        ]
    if names & {"from_left", "wall"} and fields.get("wall"):
        at = write_length(float(fields["from_left"] or 0), unit)
        return [f"left edge {at} from the left corner of wall {fields['wall']}"]
    return []


def _measures(fields: Mapping[str, Value], names: set[str], survey: Survey) -> list[str]:
    found = []
    for name, words in SAID.items():
        value = fields.get(name)
        if name in names and isinstance(value, float) and not (name == "gap" and value < 1) and value != 0:
            found.append(words.format(write_length(value, survey.household.unit)))
    return found


def held(fixing: Value, what: Value) -> str:
    """How a thing is held; `what` it is: of a screen people say that it is strapped, or not."""
    if fixing == "none" and what == "screen":
        return "not strapped"
    return HELD.get(str(fixing), f"held by {fixing}")


def _other(fields: Mapping[str, Value], names: set[str]) -> list[str]:
    """What no tape tells: turned, strapped, lit."""
    found = [said for (name, to), said in DONE.items() if name in names and fields[name] == to]
    found += [
        words.format(f"{value:g}" if isinstance(value, float) else value)
        for name, words in WORDS.items()
        if name in names and (value := fields.get(name)) not in (None, "")
    ]
    return found + ([held(fields["fixing"], fields.get("what"))] if "fixing" in names else [])
