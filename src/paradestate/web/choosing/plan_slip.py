"""The plan on its slip: as an order paragraph, what it costs, whether it is legal, the ways out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.change import most_in_reserve
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.support import purchase_words
from paradestate.core.sentence.wording import capital, listed, plural, several
from paradestate.core.support.attachment import number_of_sections
from paradestate.core.support.judge_finding import way_words
from paradestate.core.support.reserve import can_be_kept_back, in_front
from paradestate.core.support.way_out import WayOut
from paradestate.journeys.count import Count
from paradestate.journeys.judge import Asked, JudgedPlan, judge
from paradestate.journeys.terms import GameTerms
from paradestate.text.typed import purchases_text
from paradestate.web.choosing.question import ALLOWED, NO_PLAN, RESERVE, Question, for_the_page
from paradestate.web.visit import Visit

MOST_WAYS = 6
"""Ways out of one broken rule that are links; there may be more of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayLink:
    """A change of the plan, as a link that makes it."""

    words: str
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Broken:
    """A rule that the plan breaks, with the ways out of it."""

    message: str
    ways: tuple[WayLink, ...]
    hint: str
    """What is said where no way out is known."""
    moves_points: bool = True
    """Whether its ways out say the points that they move."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowed:
    """One answer of the dice that can be put in, or is."""

    words: str
    query: str
    is_chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Dice:
    """What the dice may say of one entry of the plan."""

    entry: str
    answers: tuple[Allowed, ...]
    back: str
    """The address of the question before it was rolled for; empty where it wasn't."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A purchase that is moved into the reserve, or out of it."""

    words: str
    is_kept_back: bool
    query: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FormationKept:
    """What the rule of the files says may be kept back of the force itself."""

    plural: str
    field: str
    numbers: tuple[int, ...]
    """As many as may be, from nought, and the number that is kept back now."""
    number: int
    others: Mapping[str, str]
    """The rest of the question, for its form."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSlip:
    """The plan as it is shown."""

    paragraph: tuple[str, ...]
    moves: tuple[Move, ...]
    formation: FormationKept | None
    keeps_back: bool
    """Whether anything is kept back."""
    is_legal: bool
    sums: str
    """What is spent and left."""
    broken: tuple[Broken, ...]
    doubts: tuple[Finding, ...]
    """What is doubtful about it, the rest of the files left out."""
    dice: tuple[Dice, ...]
    """One for each entry of it that is rolled for."""
    after: tuple[str, ...]
    """What the dice have left of it; empty before a roll."""
    left: str
    """The address of the plan as the dice have left it; empty where nothing changed."""
    typed: str
    """The plan as it is typed, for writing it into the files."""
    is_empty: bool
    is_of_game: bool
    """Whether it is just what the files say for this game."""
    sections: int
    """How many of it may be attached to a host."""


def judged_plan(
    visit: Visit,
    played: GameTerms,
    *,
    plan: tuple[Purchase, ...],
    points: int | None,
    asked: Question,
) -> tuple[JudgedPlan, tuple[Finding, ...]]:
    """The plan judged, and what was found about it."""
    answer = judge(
        visit.folder,
        today=visit.today,
        choice=asked.choice,
        grades=asked.grades,
        asked=Asked(
            purchases=plan,
            points=points,
            allowed=tuple(asked.allowed.items()),
            reserve=asked.reserve,
            kept_back=asked.kept_back(plan),
        ),
        memory=visit.memory,
    )
    assert answer.judged is not None  # noqa: S101 - the terms are there, and the plan was read
    known = set(played.checked.findings)
    return answer.judged, tuple(each for each in answer.checked.findings if each not in known)


def plan_slip(
    made: JudgedPlan, found: tuple[Finding, ...], *, counted: Count, asked: Question
) -> PlanSlip:
    """The slip of a judged plan."""
    judgement = made.judgement
    stops = [each for each in judgement.findings if each.level is Level.STOP]
    broken = tuple(
        _broken(stop, judgement.ways_out[breach], asked=asked)
        for breach, stop in zip(judgement.breaches, stops, strict=False)
    )
    said = {each.message for each in stops}
    of_reserve = [each for each in found if each.level is Level.STOP and each.message not in said]
    broken += tuple(_too_much_kept_back(each, asked=asked) for each in of_reserve)
    said |= {each.message for each in of_reserve}
    after = judgement.after
    return PlanSlip(
        paragraph=made.paragraph,
        moves=tuple(_moves(made, counted.force, asked=asked)),
        formation=_formation(counted, asked=asked),
        keeps_back=bool(made.reserve.formations or made.reserve.purchases),
        is_legal=made.is_legal,
        sums=_sums(made),
        broken=broken,
        doubts=for_the_page(tuple(each for each in found if each.message not in said)),
        dice=tuple(_dice(made, asked=asked)),
        after=tuple(_after(made)),
        left=""
        if after is None or after.left == made.judgement.plan
        else asked.with_plan(after.left),
        typed=purchases_text(judgement.plan) or NO_PLAN,
        is_empty=not judgement.plan,
        is_of_game=judgement.plan == made.terms.game.plan,
        sections=_sections(judgement.plan, counted.force),
    )


def _sections(plan: tuple[Purchase, ...], force: Force) -> int:
    entries = force.supporting_troops
    known = (each for each in plan if each.entry in entries)
    return number_of_sections(known, entries=entries)


def _moves(made: JudgedPlan, force: Force, *, asked: Question) -> Iterator[Move]:
    """Every purchase that can be kept back, with the link that does it, or takes it out again."""
    plan, kept = made.judgement.plan, made.reserve.purchases
    for each in in_front(plan, kept):
        entry = force.supporting_troops.get(each.entry)
        if entry is not None and can_be_kept_back(entry):
            yield Move(
                words=purchase_words(each),
                is_kept_back=False,
                query=asked.with_kept_back((*kept, each)),
            )
    for place, each in enumerate(kept):
        rest = (*kept[:place], *kept[place + 1 :])
        yield Move(words=purchase_words(each), is_kept_back=True, query=asked.with_kept_back(rest))


def _formation(counted: Count, *, asked: Question) -> FormationKept | None:
    """What the rule of the files is about; None where there is no rule, or nothing to keep."""
    rule = counted.force.reserves
    most = most_in_reserve(counted.force, counted.made)
    if rule is None or not most:
        return None
    field, number = f"{RESERVE}{rule.of}", asked.reserve.get(rule.of, 0)
    return FormationKept(
        plural=capital(plural(rule.of)),
        field=field,
        numbers=(*range(most + 1), *([number] if number > most else [])),
        number=number,
        others={name: text for name, text in asked.typed.items() if name != field},
    )


def _too_much_kept_back(stop: Finding, *, asked: Question) -> Broken:
    way = WayLink(words="Keeping nothing back", query=asked.without_reserve)
    return Broken(message=stop.message, ways=(way,), hint="", moves_points=False)


def _broken(stop: Finding, ways: tuple[WayOut, ...], *, asked: Question) -> Broken:
    return Broken(
        message=stop.message,
        ways=tuple(
            WayLink(words=capital(way_words(way)), query=asked.with_plan(way.plan))
            for way in ways[:MOST_WAYS]
        ),
        hint="" if ways else stop.hint,
    )


def _sums(made: JudgedPlan) -> str:
    """Such as `17 points; at the most 23 are left to spend, so 6 stay`."""
    judgement = made.judgement
    rest = judgement.points - judgement.spent
    most = "at the most " if made.are_most else ""
    over = f"{rest} to spare" if rest >= 0 else f"{-rest} too many"
    worth = f" Worth {decimal_text(judgement.worth)} to you." if judgement.worth else ""
    return f"{several(judgement.spent, 'point')} of {most}{judgement.points}: {over}.{worth}"


def _dice(made: JudgedPlan, *, asked: Question) -> Iterator[Dice]:
    """The answers of the dice that differ, for each entry of the plan: none, some, all."""
    most: dict[str, int] = {}
    for purchase in made.judgement.plan:
        most[purchase.entry] = max(purchase.number, most.get(purchase.entry, 0))
    for entry, number in most.items():
        offer = made.terms.offers.get(entry)
        if offer is None or offer.availability is None:
            continue
        bands = offer.availability.allows
        allows = {number if each.allows is None else min(each.allows, number) for each in bands}
        field = f"{ALLOWED}{entry}"
        yield Dice(
            entry=entry,
            answers=tuple(
                Allowed(
                    words="refused" if each == 0 else "allowed" if each == number else f"{each}",
                    query=asked.with_fields({field: f"{each}"}),
                    is_chosen=asked.allowed.get(entry) == each,
                )
                for each in sorted(allows)
            ),
            back=asked.with_fields({field: ""}) if entry in asked.allowed else "",
        )


def _after(made: JudgedPlan) -> Iterator[str]:
    """What the dice have left of the plan; nothing while all of it still comes."""
    after = made.judgement.after
    if after is None or after.left == made.judgement.plan:
        return
    yield from (
        f"{capital(cut.entry)}: {f'{number} of {cut.number} come' if number else 'refused'}."
        for cut, number in after.cut
    )
    if after.gone:
        gone = capital(listed(each.entry for each in after.gone))
        yield f"{gone}: gone with it."
    if after.points_free:
        yield f"{several(after.points_free, 'point')} to spend again."
    if after.points_lost:
        yield f"{several(after.points_lost, 'point')} lost."
