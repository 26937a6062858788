"""Who stands behind the codes of a club, and what was erased."""

from collections.abc import Iterator, Mapping, Sequence

import click

from paradestate.cli.output import console, titled_table
from paradestate.core.club.booking import Club
from paradestate.core.sentence.wording import listed, several
from paradestate.journeys.club.erasing import Erased
from paradestate.text.people import Person, people_file

ELSEWHERE = (
    "Not looked at: archives, printed papers, what others have of this folder, versions that "
    "another program keeps, what your terminal remembers, and the backups of this machine."
)


def print_people(known: Sequence[Person], club: Club | None) -> None:
    """Code, name and contact of everybody, and what this folder says of them; None: unreadable."""
    out = console()
    if not known:
        out.print("Nobody is named on this machine.")
        return
    table = titled_table("Who borrows")
    for heading in ("code", "name", "contact", "here"):
        table.add_column(heading)
    uses: dict[str, list[str]] = {}
    for who, does, what in () if club is None else _uses(club):
        uses.setdefault(who, []).append(f"{does} {what}")
    nothing = "not known" if club is None else "nothing"
    for person in known:
        used = listed(dict.fromkeys(uses.get(person.code, ()))) or nothing
        table.add_row(person.code, person.name, person.contact, used)
    out.print(table)
    click.echo(f"Kept in {people_file()}, for your eyes alone.")


def people_json(known: Sequence[Person], club: Club | None) -> dict[str, object]:
    """Codes alone, with their uses, or none where nobody knows: no document names anybody."""
    uses = None if club is None else uses_of(club)
    return {
        "people": [
            {"code": each.code, "uses": None if uses is None else list(uses.get(each.code, ()))}
            for each in known
        ]
    }


def uses_of(club: Club) -> Mapping[str, tuple[str, ...]]:
    """Role or code to the boxes that it has or keeps, and the games that are booked for it."""
    found: dict[str, tuple[str, ...]] = {}
    for who, _, what in _uses(club):
        found[who] = tuple(dict.fromkeys((*found.get(who, ()), what)))
    return found


def _uses(club: Club) -> Iterator[tuple[str, str, str]]:
    """Who is said to do what with which box or game."""
    for lent in club.loans.values():
        yield lent.to, "has", lent.box
    for box in club.boxes.values():
        for who in (box.keeper, *box.handed_over.values()):
            if who:
                yield who, "keeps", box.name
    for booking in club.bookings.values():
        if booking.whom:
            yield booking.whom, "booked", booking.name


def print_erased(answer: Erased) -> None:
    """What was taken away, what is left, and where nobody looked."""
    if not answer.is_anything:
        click.echo("Nobody is called so here; nothing was erased.")
        return
    if answer.codes:
        click.echo(f"Erased: {listed(answer.codes)} names nobody on this machine any more.")
    for file in (*answer.files, *answer.former):
        click.echo(f"A code stands in place of the name now: {file}")
    if answer.remains:
        click.echo(f"The name still stands at {several(answer.remains, 'place')}, named above.")
    click.echo(ELSEWHERE)


def erased_json(answer: Erased) -> dict[str, object]:
    """The same with the keys that programs rely on; without the name."""
    from paradestate.journeys.document import finding_document

    return {
        "codes": list(answer.codes),
        "files": [str(file) for file in answer.files],
        "former": [str(file) for file in answer.former],
        "remains": answer.remains,
        "findings": [finding_document(finding) for finding in answer.findings],
    }
