"""What is wrong or doubtful with marks."""

from paradestate.core.finding import Finding, Level
from paradestate.core.mark.mark_finding import findings, pairs_in_use
from tests.core.mark.marked import TROOPS, marked
from tests.forces import force_from, marenz

FORMATIONS = (
    "formations: {top: {parts: {company: NUMBER}}, company: {echelon: company, parts: {command: 1, "
    "platoon: 3}}, platoon: {parts: {rifle: 2}}}"
)


def found(marks: str, *more: str, number: int = 2, formations: str = FORMATIONS) -> list[Finding]:
    force = force_from(TROOPS, formations.replace("NUMBER", str(number)), f"marks: {marks}", *more)
    return list(findings(marked(force)))


def codes(made: list[Finding]) -> list[str]:
    return [each.code for each in made]


def test_the_example_has_nothing_to_say() -> None:
    assert list(findings(marked(marenz()))) == []
    assert len(pairs_in_use(marked(marenz()))) == 6


def test_brick_red_and_leaf_green_are_too_alike() -> None:
    """Check value of the design: 52.4 to most people, 3.0 to a green-weak viewer."""
    (made,) = found("{company: {colours: [brick red, leaf green]}}")
    assert (made.code, made.level) == ("colours-alike", Level.WARN)
    assert made.message == (
        "Company 1 (brick red) and 2 (leaf green): difference 52.4 to most people, 3.0 to a "
        "green-weak viewer."
    )
    assert made.hint == "Try mid yellow / black."
    assert made.place.path == ("marks", "company", "colours", "1")


def test_two_that_most_people_see_alike_name_no_other_viewer() -> None:
    (made,) = found("{company: {colours: [a, b]}, colours: {a: 101010, b: 202020}}")
    assert made.message.endswith("difference 4.7 to most people.")


def test_others_are_kept_where_two_are_too_alike() -> None:
    (made,) = found("{company: {colours: [mid yellow, brick red, brown]}}", number=3)
    assert "Company 2 (brick red) and 3 (brown)" in made.message
    assert made.hint == "Try sky blue / black."


def test_where_two_others_dont_do_all_are_tried_anew() -> None:
    made = found("{company: {colours: [royal blue, violet, leaf green, brick red]}}", number=4)
    assert any(
        each.hint == "Try all anew: royal blue / mid yellow / sky blue / brown." for each in made
    )


def test_where_none_at_hand_do_that_is_said() -> None:
    every = "brick red, leaf green, royal blue, violet, mid yellow, sky blue, brown"
    made = found(f"{{company: {{colours: [{every}]}}}}", number=7)
    assert made[0].hint.startswith("No 7 colours at hand are further apart")


def test_alike_colours_of_two_formations_are_named_with_both() -> None:
    (made,) = found(
        "{company: {colours: [brick red]}, battery: {colours: [leaf green]}}",
        formations="formations: {top: {parts: {company: 1, battery: 1}}, company: {parts: "
        "{rifle: 1}}, battery: {parts: {rifle: 1}}}",
    )
    assert made.message.startswith("Company 1 (brick red) and battery 1 (leaf green)")


def test_one_colour_for_two_companies_is_the_same_mark_twice() -> None:
    (made,) = found("{company: {colours: [brown, brown]}}")
    assert (made.code, made.level) == ("mark-twice", Level.STOP)
    assert made.message == (
        "1 Company, 3 Platoon and 2 Company, 3 Platoon bear the same mark (brown, three bars, "
        "block). So do 3 more pairs of them."
    )
    single = found(
        "{company: {colours: [brown, brown]}}",
        formations="formations: {top: {parts: {company: 2}}, company: {parts: {rifle: 1}}}",
    )
    assert single[0].message.endswith("(brown, no bars, cross).")


def test_more_companies_than_colours_are_too_few_marks() -> None:
    (made,) = found("{company: {colours: [royal blue, mid yellow, sky blue, brown]}}", number=5)
    assert (made.code, made.level) == ("marks-too-few", Level.STOP)
    assert made.message == (
        "20 units; 4 colours x 4 numbers of bars x 4 signs make 16 marks with a check."
    )
    assert made.effect == "5 Company has no mark."
    assert made.hint == "Add a colour: black. The least difference is then 20.8."


def test_colours_that_are_enough_are_named() -> None:
    (made,) = found("{company: {colours: [royal blue, mid yellow]}}", number=4)
    assert made.effect == "3 Company and 4 Company have no mark."
    assert made.hint == "Add 2 colours: sky blue and brown. The least difference is then 34.0."


def test_a_colour_that_is_too_alike_is_told_to_be() -> None:
    made = found("{company: {colours: [royal blue, mid yellow, sky blue, brown, black]}}", number=6)
    few = next(each for each in made if each.code == "marks-too-few")
    assert few.hint.endswith(", which is too alike: sign and bars have to tell.")


def test_too_few_at_hand_are_not_named() -> None:
    (made,) = found("{company: {colours: [brown]}}", number=12)
    assert made.hint == "Add 11 colours under 'marks'; too few are at hand to name them."


def test_more_companies_than_signs_are_sent_to_another_level() -> None:
    colours = ", ".join(f"c{place}" for place in range(9))
    values = ", ".join(f"c{place}: {place}0{place}0{place}F" for place in range(9))
    made = found(f"{{company: {{colours: [{colours}]}}, colours: {{{values}}}}}", number=9)
    few = next(each for each in made if each.code == "marks-too-few")
    assert few.effect == "No sign is left for the check, so nothing is marked."
    assert few.hint.startswith("8 signs tell 8 colours and 7 bars apart.")


def test_no_colours_for_several_companies_are_a_remark() -> None:
    force = force_from(TROOPS, FORMATIONS.replace("NUMBER", "3"))
    (made,) = findings(marked(force))
    assert (made.code, made.level) == ("marks-unsaid", Level.REMARK)
    assert made.message == "No colours are given by which the companies are told apart."
    alone = force_from(TROOPS, FORMATIONS.replace("NUMBER", "1"))
    assert list(findings(marked(alone))) == []


def test_a_colour_without_a_value_is_told_and_left_out() -> None:
    made = found("{company: {colours: [puce, brown]}}", "opponent: {colours: [heliotrope, brown]}")
    assert codes(made) == ["colour-without-value", "colour-without-value", "enemy-alike"]
    assert [each.level for each in made[:2]] == [Level.WARN, Level.REMARK]


def test_the_enemys_colour_is_told_and_a_rear_bar_tells_apart() -> None:
    enemy = "opponent: {colours: [brown]}"
    (made,) = found("{company: {colours: [brown, mid yellow]}}", enemy)
    assert (made.code, made.level) == ("enemy-alike", Level.WARN)
    assert made.message == ("The opponent's troops also bear brown: 1 Company is marked brown.")
    assert "rear bar: yes" in made.hint
    assert found("{company: {colours: [brown, mid yellow], rear bar: yes}}", enemy) == []


def test_a_colour_near_the_enemys_is_told_with_who_takes_it_for_his() -> None:
    (made,) = found(
        "{company: {colours: [royal blue, mid yellow]}}", "opponent: {colours: [violet]}"
    )
    assert "violet, 3.9 from royal blue to a red-weak viewer" in made.message
    far = found("{company: {colours: [mid yellow]}}", "opponent: {colours: [black]}", number=1)
    assert far == []
