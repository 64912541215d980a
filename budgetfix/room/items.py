"""The things of a survey, in the survey's own fields. Lengths are millimetres; nothing here is ever changed.

Everything is placed as a tape measures it: face the wall, start at the corner on your left.
`from_left` goes to a thing's left edge; `gap` is from the wall to its nearest side.
"""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict

Table = Literal["openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets"]
TABLES: tuple[Table, ...] = ("openings", "curtains", "furniture", "pictures", "rugs", "lights", "sockets")

SEATS = ("sofa", "corner sofa", "loveseat", "armchair", "daybed", "bench seat")
"""What counts as a seat of the seating group; desk and dining chairs do not."""
HEATERS = ("radiator", "electric heater", "baseboard heater", "portable heater")
TALL = ("bookcase", "wardrobe", "cabinet", "shelf unit", "dresser", "chest of drawers", "sideboard", "shoe cabinet")
WITH_DRAWERS = ("dresser", "chest of drawers", "sideboard", "shoe cabinet")
TABLES_TO_REACH = ("coffee table", "side table", "nesting tables", "nightstand", "ottoman")


class Thing(BaseModel):
    """Anything with a name in a room. `name` is unique in the survey and serves as its id."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    name: str
    room: str = ""


class OnWall(Thing):
    """A thing at a wall: `from_left` from the wall's left corner to its left edge."""

    wall: str = ""
    from_left: float = 0.0
    width: float = 0.0


class Opening(OnWall):
    """A door, an opening without a leaf, a window or a closet front."""

    what: Literal["door", "opening", "window", "closet"] = "door"
    bottom: float = 0.0
    """Sill of a window, above the floor."""
    top: float = 2030.0
    """Head of the frame, above the floor."""
    opens: Literal["in", "out", "slides", "no leaf"] = "in"
    hinge: Literal["left", "right"] = "left"
    entry: bool = False
    """The home's own front door."""
    blind: bool = False
    overlooked: bool = False
    escape: bool = False
    """A bedroom's escape window."""
    outside: bool = False
    """The wall that it stands in is an outside wall."""
    cord: float = 0.0
    """Longest free cord or loop of a blind; 0 = none, or tied down."""


class Curtain(Thing):
    """A rod with its cloth at one window (or across two: `window` names the left one, `also_window` the other)."""

    window: str
    also_window: str = ""
    rod_height: float
    rod_from_left: float
    rod_width: float
    panels: int = 2
    panel_width: float
    """Flat width of one panel."""
    hem: float
    """Lower edge of the cloth above the floor."""
    heading: Literal["eyelet", "tab", "pocket", "wave", "pleat"] = "eyelet"
    cloth: Literal["sheer", "lined", "blackout"] = "lined"
    length: Literal["floor", "sill", "apron"] = "floor"
    stack: float | None = None
    """Open stack each side, if measured; else worked out from the flat width and the cloth."""


class Piece(OnWall):
    """Furniture, or anything else that stands on the floor (heaters, toy boxes, plants).

    `width` is its long side along its own back, `depth` front to back; `wall` the nearest wall.
    `faces` is the wall that it looks at (empty: away from `wall`, into the room).
    """

    what: str
    depth: float
    height: float
    gap: float = 0.0
    faces: str = ""
    seat: float | None = None
    """Height of a seat, or of the mattress, or of the top where that is not the height."""
    arm: float | None = None
    round: bool = False
    fixed: bool = False
    """Fixed to the wall so that it cannot tip."""
    heavy: bool = False
    weight: float | None = None
    """Kilograms, where somebody weighed it or the maker says."""
    main: bool = False
    """The seat that the room is judged from."""
    tucked: bool = False
    """A chair pushed in under `at`."""
    at: str = ""
    """The table or desk that a chair belongs to, or the bed of a nightstand."""
    reading: bool = False
    headboard: bool = False
    sleepers: int = 0
    drawers: float | None = None
    """How far a drawer pulls out."""
    hangs: bool = False
    surface: bool = True
    """Something can be put down on it (keys, a cup)."""
    things: int = 0
    """How many things stand on it, if counted."""
    cables: float = 0.0
    """The longest loop of cable in view below it (a desk); 0 = none."""
    undressed: bool = False
    """A bed that is not made up."""


class Hung(OnWall):
    """Pictures, mirrors, screens, shelves, sconces, alarms: what hangs on or stands at a wall. `bottom` edge up.

    "old holes": open holes in the wall, the patch that they take up. "mark": scuffs, strips left and the like; its
    `group` says which.
    """

    what: Literal[
        "picture", "mirror", "screen", "shelf", "sconce", "picture light", "alarm", "clock", "old holes", "mark"
    ] = "picture"
    height: float = 0.0
    bottom: float = 0.0
    depth: float = 20.0
    over: str = ""
    """The piece that it hangs over."""
    group: str = ""
    on: str = ""
    """The piece that it stands on (a screen on its bench)."""
    leaned: bool = False
    weight: float | None = None
    """Kilograms."""
    fixing: Literal["nail", "screws", "strips", "strap", "none", "unknown"] = "unknown"
    feet: float | None = None
    """Outside width of a screen's feet."""
    personal: bool = False
    cables: float = 0.0
    """The longest loop of cable in view below a screen; 0 = none."""
    things: int = 0
    """How many old holes or marks there are."""


class Rug(OnWall):
    """`width` along its nearest wall, `depth` away from that wall, real sizes."""

    depth: float
    gap: float = 0.0
    round: bool = False
    pad: bool = False
    under: str = ""
    """The dining table or bed that it belongs to; empty: the seating group."""


class Light(OnWall):
    """A lamp. `switch` names what it is switched with; `bottom` is the lower edge of its shade above the floor."""

    what: Literal["ceiling", "pendant", "floor lamp", "table lamp", "wall light", "other"] = "other"
    switch: str = ""
    lumens: float = 806.0
    kelvin: float = 2700.0
    depth: float = 0.0
    gap: float = 0.0
    bottom: float = 0.0
    over: str = ""
    """The table under a pendant."""
    on: str = ""
    """The piece that a table lamp stands on."""
    lead: float | None = None
    """Length of its lead; none for wired lights."""
    socket: str = ""
    lead_over_route: bool = False
    lead_covered: bool = False


class Socket(OnWall):
    """A wall socket; `from_left` to its middle."""


Item = Opening | Curtain | Piece | Hung | Rug | Light | Socket
ITEM_OF: dict[Table, type[Thing]] = {
    "openings": Opening,
    "curtains": Curtain,
    "furniture": Piece,
    "pictures": Hung,
    "rugs": Rug,
    "lights": Light,
    "sockets": Socket,
}
