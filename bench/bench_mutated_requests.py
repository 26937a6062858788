"""A hundred thousand requests that are nearly right: none of them breaks or shows anything.

Other ones on every run; those that fail are printed as they are. Conditions: straight to the
application, without a socket; the example force with a small journal. An hour on two cores.
"""

from pathlib import Path

from hypothesis import settings

from tests.web.campaign import prepared

OWN = 90_000
STRANGE = 10_000
"""From a device that nobody let in."""
AT_ONCE = 1_000
"""They are drawn before they are sent."""


def bench_no_request_breaks_anything(tmp_path: Path) -> None:
    settings.register_profile("bench", derandomize=False)
    settings.load_profile("bench")
    with prepared(tmp_path) as campaign:
        for _ in range(OWN // AT_ONCE):
            assert list(campaign.own_faults(AT_ONCE)) == []
        for _ in range(STRANGE // AT_ONCE):
            assert list(campaign.stranger_faults(AT_ONCE)) == []
