"""Cautions."""

from paradestate.core.sentence.caution import CAUTIONS, FIRST


def test_each_matter_has_its_caution_once() -> None:
    about = [each.about for each in CAUTIONS]
    assert len(set(about)) == len(about)
    said = " ".join(f"{each.about}: {each.words}" for each in CAUTIONS).lower()
    for matter in ("spray", "varnish", "solvent", "dust", "blade", "magnet", "pacemaker", "child"):
        assert matter in said


def test_they_defer_to_the_makers_sheet_and_to_the_rules() -> None:
    assert "no source" in FIRST
    assert "maker" in FIRST
    assert "rules" in FIRST
