"""Small jobs that the tests of framing and outcome share: one of listed faults, one measured room."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.brief.models import Brief, Errand, Hours, ListedFault, Person
from budgetfix.catalog.models import Catalog, Product, Remedy, Shop, Tool, WorkStep
from budgetfix.framing.frame import Ground, ground
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.room.items import Hung, Opening, Piece, Rug
from budgetfix.room.survey import RoomFacts, Survey, Wall

F = Fraction
SATURDAY = Hours(minutes=(120,), day=0, length_minutes=120)
SUNDAY = Hours(minutes=(90,), day=1, length_minutes=90)


def remedy(name: str, answers: dict[str, str], minutes: int, cost: int = 0, **more: object) -> Remedy:
    """A remedy of one step."""
    return Remedy.model_validate(
        {
            "remedy": name,
            "answers": tuple((fault, F(share)) for fault, share in sorted(answers.items())),
            "steps": (WorkStep(minutes=minutes),) if minutes else (),
            "cost_minor": cost,
            **more,
        }
    )


def listed_ground(brief: Brief | None = None) -> Ground:
    """Two faults, four remedies, a tin of paint, a saw and an errand."""
    catalog = Catalog(
        currency="USD",
        remedies=(
            remedy("paint", {"wall": "1"}, 60, uses=(("tin", F(7, 10)),), pick_one="wall"),
            remedy("wash", {"wall": "0.4"}, 20, pick_one="wall"),
            remedy("shelf", {"mess": "0.8"}, 90, 2000, tools=("saw",), spends=(("holes", F(2)),)),
            remedy("sort", {"mess": "0.5"}, 30),
        ),
        products=(Product(product="tin", shop="mill", price_minor=2200, pack=F(5, 2)),),
        tools=(Tool(tool="saw", buy_minor=1500),),
        shops=(Shop(shop="mill", delivery_minor=500),),
    )
    faults = (ListedFault(fault="mess", points=200), ListedFault(fault="wall", points=300))
    plain = Brief(
        budget_minor=6000,
        hours=(SATURDAY, SUNDAY),
        people=(Person(name="ann", refuses=("ladder",)),),
        errands=(Errand(errand="mill", name="To the mill", shops=("mill",), minutes=15),),
    )
    return ground(None, brief or plain, catalog, faults, (), ())


def measured_ground(brief: Brief | None = None) -> Ground:
    """A room of 4 by 5 m: a sofa, a rug that misses it, a picture far above it, a loose bookcase, a door."""
    room = Survey(
        rooms=(RoomFacts(room="r"),),
        walls=tuple(
            Wall(room="r", wall=letter, length=length)
            for letter, length in zip("ABCD", (4000.0, 5000.0) * 2, strict=True)
        ),
        openings=(Opening(name="door", room="r", wall="A", from_left=200.0, width=800.0),),
        furniture=(
            Piece(
                name="sofa", room="r", what="sofa", wall="B", from_left=1500.0, width=2000.0, depth=900.0, height=800.0
            ),
            Piece(
                name="bookcase",
                room="r",
                what="bookcase",
                wall="C",
                from_left=0.0,
                width=800.0,
                depth=300.0,
                height=1900.0,
            ),
        ),
        pictures=(
            Hung(
                name="print",
                room="r",
                wall="B",
                from_left=2100.0,
                width=800.0,
                height=600.0,
                bottom=1400.0,
                over="sofa",
            ),
        ),
        rugs=(Rug(name="rug", room="r", wall="B", from_left=1400.0, gap=1300.0, width=2200.0, depth=1500.0, pad=True),),
    )
    plain = brief or Brief(hours=(SATURDAY,))
    judged = judges(RULES, plain)
    return ground(room, plain, Catalog(), (), judged, blocks(("r",), judged))
