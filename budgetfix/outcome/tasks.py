"""The chosen candidates as tasks in working order, session by session."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import replace

from budgetfix.brief.models import Brief
from budgetfix.catalog.bill import bill
from budgetfix.catalog.models import Catalog
from budgetfix.framing.frame import Framed
from budgetfix.framing.options import ERRAND, labour_minor
from budgetfix.framing.purses import errands_by_id
from budgetfix.optimize.problem import Placed, Plan
from budgetfix.optimize.setting_up import set_up, setups
from budgetfix.outcome.book import SessionRow, Spell, Task
from budgetfix.outcome.order import Slot, predecessors, working_order
from budgetfix.outcome.timeline import Piece, laid_out
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.old_paint import BEYOND, PaintWork, beyond_minor

ERRAND_PHASE = 0
"""Errands stand before all that waits for them; what does not wait may come first (see `order`)."""


def tasks(brief: Brief, catalog: Catalog, framed: Framed, plan: Plan, worth: Mapping[str, int]) -> tuple[Task, ...]:
    """Every placed step, in the order in which it is done."""
    cares = cares_of(brief, framed, plan)
    placed = {(one.option, one.step): one for one in plan.placed}
    by_session: dict[int, list[Slot]] = defaultdict(list)
    for key in placed:
        by_session[placed[key].session or 0].append(_slot(framed, plan, key))
    stepped = [
        replace(_task(brief, catalog, framed, placed[key], worth, cares), spells=spells)
        for session in sorted(by_session)
        for key, spells in _timed(brief, framed, by_session[session], placed)
    ]
    with_steps = {one.option for one in plan.placed}
    bare = [framed.candidates[id] for id in sorted(plan.chosen) if id in framed.candidates and id not in with_steps]
    return (*stepped, *(_without_steps(one, brief, catalog, worth, cares[one.id]) for one in bare))


Key = tuple[str, int]


def _timed(
    brief: Brief, framed: Framed, slots: list[Slot], placed: Mapping[Key, Placed]
) -> list[tuple[Key, tuple[Spell, ...]]]:
    """The steps of one session as they begin, with their minutes; in working order, without, where no way was found."""
    keys = working_order(slots)
    by_key = {slot.key: slot for slot in slots}
    number = {key: place for place, key in enumerate(keys)}
    session = placed[keys[0]].session
    if brief.hours is None or session is None:
        return [(key, ()) for key in keys]
    cuts = [_cut(framed, placed[key], by_key[key].minutes) for key in keys]
    starts = [sum(len(cut) for cut in cuts[:place]) for place in range(len(cuts) + 1)]
    pieces: list[Piece] = []
    for place, (key, cut) in enumerate(zip(keys, cuts, strict=True)):
        before = tuple(starts[number[one] + 1] - 1 for one in by_key[key].after if one in number)
        for part, (people, minutes) in enumerate(cut):
            pieces.append(Piece(people, minutes, (starts[place] + part - 1,) if part else before))
    there = dict(zip((person.name for person in brief.people), brief.hours[session].minutes, strict=True))
    begins = laid_out(tuple(pieces), there, setups(framed.problem)[session])
    if begins is None:
        return [(key, ()) for key in keys]
    spells = [_spell(brief, piece, begin) for piece, begin in zip(pieces, begins, strict=True)]
    order = sorted(number.values(), key=lambda place: (begins[starts[place]], place))
    return [(keys[place], tuple(spells[starts[place] : starts[place + 1]])) for place in order]


def _cut(framed: Framed, placed: Placed, minutes: int) -> tuple[tuple[tuple[str, ...], int], ...]:
    """(people, minutes) of the parts of a step that the same people do: a helper is there at its start."""
    helped = help_of(framed, placed)
    if not helped:
        return ((placed.people, minutes),)
    alone = ((placed.people[:1], minutes - helped),) if minutes > helped else ()
    return ((placed.people, helped), *alone)


def help_of(framed: Framed, placed: Placed) -> int:
    """Minutes of a second pair of hands that a placed step asks for."""
    one = framed.candidates.get(placed.option)
    return one.work[placed.step].help if one is not None else 0


def _spell(brief: Brief, piece: Piece, begin: int) -> Spell:
    return Spell(begin, begin + piece.minutes, named(brief, piece.people))


ENDS = (".", "!", "?", "…", "。", "！", "？", "؟", "।")
"""Marks that end a sentence, in the scripts that a catalogue may be written in."""
WINDOW = ("width", "bottom", "top")
"""A window that changes one of these is replaced."""


DOES = {"ladder": "goes up the ladder", "drill": "drills"}
"""What one does and another may refuse, at one step."""


def cares_of(brief: Brief, framed: Framed, plan: Plan) -> dict[str, tuple[str, ...]]:
    """The cautions of every chosen candidate, with what only the whole plan shows: old paint adds up in a room."""
    first = {one.option: one.session for one in sorted(plan.placed, key=lambda one: -one.step)}
    chosen = {id: framed.candidates[id] for id in sorted(plan.chosen) if id in framed.candidates}
    works = tuple(_paint(brief, one, first.get(id)) for id, one in chosen.items() if one.paint_mm2 > 0)
    beyond = beyond_minor(works)
    return {
        id: (
            *_who_does(brief, plan, one),
            *map(_sentence, one.cares),
            *((BEYOND,) if one.paint_mm2 > 0 and one.room in beyond else ()),
        )
        for id, one in chosen.items()
    }


def _who_does(brief: Brief, plan: Plan, one: Candidate) -> tuple[str, ...]:
    """Who goes up the ladder or drills, where somebody else at the same step does not."""
    words = {word.casefold() for word in (*one.tools, *one.hazards)}
    refuses = {person.name: {word.casefold() for word in person.refuses} for person in brief.people}
    said: dict[str, None] = {}
    for placed in plan.placed:
        for word, does in DOES.items() if placed.option == one.id else ():
            off = [name for name in placed.people if word in refuses[name]]
            does_it = [name for name in placed.people if word not in refuses[name]]
            if word in words and off and does_it:
                verb = "helps" if len(off) == 1 else "help"
                said[f"{' or '.join(does_it)} {does}; {' and '.join(off)} {verb} from the floor."] = None
    return tuple(said)


def _sentence(care: str) -> str:
    """A caution that ends like a sentence, because cautions are read one after the other; a user's may lack the end."""
    words = care.rstrip()
    return words if not words or words.rstrip("\"')»”’").endswith(ENDS) else f"{words}."


