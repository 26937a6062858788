"""Stands, boards and campaigns for tests of what comes after a game."""

from collections.abc import Mapping

from paradestate.core.campaign.recovery import Campaign, Recovery
from paradestate.core.dice import Dice, SignedTerm, Throw, Totals
from paradestate.core.formation import Echelon
from paradestate.core.number import exactly
from paradestate.core.play.board import Standing, Telling, board
from paradestate.core.play.event import Subject, Told
from paradestate.core.unfolding import Body, Stand

ONE_DIE = Dice(terms=(SignedTerm(term=Throw(number=1, sides=6)),))
ON_THREE = Recovery(
    roll=ONE_DIE,
    on=Totals(least=3, most=None),
    promoted_on=Totals(least=6, most=6),
)
CAMPAIGN = Campaign(recovery={"section": ON_THREE}, never_back=("captured",))
PLATOONS = (
    Body(
        name="",
        formation="company",
        echelon=Echelon.COMPANY,
        wishes=(),
        is_wanted=True,
        men=0,
        within=None,
    ),
    *(
        Body(
            name=f"{number} Platoon",
            formation="platoon",
            echelon=Echelon.PLATOON,
            wishes=(),
            is_wanted=True,
            men=0,
            within=0,
        )
        for number in (1, 2)
    ),
)


def stand(name: str, *, pattern: str = "section", within: int = 1, printed: bool = False) -> Stand:
    return Stand(
        name=name,
        pattern=pattern,
        wishes=(),
        is_wanted=True,
        figures={},
        men=exactly(0),
        printed=printed,
        company="",
        level=Echelon.PLATOON,
        within=within,
    )


STANDS = tuple(
    stand(f"{number} Platoon / {place} Section", within=number)
    for number in (1, 2)
    for place in (1, 2, 3)
)


def told(*said: tuple[str, str, str]) -> Mapping[Subject, Standing]:
    """A board by aspect, name and value; what is said twice of one thing stands side by side."""
    return board(
        Telling(id=str(place), told=Told(subject=Subject(aspect, name), value=value))
        for place, (aspect, name, value) in enumerate(said)
    )
