"""Names of sections and hosts in words."""

import pytest

from paradestate.core.support.attachment import Section
from paradestate.web.hosts.title import place_title, section_title
from tests.attachings import rule


@pytest.mark.parametrize(
    ("name", "entry", "title"),
    [
        ("machine-gun platoon 2", "machine-gun platoon", "machine-gun platoon 2"),
        ("pioneers(flame) 2", "pioneers", "pioneers with flame 2"),
        ("pioneers(flame)", "pioneers", "pioneers with flame"),
        ("guns (2)", "guns", "guns (2)"),
        ("guns(heavy)", "guns(heavy)", "guns(heavy)"),
    ],
)
def test_a_section_goes_by_its_entry_with_what_was_chosen(
    name: str, entry: str, title: str
) -> None:
    assert section_title(Section(name=name, entry=entry, rule=rule())) == title


def test_a_host_is_named_without_strokes() -> None:
    assert place_title("No 1 Company / 2 Platoon") == "No 1 Company, 2 Platoon"