def _paint(brief: Brief, one: Candidate, session: int | None) -> PaintWork:
    """The paint that a candidate disturbs, on the day of its first step; without dates all falls on one day."""
    day = brief.hours[session].day if brief.hours is not None and session is not None else 0
    window = any(change.table == "openings" and {name for name, _ in change.set} & {*WINDOW} for change in one.changes)
    return PaintWork(one.room, day, one.paint_mm2, window)


def _without_steps(
    one: Candidate, brief: Brief, catalog: Catalog, worth: Mapping[str, int], cares: tuple[str, ...]
) -> Task:
    """A chosen remedy that takes no time: last in the list, in no session, `step` 0 of 0."""
    return Task(
        candidate=one.id,
        name=one.name,
        step=0,
        steps=0,
        session=None,
        text="",
        minutes=0,
        low=0,
        likely=0,
        high=0,
        people=1,
        cares=cares,
        done_when=one.done_when,
        worth=worth.get(one.id, 0),
        cost_minor=alone_minor(one, catalog, brief),
        leaves=_leaves(one),
    )


def _leaves(one: Candidate) -> str:
    return "" if one.leaves == "nothing" else one.leaves


def _slot(framed: Framed, plan: Plan, key: tuple[str, int]) -> Slot:
    id, step = key
    options = {option.id: option for option in framed.problem.options}
    last = {other: len(options[other].steps) - 1 for other in plan.chosen}
    minutes = options[id].steps[step].minutes
    fetched = [first_round(plan, wanted[dict(plan.buys)[id] :]) for wanted in options[id].rounds]
    after = predecessors(id, step, (*options[id].needs, *fetched), last)
    if id.startswith(ERRAND):
        return Slot(key, ERRAND_PHASE + 2, minutes, after)
    return Slot(key, framed.candidates[id].work[step].phase, minutes, after)


