"""A quote in sentences, for its page and its sheet: nothing of how the prices came about."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from budgetfix.base.money import write_money_long
from budgetfix.brief.van import VAN_COSTS
from budgetfix.exports.lettering import clock, count, long_day
from budgetfix.outcome.quote import Quote, QuoteLine, QuoteOption

NOT_IN = "–"
WHOLE_JOB = "For the whole job"
SAYS = {
    "Essential": "What is unsafe goes, and what a viewer sees first.",
    "Recommended": "Nearly all of the effect, for clearly less.",
    "Complete": "All that we propose.",
}
ALONE = "What we advise for these rooms."
VANS = {f"fixed:{name}": way for way, name in VAN_COSTS.items()}


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: its words, and what it costs in each option (None: not in it)."""

    words: str
    prices: tuple[int | None, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """The lines of one room, or of the whole job, and their sum in each option."""

    heading: str
    rows: tuple[Row, ...]
    sums: tuple[int, ...]


def says(quote: Quote, option: QuoteOption) -> str:
    """What an option is, in one sentence."""
    return SAYS[option.name] if len(quote.options) > 1 else ALONE


def price(quote: Quote, minor: int | None) -> str:
    """A price in words; what costs nothing is included."""
    if minor is None:
        return NOT_IN
    return write_money_long(minor, quote.currency) if minor else "included"


def groups(quote: Quote) -> tuple[Group, ...]:
    """Rooms in their order, the whole job last; a line stands once, however many options have it."""
    names = list(dict.fromkeys(room.room for option in quote.options for room in option.rooms))
    names.sort(key=lambda name: name == "")
    return tuple(_group(quote, name) for name in names)


def _group(quote: Quote, name: str) -> Group:
    rooms = [next((room for room in option.rooms if room.room == name), None) for option in quote.options]
    held = [{line.id: line for line in room.lines} if room is not None else {} for room in rooms]
    lines = {id: line for lines in reversed(held) for id, line in lines.items()}
    order = sorted(lines, key=lambda id: (_place(id, held), id))
    rows = tuple(
        Row(_words(quote, lines[id]), tuple(lines_[id].price_minor if id in lines_ else None for lines_ in held))
        for id in order
    )
    heading = name[:1].upper() + name[1:] if name else WHOLE_JOB
    return Group(heading, rows, tuple(0 if room is None else room.sum_minor for room in rooms))


def _place(id: str, held: list[dict[str, QuoteLine]]) -> float:
    """Where a line stands among those of its room, on average: what replaces each other comes to stand together."""
    places = [list(lines).index(id) / len(lines) for lines in held if id in lines]
    return sum(places) / len(places)


def _words(quote: Quote, line: QuoteLine) -> str:
    slot = dict(quote.vans.slots).get(VANS.get(line.id, "")) if quote.vans is not None else None
    return line.words if slot is None else f"{line.words}, {long_day(slot.on)}"


def standing(quote: Quote) -> str:
    """When it was made, and until when it stands."""
    parts = [f"made on {long_day(quote.made)} {quote.made.year}"] if quote.made is not None else []
    parts += [f"stands until {long_day(quote.until)} {quote.until.year}"] if quote.until is not None else []
    return _sentence(", ".join(parts))


def heading(quote: Quote) -> str:
    """Whom it is for, and by whom."""
    parts = [f"for {quote.words.addressee}"] if quote.words.addressee else []
    parts += [f"by {quote.words.maker}"] if quote.words.maker else []
    return _capital(" · ".join(parts))


def dates(quote: Quote) -> tuple[tuple[str, str], ...]:
    """(what, when) of everything that has a day, in order."""
    found = []
    if quote.days:
        found.append(("We work in the home", _work_days(quote)))
    slots = dict(quote.vans.slots) if quote.vans is not None else {}
    for name, words in (("out", "Our van comes"), ("back", "Our van takes everything back")):
        if name in slots:
            slot = slots[name]
            hours = f"between {clock(slot.start_minute)} and {clock(slot.end_minute)}"
            found.append((words, f"{long_day(slot.on)}, {hours}"))
    if quote.photographs is not None:
        when = f"{long_day(quote.photographs.on)} at {clock(quote.photographs.minute)}; all is ready before"
        found.insert(len(found) - ("back" in slots), ("Photographs", when))
    return tuple(found)


def _work_days(quote: Quote) -> str:
    """The days with the hour at which the work begins: said once where it is the same on all."""
    days = [long_day(day) for day in quote.days]
    starts = [f"from {clock(start)}" if start else "" for start in quote.starts or (0 for _ in days)]
    if len(set(starts)) == 1:
        return ", ".join(part for part in (_and(days), starts[0]) if part)
    return _and([f"{day} {start}".strip() for day, start in zip(days, starts, strict=True)])


def included(quote: Quote) -> tuple[str, ...]:
    """What the prices hold."""
    vans = len(quote.vans.slots) if quote.vans is not None else 0
    ways = {0: "", 1: ", and the van", 2: ", and the van both ways"}[vans]
    lines = [f"All work, all purchases with tax and delivery{ways}. There is nothing to pay on top."]
    if quote.stay is not None:
        first, until = long_day(quote.stay.first), long_day(quote.stay.until)
        days = count(quote.stay.days, "day")
        lines.append(f"Our furniture and pieces for {days}, {first} to {until}. They stay ours and go back then.")
    return tuple(lines)


def agreed(quote: Quote) -> tuple[str, ...]:
    """What the client agrees to: things taken away and moved, holes, and sentences of the brief."""
    lines = []
    for words, of in (
        ("Taken down or carried out", lambda option: option.taken),
        ("Moved within the room", lambda option: option.moved),
    ):
        told = _told(quote, of)
        lines += [f"{words}: {told}."] if told else []
    if any(option.holes for option in quote.options):
        lines.append(f"New screw and nail holes in the walls: {_holes(quote)}.")
    return (*lines, *(_sentence(text) for text in quote.words.agree))


def _told(quote: Quote, of: Callable[[QuoteOption], tuple[str, ...]]) -> str:
    """Things, with the letters of the options where not all of them touch it."""
    things = list(dict.fromkeys(thing for option in reversed(quote.options) for thing in of(option)))
    words = []
    for thing in things:
        letters = [option.letter for option in quote.options if thing in of(option)]
        only = f" ({', '.join(letters)})" if len(letters) < len(quote.options) else ""
        words.append(f"{thing}{only}")
    return ", ".join(words)


def _holes(quote: Quote) -> str:
    counts = {option.letter: option.holes for option in quote.options}
    if len(set(counts.values())) == 1:
        return f"up to {next(iter(counts.values()))}"
    return "up to " + ", ".join(f"{holes} in {letter}" for letter, holes in counts.items())


def _and(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _sentence(text: str) -> str:
    return _capital(text) + ("" if not text or text.endswith(".") else ".")
