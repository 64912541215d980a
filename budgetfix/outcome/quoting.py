"""A plan as a quote: options from the plans for other sums of money, by room, in the client's words.

Complete is the plan itself. Recommended is the cheapest plan that leaves no more hazards and reaches nine tenths of
its improvement; essential the cheapest with as few hazards and two thirds of it. Where two are the same plan there are
fewer options.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date, timedelta
from fractions import Fraction

from budgetfix.brief.models import Brief
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import labour_minor
from budgetfix.outcome.book import MoneyLine, PlanBook, Stop
from budgetfix.outcome.check import ClaimFails
from budgetfix.outcome.quote import Quote, QuoteLine, QuoteOption, QuoteRoom
from budgetfix.outcome.sharing import shared_out
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.following import left_behind
from budgetfix.room.items import Curtain
from budgetfix.room.survey import Change, Survey

SHARES = (("Essential", Fraction(2, 3)), ("Recommended", Fraction(9, 10)))
COMPLETE = "Complete"
STANDS_DAYS = 14
"""A quote stands so long, and no longer than to the day before the work begins (common practice)."""
SHOPPING = "Shopping and collecting"
TAKE_AWAY = "take-away"
ROOM = "The room"
"""The only room, where the survey gives it no name."""


def is_quoted(base: Ground) -> bool:
    """True for work that somebody pays for: the brief has a rate, or a shop a mark-up."""
    return base.brief.labour_minor_hour is not None or any(shop.markup for shop in base.catalog.shops)


def quote(base: Ground, framed: Framed, book: PlanBook) -> Quote | None:
    """The quote of a plan; None for a job that nobody is paid for, or where nothing is done."""
    if not is_quoted(base) or not book.chosen:
        return None
    picked = options(book)
    made = tuple(_option(base, framed, letter, name, stop) for letter, (name, stop) in zip("ABC", picked, strict=False))
    advised = next((one.letter for one in made if one.name == "Recommended"), made[-1].letter)
    brief, starts = base.brief, _starts(book)
    return Quote(
        title=book.title,
        currency=brief.currency,
        made=brief.ordered,
        until=brief.quote.until or stands_until(brief),
        options=made,
        recommended=advised,
        words=brief.quote,
        stay=brief.stay,
        vans=brief.vans,
        photographs=brief.photographs,
        days=tuple(starts),
        starts=tuple(starts.values()),
    )


def _starts(book: PlanBook) -> dict[date, int]:
    """The minute at which the work begins, by day, in the days' order."""
    found: dict[date, int] = {}
    for row in book.sessions or ():
        if row.on is not None and row.minutes_used:
            found[row.on] = min(found.get(row.on, row.start_minute), row.start_minute)
    return dict(sorted(found.items()))


def options(book: PlanBook) -> list[tuple[str, Stop]]:
    """(name, plan) of each option, cheapest first, each plan once; what has no solve of its own is from the curve."""
    own = next((stop for stop in book.stops if stop.this_one), _whole(book))
    enough = [
        stop
        for stop in book.stops
        if stop.sums.hazards_after <= own.sums.hazards_after and stop.sums.spent_minor <= own.sums.spent_minor
    ]
    found: list[tuple[str, Stop]] = []
    for name, share in SHARES:
        if name in dict(book.offers):
            found.append((name, dict(book.offers)[name]))
            continue
        reached = [stop for stop in enough if stop.sums.improvement >= share * own.sums.improvement]
        found.append((name, min(reached, key=lambda stop: stop.sums.spent_minor, default=own)))
    found.append((COMPLETE, own))
    last = {stop.sums.chosen: name for name, stop in found if name != COMPLETE}
    kept: dict[tuple[str, ...], tuple[str, Stop]] = {}
    for name, stop in found:
        kept[stop.sums.chosen] = (last.get(stop.sums.chosen, name), stop)
    return list(kept.values())


def _whole(book: PlanBook) -> Stop:
    """The book's own plan, where no other sum of money was tried."""
    return Stop(book.best, book.hazard_points_after, book.money, book.tasks, book.sessions, book.faults, True)


def stands_until(brief: Brief) -> date | None:
    """The last day on which the quote can be accepted; None where the day of the quote is not known."""
    if brief.ordered is None:
        return None
    first = min((hours.on for hours in brief.hours or () if hours.on is not None), default=None)
    until = brief.ordered + timedelta(days=STANDS_DAYS)
    return until if first is None else max(brief.ordered, min(until, first - timedelta(days=1)))


def _option(base: Ground, framed: Framed, letter: str, name: str, stop: Stop) -> QuoteOption:
    chosen = {id: framed.candidates[id] for id in stop.sums.chosen}
    prices, whole = laid_on(base, chosen, stop.money)
    order = {id: place for place, id in enumerate(dict.fromkeys(task.candidate for task in stop.tasks))}
    rooms: dict[str, list[QuoteLine]] = defaultdict(list)
    for id in sorted(chosen, key=lambda id: (order.get(id, len(order)), id)):
        one = chosen[id]
        rooms[room_of(one)].append(QuoteLine(id, one.client or one.name, prices[id]))
    rooms[""] += whole
    named = [facts.room or ROOM for facts in base.survey.rooms] if base.survey is not None else []
    made = tuple(QuoteRoom(room, tuple(rooms[room])) for room in [*named, ""] if rooms[room])
    done = tuple(chosen.values())
    gone, elsewhere = (of(base.survey, done) if base.survey is not None else () for of in (taken, moved))
    option = QuoteOption(letter, name, made, gone, elsewhere, holes(done))
    if option.total_minor != stop.sums.spent_minor:
        raise ClaimFails(f"option {letter} adds up to {option.total_minor}, not {stop.sums.spent_minor}")
    return option


