"""Whole forces drawn by lot."""

from hypothesis import strategies as st

from paradestate.core.bench import Bench
from paradestate.core.figure import FigureKind
from paradestate.core.force import Aim, Force, Marks, Raise
from paradestate.core.formation import Formation
from paradestate.core.game import Game, Grade, Reserves
from paradestate.core.stand import StandPattern
from paradestate.core.support.entry import Asking, Entry, GroupLimit
from paradestate.core.table import Opponent, Table, Tray
from tests.text import drawn_entries as drawn
from tests.text.drawn_values import FREE, NAME, YES_NO, maybe, names, some, table

NOT_FORMATIONS = ("colours",)
"""Under `marks` this word names the colours themselves."""

NOT_STAGES = ("held",)
"""Under `stock` this word is the total."""


@st.composite
def worlds(draw: st.DrawFn) -> drawn.World:
    stands = draw(names())
    return drawn.World(
        figures=draw(names()),
        stands=stands,
        formations=draw(names(without=(*stands, *NOT_FORMATIONS))),
        entries=draw(names()),
        stages=draw(names(without=NOT_STAGES)),
        grades={scale: draw(names()) for scale in draw(names())},
    )


@st.composite
def forces(draw: st.DrawFn) -> Force:
    """A force in which every section is filled and every name is defined."""
    world = draw(worlds())
    entries = draw(drawn.named(Entry, world.entries, fields=drawn.entry(world)))
    groups = sorted({entry.group for entry in entries.values() if entry.group})
    limits = st.builds(GroupLimit, group=st.sampled_from(groups or [""]), **drawn.GROUP_LIMIT)
    return Force(
        title=draw(NAME),
        raise_=draw(st.builds(Raise, **drawn.raised(world))),
        about=draw(FREE),
        drawn_from=draw(some(NAME)),
        private=draw(YES_NO),
        aim=draw(maybe(st.builds(Aim, **drawn.AIM))),
        covers=draw(drawn.WINDOW),
        figures=draw(drawn.named(FigureKind, world.figures, fields=drawn.figure(world))),
        stands=draw(drawn.named(StandPattern, world.stands, fields=drawn.stand(world))),
        formations=draw(drawn.named(Formation, world.formations, fields=drawn.formation(world))),
        stock=draw(drawn.stock(world.figures, world)),
        stock_stands=draw(drawn.stock(world.stands, world)),
        sources=draw(drawn.sources(world)),
        games=draw(drawn.named(Game, draw(names()), fields=drawn.game(world))),
        formation_cost=draw(drawn.formation_cost(world)),
        asking=draw(st.sampled_from(Asking)),
        grades={
            scale: draw(st.builds(Grade, name=st.just(scale), **drawn.grade(grades)))
            for scale, grades in world.grades.items()
        },
        supporting_troops=entries,
        limits=draw(some(limits)) if groups else (),
        reserves=draw(maybe(st.builds(Reserves, **drawn.reserves(world)))),
        worths={name: draw(drawn.worth(name)) for name in world.entries},
        bench=draw(st.builds(Bench, **drawn.bench(world))),
        states=draw(some(NAME)),
        marks=draw(st.builds(Marks, **drawn.marks(world))),
        opponent=draw(maybe(st.builds(Opponent, **drawn.OPPONENT))),
        trays=draw(drawn.named(Tray, draw(names()), fields=drawn.tray())),
        packed=draw(table(NAME, table(NAME, drawn.TRAY_PLACE))),
        table=draw(maybe(st.builds(Table, **drawn.TABLE))),
        by_hand=draw(FREE),
    )
