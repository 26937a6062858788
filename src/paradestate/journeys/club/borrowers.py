"""By which code somebody who borrows stands in the files, and who that is on this machine.

name typed -> known here, or a new code -> written with the change -> kept on this machine alone
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace

from paradestate.core.club.booking_finding import name_of_several
from paradestate.core.finding import Finding
from paradestate.text.people import (
    CODE,
    Draw,
    Person,
    forget_person,
    keep_person,
    new_code,
    people,
)
from paradestate.text.spelling import tidy


@dataclass(frozen=True, slots=True, kw_only=True)
class Whom:
    """For whom something is, as it was typed: a name, which is kept apart, or a role."""

    name: str = ""
    """A name, or a code that stands for one."""
    role: str = ""
    """Such as treasurer; it stands in the files as it is."""
    contact: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """What stands in the files, and who is kept for it on this machine; None: nobody anew."""

    said: str
    """A role or a code; empty where nobody was named."""
    person: Person | None = None
    is_new: bool = False


def named(whom: Whom, *, draw: Draw) -> tuple[Named, tuple[Finding, ...]]:
    """The code of who was typed, made anew for a name that isn't known. Raises FileError."""
    name, role = (" ".join(tidy(each).split()) for each in (whom.name, whom.role))
    if not name:
        return Named(said=role), ()
    known = people()
    found = [each for each in known if each.is_called(name)]
    if len(found) > 1:
        codes = [each.code for each in found]
        return Named(said=""), (name_of_several(codes, effect="Nothing was written."),)
    if found:
        person = replace(found[0], contact=whom.contact or found[0].contact)
        return Named(said=person.code, person=person if person != found[0] else None), ()
    if CODE.fullmatch(name):  # of somebody whom another machine knows, or who was erased here
        return Named(said=name), ()
    code = new_code(draw, taken=(each.code for each in known))
    person = Person(code=code, name=name, contact=whom.contact)
    return Named(said=code, person=person, is_new=True), ()


class Keeping:
    """Whether the code was written at last."""

    is_written = False


@contextmanager
def kept(whom: Named) -> Iterator[Keeping]:
    """Keeps the name before the code is written, and forgets a new one where that isn't done."""
    keeping = Keeping()
    if whom.person is not None:
        keep_person(whom.person)
    try:
        yield keeping
    finally:
        if whom.is_new and not keeping.is_written:
            forget_person(whom.said)
