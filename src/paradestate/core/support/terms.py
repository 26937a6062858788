"""The terms of a game: what may be bought in it, and what is left to spend.

force, establishment, game, grades -> offers, reasons for what isn't on offer, points taken off
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from paradestate.core.choice import CHOSEN_HERE, unknown_choice
from paradestate.core.establishment import Establishment
from paradestate.core.finding import Finding, Level, stops
from paradestate.core.force import Force
from paradestate.core.game import CostByNumber, Game
from paradestate.core.place import nearest_place
from paradestate.core.sentence.wording import capital
from paradestate.core.span import Hold
from paradestate.core.support.entry import Asking, Entry, GroupLimit, Refusal, Variation
from paradestate.core.support.limit import purchases_allowed
from paradestate.core.support.offer import NO_CHOICE, Offer


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """Everything that decides what may be bought in one game."""

    game: Game
    offers: Mapping[str, Offer]
    """In file order."""
    absent: Mapping[str, str]
    """Entry that isn't on offer to the reason, in words."""
    asking: Asking = Asking.ONE_AT_A_TIME
    groups: tuple[GroupLimit, ...] = ()
    formation_cost: int = 0
    grade_costs: Mapping[str, int] = field(default_factory=dict)
    """Scale to the points of the grade chosen on it; a negative number is a refund."""
    grades: Mapping[str, str] = field(default_factory=dict)
    """Scale to the grade chosen on it."""
    number_of: Mapping[str, int] = field(default_factory=dict)
    """Formation to how many of it stand in the must layer."""

    @property
    def taken_off(self) -> int:
        """Points that the formation and its grades take of the allowance."""
        return self.formation_cost + sum(self.grade_costs.values())

    @property
    def has_worths(self) -> bool:
        """Whether the owner says a worth of anything on offer."""
        return any(offer.has_worths for offer in self.offers.values())

    @property
    def least_points(self) -> int:
        """Points left after the worst roll."""
        return min(self.game.allowance.totals()) - self.taken_off

    @property
    def most_points(self) -> int:
        """Points left after the best roll."""
        return max(self.game.allowance.totals()) - self.taken_off


def terms_of(
    force: Force, made: Establishment, *, game: str, grades: Mapping[str, str]
) -> tuple[Terms | None, tuple[Finding, ...]]:
    """The terms of a game for a raised force, or None with the stops that prevent them.

    `grades` is scale to grade for those that aren't as usual.
    """
    findings = tuple(_unknown(force, game=game, grades=grades))
    if findings:
        return None, findings
    chosen = {scale.name: scale.usual for scale in force.grades.values()} | dict(grades)
    played = force.games[game]
    findings = (
        *_undecided(force, made),
        *_without_end(force, made, posture=played.posture),
        *_unpriced_number(force, made),
    )
    if stops(findings):
        return None, findings
    absent = {
        entry.name: reason
        for entry in force.supporting_troops.values()
        if (reason := why_absent(entry, made, posture=played.posture))
    }
    offers = {
        entry.name: _offer(force, made, entry=entry, posture=played.posture, grades=chosen)
        for entry in force.supporting_troops.values()
        if entry.name not in absent
    }
    made_terms = Terms(
        game=played,
        offers=offers,
        absent=absent,
        asking=force.asking,
        groups=force.limits,
        formation_cost=formation_cost(force, made.number_of),
        grade_costs={scale: force.grades[scale].points[grade] for scale, grade in chosen.items()},
        grades=chosen,
        number_of=made.number_of,
    )
    return made_terms, (*findings, *_nothing_on_offer(force, made_terms))


def formation_cost(force: Force, number_of: Mapping[str, int]) -> int:
    """Points of the force itself; nought where its table has no such number."""
    cost = force.formation_cost
    if isinstance(cost, CostByNumber):
        return cost.points.get(number_of.get(cost.by, 0), 0)
    return cost


def why_absent(entry: Entry, made: Establishment, *, posture: str) -> str:
    """Why an entry can't be taken, in words; empty where it can. An empty posture admits all."""
    if entry.theatre and entry.theatre != made.theatre:
        return f"only in the theatre {entry.theatre}"
    if made.date is not None and entry.window.holds(made.date) is not Hold.IN:
        return f"not to be had in {made.date}"
    if posture and entry.only_in is not None and entry.only_in.posture != posture:
        return f"only in {entry.only_in.posture}, and this is {posture}"
    if posture and entry.not_in is not None and entry.not_in.posture == posture:
        return f"not in {posture}"
    return ""