def room_of(one: Candidate) -> str:
    """The room of a remedy; empty for one that is about no thing of a room."""
    return one.room or (ROOM if one.subject else "")


def laid_on(
    base: Ground, chosen: Mapping[str, Candidate], money: Iterable[MoneyLine]
) -> tuple[dict[str, int], list[QuoteLine]]:
    """(what the client pays for each remedy, the lines of the whole job): together all that is spent."""
    lines = tuple(money)
    prices = {id: one.cost_minor + labour_minor(one, base.brief) for id, one in chosen.items()}
    direct = sum(prices.values())
    goods: dict[str, dict[str, int]] = defaultdict(lambda: dict.fromkeys(chosen, 0))
    for line in lines:
        if line.product is not None:
            parts = shared_out(line.line_minor, _uses(chosen, line.product))
            for id, part in parts.items():
                prices[id] += part
                goods[line.shop or ""][id] += part
    for line in lines:
        if line.kind in ("delivery", "tax"):
            bought = {id: part for id, part in goods[line.shop or ""].items() if part}
            _add(prices, shared_out(line.line_minor, bought or dict.fromkeys(chosen, 0)))
        elif line.kind in ("tool", "hire"):
            users = {id: _minutes(one) for id, one in chosen.items() if line.of in one.tools}
            _add(prices, shared_out(line.line_minor, users or {id: _minutes(one) for id, one in chosen.items()}))
    errands = sum(line.line_minor for line in lines if line.kind in ("remedy", "labour")) - direct
    whole = [QuoteLine("errands", SHOPPING, errands)] if errands else []
    fixed: dict[str, int] = defaultdict(int)
    for line in lines:
        if line.kind == "fixed":
            fixed[line.name] += line.line_minor
    words = {one.name: one.client or one.name for one in base.brief.fixed}
    return prices, [*whole, *(QuoteLine(f"fixed:{name}", words[name], minor) for name, minor in fixed.items())]


def _uses(chosen: Mapping[str, Candidate], product: str) -> dict[str, Fraction]:
    return {id: units for id, one in chosen.items() for name, units in one.goods if name == product and units}


def _add(prices: dict[str, int], parts: Mapping[str, int]) -> None:
    for id, part in parts.items():
        prices[id] += part


def _minutes(one: Candidate) -> int:
    return sum(work.person_minutes for work in one.work)


def taken(survey: Survey, chosen: Iterable[Candidate]) -> tuple[str, ...]:
    """Things that are taken down or carried out, or stay behind for new ones; numbered ones together."""
    return _counted(words for _, words in _gone(survey, tuple(chosen)))


def moved(survey: Survey, chosen: Iterable[Candidate]) -> tuple[str, ...]:
    """Furniture and rugs that get another place; what another one stands in for is not moved."""
    remedies, place = tuple(chosen), {"from_left", "gap", "wall"}
    gone = {name for name, _ in _gone(survey, remedies)}
    return _counted(
        change.item
        for one in remedies
        for change in one.changes
        if change.table in ("furniture", "rugs") and change.add is None and change.item not in gone
        if place & {name for name, _ in change.set}
    )


def _gone(survey: Survey, chosen: tuple[Candidate, ...]) -> Iterator[tuple[str, str]]:
    """(thing, what goes of it) of every chosen remedy."""
    for one in chosen:
        left = dict(left_behind(survey, one.changes))
        for change in one.changes:
            thing = survey.named.get(change.item, (None, None))[1] if change.add is None else None
            words = left.get(change.item, "").removeprefix("the ")
            if isinstance(thing, Curtain):
                words = _off_the_window(thing, change, one, "the old cloth" in left.values())
            if words:
                yield change.item, words


def _off_the_window(curtain: Curtain, change: Change, one: Candidate, cloth: bool) -> str:
    """What goes of a curtain; one that gives way to a rod across two windows may lend its `cloth` to it."""
    new = dict(change.set)
    rod = change.remove or new.get("rod_width", curtain.rod_width) != curtain.rod_width
    off = one.kind == TAKE_AWAY or cloth if change.remove else "panel_width" in new and cloth
    both = {(True, True): "{} with its rod", (True, False): "{}'s rod", (False, True): "{}'s cloth"}
    return both.get((rod, off), "").format(curtain.name)


def holes(chosen: Iterable[Candidate]) -> int:
    """New holes in the walls."""
    return int(sum(amount for one in chosen for name, amount in one.spends if name == "holes"))


def _counted(items: Iterable[str]) -> tuple[str, ...]:
    """`family photograph 1`, `2` and `3` are `3 family photographs`."""
    groups: dict[str, set[str]] = defaultdict(set)
    for item in items:
        groups[re.sub(r" \d+$", "", item)].add(item)
    return tuple(f"{len(names)} {base}s" if len(names) > 1 else min(names) for base, names in sorted(groups.items()))
