"""Names that a brief uses: each is known to the catalog, the survey, the rules or the listed faults."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.base.problems import FileProblem
from budgetfix.brief.models import Brief, ListedFault, Person
from budgetfix.catalog.models import Catalog
from budgetfix.inspection.registry import RULES
from budgetfix.intake.brief_days import check_days
from budgetfix.intake.brief_lease import check_lease
from budgetfix.intake.brief_pace import check_pace
from budgetfix.intake.inside import named_place, place_in
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.room.survey import Survey

MATTERS = "a rule, family, thing or listed fault"


@dataclass(frozen=True)
class Known:
    """Where names come from. `whole`: nothing in catalog or survey was refused, so no name is missing for that.

    Without a survey nothing is fitted, so every id stands in the catalog.
    """

    catalog: Catalog
    faults: tuple[ListedFault, ...]
    survey: Survey | None
    kinds: tuple[str, ...]
    whole: bool

    @property
    def remedies(self) -> list[str]:
        """Remedies, and groups of which one is picked."""
        groups = (remedy.pick_one for remedy in self.catalog.remedies if remedy.pick_one is not None)
        return [*(remedy.remedy for remedy in self.catalog.remedies), *groups]

    @property
    def matters(self) -> list[str]:
        """What a priority may name: rules, families, things and listed faults."""
        families = (rule.family for rule in RULES if rule.family is not None)
        things = self.survey.named if self.survey is not None else ()
        return [*(rule.slug for rule in RULES), *families, *things, *(fault.fault for fault in self.faults)]


def check_names(row: RawRow, brief: Brief, known: Known, problems: list[FileProblem]) -> None:
    """Note every name of the brief that means nothing; what the tool itself will fit is not known yet."""
    rules = [rule.slug for rule in RULES]
    shops = [shop.shop for shop in known.catalog.shops]
    products = [product.product for product in known.catalog.products]
    _check(row, "may_worsen", brief.may_worsen, rules, "a rule", problems)
    if not known.whole:
        return
    _check(row, "errands", (shop for errand in brief.errands for shop in errand.shops), shops, "a shop", problems)
    loading = [slot.task for _, slot in (brief.vans.slots if brief.vans is not None else ()) if slot.task is not None]
    _check(row, "vans", loading, [remedy.remedy for remedy in known.catalog.remedies], "a remedy", problems)
    if known.survey is None:
        _check(row, "must", brief.must, known.remedies, "a remedy, or a group of which one is picked", problems)
        refusable = [*known.remedies, *known.kinds, *products]
        _check(row, "never", brief.never, refusable, "a remedy, group, kind or product", problems)
    things = known.survey.named if known.survey is not None else ()
    check_lease(row, brief, (*known.kinds, *known.remedies), things, problems)
    check_days(row, brief, known.survey, problems)
    check_pace(row, brief, known.kinds, problems)
    names = (name for name, _ in brief.priorities)
    _check(row, "priorities", names, known.matters, MATTERS, problems)
    for person in brief.voices:
        _check_voice(row, person, known.matters, problems)


def _check_voice(row: RawRow, person: Person, known: list[str], problems: list[FileProblem]) -> None:
    """As for the household's priorities, where they stand in `people`."""
    held = frozenset(known)
    problems += [
        FileProblem(
            place_in(row, "people", person.name, "priorities", name),
            f"'{name}'",
            f"the name of {MATTERS}",
            close_to(name, known),
        )
        for name, _ in person.priorities or ()
        if name not in held
    ]


def _check(
    row: RawRow, field: str, names: Iterable[str], known: list[str], what: str, problems: list[FileProblem]
) -> None:
    held = frozenset(known)
    problems += [
        FileProblem(named_place(row, field, name), f"'{name}'", f"the name of {what}", close_to(name, known))
        for name in names
        if name not in held
    ]
