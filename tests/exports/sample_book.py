"""One plan that the tests of all outputs lay out: a front room, two shops, two sessions, one hazard gone."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from budgetfix.outcome.book import (
    ChosenRow,
    FaultRow,
    LeftOutRow,
    MoneyLine,
    MorePlan,
    NextStep,
    PlanBook,
    SessionRow,
    Stop,
    Sums,
    Task,
)

MONEY = (
    MoneyLine(
        "product", "rod", "Extending rod 66-120 in", "harrow", "Harrow Tools", 1, 3900, 3900, '66" to 120"',
        "100 to 124 in", "Two rods and a joint", ("Hang a longer rod, higher",),
        most_minor=4728, take_along="window: frame 72 in wide, rod 90 in up", return_by=date(2026, 7, 4), bag="B",
    ),
    MoneyLine("product", "anchor", "Furniture anchor, set of 2", "harrow", "Harrow Tools", 1, 980, 980,
              tasks=("Fix the bookcase to the wall",), any_price=True, bag="A"),
    MoneyLine("product", "bulb", "LED bulb 1100 lm", "harrow", "Harrow Tools", 2, 600, 1200, "E27, 2700 K",
              tasks=("Put brighter bulbs in both lamps",), example=True, most_minor=1500, no_return=True,
              mind="it cannot be given back: look it over before you pay", bag="D"),
    MoneyLine("product", "panels", "Curtain panels 42 x 96 in, pair", "mill", "Mill Lane Home", 2, 2800, 5600,
              "42 x 96 in", tasks=("Hang two pairs of longer panels",), lead_days=3, bag="C"),
    MoneyLine("hire", None, "Hire: cordless drill", None, "", 1, 1400, 1400, tasks=("Hang a longer rod, higher",)),
    MoneyLine("delivery", None, "Delivery, Mill Lane Home", "mill", "Mill Lane Home", None, None, 590),
    MoneyLine("tax", None, "Tax, Harrow Tools", "harrow", "Harrow Tools", None, None, 502),
)  # fmt: skip

TASKS = (
    Task("errand:shops", "One round of shops", 1, 1, 1, "Buy all of the Buy sheet", 60, 45, 60, 90, 1, ("Ann",)),
    Task(
        "lower-tv", "Lower the TV by 12 in", 1, 1, 1,
        "Take it off the bracket, move the bracket down to 42 1/2 in from the floor.", 45, 30, 40, 75, 2,
        ("Ann", "Ben"), ("drill", "spirit level"), ("Mind wires and pipes before you drill.", "Two people lift."),
        "the middle of the glass is 42 1/2 in up", 350, 0,
    ),
    Task("anchor", "Fix the bookcase to the wall", 1, 1, 1, "Screw the strap into a stud.", 25, 15, 25, 45, 1, ("Ben",),
         ("drill",), ("Tall furniture tips: fix it to a stud.",), "it does not move when pulled", 500, 980, "plugs",
         "A"),
    Task("rod", "Hang a longer rod, higher", 1, 2, 1, "Mark both brackets, 8 in past the frame.", 10, 10, 10, 10, 1,
         ("Ann",), ("tape", "pencil"), (), "", 0, 3900, bag="B"),
    Task("rod", "Hang a longer rod, higher", 2, 2, 2, "Drill, plug, screw the brackets; lay the rod in.", 50, 30, 45,
         75, 1, ("Ben",), ("drill", "ladder"), ("Ladder.", "Mind wires and pipes before you drill."),
         "the rod is level, 90 in up", 575, 0),
    Task("panels", "Hang two pairs of longer panels", 1, 1, 2, "Hang and steam both pairs.", 20, 20, 20, 20, 1,
         ("Ann",), ("ladder",), ("Ladder.",), "", 525, 5600, bag="C"),
    Task("bulbs", "Put brighter bulbs in both lamps", 1, 1, 2, "Change both.", 5, 5, 5, 5, 1, ("Ann",),
         worth=124, cost_minor=1200, bag="D"),
)  # fmt: skip

SESSIONS = (
    SessionRow(1, date(2026, 6, 6), 540, 360, 215, (("Ann", 180, 130), ("Ben", 180, 85))),
    SessionRow(2, date(2026, 6, 7), 540, 240, 105, (("Ann", 120, 40), ("Ben", 120, 65))),
)


def fault(
    rule: str, subject: str, title: str, before: str, sound: str, after: str, points: tuple[int, int], state: str
) -> FaultRow:
    """One measured fault; `points` before and after."""
    severity = (1.0 if points[0] else 0.0, 1.0 if points[1] else 0.0)
    return FaultRow(
        f"{rule}/{subject}", rule, subject, title, "front room", before, sound, after, *points, *severity,
        safety=rule == "tall-piece-loose", certain=True, listed=False, state=state,
    )  # fmt: skip


FAULTS = (
    fault("tall-piece-loose", "bookcase", "tall piece stands loose", "loose", "fixed to the wall", "fixed", (500, 0),
          "fixed"),
    fault("picture-too-small", "Harbour print", "picture too small", "0.24 of the sofa", "0.57 to 0.75",
          "0.24 of the sofa", (400, 400), "still there"),
    fault("rod-too-narrow", "Big window", "rod too narrow", "2 in past the frame", "8 in or more", "15 in", (375, 0),
          "fixed"),
    fault("screen-off-eye-level", "TV", "screen off eye level", "54 1/2 in", "40 to 44 in", "42 1/2 in", (350, 0),
          "fixed"),
    fault("panels-skimpy", "Big window", "panels skimpy", "1.45 times the rod", "2 to 3 times", "1.9 times", (300, 60),
          "better"),
    replace(fault("screen-too-far", "TV", "screen too far", "2.6 diagonals", "1.2 to 2.5", "2.6 diagonals", (28, 28),
                  "still there"), certain=False),
    fault("rod-hung-low", "Big window", "rod hung low", "sound", "9 1/4 in or more", "8 in", (0, 12), "new"),
    FaultRow("f1", None, "door", "the door sticks", "", "listed", "", "listed", 100, 100, 1.0, 1.0, False, True, True,
             "still there"),
)  # fmt: skip

CHOSEN = (
    ChosenRow("anchor", "Fix the bookcase to the wall", ("tall-piece-loose/bookcase",), 0, TASKS[2].cares),
    ChosenRow("bulbs", "Put brighter bulbs in both lamps", (), 0, ()),
    ChosenRow("lower-tv", "Lower the TV by 12 in", ("screen-off-eye-level/TV",), 0, TASKS[1].cares),
    ChosenRow("panels", "Hang two pairs of longer panels", ("panels-skimpy/Big window",), 0, ("Ladder.",)),
    ChosenRow("rod", "Hang a longer rod, higher", ("rod-too-narrow/Big window",), 0, TASKS[4].cares),
)
IDS = tuple(row.id for row in CHOSEN)

LEFT_OUT = (
    LeftOutRow("big-print", "Hang a 48 in picture over the sofa", 9500, 25, 400, "82.80 more is needed"),
    LeftOutRow("basket", "Stand a basket beside the console", 2800, 5, 267, "15.80 more is needed"),
    LeftOutRow("lamp", "Add a table lamp on the bookcase", 3400, 10, 100, "21.80 more is needed"),
    LeftOutRow("shelf", "A second shelf", 100, 10, 0, "adds nothing beside what is chosen"),
)

MORE = (
    MorePlan(0, 350, 1, 90, (), ("Fix the bookcase to the wall", "Hang a longer rod, higher"), False),
    MorePlan(980, 350, 0, 115, (), ("Hang a longer rod, higher", "Hang two pairs of longer panels"), False),
    MorePlan(14172, 953, 0, 320, (), (), True),
    MorePlan(16972, 1220, 0, 325, ("Stand a basket beside the console",), (), False),
)

BOOK = PlanBook(
    title="Front room",
    room_words="14 ft by 12 ft",
    currency="EUR",
    unit="in",
    ordered=date(2026, 6, 1),
    budget_minor=16000,
    held_back_minor=1000,
    spent_minor=14172,
    hazards_before=1,
    hazards_after=0,
    hazard_points_before=500,
    hazard_points_after=0,
    points_before=1553,
    points_after=600,
    proven=True,
    bound=953,
    inspections=3,
    placings=2,
    candidates=16,
    seconds_limit=60.0,
    people=("Ann", "Ben"),
    money=MONEY,
    tasks=TASKS,
    sessions=SESSIONS,
    faults=FAULTS,
    chosen=CHOSEN,
    left_out=LEFT_OUT,
    more=MORE,
    next=NextStep(MORE[-1], hour=MorePlan(14172, 1013, 0, 380, ("Sort the shelf",), ()), hour_session=3, complete=True),
    best=Sums(14172, 953, 0, 320, IDS),
    recommended=Sums(12972, 900, 0, 315, tuple(id for id in IDS if id != "bulbs")),
    free=Sums(0, 350, 1, 90, ("lower-tv",)),
    notes=("1 of the prices is still an example; put in your shop's.",),
    cautions=("Mind wires and pipes before you drill.", "Two people lift.", "Ladder."),
)

NOTHING = replace(
    BOOK, money=(), spent_minor=0, tasks=(), chosen=(), points_after=1553, bound=0, left_out=(), more=(),
    next=NextStep(), notes=(),
    cautions=(), hazards_after=1, hazard_points_after=500, best=Sums(0, 0, 1, 0, ()), recommended=None, free=None,
)  # fmt: skip
"""Nothing to buy and nothing to do."""

NO_HOURS = replace(BOOK, sessions=None, next=NextStep(), tasks=tuple(replace(task, session=None) for task in TASKS))
"""A household that gave no list of hours."""

LONG = "A remarkably long product name with exactly sixty letters..!"
RTL = "ستارة طويلة للنافذة الكبيرة"
ACCENTS = "Étagère à crémaillère, chêne brûlé"
FORMULA = '=HYPERLINK("x")'


def many(amount: int, currency: str = "EUR") -> PlanBook:
    """A book with that many products, names from all the world, each with its own task."""
    names = (LONG, RTL, ACCENTS, FORMULA, "Regal aus Eschenholz", "棚板 90 cm")
    money = tuple(
        MoneyLine("product", f"p{at:03d}", names[at % len(names)], f"s{at % 3}", f"Shop {at % 3}", 1 + at % 3,
                  100 + at, (1 + at % 3) * (100 + at), tasks=(f"Task {at}",))
        for at in range(amount)
    )  # fmt: skip
    spent = sum(line.line_minor for line in money)
    tasks = tuple(
        Task(f"c{at:03d}", names[at % len(names)], 1, 1, 1 + at * 2 // amount, f"Do {names[at % len(names)]}", 5, 5, 5,
             5, 1, ("Ann",), cost_minor=money[at].line_minor)
        for at in range(amount)
    )  # fmt: skip
    return replace(
        BOOK, currency=currency, money=money, tasks=tasks, spent_minor=spent, budget_minor=spent + 500,
        best=replace(BOOK.best, spent_minor=spent),
    )  # fmt: skip


NO_LIMIT = replace(BOOK, budget_minor=None, held_back_minor=0)
"""A household without a limit of money."""

FREE_HANDS = replace(BOOK, sessions=(), tasks=(), chosen=(), faults=())
"""No time at all, and nothing found."""

LONG_TEXT = replace(
    BOOK,
    title="  two  spaces & <signs> ",
    tasks=(replace(TASKS[0], text="line one\nline two\ttab \u00a0 and  spaces", name="'quoted"), *TASKS[1:]),
    notes=("=1+1", "007", "1e5", "TRUE", "6/6/2026"),
)
"""Texts that programs like to tidy up."""

LEFT_AS_IT_IS = tuple(
    replace(row, after=row.before, points_after=row.points_before, severity_after=row.severity_before,
            state="still there")
    for row in FAULTS if row.state != "new"
)  # fmt: skip
"""The room's faults before anything is done."""
TV_LOWER = tuple(FAULTS[3] if row.rule == "screen-off-eye-level" else row for row in LEFT_AS_IT_IS)
TV_AND_ANCHOR = tuple(FAULTS[0] if row.rule == "tall-piece-loose" else row for row in TV_LOWER)
BASKET = MoneyLine("product", "basket", "Basket, 40 cm", "mill", "Mill Lane Home", 1, 2800, 2800,
                   tasks=("Stand a basket beside the console",))  # fmt: skip
STAND = Task("basket", "Stand a basket beside the console", 1, 1, 2, "Left edge 12 in from the left corner.", 5, 5, 5,
             5, 1, ("Ben",), worth=267, cost_minor=2800)  # fmt: skip
STOPS = (
    Stop(Sums(0, 350, 1, 90, ("lower-tv",)), 500, (), TASKS[1:2], SESSIONS[:1], TV_LOWER),
    Stop(Sums(980, 350, 0, 115, ("anchor", "lower-tv")), 0, MONEY[1:2], TASKS[1:3], SESSIONS[:1], TV_AND_ANCHOR),
    Stop(BOOK.best, 0, MONEY, TASKS, SESSIONS, FAULTS, this_one=True),
    Stop(Sums(16972, 1220, 0, 325, (*IDS, "basket")), 0, (*MONEY[:4], BASKET, *MONEY[4:]), (*TASKS, STAND), SESSIONS,
         FAULTS),
)  # fmt: skip
"""Four plans by rising spend, as a slider has them: nothing to buy, one screw, the book's own, one basket more."""
WITH_STOPS = replace(BOOK, stops=STOPS)
