"""A hundred thousand requests that are nearly right: none of them breaks or shows anything.

Other ones on every run: a failure prints what is needed to see it again. Conditions: straight to
the application, without a socket; the example force with a small journal. About a quarter of an
hour on two cores.
"""

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.web.campaign import prepared
from tests.web.mutation import Sent, mutated

AT_ONCE = 20
OWN = 95_000
STRANGE = 5_000
"""From a device that nobody let in."""


def bench_no_request_breaks_anything(tmp_path: Path) -> None:
    with prepared(tmp_path) as campaign:

        @_many(OWN)
        @given(st.lists(mutated(campaign.own.sources), min_size=AT_ONCE, max_size=AT_ONCE))
        def own(requests: list[Sent]) -> None:
            campaign.try_own(requests)

        @_many(STRANGE)
        @given(st.lists(mutated(campaign.stranger.sources), min_size=AT_ONCE, max_size=AT_ONCE))
        def strange(requests: list[Sent]) -> None:
            campaign.try_stranger(requests)

        own()
        strange()


def _many(requests: int) -> settings:
    return settings(
        max_examples=requests // AT_ONCE,
        derandomize=False,
        database=None,
        deadline=None,
        suppress_health_check=list(HealthCheck),
    )
