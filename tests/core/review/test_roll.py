"""Rules for rolls: of availability, and of an allowance that is looked up."""

import pytest

from paradestate.core.finding import Finding
from paradestate.core.review.roll import rolls, shared_rolls
from tests.forces import marenz, partial_force_from

STANDS = "stands: {a: {base: none}}\nformations: {top: {parts: {a: 1}}}"


def found(entries: str, *more: str) -> list[Finding]:
    return list(rolls(partial_force_from(STANDS, f"supporting troops: {{{entries}}}", *more)))


def test_the_example_has_nothing_to_say_of_rolls() -> None:
    assert not list(rolls(marenz()))


def rolled(allows: str, roll: str = "1d6") -> list[str]:
    availability = f"availability: {{roll: {roll}, allows: {{{allows}}}}}"
    return [finding.code for finding in found(f"e: {{cost: 1, {availability}}}")]


@pytest.mark.parametrize(
    ("allows", "expected"),
    [
        ("1-2: 0, 3-6: all", []),
        ("1-2: 0, 3 or more: all", []),
        ("1-2: 0, 4-6: all", ["bands-hole"]),
        ("1-3: 0, 3-6: all", ["bands-overlap"]),
        ("1-2: 0, 3-5: all", ["bands-short"]),
        ("2-6: all", ["bands-short"]),
        ("1-2: 0, 3-7: all", ["roll-impossible"]),
        ("0-2: 0, 3-6: all", ["roll-impossible"]),
        ("", ["bands-short"]),
        ("1: 0, 3-4: 1", ["bands-hole", "bands-short"]),
        ("1-3: 0, 2-6: all", ["bands-overlap"]),
    ],
)
def test_bands_cover_every_total_once(allows: str, expected: list[str]) -> None:
    assert rolled(allows) == expected


def test_totals_that_the_dice_leave_out_need_no_band() -> None:
    assert rolled("10: 0, 20 or more: all", roll="1d3 x 10") == []


def test_a_band_with_an_impossible_total_is_found_at_its_key() -> None:
    text = "e: {cost: 1, availability: {roll: 1d6, allows: {1-2: 0, 3-7: all}}, when refused: "
    (finding,) = found(text + "points kept}")
    assert finding.place.path[-1] == "3-7"
    (spaced,) = found(text.replace("3-7", "3 - 7") + "points kept}")
    assert spaced.place.path[-1] == "allows"


@pytest.mark.parametrize(
    ("gives", "expected"),
    [
        ("2-6: 10, 7 or more: 14", []),
        ("2-6: 10, 8-12: 14", ["bands-hole"]),
        ("2-7: 10, 7-12: 14", ["bands-overlap"]),
        ("2-6: 10, 7-11: 14", ["bands-short"]),
        ("1-6: 10, 7-12: 14", ["roll-impossible"]),
    ],
)
def test_an_allowance_that_is_looked_up_covers_every_total_once(
    gives: str, expected: list[str]
) -> None:
    game = f"games: {{g: {{allowance: {{roll: 2d6, gives: {{{gives}}}}}, posture: attack}}}}"
    findings = found("", game)
    assert [finding.code for finding in findings] == expected
    assert all(finding.effect == "Its points can't be worked out." for finding in findings)
    assert all(finding.place.path[:2] == ("games", "g") for finding in findings)


def test_what_is_rolled_in_a_posture_only_is_looked_at_too() -> None:
    roll = "availability: {roll: 1d6, allows: {1-5: all}}"
    (finding,) = found(f"e: {{cost: 1, in posture: {{attack: {{{roll}}}, defence: {{}}}}}}")
    assert finding.code == "bands-short"
    assert finding.place.path[2:4] == ("in posture", "attack")


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        ("air", "air", ["f: it rolls 1d8 for 'air', and e rolls 1d6."]),
        ("air", "sea", []),
    ],
)
def test_those_who_share_a_roll_roll_the_same_dice(
    one: str, other: str, expected: list[str]
) -> None:
    entries = (
        f"e: {{cost: 1, availability: {{roll: 1d6, allows: {{1-6: all}}, shared roll: {one}}}}}, "
        f"f: {{cost: 1, availability: {{roll: 1d8, allows: {{1-8: all}}, shared roll: {other}}}}}"
    )
    findings = list(shared_rolls(partial_force_from(STANDS, f"supporting troops: {{{entries}}}")))
    assert [finding.message for finding in findings] == expected
    apart = entries.replace(f", shared roll: {one}", "").replace(f", shared roll: {other}", "")
    force = partial_force_from(STANDS, f"supporting troops: {{{apart}}}")
    assert list(shared_rolls(force)) == []


@pytest.mark.parametrize(
    ("gives", "expected"),
    [("1-6: 50%", []), ("1-5: 50%", ["raid, top: bands cover 1 to 5 of 1d6"])],
)
def test_a_strength_covers_every_total_once(gives: str, expected: list[str]) -> None:
    strengths = f"strengths: {{top: {{roll: 1d6, gives: {{{gives}}}}}}}"
    findings = found("", f"games: {{raid: {{posture: attack, {strengths}}}}}")
    assert [finding.message.partition(", which")[0] for finding in findings] == expected
    assert all(finding.place.path[2:4] == ("strengths", "top") for finding in findings)
