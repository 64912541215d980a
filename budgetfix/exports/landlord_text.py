"""The note to the landlord as plain text to paste into a letter: 72 columns, nothing that needs a key."""

from __future__ import annotations

from budgetfix.base.days import day_words
from budgetfix.exports.lines import wrapped
from budgetfix.outcome.leased import LandlordNote, Work

WIDTH = 72
BLANK = "_" * 30
OPENING = (
    "I rent your home and would like to change a few things in it. Below is what I ask you for, what I tell you for "
    "your information, and what stays as it is. The lease and your answer decide."
)
WAITING = "Nothing on this list is done before you have said yes."
ANSWER_BY = "Please answer by:"
ASKED, AGREED, TOLD, STAYS = (
    "What I ask you for", "What you have agreed to already", "What I do besides, for your information",
    "What stays as it is",
)  # fmt: skip
LABELS = ("Where", "Holes", "With", "At the end")


def landlord_text(note: LandlordNote) -> bytes:
    """The letter; UTF-8."""
    lines = [f"Date: {BLANK}", f"Home: {BLANK}", "", "To my landlord", "", *wrapped(OPENING, 0, WIDTH)]
    for heading, works, ask in ((ASKED, note.asked, True), (AGREED, note.agreed, False), (TOLD, note.told, False)):
        if works:
            lines += ["", heading, "-" * len(heading)]
            lines += [*wrapped(WAITING, 0, WIDTH), f"{ANSWER_BY} {BLANK}"] if ask else []
            for number, work in enumerate(works, 1):
                lines += ["", *_work(number, work, ask)]
    stays = stays_lines(note)
    if stays:
        lines += ["", STAYS, "-" * len(STAYS), *(line for text in stays for line in wrapped(f"- {text}", 2, WIDTH))]
    lines += ["", *wrapped(closing(note), 0, WIDTH), "", f"Tenant:   {BLANK}", "", f"Landlord: {BLANK}", ""]
    return "\n".join(lines).encode()


def _work(number: int, work: Work, ask: bool) -> list[str]:
    lines = wrapped(f"{number}. {work.what}", 3, WIDTH)
    for label, text in zip(LABELS, (work.where, work.holes, work.using, work.made_good), strict=True):
        if text:
            lines += wrapped(f"   {label + ':':<12}{text}", 15, WIDTH)
    return [*lines, "   Answer:     [ ] yes   [ ] no"] if ask else lines


def stays_lines(note: LandlordNote) -> tuple[str, ...]:
    """What is kept, what is not touched, what is never done; a sentence each."""
    kept = tuple(f"{text[:1].upper()}{text[1:]}, and put back at the end." for text in note.kept)
    untouched = (f"Not touched: {', '.join(note.untouched)}.",) if note.untouched else ()
    never = (f"There will be none of this: {', '.join(note.never)}.",) if note.never else ()
    return (*kept, *untouched, *never)


def closing(note: LandlordNote) -> str:
    """What is promised for the end."""
    ends = f" The lease ends on {day_words(note.ends)}." if note.ends is not None else ""
    return f"When I move out I make good what is said above, at my own cost.{ends}"
