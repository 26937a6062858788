"""Bodies with limits to their losses, for tests."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import starmap
from typing import Any

from paradestate.core.game import Purchase
from paradestate.core.play.board import Standing, Telling
from paradestate.core.play.event import Subject, Told
from paradestate.core.play.loss_count import LimitedBody, Member, TroopMembers, steps_of, with_taken
from paradestate.core.play.loss_limit import FIGURES, LEADERS, STANDS, LossLimit, Threshold
from paradestate.core.support.entry import Entry

COUNTS = {"out": STANDS, "figures out": FIGURES, "leaders hit": LEADERS, "loss points": STANDS}


def limited(record: Mapping[str, Any], taken: Sequence[tuple[str, int]] = ()) -> LimitedBody:
    """The body of a case, which is written as a phone gets it, with what was taken."""
    word = record["word"]
    limit = LossLimit(
        at={threshold(each): each[-1] for each in record["at"]},
        count=COUNTS.get(word, word),
        counts_as={"gun": 2} if word == "loss points" else {},
    )
    body = LimitedBody(
        limit=limit,
        number=1,
        name=record["name"],
        unit=None,
        company=None,
        aspect=record["aspect"],
        members=tuple(Member(name=name, counts=counts) for name, counts in record["members"]),
        steps=(),
        troops=tuple(starmap(troop, record.get("troops", []))),
    )
    plan = [Purchase(entry=entry, number=number) for entry, number in taken if number]
    whole = with_taken(body, plan)
    return replace(whole, steps=steps_of(limit, whole.total))


def troop(name: str, each: list[list[Any]]) -> TroopMembers:
    """An entry of a case: pattern, brought by each one taken, by each purchase, what it counts."""
    entry = Entry(
        name=name,
        cost={1: 1},
        each={pattern: number for pattern, number, _, _ in each if number},
        grants={pattern: granted for pattern, _, granted, _ in each if granted},
    )
    return TroopMembers(entry=entry, counts={pattern: counts for pattern, _, _, counts in each})


def threshold(record: list[Any]) -> Threshold:
    """The threshold of a case: numerator, denominator, whether it is a share, and more than it."""
    upper, lower, is_share, is_more, _ = record
    return Threshold(amount=Fraction(upper, lower), is_share=is_share, is_more=is_more)


def standing(subject: Subject, *values: str) -> Standing:
    """How a thing stands of which these values are told side by side."""
    return Standing(
        tellings=tuple(
            Telling(id=str(place), told=Told(subject=subject, value=value))
            for place, value in enumerate(values)
        )
    )


def board_of(told: list[list[Any]]) -> dict[Subject, Standing]:
    """The board of a case: aspect, name and values."""
    return {
        Subject(aspect, name): standing(Subject(aspect, name), *values)
        for aspect, name, values in told
    }
