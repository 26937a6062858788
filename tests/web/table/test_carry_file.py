"""The carry file is the table page's own scripts and look, put together and held to a policy."""

import re
from base64 import b64encode
from hashlib import sha256
from typing import Any

import pytest

from paradestate.web.table.carry_file import LICENCES, MODULES, carry_file, module_text
from paradestate.web.table.files import PARTS, static

CONTENT: dict[str, Any] = {
    "carry": "1",
    "title": "Guard & Sons </script><script>alert(1)</script>",
    "made": "27 November 2026",
    "force": {"title": "</script>"},
}
MET = {"meeting.js", "table.js"}
"""What only a page that meets its computer needs."""


def test_every_script_of_the_table_page_is_in_it_but_for_what_meets_the_computer() -> None:
    assert {f"{name}.js" for name in PARTS} - set(MODULES) == MET


@pytest.mark.parametrize("name", MODULES)
def test_nothing_of_a_module_asks_for_another_file(name: str) -> None:
    text = static(f"table/{name}").decode()
    made = module_text(name, text)
    assert re.findall(r"^\s*(?:import|export)\b", made, re.MULTILINE) == []
    assert "fetch(" not in text
    needed = set(re.findall(r'= parts\["([\w.-]+)"\];', made))
    assert needed <= set(MODULES[: MODULES.index(name)])
    for other in needed:
        asked = re.findall(rf'const \{{([^}}]*)\}} = parts\["{re.escape(other)}"\];', made)[0]
        given = module_text(other, static(f"table/{other}").decode()).rpartition("return {")[2]
        for word in filter(None, map(str.strip, asked.split(","))):
            assert re.search(rf"\b{word}\b", given), (other, word)


def test_its_policy_names_the_one_script_and_the_one_style_that_run() -> None:
    text = carry_file(CONTENT).decode()
    found = re.search(r'content-security-policy" content="([^"]*)"', text)
    assert found is not None
    for tag in ("script", "style"):
        (inside,) = re.findall(rf"<{tag}>(.*?)</{tag}>", text, re.DOTALL)
        digest = b64encode(sha256(inside.encode()).digest()).decode()
        assert f"{tag}-src 'sha256-{digest}';" in found[1]
    assert found[1].startswith("default-src 'none'; ")
    assert "connect-src" not in found[1]


def test_what_an_owner_wrote_can_not_end_the_element_in_which_it_stands() -> None:
    text = carry_file(CONTENT).decode()
    assert text.count("</script>") == len(re.findall(r"<script\b", text)) == 3
    assert "<title>Carry file · Guard &amp; Sons &lt;/script&gt;" in text
    assert "alert(1)" not in re.findall(r"<script>(.*?)</script>", text, re.DOTALL)[0]


def test_it_reaches_no_address_and_holds_the_licences_of_what_others_made() -> None:
    text = carry_file(CONTENT).decode()
    page, licences = text.split('id="licences">')
    assert set(re.findall(r"https?://[^\s\"']*", page)) == set()
    for name in LICENCES:
        assert name in licences
    assert "Permission is hereby granted, free of charge" in licences
