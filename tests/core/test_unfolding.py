"""Instances and their names."""

from paradestate.core.establishment import establishment
from paradestate.core.force import Force
from paradestate.core.formation import Need
from paradestate.core.unfolding import Stand, capitals, name_within, spoken
from tests.forces import force_from, marenz


def stands_of(force: Force) -> tuple[Stand, ...]:
    answer, _ = establishment(force)
    assert answer is not None
    return answer.stands


def names_of(force: Force) -> list[str]:
    return [stand.name for stand in stands_of(force)]


def test_a_stand_is_named_by_its_path() -> None:
    names = names_of(marenz())
    assert names[0] == "Battalion Command"
    assert "No 2 Company / 3 Platoon / 1 Section" in names
    assert "No 2 Company / Light Mortar Section" in names
    assert "2 Observer" in names
    assert "No 1 Company / 2 Hidden-movement Marker" in names
    assert len(set(names)) == len(names)


def test_listed_names_come_first_and_numbers_take_over_when_they_run_out() -> None:
    force = force_from(
        "stands: {gun: {base: none, called: Gun}}",
        "formations: {top: {parts: {gun: 3}}}",
        head="format: 1\ntitle: T\nraise: {formation: top, names: {gun: [Alpha, Beta]}}\n",
    )
    assert names_of(force) == ["Alpha", "Beta", "3 Gun"]


def test_parts_of_two_windows_number_on() -> None:
    force = force_from(
        "stands: {gun: {base: none}}",
        "formations: {top: {parts: [{of: gun, number: 1, from: 1941}, {of: gun, number: 2}]}}",
        head="format: 1\ntitle: T\nraise: {formation: top, date: 1943}\n",
    )
    assert names_of(force) == ["1 Gun", "2 Gun", "3 Gun"]


def test_must_only_if_every_step_is_must() -> None:
    force = force_from(
        "stands: {cook: {base: none}}",
        """formations:
  train: {parts: [{of: cook, number: 1}, {of: cook, number: 1, need: wished}]}
  top: {parts: [{of: cook, number: 1}, {of: train, number: 1, need: wished}]}
""",
    )
    stands = stands_of(force)
    assert [stand.layer for stand in stands] == [Need.MUST, Need.WISHED, Need.WISHED]
    assert [stand.wishes for stand in stands] == [(), ("train",), ("train", "cook")]
    assert [stand.is_wanted for stand in stands] == [True, False, False]


def test_a_printed_stand_is_must_and_its_modelled_version_wished() -> None:
    marker, modelled = [
        stand for stand in stands_of(marenz()) if stand.name.startswith("No 1 Company / 1 Hidden")
    ]
    assert marker.printed
    assert marker.layer is Need.MUST
    assert marker.figures == {}
    assert modelled.layer is Need.WISHED
    assert modelled.wishes == ("hidden-movement marker",)
    assert modelled.figures == {"rifleman": 2}


def test_a_printed_stand_without_a_modelled_version_stays_alone() -> None:
    force = force_from(
        "stands: {wire: {base: none, printed: yes}}", "formations: {top: {parts: {wire: 1}}}"
    )
    assert names_of(force) == ["Wire"]


def test_stands_belong_to_a_company_or_to_what_stands_below_the_root() -> None:
    force = force_from(
        "stands: {gun: {base: none}}",
        """formations:
  platoon: {echelon: platoon, parts: {gun: 1}}
  company: {echelon: company, parts: {platoon: 1}}
  wing: {parts: {company: 2, platoon: 1}}
  top: {parts: {gun: 1, wing: 1}}
""",
    )
    assert [(stand.name, stand.company) for stand in stands_of(force)] == [
        ("Gun", ""),
        ("Wing / 1 Company / Platoon / Gun", "Wing / 1 Company"),
        ("Wing / 2 Company / Platoon / Gun", "Wing / 2 Company"),
        ("Wing / Platoon / Gun", "Wing"),
    ]


def test_figures_by_fixed_ratio_stand_on_stands_of_their_own() -> None:
    """617 men at 1:30: the shares of computations by largest remainder."""
    men = (110, 104, 98, 107, 99, 99)
    companies = "\n".join(f"  c{n}: {{echelon: company, men: {m}}}" for n, m in enumerate(men))
    parts = ", ".join(f"c{n}: 1" for n in range(len(men)))
    force = force_from(
        "figures: {fusilier: {}}",
        f"""formations:
{companies}
  top: {{men: 617, men per figure: 30, figure: fusilier, figures per stand: 3, parts: {{{parts}}}}}
""",
    )
    stands = stands_of(force)
    shares: dict[str, int] = {}
    for stand in stands:
        shares[stand.company] = shares.get(stand.company, 0) + stand.figures["fusilier"]
    assert list(shares.values()) == [4, 4, 3, 4, 3, 3]
    assert [stand.name for stand in stands[:3]] == ["C0 / 1 Stand", "C0 / 2 Stand", "C1 / 1 Stand"]
    assert {stand.name for stand in stands} >= {"C2 / Stand"}
    assert {stand.pattern for stand in stands} == {"fusilier stand"}
    answer, findings = establishment(force)
    assert answer is not None
    assert not findings
    assert answer.must.men.least == 617
    assert answer.must.figures == {"fusilier": 21} == answer.rollup.figures


def test_first_letters_are_made_capital() -> None:
    assert capitals("light mortar section") == "Light Mortar Section"


def test_a_name_is_spoken_without_slashes_and_without_what_holds_it() -> None:
    name = "No 2 Company / 3 Platoon / 1 Section"
    assert spoken(name) == "No 2 Company, 3 Platoon, 1 Section"
    assert name_within(name, "No 2 Company") == "3 Platoon / 1 Section"
    assert name_within(name, "No 3 Company") == name_within(name, "") == name