def _offer(
    force: Force, made: Establishment, *, entry: Entry, posture: str, grades: Mapping[str, str]
) -> Offer:
    here = entry.in_posture.get(posture, Variation())
    limit = here.limit or entry.limit
    troops = force.supporting_troops.values()
    opened_by = {other.name: 1 for other in troops if entry.name in other.opens}
    barred_by = {other.name for other in troops if entry.name in other.bars}
    worth = force.worths.get(entry.name)
    return Offer(
        name=entry.name,
        cost=here.cost or _cost_at(entry, grades=grades),
        choices={choice: entry.choice_costs.get(choice, 0) for choice in entry.choice}
        or {NO_CHOICE: 0},
        repeats_cost_more=entry.repeats_cost_more,
        least=limit.least,
        most=purchases_allowed(limit, number_of=made.number_of),
        limit=limit,
        needs=entry.needs,
        needs_any_of=opened_by | dict(entry.needs_any_of),
        needs_for_each=entry.needs_for_each,
        bars=frozenset({*entry.bars, *barred_by}),
        group=entry.group,
        availability=here.availability or entry.availability,
        loses_points=entry.when_refused is Refusal.LOST,
        worths=worth.by_choice if worth else {},
    )


def _cost_at(entry: Entry, *, grades: Mapping[str, str]) -> Mapping[int, int]:
    """The prices at the chosen grades: those of the first scale that has its own."""
    for scale, by_grade in entry.cost_by_grade.items():
        if grades.get(scale) in by_grade:
            return by_grade[grades[scale]]
    return entry.cost


def _unknown(force: Force, *, game: str, grades: Mapping[str, str]) -> Iterator[Finding]:
    if game not in force.games:
        yield unknown_choice(game, force.games, what="game")
    for scale, grade in grades.items():
        if scale not in force.grades:
            yield unknown_choice(scale, force.grades, what="scale of grades")
        elif grade not in force.grades[scale].points:
            yield unknown_choice(grade, force.grades[scale].points, what=f"grade of {scale}")


def _undecided(force: Force, made: Establishment) -> Iterator[Finding]:
    """Entries of which the raised date doesn't say whether they can be had."""
    for entry in force.supporting_troops.values():
        window = entry.window
        if window.is_open:
            continue
        if made.date is not None and window.holds(made.date) is not Hold.PARTLY:
            continue
        raised = f"{made.date} is partly inside" if made.date else "no date is raised"
        yield Finding(
            level=Level.STOP,
            code="entry-date-undecided",
            message=f"{entry.name}: it has a window of dates, and {raised}.",
            effect="It can't be said what may be bought.",
            hint="Choose a date: --date 1943, or one wholly inside or outside the window.",
            place=nearest_place(force.places, ("supporting troops", entry.name)),
        )


def _without_end(force: Force, made: Establishment, *, posture: str) -> Iterator[Finding]:
    """Entries of which any number may be had, and that cost nothing or less."""
    for entry in force.supporting_troops.values():
        here = entry.in_posture.get(posture, Variation())
        limit = here.limit or entry.limit
        tables = [entry.cost, here.cost or {}, *_tables_by_grade(entry)]
        cheapest = min(
            points + number * min((entry.choice_costs.get(c, 0) for c in entry.choice), default=0)
            for table in tables
            for number, points in table.items()
        ) + min((0, *entry.repeats_cost_more))
        if purchases_allowed(limit, number_of=made.number_of) is None and cheapest <= 0:
            yield Finding(
                level=Level.STOP,
                code="entry-without-end",
                message=f"{entry.name}: any number may be taken, and one costs {cheapest}.",
                effect="There would be no end to what may be bought.",
                hint="Give it a limit, or a price above 0.",
                place=nearest_place(force.places, ("supporting troops", entry.name, "limit")),
            )


def _tables_by_grade(entry: Entry) -> Iterator[Mapping[int, int]]:
    for by_grade in entry.cost_by_grade.values():
        yield from by_grade.values()


def _nothing_on_offer(force: Force, terms: Terms) -> Iterator[Finding]:
    """A game in which none of the supporting troops can be taken, or for which there are none."""
    if terms.offers:
        return
    name = terms.game.name
    said = "the force has none"
    hint = "If it is to have some, add 'supporting troops' with their costs, and an 'allowance'."
    if terms.absent:
        entry, reason = next(iter(terms.absent.items()))
        said = f"none of the {len(terms.absent)} can be had ({entry}: {reason})"
        hint = "Choose another game, theatre or date, or change what rules them out."
    yield Finding(
        level=Level.WARN,
        code="nothing-on-offer",
        message=f"{capital(name)} offers no supporting troops: {said}.",
        effect="There is nothing to choose.",
        hint=hint,
        place=nearest_place(force.places, ("games", name)) if force.places else CHOSEN_HERE,
    )


def _unpriced_number(force: Force, made: Establishment) -> Iterator[Finding]:
    """The raised number of a formation for which the formation cost says nothing."""
    cost = force.formation_cost
    if isinstance(cost, CostByNumber) and made.number_of.get(cost.by, 0) not in cost.points:
        number = made.number_of.get(cost.by, 0)
        yield Finding(
            level=Level.WARN,
            code="formation-cost-unsaid",
            message=f"The formation cost says nothing for {number} of '{cost.by}'.",
            effect="Taken as 0 points.",
            hint=f"Add '{number}: ...' to its points.",
            place=nearest_place(force.places, ("formation cost",)) if force.places else CHOSEN_HERE,
        )
