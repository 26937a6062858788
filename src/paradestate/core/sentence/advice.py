"""What to get next in sentences: why the best is the best, and what else is worth knowing."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.advice.advice import Advice, Aim, Candidate, LeftOut, Step
from paradestate.core.advice.basket import Basket
from paradestate.core.advice.gain import idle
from paradestate.core.advice.game_shares import PRIOR_GAMES, GameShares
from paradestate.core.advice.outcome_group import OutcomeGroup
from paradestate.core.certainty import NotComputed, Sampled
from paradestate.core.money import Currency, money_text
from paradestate.core.sentence.chance import hundredths_words, near_text
from paradestate.core.sentence.support import purchases_words
from paradestate.core.sentence.wording import capital, hours_words, listed, several
from paradestate.core.support.force_map import ValuedForce

ORDINALS = ("", "one", "a second", "a third", "a fourth", "a fifth", "a sixth")


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """An advice with what its numbers are numbers of."""

    advice: Advice
    currency: Currency | None
    """None: costs are minutes."""

    def cost(self, cost: Fraction) -> str:
        """A cost: `£8.00`, `2 h 30 min`, `45 min`."""
        if self.currency is not None:
            return money_text(int(cost), self.currency)
        return hours_words(cost) if cost else "0 h"

    def value(self, value: Fraction) -> str:
        """A worth, or a share: `10.33`, `64 in 100`."""
        if self.advice.aim is Aim.SHARE:
            return f"{near_text(100 * value)} in 100"
        return near_text(value)

    def basket(self, basket: Basket) -> str:
        """What is in a basket: `2 x North/N1 and 1 x North/N4`."""
        return listed(f"{number} x {name}" for name, number in self.named(basket).items())

    def named(self, basket: Basket) -> Mapping[str, int]:
        """Candidate to how many of it are in a basket."""
        candidates = self.advice.candidates
        return {
            each.name: number for each, number in zip(candidates, basket, strict=True) if number
        }


def now_sentence(told: Told, *, games: Mapping[str, Fraction]) -> str:
    """What there is to improve, and over which games with their shares that is the mean."""
    said: Iterable[str] = games
    if len(set(games.values())) > 1:
        said = (f"{name} ({hundredths_words(share)} of games)" for name, share in games.items())
    value = told.value(told.advice.now.value)
    if told.advice.aim is Aim.SHARE:
        what = f"{value} of all legal forces can be fielded now"
    else:
        what = f"the best force that you can field is worth {value} to you now"
    return f"{capital(listed(said))}: {what}, on average."


def shares_sentences(shares: GameShares) -> Iterator[str]:
    """What the shares of several games rest on; nothing where nobody has played, or there is one.

    Such as: `3 of 5 games played were evening attack; your weights count as 6 more games.`
    """
    if len(shares.of_game) < 2:  # noqa: PLR2004 - a share says something beside another
        return
    if shares.is_by_weight:
        yield "Games count by your weights alone, as was asked, whatever was played."
    elif shares.played:
        often = [(number, name) for name, number in shares.played.items() if number]
        numbers = ", ".join(_played_words(often, of=shares.games))
        few = "; few games, so these count for more" if shares.is_few else ""
        yield f"{numbers}; your weights count as {PRIOR_GAMES} more games{few}."


def _played_words(often: Sequence[tuple[int, str]], *, of: int) -> Iterator[str]:
    """`3 of 5 games played were evening attack`, `2 evening defence`."""
    (first, name), *more = sorted(often, key=lambda each: -each[0])
    were = "was" if first == 1 else "were"
    yield f"{first} of {several(of, 'game')} played {were} {name}"
    yield from (f"{number} {other}" for number, other in more)


def best_sentence(told: Told, *, limit: Fraction) -> str:
    """The best basket, what it costs, and what it comes to."""
    best = told.advice.best
    return (
        f"Best for {told.cost(limit)}: {told.basket(best.basket)} "
        f"for {told.cost(best.cost)}, {told.value(best.value)} then."
    )


def served_sentences(*, must_lacks: int, has_worths: bool) -> Iterator[str]:
    """What the answer rests on, where that isn't as one may think."""
    if not has_worths:
        yield "Nothing has a worth, so it is the share of forces that counts: see 'worths'."
    if must_lacks:
        lacks = several(must_lacks, "figure")
        yield (
            f"The must layer lacks {lacks}, and is served first: "
            "what goes into it adds nothing here."
        )


def reason_sentence(told: Told) -> str:
    """Why the best is the best, in one sentence."""
    advice = told.advice
    if not advice.steps:
        return (
            f"Nothing that can be had adds anything to the {told.value(advice.now.value)} of now; "
            "the best is to keep what there is to spend."
        )
    there: Basket = (0,) * len(advice.candidates)
    parts: list[str] = []
    for step in advice.steps:
        parts.append(_step_words(told, step, there=there, is_first=not parts))
        there = step.priced.basket
    return capital(f"{'; '.join(parts)}.")


def _step_words(told: Told, step: Step, *, there: Basket, is_first: bool) -> str:
    names = [
        f"{_number_words(number, there=before)} {candidate.name}"
        for candidate, number, before in zip(told.advice.candidates, step.added, there, strict=True)
        if number
    ]
    adds = "adds" if sum(step.added) == 1 else "together add"
    if step.cost < 0:
        cost = f"and makes all {told.cost(-step.cost)} cheaper"
    else:
        cost = f"for {told.cost(step.cost)}{'' if is_first else ' more'}"
    return f"{listed(names)} {adds} {told.value(step.gain)} {cost}"


