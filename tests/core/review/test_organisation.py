"""Rules for the organisation, each where it passes, where it fails and at its edge."""

import pytest

from paradestate.core.finding import Finding
from paradestate.core.review.organisation import RULES
from tests.forces import HEAD, marenz, partial_force_from

STANDS = "stands: {a: {base: none, men: 5}, b: {base: none}}\n"
DATED = "format: 1\ntitle: T\nraise: {formation: top, date: 1944}\n"


def found(formations: str, *more: str, head: str = HEAD) -> list[Finding]:
    force = partial_force_from(STANDS, f"formations: {formations}", *more, head=head)
    return [finding for rule in RULES for finding in rule(force)]


def codes(formations: str, *more: str, head: str = HEAD) -> list[str]:
    return [finding.code for finding in found(formations, *more, head=head)]


def test_the_example_has_nothing_to_say() -> None:
    assert not [finding for rule in RULES for finding in rule(marenz())]


def test_each_loop_is_said_once() -> None:
    loops = "{top: {parts: {x: 1}}, x: {parts: {y: 1}}, y: {parts: {x: 1}}, z: {parts: {z: 2}}}"
    assert codes(loops) == ["loop", "loop"]


def test_too_many_formations_inside_one_another_are_said_once() -> None:
    inner = ", ".join(f"f{each}: {{parts: {{f{each + 1}: 1}}}}" for each in range(60))
    assert codes(f"{{top: {{parts: {{f0: 1}}}}, {inner}, f60: {{men: 1}}}}") == ["too-deep"]


def test_a_loop_silences_rules_that_need_a_sound_organisation() -> None:
    assert codes("{top: {parts: {top: 33, a: 50}}, x: {echelon: platoon}}") == ["loop"]


def test_what_variants_can_not_do() -> None:
    assert codes("{top: {parts: {a: 1}}, x: {like: top, drop: [b]}}") == ["drop-of-nothing"]


def test_what_prevents_counting_is_said_by_check_too() -> None:
    assert codes("{top: {parts: [{of: a, number: 1-2}]}}") == ["number-missing"]


def test_a_usual_number_outside_its_range() -> None:
    assert codes(
        "{top: {parts: [{of: a, number: 1-2, usual: 3}]}}",
        head=HEAD.replace("top", "top, numbers: {a: 1}"),
    ) == ["number-outside-range"]


@pytest.mark.parametrize(
    ("words", "backwards"),
    [
        ("from: 1943, until: 1942", True),
        ("from: 1943, until: 1943", False),
        ("from: 1943", False),
        ("until: 1943", False),
    ],
)
def test_windows_that_end_before_they_begin(words: str, backwards: bool) -> None:  # noqa: FBT001
    entry = f"supporting troops: {{e: {{cost: 1, {words}}}}}"
    assert ("window-backwards" in codes("{top: {parts: {a: 1}}}", entry)) is backwards
    assert ("window-backwards" in codes("{top: {parts: {a: 1}}}", f"covers: {{{words}}}")) is (
        backwards
    )


def dated(one: str, other: str) -> str:
    return f"{{top: {{parts: [{{of: a, number: 3, {one}}}, {{of: a, number: 2, {other}}}]}}}}"


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ("until: 1942-05", "from: 1942-06", []),
        ("until: 1942-06", "from: 1942-06", ["windows-overlap"]),
        ("from: 1942-06", "until: 1942-06", ["windows-overlap"]),
        ("until: 1942-05", "from: 1942-06-02", ["windows-gap"]),
        ("until: 1942-05, theatre: x", "from: 1942-07, theatre: y", []),
    ],
)
def test_windows_of_one_part(one: str, other: str, expected: list[str]) -> None:
    said = codes(dated(one, other), head=DATED)
    assert [code for code in said if code.startswith("windows")] == expected


def test_a_part_without_a_window_beside_one_with_is_meant() -> None:
    assert codes(dated("from: 1941", "need: must"), head=DATED) == []


