"""Every stand and body of a structure as an instance with a path-like name."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from paradestate.core.force import Force, Wanted, Wishes
from paradestate.core.formation import Echelon, Need
from paradestate.core.number import NONE, NumberRange
from paradestate.core.ratio import Sharing, shared_figures
from paradestate.core.structure import Node, NodeKey, Step, Structure

SEPARATOR = " / "


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """One stand of the raised force."""

    name: str
    """Such as `No 2 Company / 3 Platoon / 1 Section`."""
    pattern: str
    """Name of its pattern; of stands by fixed ratio the figure's name and `stand`."""
    wishes: tuple[str, ...]
    """The wished items that it belongs to, outermost first; empty in the must layer."""
    is_wanted: bool
    """Whether it is must, or all its wished items are wanted."""
    figures: Mapping[str, int]
    men: NumberRange
    printed: bool
    company: str
    """Name of the company it stands in, or of the part directly below the root; else empty."""
    level: Echelon | None
    """Echelon of the body that it stands in directly."""
    within: int
    """The place of that body among the bodies, from 0."""

    @property
    def layer(self) -> Need:
        """Must only if nothing on its path is wished."""
        return Need.WISHED if self.wishes else Need.MUST


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """One formation of the raised force, as an instance."""

    name: str
    """Empty for the raised formation itself."""
    formation: str
    echelon: Echelon | None
    wishes: tuple[str, ...]
    is_wanted: bool
    """Whether it is must, or all its wished items are wanted."""
    men: int
    """Its own men, where it has no parts."""
    within: int | None
    """The place among the bodies, from 0, of the one that holds it; None for the raised one."""

    @property
    def layer(self) -> Need:
        """Must only if nothing on its path is wished."""
        return Need.WISHED if self.wishes else Need.MUST


def unfolded(force: Force, settled: Structure) -> tuple[tuple[Stand, ...], tuple[Body, ...]]:
    """All instances, in the order of the files, each body before what it holds."""
    unfolding = _Unfolding(force=force, settled=settled)
    unfolding.body(settled.root, name="", wishes=(), company="", within=None)
    return tuple(unfolding.stands), tuple(unfolding.bodies)


class _Unfolding:
    """Collects instances on the way down."""

    def __init__(self, *, force: Force, settled: Structure) -> None:
        self.force = force
        self.settled = settled
        self.wanted: Wanted = force.raise_.wished if force.raise_ else Wishes.NONE
        self.stands: list[Stand] = []
        self.bodies: list[Body] = []

    def body(
        self, key: NodeKey, *, name: str, wishes: tuple[str, ...], company: str, within: int | None
    ) -> int:
        """Adds a body and all that it holds; returns its place among the bodies."""
        node = self.settled.nodes[key]
        own = len(self.bodies)
        self.bodies.append(
            Body(
                name=name,
                formation=key[0],
                echelon=node.formation.echelon,
                wishes=wishes,
                is_wanted=self._is_wanted(wishes),
                men=node.men,
                within=within,
            )
        )
        sharings = {
            sharing.number_among_parts: sharing
            for sharing in shared_figures(self.force, self.settled, node=node)
        }
        place = 0
        for step, label in self._labelled(node):
            below = f"{name}{SEPARATOR}{label}" if name else label
            wished = (*wishes, step.of) if step.need is Need.WISHED else wishes
            if step.of in self.force.stands:
                self._stand(step.of, within=own, name=below, wishes=wished, company=company)
                continue
            child = (step.of, step.share)
            held = self.body(
                child,
                name=below,
                wishes=wished,
                company=self._company(child, below, above=company),
                within=own,
            )
            if place in sharings:
                self._share(sharings[place], within=held)
            place += 1
        return own

    def _company(self, child: NodeKey, name: str, *, above: str) -> str:
        """The company that a body belongs to: itself, or the one it stands in."""
        echelon = self.settled.nodes[child].formation.echelon
        return name if echelon is Echelon.COMPANY or not above else above

    def _labelled(self, node: Node) -> Iterator[tuple[Step, str]]:
        """Each single part with its own step of the name."""
        together: dict[str, int] = {}
        for step in node.steps:
            together[step.of] = together.get(step.of, 0) + step.number
        running: dict[str, int] = {}
        for step in node.steps:
            for _ in range(step.number):
                running[step.of] = running.get(step.of, 0) + 1
                yield step, self._label(step.of, running[step.of], of=together[step.of])

    def _label(self, part: str, number: int, *, of: int) -> str:
        given = self.force.raise_.names.get(part) if self.force.raise_ else None
        if isinstance(given, str):
            return given.replace("#", str(number))
        if given is not None and number <= len(given):
            return given[number - 1]
        definition = self.force.stands.get(part) or self.force.formations.get(part)
        called = (definition.called if definition else "") or capitals(part)
        return called if of == 1 else f"{number} {called}"

    def _stand(
        self, pattern: str, *, within: int, name: str, wishes: tuple[str, ...], company: str
    ) -> None:
        stand = self.force.stands[pattern]
        level = self.bodies[within].echelon
        self.stands.append(
            Stand(
                name=name,
                pattern=pattern,
                wishes=wishes,
                is_wanted=self._is_wanted(wishes),
                figures={} if stand.printed else stand.figures,
                men=stand.men or NONE,
                printed=stand.printed,
                company=company,
                level=level,
                within=within,
            )
        )
        if stand.printed and stand.modelled_as:
            modelled = (*wishes, pattern)
            self.stands.append(
                Stand(
                    name=f"{name} (modelled)",
                    pattern=pattern,
                    wishes=modelled,
                    is_wanted=self._is_wanted(modelled),
                    figures=stand.modelled_as,
                    men=NONE,
                    printed=False,
                    company=company,
                    level=level,
                    within=within,
                )
            )

    def _share(self, sharing: Sharing, *, within: int) -> None:
        """Stands of figures by fixed ratio; their men are counted with the body."""
        body = self.bodies[within]
        for number, figures in enumerate(sharing.stands(), start=1):
            label = "Stand" if sharing.number_of_stands == 1 else f"{number} Stand"
            self.stands.append(
                Stand(
                    name=f"{body.name}{SEPARATOR}{label}",
                    pattern=ratio_pattern(sharing.figure),
                    wishes=body.wishes,
                    is_wanted=self._is_wanted(body.wishes),
                    figures={sharing.figure: figures},
                    men=NONE,
                    printed=False,
                    company=body.name,
                    level=body.echelon,
                    within=within,
                )
            )

    def _is_wanted(self, wishes: tuple[str, ...]) -> bool:
        if isinstance(self.wanted, tuple):
            return all(wish in self.wanted for wish in wishes)
        return not wishes or self.wanted is Wishes.ALL


def ratio_pattern(figure: str) -> str:
    """The name under which stands of a fixed ratio are counted."""
    return f"{figure} stand"


def spoken(name: str) -> str:
    """The name of a stand or body without slashes: `No 2 Company, 3 Platoon`."""
    return name.replace(SEPARATOR, ", ")


def name_within(name: str, above: str) -> str:
    """The name below that of a body that holds it; the whole name where that is empty."""
    return name.removeprefix(f"{above}{SEPARATOR}") if above else name


def capitals(name: str) -> str:
    """The name with the first letter of each word capital."""
    return " ".join(word[:1].upper() + word[1:] for word in name.split(" "))
