"""A chart of decisions in which outcomes that go on alike share one branch."""

from dataclasses import replace
from fractions import Fraction

from paradestate.core.game import Purchase
from paradestate.core.support.fork import Branch, End, Fork, Node, Omitted, forks, without_rare
from paradestate.core.support.policy import Ask, Granted, Take

TANKS = Purchase(entry="light tanks", number=2)
GUNS = Purchase(entry="anti-tank guns", number=2)
ONE_GUN = Purchase(entry="anti-tank guns", number=1)
HALF, THIRD, SIXTH = Fraction(1, 2), Fraction(1, 3), Fraction(1, 6)


def bought(*purchases: Purchase, points: int, worth: int = 5) -> Take:
    return Take(purchases=purchases, points=points, worth=Fraction(worth))


def granted(allowed: int, chance: Fraction, *, takes: Purchase | None, then: Ask | Take) -> Granted:
    return Granted(allowed=allowed, chance=chance, takes=takes, then=then)


def ask_tanks(points: int, *, worth: int = 9) -> Ask:
    """Ask for tanks; nothing else is bought when they come, one gun when they don't."""
    return Ask(
        purchase=TANKS,
        points=points,
        worth=Fraction(worth),
        outcomes=(
            granted(2, HALF, takes=TANKS, then=bought(points=points - 9)),
            granted(0, HALF, takes=None, then=bought(ONE_GUN, points=points)),
        ),
    )


def ask_guns(*thens: Ask | Take) -> Ask:
    """Ask for guns: what follows when two, one and none are allowed."""
    two, one, none = thens
    return Ask(
        purchase=GUNS,
        points=20,
        worth=Fraction(13),
        outcomes=(
            granted(2, THIRD, takes=GUNS, then=two),
            granted(1, HALF, takes=ONE_GUN, then=one),
            granted(0, SIXTH, takes=None, then=none),
        ),
    )


def fork(node: Node) -> Fork:
    assert isinstance(node, Fork)
    return node


def allowed(branch: Branch) -> list[int]:
    return [outcome.allowed for outcome in branch.outcomes]


def test_what_only_the_points_tell_apart_is_one_branch() -> None:
    made = fork(forks(ask_guns(ask_tanks(13), ask_tanks(16), ask_tanks(20))))
    (branch,) = made.branches
    assert (allowed(branch), branch.chance) == ([2, 1, 0], Fraction(1))
    tanks = fork(branch.then)
    assert tanks.points == range(13, 21)
    assert [way.then for way in tanks.branches] == [
        End(purchases=(), points=range(4, 12), worth=Fraction(5)),
        End(purchases=(ONE_GUN,), points=range(13, 21), worth=Fraction(5)),
    ]


def test_what_is_worth_another_sum_or_buys_another_thing_is_another_branch() -> None:
    made = fork(forks(ask_guns(ask_tanks(13), ask_tanks(16, worth=8), bought(points=20))))
    assert [allowed(branch) for branch in made.branches] == [[2], [1], [0]]
    assert [branch.chance for branch in made.branches] == [THIRD, HALF, SIXTH]


def test_outcomes_that_go_on_alike_are_taken_together_wherever_they_stand() -> None:
    made = fork(forks(ask_guns(bought(points=9), ask_tanks(16), bought(points=20))))
    assert [allowed(branch) for branch in made.branches] == [[2, 0], [1]]
    assert made.branches[0].chance == HALF


def test_the_same_step_twice_is_known_again() -> None:
    same = ask_tanks(16)
    assert len(fork(forks(ask_guns(same, same, same))).branches) == 1


def test_a_chart_that_asks_for_nothing_is_an_end() -> None:
    end = forks(bought(ONE_GUN, points=6))
    assert end == End(purchases=(ONE_GUN,), points=range(6, 7), worth=Fraction(5))
    assert without_rare(end, least=Fraction(1)) is end


def test_a_request_below_the_least_chance_is_left_out_and_one_on_it_stays() -> None:
    made = forks(ask_guns(bought(points=9), bought(ONE_GUN, points=9), ask_tanks(20)))
    kept = fork(without_rare(made, least=SIXTH))
    assert isinstance(kept.branches[2].then, Fork)
    cut = fork(without_rare(made, least=SIXTH + Fraction(1, 1000)))
    assert cut.branches[2].then == Omitted(worth=Fraction(9))
    assert [branch.then for branch in cut.branches[:2]] == [
        branch.then for branch in fork(made).branches[:2]
    ]


def test_requests_whose_roll_allows_others_differently_are_not_alike() -> None:
    """The same roll decides the cars: what is known of them afterwards is another way on."""
    some, none = ask_tanks(20), ask_tanks(20)
    told = tuple(replace(each, also={"cars": 1}) for each in some.outcomes)
    made = fork(forks(ask_guns(replace(some, outcomes=told), none, none)))
    assert [allowed(branch) for branch in made.branches] == [[2], [1, 0]]
