"""What is kept back of a force and of a plan."""

from collections.abc import Mapping
from dataclasses import replace

from paradestate.core.establishment import establishment
from paradestate.core.finding import Finding, Level
from paradestate.core.force import Force
from paradestate.core.game import Purchase
from paradestate.core.support.reserve import (
    Reserve,
    can_be_kept_back,
    in_front,
    may_be_kept_back,
    reserve_findings,
    reserve_of,
    still_kept_back,
)
from tests.forces import marenz
from tests.support_terms import Plan


def take(entry: str, number: int = 1, *, choice: str = "") -> Purchase:
    return Purchase(entry=entry, number=number, choice=choice)


PLAN = (take("tanks", 2), take("pioneers", choice="flame"), take("pioneers", choice="charges"))


def found(
    force: Force, formations: Mapping[str, int] | None = None, *, plan: Plan = (), back: Plan = ()
) -> list[Finding]:
    made, _ = establishment(force)
    assert made is not None
    reserve = Reserve(formations=formations or {}, purchases=back)
    return list(reserve_findings(reserve, force=force, made=made, plan=plan))


def test_a_reserve_of_at_most_its_share() -> None:
    """12 platoons times 0.34 are 4.08, so at most 4."""
    assert found(marenz(), {"platoon": 4}) == []
    (finding,) = found(marenz(), {"platoon": 5})
    assert (finding.level, finding.code) == (Level.STOP, "reserve-too-large")
    assert finding.message == "5 platoons named as reserve; 4 of 12 is the most."
    assert finding.hint == "Keep back at most 4 platoons."
    assert finding.related[0].path == ("reserves",)


def test_a_reserve_of_which_nothing_is_said() -> None:
    (finding,) = found(marenz(), {"company": 4})
    assert finding.message == "Nothing says how many companies may be kept back."
    (finding,) = found(marenz(), {"company": 5})
    assert finding.message == "5 companies named as reserve; there are 4."
    (finding,) = found(marenz(), {"compny": 1})
    assert finding.code == "unknown-choice"


def test_purchases_of_the_plan_are_kept_back_and_nothing_is_said_of_them() -> None:
    (finding,) = found(marenz(), plan=PLAN, back=(take("tanks", 2),))
    assert (finding.level, finding.code) == (Level.REMARK, "reserve-unsaid")
    assert "their points, limits and odds stay as they are" in finding.effect


def test_more_than_the_plan_takes_is_not_kept_back() -> None:
    stop, remark = found(marenz(), plan=PLAN, back=(take("tanks", 2), take("tanks")))
    assert (stop.level, stop.code) == (Level.STOP, "reserve-too-large")
    assert stop.message == "3 x tanks named as reserve; the plan takes 2."
    assert stop.hint == "Take it too, or don't keep more than 2 back."
    assert remark.code == "reserve-unsaid"
    (stop,) = found(marenz(), plan=PLAN, back=(take("pioneers", choice="smoke"),))
    assert stop.message == "1 x pioneers with smoke named as reserve; the plan takes none."
    assert stop.hint == "Take it too, or don't keep it back."


def test_a_name_means_a_formation_or_else_what_the_plan_takes() -> None:
    named = {"platoon": 4, "tanks": 1, "pioneers": 3, "lancers": 1}
    made = reserve_of(named, purchases=(), plan=PLAN, formations={"platoon"})
    assert made.formations == {"platoon": 4, "lancers": 1}
    assert sorted(made.purchases, key=lambda each: (each.entry, each.choice)) == [
        take("pioneers", 2, choice="charges"),
        take("pioneers", choice="flame"),
        take("tanks"),
    ]
    alike = reserve_of({"tanks": 1}, purchases=PLAN[1:2], plan=PLAN, formations={"tanks"})
    assert alike == Reserve(formations={"tanks": 1}, purchases=PLAN[1:2])
    assert reserve_of({"tanks": 0}, purchases=(), plan=PLAN, formations=()) == Reserve()


def test_only_what_stands_on_the_table_can_be_kept_back() -> None:
    entries = marenz().supporting_troops
    assert can_be_kept_back(entries["light tanks"])
    assert can_be_kept_back(entries["machine-gun platoon"])
    assert not can_be_kept_back(entries["field battery"])
    assert not can_be_kept_back(entries["assault training for a platoon"])


def test_what_is_in_front_and_what_is_kept_back_make_the_plan() -> None:
    back = (take("tanks"), take("pioneers", choice="flame"))
    assert in_front(PLAN, back) == (take("tanks"), take("pioneers", choice="charges"))
    assert in_front(PLAN, ()) == PLAN
    assert in_front(PLAN, (take("tanks", 3),)) == PLAN[1:]


def test_what_the_plan_has_lost_is_not_kept_back_any_more() -> None:
    back = (take("tanks", 2), take("pioneers", choice="flame"))
    assert still_kept_back(back, (take("tanks"),)) == (take("tanks"),)
    assert still_kept_back(back, PLAN) == back


def test_what_may_be_kept_back_is_by_the_rule_and_of_the_plan() -> None:
    """A third of 12 platoons; of the plan what puts stands on the table, purchase upon purchase."""
    made, _ = establishment(marenz())
    assert made is not None
    plan = (
        take("machine-gun platoon"),
        take("field battery", 3),
        take("machine-gun platoon", 2),
    )
    most = may_be_kept_back(marenz(), made, plan=plan)
    assert most == {"platoon": 4, "machine-gun platoon": 3}


def test_without_a_rule_every_formation_below_the_top_may_be_kept_back() -> None:
    made, _ = establishment(marenz())
    assert made is not None
    most = may_be_kept_back(replace(marenz(), reserves=None), made, plan=())
    assert most["platoon"] == 12
    assert most["company"] == 4
    assert made.formation not in most