def _number_words(number: int, *, there: int) -> str:
    if number == 1:
        return ORDINALS[there + 1] if there + 1 < len(ORDINALS) else "another"
    return f"{number} {'more ' if there else ''}x"


def together_sentences(told: Told) -> Iterator[str]:
    """What adds something only with other things; things that do so together in one sentence."""
    wholes: dict[Basket, list[str]] = {}
    for each in told.advice.alone:
        if each.together:
            wholes.setdefault(each.together.priced.basket, []).append(each.candidate.name)
    for basket, names in wholes.items():
        verb = "adds" if len(names) == 1 else "add"
        yield f"{listed(names)} {verb} nothing alone, only together: {told.basket(basket)}."


def idle_sentences(told: Told) -> Iterator[str]:
    """What adds nothing, and what takes something away from what there is."""
    apart = idle(told.advice)
    nothing = [candidate_words(each.candidate) for each in apart if not each.gain]
    if nothing:
        adds = "adds" if len(nothing) == 1 else "add"
        by = "itself" if len(nothing) == 1 else "themselves"
        yield (
            f"{capital(listed(nothing))} {adds} nothing, neither by {by} nor in the best "
            "that holds one."
        )
    for each in apart:
        if each.gain:
            yield (
                f"{candidate_words(each.candidate)} takes {told.value(-each.gain)} away: "
                "what it needs is of more use elsewhere."
            )


def candidate_words(candidate: Candidate) -> str:
    """A candidate with what it is: `South/S4 (machine-gun teams)`."""
    return f"{candidate.name} ({candidate.words})"


def left_out_sentences(left_out: Iterable[LeftOut]) -> Iterator[str]:
    """What is no candidate, those with one reason together."""
    reasons: dict[str, list[str]] = {}
    for each in left_out:
        reasons.setdefault(each.reason, []).append(each.name)
    for reason, names in reasons.items():
        yield f"Left out, {reason}: {listed(names)}."


def wish_sentences(told: Told, *, wish: Mapping[str, int], limit: Fraction) -> Iterator[str]:
    """What a wish costs, in worth."""
    advice = told.advice
    if not any(wish.values()):
        return
    if advice.wish is None:
        wished = listed(f"{number} x {name}" for name, number in wish.items())
        yield f"Nothing with {wished} was found that can be had for {told.cost(limit)}."
        return
    fun = advice.price_of_fun(advice.wish)
    yield (
        f"The best with what is wished for is {told.basket(advice.wish.basket)} at "
        f"{told.value(advice.wish.value)}: the price of the fun is {told.value(fun)}."
        if fun
        else "What is wished for is as good as the best."
    )


def foresight_sentence(told: Told) -> str:
    """What foresight would bring: no purchase can bring more."""
    advice = told.advice
    if isinstance(advice.foresight, NotComputed):
        return f"What foresight would bring wasn't computed: {advice.foresight.reason}."
    more = advice.foresight - advice.best.value
    return f"Who knew all dice beforehand would come to {told.value(advice.foresight)}, " + (
        f"{told.value(more)} more: nothing brings more than that." if more else "no more."
    )


def certainty_sentence(told: Told) -> str:
    """How sure the best is."""
    advice = told.advice
    certainty = advice.certainty
    if isinstance(certainty, Sampled):
        so_far = "" if advice.bound is None else _bound_words(told)
        return (
            f"Sampled: {several(certainty.draws, 'draw')} of the rolls from seed {certainty.seed}, "
            f"the same for every choice; the gain is right to {near_above(certainty)} "
            f"in 19 cases of 20.{so_far}"
        )
    if advice.bound is not None:
        return f"Not proven.{_bound_words(told)}"
    of = "by your own worths" if advice.aim is Aim.WORTH else "of all legal forces"
    return f"Exact: nothing else that can be had for this comes to more, {of}."


def _bound_words(told: Told) -> str:
    bound = told.advice.bound or Fraction(0)
    if bound == told.advice.best.value:
        return " The time was up: nothing better exists, but the same may be had for less."
    return (
        f" The time was up: something better than {told.value(told.advice.best.value)} may exist, "
        f"but nothing better than {told.value(bound)}."
    )


def near_above(sampled: Sampled) -> str:
    """Half an interval to two decimals, rounded up: `0.13`."""
    hundredths = -(-sampled.plus_or_minus * 100 // 1)
    return near_text(Fraction(hundredths, 100))


def points_words(group: OutcomeGroup) -> str:
    """The points of a group of outcomes: `13`, `14-23`."""
    least, most = group.least_points, group.most_points
    return str(least) if least == most else f"{least}-{most}"


def allowed_words(group: OutcomeGroup) -> str:
    """What the rolls allow in all of a group alike: `light tanks 3`, `light tanks refused`."""
    return listed(f"{name} {number or 'refused'}" for name, number in group.allowed.items())


def force_words(force: ValuedForce | None) -> str:
    """A force with its worth: `5: 2 x machine-gun platoon`."""
    if force is None:
        return "none is legal"
    return f"{near_text(force.worth)}: {purchases_words(force.purchases) or 'nothing'}"