def test_windows_of_a_model_are_said_once_and_not_of_its_variants() -> None:
    text = dated("until: 1942-06", "from: 1942-06")[:-1] + ", x: {like: top}}"
    assert codes(text, head=DATED) == ["windows-overlap"]
    gap = dated("until: 1942-05", "from: 1942-07")[:-1] + ", x: {like: top}}"
    assert codes(gap, head=DATED) == ["windows-gap"]


def test_must_under_wished() -> None:
    scene = "x: {parts: [{of: a, number: 1, need: must}, {of: b, number: 1}]}"
    wished = (
        f"{{top: {{parts: [{{of: x, number: 1, need: wished}}, {{of: a, number: 1}}]}}, {scene}}}"
    )
    (finding,) = found(wished)
    assert (finding.code, finding.place.path[-1]) == ("must-under-wished", "need")
    assert codes(wished.replace("need: wished", "need: must")) == []
    assert codes(f"{{top: {{parts: {{a: 1}}}}, {scene}}}") == []


def test_bodies_without_stands() -> None:
    assert codes("{top: {parts: {a: 1, x: 1}}, x: {echelon: platoon, men: 20}}") == ["no-stands"]
    assert codes("{top: {parts: {a: 1, x: 1}}, x: {parts: {ghost: 1}}}") == []


def test_bodies_of_a_force_without_any_stands_are_on_paper_on_purpose() -> None:
    force = partial_force_from("formations: {top: {men: 20}}")
    assert not [finding for rule in RULES for finding in rule(force)]


def test_bodies_that_share_figures_by_ratio_have_stands() -> None:
    text = "{top: {men per figure: 30, figure: f, parts: {x: 2}}, x: {men: 90}}"
    assert codes(text, "figures: {f: {}}") == []


@pytest.mark.parametrize(
    ("number", "absurd"),
    [("10", False), ("11", False), ("19", False), ("20", True), ("22", True), ("12-30", True)],
)
def test_absurd_numbers_of_bodies(number: str, absurd: bool) -> None:  # noqa: FBT001
    text = f"{{top: {{parts: [{{of: x, number: {number}, usual: 12}}]}}, x: {{parts: {{a: 2}}}}}}"
    assert ("absurd-number" in codes(text)) is absurd


@pytest.mark.parametrize(("number", "absurd"), [(49, False), (50, True), (33, True)])
def test_absurd_numbers_of_stands(number: int, absurd: bool) -> None:  # noqa: FBT001
    assert ("absurd-number" in codes(f"{{top: {{parts: {{a: {number}}}}}}}")) is absurd


def test_a_digit_typed_twice_is_guessed_and_its_effect_is_counted() -> None:
    text = "{top: {parts: {x: 4}}, x: {parts: {y: 33, b: 1}}, y: {parts: {a: 2, b: 1}}}"
    (finding,) = found(text)
    assert "gives 264 as in the whole force" in finding.message
    assert finding.hint == "Did you mean 3?"


def test_very_many_bodies_without_stands_are_counted_themselves() -> None:
    text = "{top: {parts: {b: 1, thing: 25}}, thing: {men: 4}}"
    (finding,) = [finding for finding in found(text) if finding.code == "absurd-number"]
    assert finding.message == "25 things in a top gives 25 things in the whole force."
    assert finding.hint == "Look at the number again."


def test_names_that_lead_nowhere_are_no_absurd_numbers() -> None:
    assert codes("{top: {parts: {a: 1, x: 33}}, x: {men: bad}}") == []


def test_a_body_inside_a_smaller_one() -> None:
    text = "{top: {echelon: platoon, parts: {x: 1, a: 1}}, x: {echelon: company, parts: {a: 1}}}"
    assert codes(text) == ["echelon-upside-down"]
    assert codes(text.replace("company", "platoon")) == []
    assert codes(text.replace("echelon: company, ", "")) == []
    assert codes(text.replace("echelon: platoon, ", "")) == []