def first_round(plan: Plan, rounds: tuple[str, ...]) -> str:
    """The first of some rounds that a plan runs."""
    return min((one.session or 0, one.option) for one in plan.placed if one.option in rounds)[1]


def _task(
    brief: Brief,
    catalog: Catalog,
    framed: Framed,
    placed: Placed,
    worth: Mapping[str, int],
    cares: Mapping[str, tuple[str, ...]],
) -> Task:
    session = None if placed.session is None else placed.session + 1
    if placed.option.startswith(ERRAND):
        errand = errands_by_id(brief)[placed.option]
        minutes = errand.minutes
        work = Work(errand.name, minutes, minutes, minutes, minutes, errand.people)
        one = Candidate(placed.option, "errand", errand.name, work=(work,))
    else:
        one = framed.candidates[placed.option]
        work = one.work[placed.step]
    last, first = placed.step == len(one.work) - 1, placed.step == 0
    tools = {tool.tool: tool.name or tool.tool for tool in catalog.tools}
    return Task(
        candidate=one.id,
        name=one.name,
        step=placed.step + 1,
        steps=len(one.work),
        session=session,
        text=work.text,
        minutes=work.minutes,
        low=work.low,
        likely=work.likely,
        high=work.high,
        people=work.people,
        who=named(brief, placed.people),
        tools=tuple(tools.get(tool, tool) for tool in one.tools),
        cares=cares.get(one.id, ()),
        done_when=one.done_when if last else "",
        worth=worth.get(one.id, 0) if last else 0,
        cost_minor=alone_minor(one, catalog, brief) if first else 0,
        leaves=_leaves(one) if first else "",
        helper="".join(named(brief, placed.people[1:])) if work.help else "",
        help_minutes=work.help,
        base_minutes=work.base_minutes if work.base else 0,
    )


def named(brief: Brief, people: tuple[str, ...]) -> tuple[str, ...]:
    """People as others call them: a household that named nobody has person 1 and person 2; one alone needs no name."""
    if [person.name for person in brief.people] != [str(number) for number in range(1, len(brief.people) + 1)]:
        return people
    return tuple(f"person {name}" for name in people) if len(brief.people) > 1 else ()


def alone_minor(candidate: Candidate, catalog: Catalog, brief: Brief) -> int:
    """What a candidate costs if bought alone: its own cost, whole packs and pay; no delivery, tax or tools."""
    goods = bill(catalog, (), dict(candidate.uses), (), ())
    own = candidate.cost_minor + labour_minor(candidate, brief)
    return own + sum(line.line_minor for line in goods if line.kind == "product")


def session_rows(
    brief: Brief, framed: Framed, plan: Plan, used: tuple[int, ...], live: int = 0
) -> tuple[SessionRow, ...] | None:
    """Every session, also the empty ones; None without a list of hours. `live`: the first that is not gone, from 0."""
    if brief.hours is None:
        return None
    options = {option.id: option for option in framed.problem.options}
    setup = set_up(framed.problem, plan.placed)
    rows = []
    for index, hours in enumerate(brief.hours):
        own = dict.fromkeys((person.name for person in brief.people), 0)
        for placed in plan.placed:
            if placed.session == index:
                for place, person in enumerate(placed.people):
                    own[person] += options[placed.option].steps[placed.step].minutes_in(place)
        end = hours.start_minute + hours.length_minutes if brief.vans or brief.photographs else None
        who = tuple(
            ((*named(brief, (name,)), name)[0], there, own[name] + setup[index][name])
            for name, there in zip(own, hours.minutes, strict=True)
        )
        there = sum(hours.minutes)
        rows.append(
            SessionRow(index + 1, hours.on, hours.start_minute, there, used[index], who, end, gone=index < live)
        )
    return tuple(rows)
