"""What each action of `book` does with what was typed."""

import secrets
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import click

from paradestate.cli.finding_report import print_findings
from paradestate.cli.option import finish, now, stop_for, today
from paradestate.cli.output import print_json
from paradestate.core.club.booking import Lent
from paradestate.journeys.choosing import day_of
from paradestate.journeys.club.book import bookings
from paradestate.journeys.club.book_change import (
    ClubPen,
    ClubWritten,
    add_booking,
    add_box,
    cancel_booking,
    hand_over_box,
    lend_box,
    move_booking,
    put_club_back,
    take_back,
)
from paradestate.journeys.club.book_typed import (
    TypedBooking,
    TypedBox,
    booking_of,
    box_of,
    hours_of,
)
from paradestate.journeys.club.borrowers import Named, Whom, kept, named
from paradestate.journeys.memory import Memory
from paradestate.journeys.rewriting import ChangedSinceError
from paradestate.text.error import EditError

Said = Mapping[str, Any]


def show(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """The bookings, and whether all can be played."""
    from paradestate.cli.book_json import book_json
    from paradestate.cli.book_report import print_bookings

    _none(words)
    day, slips = day_of(said["since"])
    stop_for(slips)
    answer = bookings(folder, today=today(), since=day, memory=Memory())
    print_findings(answer.findings, answer.texts)
    if answer.stock is not None and as_json:
        print_json(book_json(answer))
    elif answer.stock is not None:
        print_bookings(answer, today=today())
    finish(stopped=answer.stock is None)


def add(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A new booking."""
    name = _only(words, what="the name of the booking")
    _needed(said["hours"], option="--hours")
    whom = _whom(said, name="whom")
    booking, slips = booking_of(
        TypedBooking(
            name=name,
            hours=said["hours"],
            needs=said["needs"],
            stands=said["stands"],
            game=said["game"],
            force=said["force"],
            borrows=said["borrows"],
            whom=whom.said,
        )
    )
    stop_for(slips)
    assert booking is not None  # noqa: S101 - else there were slips
    _write(lambda: add_booking(_pen(folder), booking), whom=whom, as_json=as_json, folder=folder)


def move(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A booking at other hours."""
    name = _only(words, what="the name of the booking")
    _needed(said["hours"], option="--hours")
    hours, slips = hours_of(said["hours"])
    stop_for(slips)
    assert hours is not None  # noqa: S101 - else there were slips
    _write(lambda: move_booking(_pen(folder), name, hours=hours), as_json=as_json, folder=folder)


def cancel(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A booking taken out."""
    del said
    name = _only(words, what="the name of the booking")
    _write(lambda: cancel_booking(_pen(folder), name), as_json=as_json, folder=folder)


def box(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A box written down."""
    name = _only(words, what="the name of the box")
    _needed(said["holds"], option="--holds")
    whom = _whom(said, name="to")
    made, slips = box_of(
        TypedBox(
            name=name,
            holds=said["holds"],
            keeper=whom.said,
            is_counted=said["counted"],
            insured_for=said["insured_for"],
        )
    )
    stop_for(slips)
    assert made is not None  # noqa: S101 - else there were slips
    _write(lambda: add_box(_pen(folder), made), whom=whom, as_json=as_json, folder=folder)


def lend(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A box that goes out."""
    box = _only(words, what="the name of the box")
    since, slips = day_of(said["on"])
    until, more = day_of(said["until"])
    stop_for((*slips, *more))
    whom = _whom(said, name="to")
    _needed(whom.said, option="--to or --role")
    lent = Lent(box=box, to=whom.said, since=since or today(), until=until)
    _write(lambda: lend_box(_pen(folder), lent), whom=whom, as_json=as_json, folder=folder)


def back(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A box that is here again."""
    del said
    box = _only(words, what="the name of the box")
    _write(lambda: take_back(_pen(folder), box), as_json=as_json, folder=folder)


def hand_over(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A box that another keeps from a day on."""
    box = _only(words, what="the name of the box")
    day, slips = day_of(said["on"])
    stop_for(slips)
    whom = _whom(said, name="to")
    _needed(whom.said, option="--to or --role")
    _write(
        lambda: hand_over_box(_pen(folder), box, to=whom.said, day=day or today()),
        whom=whom,
        as_json=as_json,
        folder=folder,
    )


def put_back(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """The version before the last change."""
    del said
    former = _only(words, what="the name of the version that was kept")
    _write(lambda: put_club_back(_pen(folder), former), as_json=as_json, folder=folder)


def value(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """What each box would cost to buy again."""
    from paradestate.cli.box_value_report import print_values, values_json
    from paradestate.cli.output import at_work
    from paradestate.journeys.club.box_values import box_values
    from paradestate.journeys.order import Search

    _none(words)
    with at_work("Looking for the cheapest orders"):
        answer = box_values(folder, today=today(), search=Search(seconds=said["seconds"]))
    print_findings(answer.checked.findings, answer.checked.texts)
    if not answer.is_stopped and as_json:
        print_json(values_json(answer))
    elif not answer.is_stopped:
        print_values(answer)
    finish(stopped=answer.is_stopped)


def who(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """Who stands behind the codes; names are printed here alone, and never for programs."""
    from paradestate.cli.people_report import people_json, print_people
    from paradestate.text.people import people

    del said
    _none(words)
    answer = bookings(folder, today=today(), memory=Memory())
    club = None if answer.stock is None else answer.club
    if club is None:
        print_findings(answer.findings, answer.texts)
    known = people()
    if as_json:
        print_json(people_json(known, club))
    else:
        print_people(known, club)
    finish(stopped=club is None)


def erase(folder: Path, *, words: tuple[str, ...], said: Said, as_json: bool) -> None:
    """A name taken off this machine."""
    from paradestate.cli.people_report import erased_json, print_erased
    from paradestate.journeys.club.erasing import erase as erased

    del said
    name = _only(words, what="the name, or its code")
    answer = erased(folder, name, today=today(), at=now(), draw=secrets.randbelow)
    print_findings(answer.findings, {})
    if as_json and not answer.is_stopped:
        print_json(erased_json(answer))
    elif not answer.is_stopped:
        print_erased(answer)
    finish(stopped=answer.is_stopped)


def _pen(folder: Path) -> ClubPen:
    return ClubPen(folder=folder, today=today(), at=now())


def _whom(said: Said, *, name: str) -> Named:
    if said[name] and said["role"]:
        raise click.UsageError(f"Give --{'for' if name == 'whom' else name} or --role, not both.")
    typed = Whom(name=said[name], role=said["role"], contact=said["contact"])
    whom, slips = named(typed, draw=secrets.randbelow)
    stop_for(slips)
    return whom


def _write(
    change: Callable[[], ClubWritten],
    *,
    folder: Path,
    as_json: bool,
    whom: Named | None = None,
) -> None:
    from paradestate.cli.book_json import changed_json
    from paradestate.cli.book_report import print_changed

    try:
        with kept(whom or Named(said="")) as keeping:
            done = change()
            keeping.is_written = done.written is not None
    except EditError as error:
        raise click.ClickException(str(error)) from None
    except ChangedSinceError:
        raise click.UsageError(
            "That version isn't the one from before the last change of the club; nothing was "
            "put back."
        ) from None
    if done.written is None:
        print_findings(done.checked.findings, done.checked.texts)
        finish(stopped=True)
        return
    answer = bookings(folder, today=today(), memory=Memory())
    print_findings(answer.findings, answer.texts)
    if as_json:
        print_json(changed_json(done.written, answer))
    else:
        print_changed(done.written, answer, folder=folder, today=today())


def _needed(text: str, *, option: str) -> None:
    if not text.strip():
        raise click.UsageError(f"Give {option}.")


def _only(words: tuple[str, ...], *, what: str) -> str:
    if len(words) != 1 or not words[0].strip():
        raise click.UsageError(f"Give {what}, and nothing else.")
    return words[0]


def _none(words: tuple[str, ...]) -> None:
    if words:
        raise click.UsageError(f"Nothing is known to be done with {' '.join(words)!r} here.")
