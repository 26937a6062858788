"""What the sheet of papers shows, put together from what is set by now."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from paradestate.core.finding import Finding, stops
from paradestate.core.imposition.layout import Layout
from paradestate.core.sentence.wording import capital, listed, several
from paradestate.journeys.paper.every_paper import EVERY_PAPER
from paradestate.journeys.paper.one_paper import OnePaper
from paradestate.journeys.paper.paper_kind import PaperKind
from paradestate.journeys.paper.paper_use import Eyes, Purpose
from paradestate.web.papers.press import Setting
from paradestate.web.papers.question import PapersQuestion
from paradestate.web.way_out import in_words

DOTS_PER_MILLIMETRE = Fraction(960, 254)
"""Of a screen by its own word: 96 to the inch (CSS Values and Units 3, 5.2)."""
SMALL = 4
"""Pages of the list are shown at one to so many."""
MOST_SHOWN = 12
"""Pages that are drawn on the screen; the others are in the file."""

SCALE = "printed-size-wrong"
"""Is said of the printer, once, and not of each paper."""

IN_WORDS_OF_THE_PAGE = {
    "or have the sheets corrected with --correct": (
        "or tick “draw the sheets so that they come out right”"
    ),
    "in millimetres: 96.8, or across and down: 96.8,97.2.": "in millimetres, such as 96.8.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """A page on the screen."""

    address: str
    """The end of it."""
    words: str
    """For whoever can't see it."""
    width: int
    """CSS pixels."""
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A paper of the list."""

    name: str
    anchor: str
    title: str
    about: str
    eyes: Eyes
    is_set: bool
    """Whether it was its turn."""
    pages: str
    """`2 pages`; empty where there is nothing to print."""
    first: Leaf | None
    digest: str
    """By which it lies on the shelf; empty of what isn't to be handed over."""
    findings: tuple[Finding, ...]
    ticks: tuple[tuple[str, bool], ...]
    failure: str

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to print, and nothing to say about it."""
        return self.is_set and not (self.pages or self.findings or self.failure)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """The papers of one purpose and for the same eyes."""

    heading: str
    says: str
    rows: tuple[Row, ...]
    empty: str
    """Titles of the papers on which there is nothing to print and nothing to say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PapersView:
    """All of it."""

    groups: tuple[Group, ...]
    boxes: tuple[tuple[str, str], ...]
    scale: tuple[Finding, ...]
    """What the printer makes of 100 mm."""
    of_question: tuple[Finding, ...]
    """What prevents every paper alike."""
    number_to_print: int
    number_to_hand_over: int


SAYS = {
    Purpose.BENCH: "to make stands by",
    Purpose.STANDS: "to be cut out and stuck on",
    Purpose.TRAY: "to pack and to find by",
    Purpose.CLUB: "for visitors, and for whoever plays by your list",
}
TONIGHT = {
    Eyes.OWNER: ("For tonight: yours alone", "the opponent sees none of these"),
    Eyes.ANYBODY: ("For tonight: may be handed over", "made from what may be seen, and no more"),
}


def papers_view(setting: Setting, question: PapersQuestion) -> PapersView:
    """The sheet as far as papers are set."""
    done = setting.done
    found = [each for paper in done.values() for each in paper.findings]
    rows = {kind.name: _row(kind, done.get(kind.name), question=question) for kind in EVERY_PAPER}
    shared = _once(_alike(done))
    made = [paper for paper in done.values() if paper.sheet is not None]
    handed = [paper for paper in made if paper.kind.may_be_handed_over]
    pages = sum(paper.sheet.printed.pages for paper in made if paper.sheet is not None)
    return PapersView(
        groups=() if shared else tuple(_groups(rows)),
        boxes=(
            ("Papers", str(len(made))),
            ("Pages", str(pages)),
            ("Private", str(sum(each.kind.eyes is Eyes.OWNER for each in made))),
        ),
        scale=_once([each for each in found if each.code == SCALE])[:1],
        of_question=shared,
        number_to_print=len(made),
        number_to_hand_over=len(handed),
    )


def leaves(paper: OnePaper, question: PapersQuestion) -> tuple[Leaf, ...]:
    """The pages of a paper at full size."""
    if paper.sheet is None:
        return ()
    number = len(paper.sheet.printed.pictures)
    return tuple(
        _leaf(paper.kind, question, page=page, of=number, share=Fraction(1))
        for page in range(1, min(number, MOST_SHOWN) + 1)
    )


def size_of(layout: Layout, *, share: Fraction) -> tuple[int, int]:
    """A page in CSS pixels, at that share of its size."""
    sides = (layout.size.width, layout.size.height)
    width, height = (round(side * DOTS_PER_MILLIMETRE * share) for side in sides)
    return width, height


def for_this_page(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    """The findings with their ways out in the words of the page."""
    return in_words(findings, IN_WORDS_OF_THE_PAGE)


def _groups(rows: Mapping[str, Row]) -> Iterator[Group]:
    """By purpose; those for tonight by whose eyes they are for as well."""
    for purpose in Purpose:
        kinds = [kind for kind in EVERY_PAPER if kind.purpose is purpose]
        if purpose is not Purpose.TONIGHT:
            title = (capital(purpose.value), SAYS[purpose])
            yield from _group(kinds, rows, title=title)
            continue
        for eyes, title in TONIGHT.items():
            of_eyes = [kind for kind in kinds if kind.eyes is eyes]
            yield from _group(of_eyes, rows, title=title)


def _group(
    kinds: Sequence[PaperKind], rows: Mapping[str, Row], *, title: tuple[str, str]
) -> Iterator[Group]:
    if kinds:
        of_group = tuple(rows[kind.name] for kind in kinds)
        yield Group(
            heading=title[0],
            says=title[1],
            rows=tuple(row for row in of_group if not row.is_empty),
            empty=listed(row.title for row in of_group if row.is_empty),
        )


def _row(kind: PaperKind, paper: OnePaper | None, *, question: PapersQuestion) -> Row:
    sheet = None if paper is None else paper.sheet
    found = () if paper is None else paper.findings
    drawn = sheet is not None and sheet.printed.pictures
    return Row(
        name=kind.name,
        anchor=kind.name.replace(" ", "-"),
        title=kind.title,
        about=kind.about,
        eyes=kind.eyes,
        is_set=paper is not None,
        pages="" if sheet is None else several(sheet.printed.pages, "page"),
        first=_leaf(kind, question, page=1, of=len(drawn), share=Fraction(1, SMALL))
        if drawn
        else None,
        digest=sheet.sha256 if sheet is not None and kind.may_be_handed_over else "",
        findings=for_this_page([each for each in found if each.code != SCALE]),
        ticks=() if paper is None else tuple((capital(t.words), t.holds) for t in paper.ticks),
        failure="" if paper is None else paper.failure,
    )


def _leaf(
    kind: PaperKind, question: PapersQuestion, *, page: int, of: int, share: Fraction
) -> Leaf:
    width, height = size_of(question.asked.layout, share=share)
    return Leaf(
        address=question.query(name=kind.name, number=str(page)),
        words=f"{kind.title}, page {page} of {of}",
        width=width,
        height=height,
    )


def _alike(done: Mapping[str, OnePaper]) -> list[Finding]:
    """Stops that every paper meets, such as a plan that can't be read."""
    each = [set(stops(paper.findings)) for paper in done.values()]
    shared = set.intersection(*each) if each else set()
    first = next(iter(done.values()), None)
    return [] if first is None else [found for found in first.findings if found in shared]


def _once(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    return for_this_page(tuple(dict.fromkeys(findings)))
