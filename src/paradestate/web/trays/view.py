"""The trays as they are shown: drawings, the packing list, and what each move would be barred by.

Nothing is worked out here; links carry what was moved in the address.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.mark.code import Mark
from paradestate.core.outline import decimal_text
from paradestate.core.sentence.tray import (
    case_words,
    inside_words,
    own_company,
    plan_sentences,
    row_title,
    thing_words,
    tray_words,
)
from paradestate.core.sentence.wording import capital
from paradestate.core.tray.laid import LaidTray
from paradestate.core.tray.lid import Lid, LidRow, LidStand, lids, marks_of
from paradestate.core.tray.moving import Move, Swap, Transfer
from paradestate.core.unfolding import name_within, spoken
from paradestate.journeys.marking import marking_of
from paradestate.journeys.trays import TraysAnswer
from paradestate.sheet.svg import Drawing
from paradestate.sheet.tray_plan import DESK, PHONE, TrayLook, tray_drawing
from paradestate.web.trays.barring import keys_of, swap_rules, taken_up, transfer_rules
from paradestate.web.trays.question import TraysQuestion, mark_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A stand on the packing list."""

    key: int
    """Its number in the organisation, by which moves name it."""
    number: int
    """On the packing list."""
    name: str
    query: str
    """Takes it up, lets it be, or has it change places; empty where a rule forbids that."""
    rule: str
    is_chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RowView:
    """A row of the packing list."""

    title: str
    size: str
    tags: tuple[Tag, ...]
    rule: str
    """The one rule that keeps all of it from changing places; empty where there is no such."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """Another tray for the stand that is taken up."""

    tray: str
    query: str
    """Empty where a rule forbids it."""
    rule: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayView:
    """One tray."""

    number: int
    """Of all trays of the folder, from 1."""
    title: str
    size: str
    taken: str
    drawings: tuple[Drawing, Drawing]
    """For a desk and for a phone."""
    rows: tuple[RowView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TraysView:
    """All of it."""

    lead: tuple[str, ...]
    trays: tuple[TrayView, ...]
    spare: tuple[tuple[int, str], ...]
    """Trays that hold nothing, with their numbers."""
    number: int
    stands: int
    chosen: str
    ways: tuple[Way, ...]
    leave: str
    told: str
    """What the last move did."""
    is_moved: bool
    unmoved: str
    mark: str
    """Of the arrangement that moves begin from."""


def trays_view(
    answer: TraysAnswer,
    *,
    before: TraysAnswer,
    asked: TraysQuestion,
    address: str,
    made: tuple[Move, ...],
) -> TraysView | None:
    """The trays after the moves that were made; None where there is no plan."""
    if answer.plan is None or answer.ground is None or answer.count is None:
        return None
    return _Views(answer, before=before, asked=asked, address=address).view(made)


class _Views:
    """Puts the view together."""

    def __init__(
        self, answer: TraysAnswer, *, before: TraysAnswer, asked: TraysQuestion, address: str
    ) -> None:
        assert answer.plan is not None  # noqa: S101 - asked for only where there is one
        assert answer.ground is not None  # noqa: S101 - comes with the plan
        assert answer.count is not None  # noqa: S101 - comes with the plan
        self.plan, self.ground, self.count = answer.plan, answer.ground, answer.count
        self.trays, self.asked, self.address = answer.trays, asked, address
        self.mark = mark_of(before.trays)
        self.keys = keys_of(self.ground)
        self.chosen = taken_up(self.ground, self.trays, key=asked.stand)
        self.rules = swap_rules(self.ground, self.trays, name=self.chosen) if self.chosen else {}

    def view(self, made: tuple[Move, ...]) -> TraysView:
        plan = self.plan
        numbers = {name: place for place, name in enumerate(self.trays, start=1)}
        return TraysView(
            lead=tuple(plan_sentences(plan)),
            trays=tuple(
                self._tray(tray, lid, number=numbers[tray.case.name])
                for tray, lid in zip(plan.trays, lids(plan.trays, marks=self._marks()), strict=True)
            ),
            spare=tuple((numbers[case.name], case_words(case)) for case in plan.empty),
            number=len(plan.trays),
            stands=sum(len(tray.lying) for tray in plan.trays),
            chosen=self._words(self.chosen) if self.chosen else "",
            ways=tuple(self._ways(numbers)) if self.chosen else (),
            leave=self.asked.choosing(0).query,
            told=self._told(made[-1]) if made else "",
            is_moved=bool(made),
            unmoved=self.asked.unmoved.query,
            mark=self.mark,
        )

    def _marks(self) -> Mapping[str, Mark | None]:
        return marks_of(marking_of(self.count))

    def _tray(self, tray: LaidTray, lid: Lid, *, number: int) -> TrayView:
        return TrayView(
            number=number,
            title=capital(tray.case.name),
            size=inside_words(tray.case),
            taken=tray_words(tray),
            drawings=(
                tray_drawing(lid, look=self._look(DESK)),
                tray_drawing(lid, look=self._look(PHONE)),
            ),
            rows=tuple(self._rows(tray, lid)),
        )

    def _look(self, pixels: int) -> TrayLook:
        widest = max(tray.case.inside.width for tray in self.plan.trays)
        return TrayLook(
            width=float(widest),
            pixels=pixels,
            address=lambda stand: self._address(stand.name),
            words=self._stand_words,
            keys=self.keys,
            chosen=self.chosen,
            barred=frozenset(name for name, rule in self.rules.items() if rule),
        )

    def _rows(self, tray: LaidTray, lid: Lid) -> Iterator[RowView]:
        for row, drawn in zip(tray.rows, lid.rows, strict=True):
            own = own_company(row)
            tags = tuple(self._tag(stand, own=own) for stand in drawn.stands)
            rules = {tag.rule for tag in tags}
            yield RowView(
                title=row_title(row, number=drawn.number),
                size=_size(drawn),
                tags=tags,
                rule=rules.pop() if len(rules) == 1 else "",
            )

    def _tag(self, stand: LidStand, *, own: str) -> Tag:
        return Tag(
            key=self.keys[stand.name],
            number=stand.number,
            name=spoken(name_within(stand.name, own)),
            query=self._query(stand.name),
            rule=self.rules.get(stand.name, ""),
            is_chosen=stand.name == self.chosen,
        )

    def _words(self, name: str) -> str:
        return thing_words(self.ground.things[self.keys[name] - 1])

    def _stand_words(self, stand: LidStand) -> str:
        words = f"{stand.number}: {self._words(stand.name)}, {stand.pattern}"
        rule = self.rules.get(stand.name, "")
        return f"{words}. Not there: {rule}" if rule else words

    def _query(self, name: str) -> str:
        """What a touch does: it is taken up, let be, or changes places with the chosen one."""
        key = self.keys[name]
        if not self.chosen:
            return self.asked.choosing(key).query or "?"
        if name == self.chosen:
            return self.asked.choosing(0).query or "?"
        if self.rules.get(name):
            return ""
        return self.asked.with_move(f"{self.asked.stand}-{key}", of=self.mark).query

    def _address(self, name: str) -> str:
        query = self._query(name)
        return f"{self.address}{query}#trays" if query else ""

    def _ways(self, numbers: Mapping[str, int]) -> Iterator[Way]:
        for name, rule in transfer_rules(self.ground, self.trays, name=self.chosen).items():
            after = self.asked.with_move(f"{self.asked.stand}t{numbers[name]}", of=self.mark)
            yield Way(tray=capital(name), query="" if rule else after.query, rule=rule)

    def _told(self, move: Move) -> str:
        match move:
            case Swap(one=one, other=other):
                return f"{self._words(one)} and {self._words(other)} have changed places."
            case Transfer(thing=thing, to=to):
                return f"{self._words(thing)} is in {capital(to)} now."


def _size(row: LidRow) -> str:
    return f"{decimal_text(row.width)} x {decimal_text(row.ends - row.starts)} mm"
