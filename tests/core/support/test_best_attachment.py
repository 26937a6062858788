"""The best attachment where the room of each host is settled."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings

from paradestate.core.support.attachment import INDEPENDENT, Attaching, total_worth
from paradestate.core.support.best_attachment import best_with_rooms, kinds_of, room_asked
from tests.attachings import attachings, every_attachment, hosts, rule, sections, three_weapons

ONE_EACH = {"p1": 1, "p2": 1, "p3": 1}


def test_the_best_of_six_is_worth_thirteen() -> None:
    """A to 2, B to 1, AT to 3 (worked by hand)."""
    (kind,) = kinds_of(three_weapons())
    best = best_with_rooms(kind, ONE_EACH)
    assert best == {"MG 1": "p2", "MG 2": "p1", "AT 1": "p3"}
    assert total_worth(kind.question, best) == 13


def test_taking_the_largest_number_each_time_is_worth_twelve() -> None:
    """B to 1, AT to 2, A to 3, which is 12: worked by hand."""
    question = three_weapons()
    left = dict(question.worths)
    attached: dict[str, str] = {}
    while left:
        section, host = max(left, key=lambda pair: left[pair])
        attached[section] = host
        left = {
            pair: worth for pair, worth in left.items() if section != pair[0] and host != pair[1]
        }
    assert attached == {"MG 2": "p1", "AT 1": "p2", "MG 1": "p3"}
    assert total_worth(question, attached) == 12


def test_of_equals_the_first_sections_have_the_first_hosts() -> None:
    (kind,) = kinds_of(Attaching(sections=sections("a", 4, of=rule()), hosts=hosts(3)))
    assert best_with_rooms(kind, ONE_EACH) == {
        "a 1": "p1",
        "a 2": "p2",
        "a 3": "p3",
        "a 4": INDEPENDENT,
    }


def test_a_section_stays_independent_where_that_is_worth_more() -> None:
    question = replace(three_weapons(), worths={("MG 2", INDEPENDENT): Fraction(7, 3)})
    (kind,) = kinds_of(question)
    best = best_with_rooms(kind, ONE_EACH)
    assert best == {"MG 1": "p1", "MG 2": INDEPENDENT, "AT 1": "p2"}


def test_there_is_none_where_too_many_must_be_attached() -> None:
    bound = Attaching(sections=sections("a", 4, of=rule(), must=True), hosts=hosts(3))
    (kind,) = kinds_of(bound)
    assert best_with_rooms(kind, ONE_EACH) is None


def test_sections_that_ask_for_less_room_stay_out() -> None:
    both = (*sections("a", 1, of=rule(1)), *sections("b", 2, of=rule(2)))
    (kind,) = kinds_of(Attaching(sections=both, hosts=hosts(1)))
    assert best_with_rooms(kind, {"p1": 2}) == {"a 1": INDEPENDENT, "b 1": "p1", "b 2": "p1"}
    assert kind.rooms == (1, 2)
    assert room_asked(None, of=3) == 3


@settings(max_examples=30)
@given(attachings(most=4))
def test_it_is_the_first_of_the_best_by_enumeration(question: Attaching) -> None:
    for kind in kinds_of(question):
        if len(kind.rooms) > 1:
            continue
        alone = replace(question, sections=kind.sections)
        every = list(every_attachment(alone))
        best = best_with_rooms(kind, {host.name: kind.rooms[0] for host in kind.hosts})
        assert (best is None) == (not every)
        if best is not None:
            greatest = max(total_worth(alone, each) for each in every)
            assert best == next(each for each in every if total_worth(alone, each) == greatest)


def test_two_alike_do_not_go_to_one_host() -> None:
    alike = rule(2, no_two_alike=True)
    both = (*sections("a", 2, of=alike), *sections("b", 1, of=alike))
    (kind,) = kinds_of(Attaching(sections=both, hosts=hosts(1)))
    best = best_with_rooms(kind, {"p1": 2})
    assert best == {"a 1": "p1", "a 2": INDEPENDENT, "b 1": "p1"}
