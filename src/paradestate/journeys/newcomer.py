"""A newcomer's first force: at most six questions, a folder in the collection, what is there.

answers -> collection with a journal -> folder of its own -> counted -> what to buy next
"""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from paradestate.core.choice import Choice
from paradestate.core.force import Force
from paradestate.core.money import Currency, decimal_places, minor_text, money_text
from paradestate.core.order import PackName
from paradestate.core.strength import Strength, strength
from paradestate.journeys.collection import collection_of, holds_force
from paradestate.journeys.count import Count, CountAnswer, count
from paradestate.journeys.memory import NOTHING, Memory
from paradestate.journeys.new import examples, new_from_answers, new_from_example
from paradestate.journeys.order import OrderJourney, Request, Search, order
from paradestate.store.opening import opened
from paradestate.text.box import read_box
from paradestate.text.error import FileError
from paradestate.text.file_name import free_folder_name
from paradestate.text.money import read_amount, read_currency
from paradestate.text.number import read_whole
from paradestate.text.slip import Slip
from paradestate.text.spelling import tidy
from paradestate.text.starter import Answers

RIFLEMAN, OFFICER = "rifleman", "officer"
KINDS = (RIFLEMAN, OFFICER)
"""What the starting force is made of."""

MOST_TITLE = 100
BOUNDS = {
    "height": (2, 100),
    "figures": (1, 20),
    "sections": (1, 20),
    "platoons": (1, 20),
}
"""Question to the least and greatest answer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """The answers as they were understood, and what is wrong with those that weren't."""

    answers: Answers
    slips: Mapping[str, Slip]
    """Question to what is wrong with its answer."""


def read_answers(texts: Mapping[str, str]) -> Answered:
    """A newcomer's answers by question; one that is left empty takes the usual answer."""
    usual, slips = Answers(), dict[str, Slip]()
    given = {question: tidy(text) for question, text in texts.items()}
    numbers = {
        "height": int(usual.height),
        "figures": usual.figures_per_stand,
        "sections": usual.sections,
        "platoons": usual.platoons,
    }
    for question in numbers:
        _take_number(numbers, given.get(question, ""), question=question, slips=slips)
    box = _box(given.get("box", ""), slips=slips)
    currency, price = _price(given, slips=slips)
    answers = Answers(
        title=_title(given.get("title", ""), usual.title, slips=slips),
        height=Fraction(numbers["height"]),
        figures_per_stand=numbers["figures"],
        sections=numbers["sections"],
        platoons=numbers["platoons"],
        owned=box.get(RIFLEMAN, 0),
        officers=box.get(OFFICER, 0),
        price=price,
        currency=currency,
    )
    return Answered(answers=answers, slips=slips)


def _take_number(
    numbers: dict[str, int], text: str, *, question: str, slips: dict[str, Slip]
) -> None:
    least, most = BOUNDS[question]
    number = read_whole(text, least=least) if text else numbers[question]
    if isinstance(number, Slip):
        slips[question] = number
    elif number > most:
        slips[question] = _slip(f"{number} is more than {most}.", f"Write {least} to {most}.")
    else:
        numbers[question] = number


def _title(text: str, usual: str, *, slips: dict[str, Slip]) -> str:
    if len(text) > MOST_TITLE or not text.isprintable():
        slips["title"] = _slip(
            f"The name has more than {MOST_TITLE} letters, or some that nobody sees.",
            "Write a shorter one, on one line.",
        )
    return text or usual


def _box(text: str, *, slips: dict[str, Slip]) -> Mapping[str, int]:
    box = read_box(text, kinds=KINDS)
    if isinstance(box, Slip):
        slips["box"] = box
        return {}
    return box


def _price(given: Mapping[str, str], *, slips: dict[str, Slip]) -> tuple[Currency, str]:
    """The currency and the price of the box; an empty price is one that nobody knows."""
    currency = read_currency(given.get("currency", "").upper() or Answers().currency)
    if isinstance(currency, Slip):
        slips["currency"] = currency
        return Currency(Answers().currency), ""
    text, places = given.get("price", ""), decimal_places(currency)
    amount = read_amount(text, places=places) if text else None
    if isinstance(amount, Slip):
        slips["price"] = amount
    if amount is None or isinstance(amount, Slip) or not amount:
        return currency, ""
    return currency, minor_text(amount, places=places)


def _slip(message: str, hint: str) -> Slip:
    return Slip(code="answer-out-of-bounds", message=message, hint=hint)


def is_lone(root: Path) -> bool:
    """Whether a folder itself holds a force: then it is a collection of one."""
    try:
        return root.is_dir() and holds_force(root)
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}") from error


