"""Formations like another."""

from paradestate.core.finding import Level
from paradestate.core.formation import Echelon
from paradestate.core.variant import compositions
from tests.forces import force_from, partial_force_from

STANDS = "stands: {a: {base: none}, b: {base: none}, c: {base: none}}"


def test_a_variant_takes_over_parts_adds_and_drops() -> None:
    force = force_from(
        STANDS,
        """formations:
  top: {echelon: company, men: 30, called: Company, may detach: {a: 1}, parts: {a: 1, b: 2}}
  weak one: {like: top, weak: 50%}
  other: {like: top, drop: [b], add: {c: 3}}
  new: {like: top, parts: {c: 1}}
""",
    )
    made, findings = compositions(force)
    assert not findings
    assert [located.part.of for located in made["weak one"].parts] == ["a", "b"]
    assert made["weak one"].formation.echelon is Echelon.COMPANY
    assert made["weak one"].formation.called == "Company"
    assert made["weak one"].formation.men == 30
    assert made["weak one"].formation.may_detach == {"a": 1}
    assert made["other"].formation.men is None
    assert [located.part.of for located in made["other"].parts] == ["a", "c"]
    assert made["other"].parts[1].path == ("formations", "other", "add", "c")
    assert [located.part.of for located in made["new"].parts] == ["c"]


def test_a_variant_of_a_variant() -> None:
    force = force_from(
        STANDS,
        "formations: {top: {parts: {a: 1}}, x: {like: top, add: {b: 1}}, y: {like: x, drop: [a]}}",
    )
    made, _ = compositions(force)
    assert [located.part.of for located in made["y"].parts] == ["b"]


def test_weak_strength_is_not_taken_over() -> None:
    force = force_from(STANDS, "formations: {top: {weak: 50%, parts: {a: 2}}, x: {like: top}}")
    assert compositions(force)[0]["x"].formation.weak is None


def test_a_circle_of_likes_is_a_stop() -> None:
    force = force_from(STANDS, "formations: {top: {like: x}, x: {like: top}, y: {like: y}}")
    made, findings = compositions(force)
    assert not made
    assert [(found.code, found.level) for found in findings] == [("like-circle", Level.STOP)] * 3
    assert findings[0].place.path == ("formations", "top", "like")


def test_dropping_what_is_not_there_is_a_stop() -> None:
    force = force_from(STANDS, "formations: {top: {parts: {a: 1}}, x: {like: top, drop: [a, b]}}")
    _, findings = compositions(force)
    assert [found.code for found in findings] == ["drop-of-nothing"]
    assert findings[0].place.path == ("formations", "x", "drop", "2")


def test_a_variant_of_something_undefined_keeps_its_own_parts() -> None:
    force = partial_force_from(
        STANDS, "formations: {top: {parts: {a: 1}}, bad: {men: x}, y: {like: bad, parts: {a: 1}}}"
    )
    made, findings = compositions(force)
    assert not findings
    assert [located.part.of for located in made["y"].parts] == ["a"]
