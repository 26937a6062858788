"""What is asked of the sheet of hosts, read from an address and written into one."""

from urllib.parse import parse_qsl

from paradestate.web.hosts.question import HostsQuestion, hosts_question

ASKED = {
    "game": "evening",
    "plan": "guns=3",
    "must:guns": "yes",
    "at:guns 1": "No 1 Company / 2 Platoon",
    "at:guns 2": "independent",
    "worths": "_2",
    "of": "0123abcd",
    "section": "guns 3",
    "colour": "red",
}


def asked(**other: str) -> HostsQuestion:
    return hosts_question({**ASKED, **other})


def test_the_whole_question_stands_in_the_address_and_nothing_else() -> None:
    said = asked()
    assert dict(parse_qsl(said.query.removeprefix("?"))) == {
        name: text for name, text in ASKED.items() if name != "colour"
    }
    assert hosts_question(dict(parse_qsl(said.query.removeprefix("?")))) == said


def test_a_section_that_is_moved_is_taken_up_no_more_and_the_others_stay() -> None:
    after = asked().with_moved("guns 1", to="No 2 Company / 1 Platoon", best="independent")
    assert after.at == {"guns 1": "No 2 Company / 1 Platoon", "guns 2": "independent"}
    assert (after.section, after.moved) == ("", "guns 1")


def test_a_section_back_at_its_best_place_is_not_said_to_be_moved() -> None:
    best = "No 1 Company / 1 Platoon"
    assert asked().with_moved("guns 1", to=best, best=best).at == {"guns 2": "independent"}


def test_other_worths_begin_with_the_best_attachment_again() -> None:
    after = asked().with_worths("3", of="ffff0000")
    assert (after.at, after.section, after.worths, after.of) == ({}, "", "3", "ffff0000")
    assert asked().with_worths("", of="ffff0000").of == ""
