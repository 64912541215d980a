"""What a lease has to do with a candidate: its classes of work, what is forbidden, whose leave it needs, what is kept.

Nothing here says that a thing is allowed: the lease and the landlord decide, and what they said is repeated.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from budgetfix.brief.lease import ASKED_FOR, CLASSES, UNDO_LIMIT, Lease, Leave
from budgetfix.catalog.models import Catalog
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.cares import LEASE, PINS_OR_STRIPS
from budgetfix.remedies.following import ANYWHERE, GOES_TO, left_behind, let_go
from budgetfix.remedies.registry import KINDS
from budgetfix.remedies.undoing import Undone, goods_to_keep, undone
from budgetfix.room.items import Hung, Item, Piece
from budgetfix.room.survey import Change, Survey, moved_to

FORBIDDEN = {**{kind.kind: f"this: {kind.name[:1].lower()}{kind.name[1:]}" for kind in KINDS}, **CLASSES}
ROD = frozenset({"rod_height", "rod_from_left", "rod_width"})
BULB = frozenset({"lumens", "kelvin"})
SHADES = ("deeper-shade", "pendant-cord", "swag-pendant")
SAID_NO = "the landlord said no"
LEAVE_CARES: dict[Leave | None, str] = {
    "given": "The landlord has given leave for this: keep it, in writing.",
    "asked": "Only with the landlord's leave: asked, no answer yet.",
    None: "Only with the landlord's leave: not asked yet.",
}
WORST_FIRST: tuple[Leave, ...] = ("refused", "asked", "given")
BACK = "it goes back when you move out"


@dataclass(frozen=True)
class Under:
    """A lease, with what its words are held against. `survey` None: a job of listed faults."""

    lease: Lease
    catalog: Catalog
    survey: Survey | None

    def classes(self, one: Candidate) -> tuple[str, ...]:
        """The classes of work that a candidate belongs to, in the order of `CLASSES`."""
        sorts = {product.product: product.what for product in self.catalog.products}
        used = {sorts.get(product, "") for product, _ in one.uses}
        spends = {name for name, amount in one.spends if amount > 0}
        plugs = "holes" in spends or one.leaves == "plugs"
        true = {
            "painting": one.kind == "paint-wall" or "wall paint" in used,
            "plugs": plugs,
            "pins": "pins" in spends or one.leaves == "pins",
            "strips": one.leaves == "strips",
            "things that peel off": one.leaves == "peels off",
            "drilling": "drill" in one.hazards or "drill" in one.tools,
            "holes in ceilings": one.kind == "swag-pendant",
            "screens on walls": self._changes(one, _wall_screen) and (plugs or one.leaves == "asks leave"),
            "shelves and rails": plugs and self._changes(one, _shelf),
            "furniture fixed to walls": one.kind == "strap" or any(_fixes(change) for change in one.changes),
            "curtain rods": plugs and any(change.table == "curtains" and _sets(change) & ROD for change in one.changes),
            "blinds": one.kind == "hang-blind" or any("blind" in _sets(change) for change in one.changes),
            "hard-wired lights": "wire" in one.hazards,
            "lampholders and shades": one.kind in SHADES,
        }
        return tuple(name for name in CLASSES if true[name])

    def _changes(self, one: Candidate, is_one: Callable[[Item], bool]) -> bool:
        """True where a change leaves a thing of a sort."""
        things = [self._after(change) for change in one.changes]
        return any(thing is not None and is_one(thing) for thing in things)

    def _after(self, change: Change) -> Item | None:
        """A thing as its change leaves it; None where it goes, or is not there yet."""
        if change.add is not None or change.remove or self.survey is None:
            return change.add
        before = self.survey.named.get(change.item, (None, None))[1]
        return None if before is None else moved_to(before, change.set)

    def why_not(self, one: Candidate) -> str:
        """Why the lease or the landlord rules a candidate out, in words; empty where neither does."""
        names = (*self.classes(one), one.kind, one.pick_one, one.id)
        word = next((name for name in names if name and name in self.lease.forbids), "")
        if word:
            return f"your lease forbids {FORBIDDEN.get(word, 'it')}"
        return SAID_NO if self._leave(one) == "refused" else ""

    def _leave(self, one: Candidate) -> Leave | None:
        """What the landlord said: of the remedy, else of its kind, else the worst that was said of its classes."""
        said = self.lease.said((one.id, one.pick_one, one.kind))
        of_classes = [word for word in (self.lease.said((name,)) for name in self.classes(one)) if word is not None]
        return said or next((word for word in WORST_FIRST if word in of_classes), None)

    def leave(self, one: Candidate) -> tuple[bool, Leave | None]:
        """(whether a candidate needs leave, what was said): what the brief names, and what commonly needs leave."""
        said = self._leave(one)
        return said is not None or one.leaves in ASKED_FOR, said

    def told(self, one: Candidate) -> Candidate:
        """The candidate with what the lease has to say: leave among its cares, and where old things are kept."""
        one = self._on_strips(one)
        needs, said = self.leave(one)
        needs = needs and said != "refused"
        usual = (LEASE[one.leaves],) if needs else ()
        cares = [care for care in one.cares if care not in usual]
        kept = self._kept(one)
        more = [*([LEAVE_CARES[said]] if needs else []), *(words for _, words in kept)]
        work = self._work(one, {name for name, _ in kept})
        done = self._counted(one)
        return replace(done, cares=tuple(dict.fromkeys((*cares, *more))), work=work)

    def _on_strips(self, one: Candidate) -> Candidate:
        """A remedy that uses strips, by the name of its goods where the catalogue says no sort, leaves no pins."""
        named = {product.product for product in self.catalog.products if product.what in ("", "strips")
                 and "strip" in f"{product.what} {product.name}".casefold()}  # fmt: skip
        if one.leaves != "pins" or "pins" in dict(one.spends) or not any(product in named for product, _ in one.uses):
            return one
        cares = (LEASE["strips"] if care in (LEASE["pins"], PINS_OR_STRIPS) else care for care in one.cares)
        return replace(one, leaves="strips", cares=tuple(cares))

    def undone(self, one: Candidate) -> Undone:
        """What undoing a candidate takes, with what is put back."""
        return undone(one, [words for _, words, _ in self.kept_things(one)])

    def _counted(self, one: Candidate) -> Candidate:
        """The candidate with the filler and the paint to keep, and its minutes to undo as something it spends."""
        lease = self.lease
        if lease.undo == "shown" and lease.undo_minutes is None:
            return one
        done = self.undone(one)
        later = goods_to_keep(done, self.catalog) if lease.undo == "counted" else ()
        minutes = ((UNDO_LIMIT, Fraction(done.minutes)),) if lease.undo_minutes is not None and done.minutes else ()
        return replace(one, later=later, spends=(*one.spends, *minutes))

    def _kept(self, one: Candidate) -> list[tuple[str, str]]:
        """Things to be kept that a candidate replaces or takes away, with where they, or their old parts, are kept."""
        return [(item, f"Keep {words} {where}: {BACK}.") for item, words, where in self.kept_things(one)]

    def kept_things(self, one: Candidate) -> list[tuple[str, str, str]]:
        """(thing, what is put back in the end, where it is kept) of what is to be kept and goes, whole or in part."""
        where = dict(self.lease.keep)
        going = dict(left_behind(self.survey, one.changes)) if self.survey is not None else {}
        return [
            (change.item, self._put_back(change, going), where[change.item])
            for change in one.changes
            if change.item in where and change.add is None and (change.item in going or one.uses)
        ]

    def _put_back(self, change: Change, going: Mapping[str, str]) -> str:
        """The thing, the old thing, its old bulb, or what comes off it."""
        if change.table == "curtains" and not change.remove:
            parts = [*(["rod"] if _sets(change) & ROD else []), *(["cloth"] if change.item in going else [])]
            return f"the old {' and '.join(parts) or 'parts'} of the {change.item}"
        part = "the old bulb of" if change.table == "lights" and _sets(change) <= BULB else "what comes off"
        return going.get(change.item, f"{part} the {change.item}")

    def _work(self, one: Candidate, kept: Container[str]) -> tuple[Work, ...]:
        """The steps without asking where things go that are to be kept."""
        going = left_behind(self.survey, one.changes) if self.survey is not None else ()
        if not any(name in kept for name, _ in going):
            return one.work
        gone, free = [words for _, words in going], [words for name, words in going if name not in kept]
        work = one.work
        for where in (ANYWHERE, *GOES_TO.values()):
            old, new = let_go(gone, where), let_go(free, where) if free else ""
            work = tuple(replace(step, text=_without(step.text, old, new)) for step in work)
        return work


def _without(text: str, old: str, new: str) -> str:
    """A step's text with one sentence exchanged, or gone."""
    return text.replace(old, new) if new else text.replace(f"; {old}", "").replace(old, "")


def _wall_screen(thing: Item) -> bool:
    return isinstance(thing, Hung) and thing.what == "screen" and not thing.on and not thing.leaned


def _shelf(thing: Item) -> bool:
    return (isinstance(thing, Hung) and thing.what == "shelf") or (isinstance(thing, Piece) and thing.hangs)


def _fixes(change: Change) -> bool:
    return ("fixed", True) in change.set or (isinstance(change.add, Piece) and change.add.fixed)


def _sets(change: Change) -> set[str]:
    return {name for name, _ in change.set}
