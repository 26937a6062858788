"""The cheapest flow."""

from paradestate.core.flow import Arc, cheapest_flow


def test_an_early_choice_is_taken_back_where_that_is_cheaper() -> None:
    arcs = [
        Arc(tail="s", head="a", room=1),
        Arc(tail="s", head="b", room=1),
        Arc(tail="a", head="x", room=1, cost=1),
        Arc(tail="a", head="y", room=1, cost=2),
        Arc(tail="b", head="x", room=1, cost=2),
        Arc(tail="x", head="t", room=1),
        Arc(tail="y", head="t", room=1),
    ]
    assert cheapest_flow(arcs, source="s", sink="t") == (1, 1, 0, 1, 1, 1, 1)


def test_where_no_way_leads_nothing_flows() -> None:
    assert cheapest_flow([Arc(tail="s", head="a", room=3)], source="s", sink="t") == (0,)
