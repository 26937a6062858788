"""The whole force in sentences."""

from paradestate.core.force import Force
from paradestate.core.sentence.force import sentences
from tests.forces import force_from, marenz

EVERYTHING = """about: A test.
drawn from: [invented, a book]
private: yes
aim: {text: play}
covers: {from: 1941, until: 1944}
figures: {f: {}}
stands: {s: {base: none, figures: {f: 1}}}
formations: {top: {parts: {s: 1}}}
stock: {f: {painted: 3}}
stock stands: {s: {based: 1}}
sources: {North: {currency: GBP, carriage: {0: 1}, packs: {P: {price: 1, holds: {f: 1}}}}}
games: {g: {allowance: 1d6, posture: attack, strengths: {top: HALF}, arrivals: {s: {}}}}
formation cost: 3
grades: {t: {usual: r, points: {r: 0}}}
supporting troops: {e: {cost: 1, group: h}}
asking: all declared first
limits: [{group: h, most: 1}]
reserves: {method: named, most: 34%, of: top}
worths: {e: {1: 2}}
bench: {week: 4 h}
campaign: {never back: [captured]}
club: {boxes: {b: {holds: {f: 1}}}}
states: [held up]
loss limits: [{of: top, at: {1: shaken}}]
marks: {top: {colours: [blue]}, colours: {blue: 1F4E9E}}
opponent: {gap: 5 mm}
trays: {t: {inside: 3 x 2 mm}}
packed: {t: {S: 0 x 0 mm}}
table: {size: 3 x 2 mm}
by hand: odd
""".replace("HALF", "{roll: 1d6, gives: {1-6: 50%}}")


def test_every_section_is_said() -> None:
    force = force_from(EVERYTHING)
    said = {sentence.path[0] for sentence in sentences(force)}
    written = {line.split(":")[0] for line in EVERYTHING.splitlines()}
    assert said == written | {"title", "raise"}
    paths = {sentence.path for sentence in sentences(force)}
    assert {("games", "g", "strengths", "top"), ("games", "g", "arrivals", "s")} <= paths


def test_what_is_not_there_is_not_said() -> None:
    assert [sentence.path for sentence in sentences(Force(title="Empty", raise_=None))] == [
        ("title",)
    ]


def test_every_entry_of_the_example_is_said() -> None:
    force = marenz()
    paths = {sentence.path for sentence in sentences(force)}
    for name in force.supporting_troops:
        assert ("supporting troops", name) in paths
    for source in force.sources.values():
        for pack in source.packs:
            assert ("sources", source.name, "packs", pack) in paths
    assert all(sentence.text.endswith(".") for sentence in sentences(force))