def start_from_answers(
    root: Path, *, answers: Answers, taken: frozenset[str] = frozenset()
) -> Path:
    """Makes a force in a folder of its own below the collection; returns that folder.

    `taken` are names that it can't have besides those that are there. Raises FileError where the
    root holds a force itself, or the disk refuses, and StoreError where the journal can't be made.
    """
    folder = _new_place(root, title=answers.title, taken=taken)
    new_from_answers(folder, answers=answers)
    return folder


def start_from_example(root: Path, *, name: str, taken: frozenset[str] = frozenset()) -> Path:
    """Copies a bundled example below the collection. Raises as above."""
    if name not in examples():
        raise FileError(f"There is no example '{name}'; nothing was made.")
    folder = _new_place(root, title=name, taken=taken)
    new_from_example(folder, name=name)
    return folder


def _new_place(root: Path, *, title: str, taken: frozenset[str]) -> Path:
    """A folder that isn't there yet, below a collection that has its journal."""
    if is_lone(root):
        raise FileError(
            f"{root} holds a force itself, so it is a collection of one: nothing was made. Move "
            "its files into a folder below, and start again."
        )
    try:
        root.mkdir(parents=True, exist_ok=True)
        # Made before its first force, so that all forces of the collection share it.
        with opened(collection_of(root).address, writing=True):
            there = frozenset(path.name for path in root.iterdir())
    except OSError as error:
        raise FileError(f"{error.filename}: {error.strerror}. Nothing was made.") from error
    return root / free_folder_name(title, taken=there | taken)


@dataclass(frozen=True, slots=True, kw_only=True)
class Making:
    """How many of one kind of stand what is owned makes whole."""

    pattern: str
    wanted: int
    whole: int


@dataclass(frozen=True, slots=True, kw_only=True)
class NextPack:
    """The pack of the cheapest order that makes the most stands whole when it comes first."""

    source: str
    name: str
    price: str
    holds: Mapping[str, int]
    whole: int
    """Stands that are whole with it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstParade:
    """What a force has, what that makes, and what to buy next."""

    counted: CountAnswer
    makings: tuple[Making, ...] = ()
    ordered: OrderJourney | None = None
    """None where nothing is lacking, or nobody sells anything yet."""
    next_pack: NextPack | None = None


def first_parade(
    folder: Path, *, today: datetime.date, search: Search, memory: Memory = NOTHING
) -> FirstParade:
    """Counts a force and says what it makes. Raises FileError, StoreError and SolverError."""
    counted = count(folder, today=today, choice=Choice(), memory=memory)
    if counted.count is None:
        return FirstParade(counted=counted)
    told = FirstParade(counted=counted, makings=tuple(_makings(counted.count.strength)))
    if not counted.count.strength.deficiency or not counted.count.force.sources:
        return told
    ordered = order(
        folder,
        today=today,
        choice=Choice(),
        request=Request(),
        search=search,
        memory=memory,
    )
    return replace(told, ordered=ordered, next_pack=_next_pack(counted.count, ordered))


def _makings(there: Strength) -> Iterator[Making]:
    patterns = dict.fromkeys(state.stand.pattern for state in there.stands)
    for pattern in patterns:
        own = [state for state in there.stands if state.stand.pattern == pattern]
        whole = sum(state.stage is not None for state in own)
        yield Making(pattern=pattern, wanted=len(own), whole=whole)


def _next_pack(counted: Count, ordered: OrderJourney) -> NextPack | None:
    if ordered.answer is None:
        return None
    packs = [_with_pack(counted, name) for name in ordered.answer.order.packs]
    return max(packs, key=lambda pack: pack.whole, default=None)


def _with_pack(counted: Count, name: PackName) -> NextPack:
    """A pack, with what there would be after it."""
    source = counted.force.sources[name[0]]
    pack = source.packs[name[1]]
    there = strength(_owning(counted.force, pack.holds), counted.made)
    return NextPack(
        source=source.name,
        name=pack.title or pack.name,
        price=money_text(pack.price, source.currency),
        holds=pack.holds,
        whole=sum(state.stage is not None for state in there.stands),
    )


def _owning(force: Force, more: Mapping[str, int]) -> Force:
    """The force with more figures in their packet."""
    first = force.bench.stages[0]
    stock = {kind: dict(stages) for kind, stages in force.stock.items()}
    for kind, number in more.items():
        stages = stock.setdefault(kind, {})
        stages[first] = stages.get(first, 0) + number
    return replace(force, stock=stock)
