"""The cross-check of labels: as many on the sheets as there are stands to label."""

from collections.abc import Sequence

from paradestate.core.formation import Need
from paradestate.core.paper.ground import Ground
from paradestate.core.sentence.cross_check import Tick
from paradestate.core.sentence.wording import several
from paradestate.core.support.entry import Position


def label_tick(ground: Ground, *, labels: int, left_out: Sequence[str]) -> Tick:
    """Labels on the sheets, with those left out, against stands counted by multiplication.

    The labels were made stand by stand; here must stands come from the chains of the structure, and
    those of the plan from its numbers.
    """
    stands = _multiplied(ground) + _wished(ground) + _taken(ground)
    out = f" and {several(len(left_out), 'stand')} without" if left_out else ""
    return Tick(
        words=f"{several(labels, 'label')}{out} for {several(stands, 'stand')} to label",
        holds=labels + len(left_out) == stands,
    )


def _multiplied(ground: Ground) -> int:
    """Must stands that aren't printed; those by fixed ratio are counted one by one."""
    patterns = ground.force.stands
    by_chain = sum(
        number for name, number in ground.made.rollup.stands.items() if not patterns[name].printed
    )
    by_ratio = sum(
        number for name, number in ground.made.must.stands.items() if name not in patterns
    )
    return by_chain + by_ratio


def _wished(ground: Ground) -> int:
    return sum(
        stand.is_wanted and not stand.printed and stand.layer is Need.WISHED
        for stand in ground.made.stands
    )


def _taken(ground: Ground) -> int:
    """What a purchase brings each time, and once."""
    total = 0
    for purchase in ground.plan:
        entry = ground.force.supporting_troops[purchase.entry]
        if entry.place is not Position.OFF_TABLE:
            each = {name: number * purchase.number for name, number in entry.each.items()}
            once = dict(entry.grants)
            with_ = {entry.replaces.with_: entry.replaces.number} if entry.replaces else {}
            total += sum(
                number
                for brought in (each, once, with_)
                for name, number in brought.items()
                if name in ground.force.stands and not ground.force.stands[name].printed
            )
    return total
