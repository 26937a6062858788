"""What stands on a label."""

from paradestate.core.paper.label_face import name_lines


def test_each_step_of_a_name_has_its_line() -> None:
    assert name_lines("No 2 Company / 3 Platoon / 1 Section") == (
        "No 2 Company",
        "3 Platoon",
        "1 Section",
    )
    assert name_lines("Battalion Command") == ("Battalion Command",)
