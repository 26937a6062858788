"""What every paper is made from."""

from tests.core.paper.grounds import battalion


def test_a_stand_has_its_pattern_and_one_by_fixed_ratio_has_none_of_its_own() -> None:
    ground = battalion()
    kinds = {stand.pattern for stand in ground.made.stands}
    assert all(ground.pattern(kind) == ground.force.stands[kind] for kind in kinds)
    by_ratio = ground.pattern("rifleman stand")
    assert by_ratio.name == "rifleman stand"
    assert by_ratio.base is None
