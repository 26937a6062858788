"""Pausing the search for cycles."""

import gc

import pytest

from paradestate.text.collecting import no_cycles_sought


def test_the_search_is_as_before_afterwards_even_after_a_failure() -> None:
    assert gc.isenabled()
    with no_cycles_sought():
        assert not gc.isenabled()
        with no_cycles_sought():
            pass
        assert not gc.isenabled()
    assert gc.isenabled()
    with pytest.raises(ValueError, match="oops"), no_cycles_sought():
        raise ValueError("oops")
    assert gc.isenabled()
