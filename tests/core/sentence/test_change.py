"""What changes, in words."""

from paradestate.core.change import Change, changes
from paradestate.core.choice import Choice, chosen
from paradestate.core.establishment import Establishment, establishment
from paradestate.core.force import Force
from paradestate.core.number import NumberRange
from paradestate.core.sentence.change import Row, following_rows, leading_rows
from paradestate.core.span import year
from tests.forces import marenz


def counted(force: Force) -> Establishment:
    made, _ = establishment(force)
    assert made is not None
    return made


def changed_by(choice: Choice) -> tuple[Change, ...]:
    other, _ = chosen(marenz(), choice)
    return changes(marenz(), counted(marenz()), after=counted(other))


def texts(rows: tuple[Row, ...]) -> list[str]:
    return [f"{row.what}: {row.before} -> {row.after}" for row in rows]


def test_three_companies_instead_of_four() -> None:
    """Story 2, line by line."""
    made = changed_by(Choice(numbers={"company": 3}))
    assert texts(leading_rows(made)) == [
        "Foot figures: 123 -> 94",
        "Men: 304 -> 233",
        "Stands and labels: 37 -> 29",
        "Printed markers: 8 -> 6",
        "Formation cost, points: 7 -> 4",
        "Times allowed: machine-gun platoon: 2 -> 1",
        (
            "Times allowed: lorries for a company, field works for a company and assault "
            "training for a platoon: 4 -> 3"
        ),
        "Platoons in reserve at most: 4 -> 3",
    ]


def test_the_rest_by_name() -> None:
    made = changed_by(Choice(numbers={"company": 3}))
    assert "Companies: 4 -> 3" in texts(following_rows(made))
    assert "Rifle sections: 24 -> 18" in texts(following_rows(made))
    assert "Hidden-movement markers, printed: 8 -> 6" in texts(following_rows(made))
    assert "Riflemen, figures: 101 -> 76" in texts(following_rows(made))
    assert "Hidden-movement markers, wished: 8 -> 6" in texts(following_rows(made))


def test_an_older_establishment() -> None:
    """Story 22."""
    rows = texts(leading_rows(changed_by(Choice(date=year(1941)))))
    assert "Foot figures: 123 -> 159" in rows
    assert "Times allowed: anti-tank rifles: none -> 4" in rows


def test_no_limit_is_any_number_and_ranges_stay_ranges() -> None:
    rows = leading_rows(
        [
            Change(what="limit", name="lorry", before=None, after=0),
            Change(what="men", name="", before=3, after=NumberRange(least=1, most=2)),
        ]
    )
    assert texts(rows) == ["Men: 3 -> 1-2", "Times allowed: lorry: any -> none"]
