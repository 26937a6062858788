"""Names that are defined, used, or only look alike."""

from paradestate.text.folder import read_files

HEAD = "format: 1\ntitle: T\nraise: {formation: top}\n"


def found(text: str) -> list[tuple[str, str]]:
    reading = read_files({"a.yaml": (HEAD + text).encode()})
    return [(finding.code, finding.message) for finding in reading.findings]


def codes(text: str) -> list[str]:
    return [code for code, _ in found(text)]


def test_what_nothing_uses_is_remarked_on() -> None:
    text = """figures: {a: {}, b: {}}
stands: {x: {base: none, figures: {a: 1}}, y: {base: none}}
formations: {top: {parts: {x: 1}}, other: {men: 1}}
sources: {North: {currency: GBP, carriage: {0: 0}, packs: {P: {price: 1, holds: {b: 1}}}}}
"""
    assert found(text) == [
        ("unused", "'b' isn't used by any stand."),
        ("unused", "'y' isn't used by any formation or supporting troops."),
        ("unused", "'other' isn't used by any formation, and isn't raised."),
    ]


def test_a_figure_shared_by_ratio_is_used() -> None:
    text = """figures: {a: {}}
formations: {top: {men per figure: 30, figure: a, parts: {c: 1}}, c: {men: 90}}
"""
    assert codes(text) == []


def test_stages_are_the_owners_or_the_usual_ones() -> None:
    stock = "figures: {a: {}}\nformations: {top: {men: 1, figure: a}}\nstock: {a: {primed: 2}}\n"
    assert codes(stock) == ["unknown-name"]
    assert codes(stock + "bench: {stages: [raw, primed, done]}\n") == []
    assert codes(stock + "bench: {stages: [raw, [primed]]}\n") == [
        "unknown-name",
        "wrong-shape",
    ]


def test_postures_are_the_usual_ones_and_those_of_games() -> None:
    top = "formations: {top: {men: 1}}\n"
    entry = "supporting troops: {e: {cost: 1, only in: {posture: rearguard}}}\n"
    game = "games: {g: {allowance: 1d6, posture: rearguard}}\n"
    assert codes(top + entry) == ["unknown-name"]
    assert codes(top + entry + game) == []
    assert codes(top + entry.replace("rearguard", "defence")) == []


def test_letters_and_spaces_that_only_look_alike() -> None:
    text = "formations: {top: {men: 1, called: T\u043ep\u00a0man}}\nabout: \u00dcber\n"
    assert found(text) == [
        (
            "look-alike-letters",
            "'T\u043ep' has one letter from another alphabet (Cyrillic \u043e).",
        ),
        ("odd-space", "'T\u043ep\u00a0man' holds a no-break space."),
    ]


def test_two_letters_are_counted() -> None:
    ((_, message),) = found("formations: {top: {men: 1}}\nabout: M\u0430r\u0435nz\n")
    assert "has 2 letters from another alphabet" in message
