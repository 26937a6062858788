"""A booking or a box from what was typed beside a command or into a form."""

from collections.abc import Mapping
from dataclasses import dataclass

from paradestate.core.club.booking import Booking, Box, Hours
from paradestate.core.finding import Finding
from paradestate.journeys.choosing import money_of, typed_finding, want_of
from paradestate.text.hours import read_hours
from paradestate.text.slip import Slip
from paradestate.text.spelling import tidy


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedBooking:
    """What was typed; empty for what wasn't."""

    name: str
    hours: str
    needs: str = ""
    """Figure kinds with numbers: `truck=8, officer=1`."""
    stands: str = ""
    """Stand patterns with numbers."""
    game: str = ""
    force: str = ""
    borrows: tuple[str, ...] = ()
    whom: str = ""


def booking_of(typed: TypedBooking) -> tuple[Booking | None, tuple[Finding, ...]]:
    """The booking, or None with a stop for each thing that can't be read."""
    hours, slips = hours_of(typed.hours)
    needs, no_needs = _numbers(typed.needs)
    stands, no_stands = _numbers(typed.stands)
    findings = (*slips, *no_needs, *no_stands)
    if findings or hours is None:
        return None, findings
    booking = Booking(
        name=tidy(typed.name),
        hours=hours,
        needs=needs,
        stands=stands,
        game=tidy(typed.game),
        force=tidy(typed.force),
        borrows=tuple(dict.fromkeys(map(tidy, typed.borrows))),
        whom=typed.whom,
    )
    return booking, ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedBox:
    """What was typed of a box."""

    name: str
    holds: str
    """Figure kinds with numbers."""
    keeper: str = ""
    is_counted: bool = False
    insured_for: str = ""


def box_of(typed: TypedBox) -> tuple[Box | None, tuple[Finding, ...]]:
    """The box, or None with a stop for each thing that can't be read."""
    holds, no_holds = _numbers(typed.holds)
    insured, no_amount = money_of(typed.insured_for)
    findings = (*no_holds, *no_amount)
    if findings:
        return None, findings
    box = Box(
        name=tidy(typed.name),
        keeper=typed.keeper,
        holds=holds,
        is_counted=typed.is_counted,
        insured_for=insured,
    )
    return box, ()


def _numbers(text: str) -> tuple[Mapping[str, int], tuple[Finding, ...]]:
    """Names with the numbers that were typed, noughts left out; none with a stop."""
    found, slips = want_of(text)
    return {name: number for name, number in (found or {}).items() if number}, slips


def hours_of(text: str) -> tuple[Hours | None, tuple[Finding, ...]]:
    """The hours that were typed, or None with a stop."""
    hours = read_hours(tidy(text))
    return (None, (typed_finding(hours),)) if isinstance(hours, Slip) else (hours, ())
