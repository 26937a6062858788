"""The cheapest order against every order there is."""

from hypothesis import Phase, given, settings

from paradestate.core.certainty import Exact
from paradestate.core.order import OrderProblem, in_order_of_choice
from paradestate.core.order_outcome import Barred, NobodySells, OrderAnswer
from paradestate.solve.order import cheapest_order
from paradestate.solve.order_alternative import with_alternatives
from tests.solve.drawn import problems
from tests.solve.enumeration import every_order, steps, unpadded


@settings(max_examples=300, phases=[Phase.generate])
@given(problems())
def test_the_order_is_that_of_the_list_of_all_orders(problem: OrderProblem) -> None:
    outcome = cheapest_order(problem)
    if isinstance(outcome, NobodySells):
        assert outcome.kinds
        return
    listed = every_order(problem)
    if isinstance(outcome, Barred):
        assert listed == []
        return
    assert isinstance(outcome, OrderAnswer)
    assert outcome.certainty == Exact()
    best = listed[0]
    assert (outcome.order.total, outcome.order.number_left_over) == (best.total, best.left_over)
    answer = with_alternatives(problem, outcome)
    assert in_order_of_choice(answer.order) == best.rank
    found = [(step.total, step.number_left_over) for step in answer.steps]
    assert (found, answer.all_steps) == (steps(listed), True)
    others = [order.rank for order in unpadded(problem, listed) if best.packs and order != best][:3]
    assert [in_order_of_choice(order) for order in answer.next_best] == others
    assert answer.all_next_best
