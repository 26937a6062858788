"""Changes between two establishments."""

from paradestate.core.change import Change, changes, most_in_reserve
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.number import NumberRange
from paradestate.core.span import year
from tests.forces import force_from, marenz


def made(choice: Choice) -> Establishment:
    answer, _ = establishment(chosen(marenz(), choice)[0])
    assert answer is not None
    return answer


def as_table(found: tuple[Change, ...]) -> dict[tuple[str, str], tuple[object, object]]:
    return {(change.what, change.name): (change.before, change.after) for change in found}


def test_from_four_companies_to_three() -> None:
    found = changes(marenz(), made(Choice()), after=made(Choice(numbers={"company": 3})))
    table = as_table(found)
    assert table["foot figures", ""] == (123, 94)
    assert table["men", ""] == (304, 233)
    assert table["formation cost", ""] == (7, 4)
    assert table["limit", "machine-gun platoon"] == (2, 1)
    for entry in ("lorries for a company", "assault training for a platoon"):
        assert table["limit", entry] == (4, 3)
    assert table["limit", "field works for a company"] == (4, 3)
    assert table["most in reserve", "platoon"] == (4, 3)
    assert table["labels", ""] == (37, 29)
    assert table["markers", ""] == (8, 6)
    untouched = {"observer", "truck", "battalion command", "pioneers", "light tanks"}
    assert not untouched & {change.name for change in found}


def test_from_1941_to_1943() -> None:
    found = changes(marenz(), made(Choice(date=year(1941))), after=made(Choice()))
    differences = {(change.what, change.name): change.difference for change in found}
    assert differences["stands", "rifle section"] == -12
    assert differences["stands", "light mortar section"] == 4
    assert differences["figures", "rifleman"] == -48
    assert differences["figures", "mortar crew"] == 12
    assert as_table(found)["limit", "anti-tank rifles"] == (4, 0)
    assert as_table(found)["limit", "assault training for a platoon"] == (0, 4)


def test_nothing_changes_against_itself() -> None:
    assert changes(marenz(), made(Choice()), after=made(Choice())) == ()


def test_ranges_and_unlimited_entries_have_no_difference() -> None:
    several = Change(what="men", name="", before=NumberRange(least=9, most=11), after=3)
    unlimited = Change(what="limit", name="x", before=None, after=4)
    assert several.difference is None
    assert unlimited.difference is None


def test_men_given_as_a_range_change_as_a_range() -> None:
    force = force_from(
        "stands: {s: {base: none, men: 9-11}}",
        "formations: {top: {parts: [{of: s, number: 1-2, usual: 1}]}}",
    )
    one, _ = establishment(force)
    two, _ = establishment(chosen(force, Choice(numbers={"s": 2}))[0])
    assert one is not None
    assert two is not None
    found = as_table(changes(force, one, after=two))
    assert found["men", ""] == (NumberRange(least=9, most=11), NumberRange(least=18, most=22))
    assert most_in_reserve(force, one) == 0
