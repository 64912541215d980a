"""From a job to its findings."""

from __future__ import annotations

from dataclasses import dataclass

from budgetfix.base.readable import readable
from budgetfix.base.tape import write_length
from budgetfix.framing.frame import Ground, ground
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.intake.job import Job
from budgetfix.outcome.make import before
from budgetfix.pipeline.asking_back import asked_of_room, figures, marked, words
from budgetfix.room.places import outline
from budgetfix.room.survey import Survey


@dataclass(frozen=True)
class Inspected:
    """Everything measured in a job: findings (sound ones too), sums, and how many rules were asked.

    `asked`: sentences on the figures that were left blank and on which most hangs.
    """

    base: Ground
    findings: tuple[Finding, ...]
    hazards: int
    hazard_points: int
    points: int
    rules: int
    asked: tuple[str, ...] = ()


def inspected(job: Job) -> Inspected:
    """Judge every rule on every subject of every room."""
    judged = judges(RULES, job.brief)
    rooms = tuple(facts.room for facts in job.survey.rooms) if job.survey is not None else ()
    return seen_on(job, ground(job.survey, job.brief, job.catalog, job.faults, judged, blocks(rooms, judged)))


def seen_on(job: Job, base: Ground) -> Inspected:
    """What was found on a ground, with the figures that were left blank."""
    blank = figures(base)
    base = marked(base, blank)
    findings = tuple(finding for seen in base.seen for finding in seen.findings)
    hazards, hazard_points, points = before(base)
    order = sorted(findings, key=lambda one: (not one.safety, -one.points, -one.severity, one.rule, one.subject))
    asked = tuple(words(one, job.survey) for one in asked_of_room(base, blank)) if job.survey is not None else ()
    return Inspected(base, tuple(order), hazards, hazard_points, points, len(base.judged), asked)


def room_words(survey: Survey | None) -> str:
    """The size of the rooms in words: "14 ft by 12 ft"; empty without a survey."""
    if survey is None:
        return ""
    words = []
    for facts in survey.rooms:
        low_x, low_y, high_x, high_y = outline(survey, facts.room).bounds
        unit = survey.household.unit
        words.append(f"{write_length(high_x - low_x, unit)} by {write_length(high_y - low_y, unit)}")
    return ", ".join(words)


def title(job: Job) -> str:
    """The job's name for people: its rooms, else its folder."""
    named = [facts.room for facts in job.survey.rooms if facts.room] if job.survey is not None else []
    words = ", ".join(named) if named else readable(job.name).replace("-", " ").replace("_", " ")
    return words[:1].upper() + words[1:]
