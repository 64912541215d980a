"""Set a picture light at the right height over its picture, or buy one that is wide enough.

Fits: a picture light over a frame. Its middle goes over the frame's middle (of a pair: between the two), 6 1/2 in (165
mm) above the upper edge. Free, where its width is right; else a light in the catalogue of 0.5 to 0.75 of the picture's
width (over a pair: 1.0 to 1.5 of one). Battery or plug: a wired one is the electrician's.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.inspection.art import lit_by
from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import ladder, says
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.groups import PictureGroup, picture_groups
from budgetfix.room.items import Hung
from budgetfix.room.survey import Change

ABOVE_IN, ABOVE_MM = 6.5, 165.0
ONE, PAIR = (0.5, 0.75), (1.0, 1.5)


def _fit(site: Site) -> tuple[Candidate, ...]:
    lamp = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(lamp, Hung) or lamp.what != "picture light" or lamp.wall not in site.lines:
        return ()
    group = lit(site, lamp)
    return () if group is None else best(KIND, site, _offers(site, lamp, group), 2)


def lit(site: Site, lamp: Hung) -> PictureGroup | None:
    """The group that the light is for: the one that the survey names, else the nearest below it."""
    hung = [one for one in site.survey.pictures if one.room == site.room and one.wall == lamp.wall]
    return lit_by(lamp, picture_groups(hung, site.metric))


def _offers(site: Site, lamp: Hung, group: PictureGroup) -> Iterator[Offer]:
    middle = lamp.from_left + lamp.width / 2
    pair = len(group.frames) == 2 and all(not one.from_left <= group.middle <= one.from_left + one.width
                                          for one in group.frames)  # fmt: skip
    frame = min(group.frames, key=lambda one: (abs(one.from_left + one.width / 2 - middle), one.name))
    over = group.middle if pair else frame.from_left + frame.width / 2
    low, high = PAIR if pair else ONE
    top = max(one.bottom + one.height for one in group.frames) if pair else frame.bottom + frame.height
    bottom = site.tape(top + site.mm(ABOVE_IN, ABOVE_MM))
    moved = _change(site, lamp, over, lamp.width, bottom)
    if better(site, (moved,)) and site.products is None:
        text = f"Only a light with a battery or a plug; a wired one is the electrician's. {says(site, (moved,))}"
        yield Offer(f"Set the {lamp.name} right", (moved,), text, "", hazards=ladder(site, (moved,)))
    for product in of_sort(site, "picture light"):
        if low * frame.width <= (product.width or 0.0) <= high * frame.width:
            change = _change(site, lamp, over, product.width or 0.0, bottom)
            use = ((product.product, Fraction(1)),)
            name, words = f"{called(product)} in place of the {lamp.name}", says(site, (change,))
            accepts = f"{site.words(low * frame.width)} to {site.words(high * frame.width)} wide"
            yield Offer(
                name, (change,), words, product.product, use, accepts=accepts, hazards=ladder(site, (change,)),
            )  # fmt: skip


def _change(site: Site, lamp: Hung, over: float, wide: float, bottom: float) -> Change:
    return set_on("pictures", lamp.name, from_left=site.tape(over - wide / 2), width=wide, bottom=bottom)


KIND = Kind(
    "picture-light", "Set a picture light right", ("art-light-off",), (10, 20, 30), 12, _fit, hazards=("pins",),
    whats=("picture light",), leaves="pins", done_when="the picture is lit from edge to edge, and nobody is dazzled",
)  # fmt: skip
