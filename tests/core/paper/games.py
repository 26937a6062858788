"""A force with something hidden in every place where words may stand."""

from dataclasses import replace
from functools import cache

from paradestate.core.game import Purchase
from paradestate.core.paper.ground import Ground
from paradestate.core.strength import strength
from paradestate.core.support.reserve import Reserve
from tests.core.paper.grounds import ground_of
from tests.forces import force_from

SECRETS = """\
title: zzTitle
about: zzAbout
by hand: zzForceByHand
aim: {text: zzAim}
figures:
  rifleman: {}
  sergeant: {may stand for: {rifleman: good}, by hand: zzFigureByHand}
  zzFigure: {}
  zzLateFigure: {}
stands:
  section: {base: 40 x 20 mm, figures: {rifleman: 4}, called: Team, by hand: zzStandByHand}
  zzMine: {base: 20 mm disc, called: zzMineCalled, figures: {zzFigure: 1}, seen by opponent: no}
  zzPost: {base: 20 mm disc, called: zzPostCalled, seen by opponent: when revealed}
  zzMarker: {base: 40 mm disc, called: zzMarkerCalled, printed: yes, modelled as: {rifleman: 1}}
  zzLate: {base: 30 mm disc, called: zzLateCalled, figures: {zzLateFigure: 1}}
  gun: {base: 40 x 40 mm}
  zzShell: {base: 30 mm disc, printed: yes, called: zzShellCalled}
  zzKept: {base: 30 mm disc, called: zzKeptCalled}
formations:
  zzPlatoon: {called: zzPlatoonCalled, by hand: zzFormationByHand, parts: {section: 2, zzMine: 1}}
  zzCompany:
    echelon: company
    called: zzCompanyCalled
    parts: {zzPlatoon: 2, zzMarker: 2, zzPost: 1}
  zzReinforcement: {echelon: company, called: zzReinforcementCalled, parts: {section: 9, zzLate: 1}}
  top: {parts: {zzCompany: 2, zzReinforcement: 1, zzLate: 1}}
marks: {zzCompany: {colours: [red, blue]}, colours: {red: C02020, blue: 2020C0}}
stock: {sergeant: {painted: 3}, rifleman: {painted: 40}}
states: [zzState]
loss limits: [{at: {1: zzEffect}, by hand: zzLossByHand}]
games:
  zzGame:
    posture: attack
    allowance: 4 + 1d6
    by hand: zzGameByHand
    arrivals:
      zzReinforcement: {roll: 1d6, on: 4-6, from turn: 2, edge: zzEdge, by hand: zzArrivalByHand}
      zzLate: {from turn: 3}
supporting troops:
  zzGuns: {held at: zzHolder, cost: {1: 2, 2: 4}, each: {gun: 1}, by hand: zzEntryByHand}
  zzBattery: {cost: {1: 1, 3: 3}, each: {zzShell: 1}, place: off table, choice: [zzSmoke, zzFire]}
  zzEither: {cost: 1, each: {gun: 1}, place: either}
  zzReserves: {cost: 1, each: {zzKept: 1}}
  zzDigging: {cost: 1, by hand: zzDiggingByHand}
worths: {zzGuns: {1: 4}}
reserves: {method: named, most: 50%, of: zzPlatoon, by hand: zzReservesByHand}
opponent: {front: 2 x 50 mm, by hand: zzOpponentByHand}
table: {size: 1800 x 1200 mm, by hand: zzTableByHand}
"""

HEAD = "format: 1\nraise: {formation: top, by hand: zzRaiseByHand}\n"

PLAN = (
    Purchase(entry="zzGuns", number=2),
    Purchase(entry="zzBattery", number=3, choice="zzSmoke"),
    Purchase(entry="zzEither", number=1),
    Purchase(entry="zzReserves", number=1),
    Purchase(entry="zzDigging", number=1),
    Purchase(entry="zzUnknown", number=1),
)

RESERVE = Reserve(formations={"zzPlatoon": 1}, purchases=(Purchase(entry="zzReserves", number=1),))


@cache
def secrets() -> Ground:
    """Every word of its owner that the opponent must not read begins with zz."""
    ground = ground_of(force_from(SECRETS, head=HEAD), plan=PLAN)
    return replace(
        ground,
        game="zzGame",
        strength=strength(ground.force, ground.made),
        reserve=RESERVE,
    )
