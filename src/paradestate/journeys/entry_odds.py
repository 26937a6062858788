"""How likely each entry of a game comes, whatever else is asked for.

terms -> a plan of that entry alone, at its greatest number -> what its roll allows
"""

from collections.abc import Mapping

from paradestate.chance.availability import plan_rolls
from paradestate.core.game import Purchase
from paradestate.core.support.chances import Chances
from paradestate.core.support.terms import Terms


def entry_odds(terms: Terms) -> Mapping[str, Chances]:
    """Entry to how many of it are allowed when as many as can be are asked for.

    Entries that always come are left out.
    """
    rolled = [offer for offer in terms.offers.values() if offer.availability is not None]
    return {
        offer.name: plan_rolls(terms.offers, [Purchase(entry=offer.name, number=max(offer.cost))])[
            0
        ].chances_of(0)
        for offer in rolled
    }
