"""What the forms of an evening say, as the journeys take it: nothing is decided here."""

from collections.abc import Iterator
from itertools import count

from paradestate.core.finding import Finding
from paradestate.core.game import Purchase
from paradestate.core.log_finding import log_stop, unwritten
from paradestate.journeys.choosing import TermsTyped, number_of
from paradestate.text.typed import purchases_text
from paradestate.web.choosing.question import GRADE
from paradestate.web.form import Form
from paradestate.web.log_form import field

MOST_DIGITS = 6
"""Of a number that is taken."""
FACE = "face"
"""First word of the field of each die; the second is which one it is, from 1."""
ASK = "ask"
"""Field of what is asked for; with the name of an entry behind it, of each that is declared."""


def terms_typed(form: Form) -> TermsTyped:
    """The terms of a game as they were filled in."""
    numbers = form.text("set")
    return TermsTyped(
        numbers=(numbers,) if numbers else (),
        date=form.text("date"),
        theatre=None,
        wished="",
        game=form.text("game"),
        grades=tuple(
            f"{name.removeprefix(GRADE)}={form.text(name)}"
            for name in form.texts
            if name.startswith(GRADE) and form.text(name)
        ),
    )


def face_field(number: int) -> str:
    """The name of the field of a die."""
    return field(FACE, f"{number}")


def faces_typed(form: Form) -> tuple[tuple[int, ...], tuple[Finding, ...]]:
    """What each die shows, or the total alone, and a stop for each that can't be read."""
    every = tuple(_fields(form))
    total = form.text("total")
    filled = [number for number, text in every if text]
    if total and filled:
        return (), (_unclear("Both dice and a total are filled in."),)
    if filled and len(filled) < len(every):
        empty = next(number for number, text in every if not text)
        return (), (_unclear(f"Die {empty} isn't filled in."),)
    named = [(f"Die {number}", text) for number, text in every if text]
    named += [("Die", text) for text in form.text("faces").split()]
    named += [("The total", total)] if total else []
    read = [number_of(text, of=name) for name, text in named]
    found = tuple(unwritten(each) for _, findings in read for each in findings)
    return tuple(number for number, _ in read if number is not None), found


def _unclear(message: str) -> Finding:
    hint = "Fill in what each die shows, or the total alone."
    return log_stop(code="roll-impossible", message=message, hint=hint)


def _fields(form: Form) -> Iterator[tuple[int, str]]:
    for number in count(1):
        if face_field(number) not in form.texts:
            return
        yield number, form.text(face_field(number))


def asked_typed(form: Form) -> str:
    """All that is declared, as it is typed beside the command."""
    fields = (name for name in form.texts if name.startswith(field(ASK, "")))
    return ", ".join(form.text(name) for name in fields if form.text(name))


def taken_typed(form: Form) -> str:
    """What is taken, as it is typed: an entry with its number, nought to decline; or a list."""
    entry, number = form.text("entry of"), form.text("number")
    if not entry:
        return form.text("what")
    is_number = number.isascii() and number.isdecimal() and len(number) <= MOST_DIGITS
    if is_number and int(number):
        taken = Purchase(entry=entry, number=int(number), choice=form.text("choice"))
        return purchases_text((taken,))
    return f"{entry}={number}"
