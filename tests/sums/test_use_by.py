"""How long a container keeps, and by which rule."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.sums.store_of import drawn_on, run_of, store_of

from packlarder.book.days import Span
from packlarder.figures.figure import Standing
from packlarder.figures.keeping import Kept
from packlarder.reckon.use_by import UseBy

DRIED = date(2027, 3, 12)
APPLE = "was: apple, peeled, raw\nwent in: raw\ncontains: []\ndried: {dried}\nform: rings"
STEW = (
    'made of: [{"potato, peeled, boiled": 300 g}, {"ham, cured, extra lean, roasted": 100 g}]\nwent in: cooked\n'
    "contains: []\ndried: freeze-dried\nform: bark"
)
JERKY = (
    'was: "beef, ground, 93% lean, browned"\nwent in: cooked\ncontains: []\ndried: air-dried\nform: strips\n'
    "yields: {from: 1 kg, gives: 400 g}"
)
MUESLI = "made of: [{apple: 100 g}, {milk powder: 50 g}]\ncontains: [milk]\nform: flakes"
TESTED = ", tested: no lighter"
WEIGHTS = {
    "egg powder": "fresh: 900 g, trays: 2, dry: 221 g, tested: no lighter",
    "apple": "fresh: 1 kg, trays: 2, dry: 150 g, tested: no lighter",
    "onion": "fresh: 1 kg, trays: 2, dry: 118 g, tested: no lighter",
    "stew": "fresh: 1 kg, trays: 2, dry: 260 g, tested: no lighter",
    "jerky": "fresh: 1 kg, trays: 2, dry: 430 g, tested: no lighter",
    "pasta": "dry: 500 g",
    "muesli": "dry: 150 g",
}
RACK = ("onion", "jerky")


def keeps(
    what: str = "egg powder",
    *,
    rules: str = "",
    jar: str = "jar",
    stands: str = "",
    stores: str = "",
    opened: str = "",
    dried: str = "freeze-dried",
    more: str = "",
    loaded: str = "2027-03-12",
    tested: bool = True,
) -> UseBy | None:
    """Give until when one container keeps that was filled on the day it was loaded. `rules` are keeping rules."""
    stand = f", stands: {stands}" if stands else ""
    weights = WEIGHTS[what] if tested else WEIGHTS[what].replace(TESTED, "")
    batch = f"{what}: {{{weights}, {more}put in: [{{in: {jar}, holds: 100 g{stand}}}]}}"
    dryer = "" if what in ("pasta", "muesli") else "rack" if what in RACK or dried == "air-dried" else "freezer"
    kept = f"keeping: [{rules}]\n" if rules else ""
    found = store_of(
        run_of(batch, dryer=dryer, took="", loaded=loaded),
        draws=(drawn_on(opened, "from: run/a1, opened: yes"),) if opened else (),
        larder=kept + (f"stores: {{{stores}}}\n" if stores else ""),
        on=date(2040, 1, 1),
        apple=APPLE.format(dried=dried),
        stew=STEW,
        jerky=JERKY,
        muesli=MUESLI,
    )
    return found.jar().use_by


def known(found: UseBy | None) -> UseBy:
    """Give a use-by that must be there."""
    assert found is not None
    return found


def test_published_figure_alone() -> None:
    """Air-dried apple at 16 °C: a year (NCHFP/UGA, copy); 365 days from 12 March 2027 lie over a leap day."""
    found = known(keeps("apple", dried="air-dried", stands="cellar", stores="cellar: 14 °C"))
    assert found.day == DRIED + timedelta(days=365) == date(2028, 3, 11)
    assert (found.own, found.fact, found.standing) == (False, "T5-14", Standing.COPY)
    assert found.says.startswith("1 year")


@pytest.mark.parametrize(
    ("stores", "days"),
    [
        ("shelf: 14 °C", 365),
        ("shelf: 16 °C", 365),
        ("shelf: 17 °C", 182),  # no figure between 16 and 27 °C: that of the warmer store
        ("shelf: 27 °C", 182),
        ("shelf: 35 °C", 182),  # no figure for so warm a store: the shortest there is
        ("other: 14 °C", 182),  # nobody says how warm it is: an ordinary room of 21 °C
    ],
)
def test_warmer_stores_keep_shorter(stores: str, days: int) -> None:
    """Dried fruit 1 year at 60 °F, 6 months at 80 °F (NCHFP/UGA, copy)."""
    found = known(keeps("apple", dried="air-dried", stands="shelf", stores=stores))
    assert (found.day - DRIED).days == days


@pytest.mark.parametrize(("degrees", "days"), [("14 °C", 365), ("17 °C", 182), ("35 °C", 182)])
def test_freeze_dried_fruit_in_a_warm_store(degrees: str, days: int) -> None:
    """A year kept cool, half of it kept warm (common practice), and in a store warmer than any row the shortest."""
    found = known(keeps("apple", stands="shelf", stores=f"shelf: {degrees}"))
    assert (found.day - DRIED).days == days


def test_starting_point_where_nothing_is_published() -> None:
    """Home freeze-dried food: 4 months, marked as common practice."""
    found = known(keeps())
    assert (found.day, found.standing, found.own) == (DRIED + timedelta(days=121), Standing.COMMON_PRACTICE, False)


def test_own_rule_stands_alone_where_nothing_is_published() -> None:
    """The starting point is only for who has no rule."""
    found = known(keeps(rules="{for: 18 months, why: still fresh then}"))
    assert (found.day, found.own, found.says) == (date(2028, 9, 12), True, "still fresh then")


@pytest.mark.parametrize(
    ("rule", "day", "own"),
    [
        ("{for: 2 years}", DRIED + timedelta(days=365), False),
        ("{for: 3 months}", date(2027, 6, 12), True),
    ],
)
def test_earliest_of_own_rule_and_published_figure(rule: str, day: date, *, own: bool) -> None:
    """A rule can shorten what is published, not lengthen it; which of them it was is told."""
    found = known(keeps("apple", dried="air-dried", stands="shelf", stores="shelf: 14 °C", rules=rule))
    assert (found.day, found.own) == (day, own)


def test_home_made_jerky_keeps_two_weeks() -> None:
    """2 weeks (NCHFP, from memory), whatever the household says."""
    found = known(keeps("jerky", rules="{for: 2 years}"))
    assert (found.day, found.fact) == (DRIED + timedelta(days=14), "T5-18")


@pytest.mark.parametrize(
    ("rules", "months"),
    [
        ("{for: 12 months}", 12),
        ("{what: egg, for: 10 months}, {for: 12 months}", 10),
        ("{for: 6 months}, {what: egg, for: 10 months}", 10),  # the closer rule, though it is longer
        ("{what: egg, for: 6 months}, {what: egg powder, for: 9 months}", 9),
        ("{what: egg, for: 9 months}, {what: egg, for: 7 months}", 7),  # of two as close, the shorter
        ("{what: egg, dried: air-dried, for: 5 months}, {for: 12 months}", 12),
        ("{what: fruit, for: 2 months}, {for: 12 months}", 12),
        ("{kept: opened, for: 1 month}, {for: 12 months}", 12),
    ],
)
def test_closest_rule(rules: str, months: int) -> None:
    """About the component itself, its kind, its group, anything; only for what was dried and kept so."""
    assert known(keeps(rules=rules)).day == Span(months=months).after(DRIED)


def test_a_meal_keeps_as_long_as_its_shortest_food() -> None:
    """A rule about potato says nothing of the ham beside it: that of meat holds, and of whole meals."""
    potato = "{what: potato, for: 24 months}"
    assert known(keeps("stew", rules=f"{potato}, {{what: meat, for: 3 months}}")).day == date(2027, 6, 12)
    assert known(keeps("stew", rules=f"{potato}, {{what: meal, for: 5 months}}")).day == date(2027, 8, 12)
    # with no rule for its ham: the starting point, 4 months for freeze-dried food in general
    assert known(keeps("stew", rules=potato)).day == DRIED + timedelta(days=121)
    # named by itself
    assert known(keeps("stew", rules=f"{potato}, {{what: stew, for: 8 months}}")).day == date(2027, 11, 12)


def test_a_rule_about_fruit_is_none_about_milk() -> None:
    """Apple with milk powder, mixed: the milk's 4 months hold, not the fruit's two years."""
    found = known(keeps("muesli", rules="{what: fruit, for: 2 years}"))
    assert found.day == DRIED + timedelta(days=121)


def test_opened_jars_keep_shorter() -> None:
    """Two weeks from when it was opened (common practice), and never longer than sealed."""
    found = known(keeps(opened="2027-04-01"))
    assert (found.day, found.kept) == (date(2027, 4, 15), Kept.OPENED)
    late = known(keeps(opened="2027-07-10"))
    assert (late.day, late.kept) == (DRIED + timedelta(days=121), Kept.SEALED)  # 11 July, before 24 July


def test_own_rule_for_opened_jars() -> None:
    """A month from opening on, by the household's own rule; its rule for sealed ones goes on."""
    rules = "{for: 12 months}, {kept: opened, for: 1 month, why: dry kitchen}"
    found = known(keeps(rules=rules, opened="2027-05-31"))
    assert (found.day, found.own, found.says) == (date(2027, 6, 30), True, "dry kitchen")
    assert known(keeps(rules=rules, opened="2028-03-01")).day == date(2028, 3, 12)


def test_what_was_not_tested_keeps_as_an_opened_jar() -> None:
    """Nobody can tell whether it is dry: two weeks from 12 March (common practice), whatever the household's own rule.

    What the household keeps shorter anyway goes on doing so, and a test gives the long time back.
    """
    found = known(keeps(tested=False))
    assert (found.day, found.kept, found.untested) == (DRIED + timedelta(days=14), Kept.OPENED, True)
    rules = "{for: 12 months}, {kept: opened, for: 8 weeks}"
    assert known(keeps(tested=False, rules=rules)).day == DRIED + timedelta(days=14)
    assert known(keeps(tested=False, rules=rules, opened="2027-03-20")).day == DRIED + timedelta(days=14)
    assert known(keeps(tested=False, rules="{kept: opened, for: 5 days}")).day == DRIED + timedelta(days=5)
    short = known(keeps(tested=False, rules="{for: 10 days}"))
    assert (short.day, short.untested) == (DRIED + timedelta(days=10), False)
    tested = known(keeps(rules=rules))
    assert (tested.day, tested.untested) == (date(2028, 3, 12), False)
    assert not known(keeps("pasta", tested=False, more="best before: 2028-01-31, ")).untested  # its maker dried it


def test_bags_keep_shorter() -> None:
    """Two weeks in a bag (common practice), for a pouch what holds for a jar; an own rule may be about bags."""
    assert known(keeps(jar="bag")).day == DRIED + timedelta(days=14)
    assert known(keeps(jar="bag", rules="{for: 12 months}")).day == DRIED + timedelta(days=14)
    assert known(keeps(jar="bag", rules="{kept: trip pack, for: 3 weeks}")).day == DRIED + timedelta(days=21)
    assert keeps(jar="pouch") == keeps(jar="jar")
    # an own rule may make a bag keep longer than two weeks, but not longer than a jar would
    assert known(keeps("jerky", jar="bag", rules="{kept: trip pack, for: 3 weeks}")).day == DRIED + timedelta(days=14)


def test_what_was_bought_dry() -> None:
    """Its pack's day; the household's rule if that is sooner; without either nobody knows."""
    dated = "best before: 2028-01-31, "
    assert known(keeps("pasta", more=dated)).day == date(2028, 1, 31)
    assert known(keeps("pasta", more=dated)).says == ""
    assert known(keeps("pasta", more=dated, rules="{for: 6 months}")).day == date(2027, 9, 12)
    assert known(keeps("pasta", more=dated, rules="{for: 2 years}")).day == date(2028, 1, 31)
    assert keeps("pasta") is None


@pytest.mark.parametrize(
    ("months", "start", "end"),
    [
        (1, date(2027, 12, 15), date(2028, 1, 15)),
        (1, date(2027, 1, 31), date(2027, 2, 28)),
        (1, date(2028, 1, 31), date(2028, 2, 29)),  # a leap year
        (12, date(2028, 2, 29), date(2029, 2, 28)),
        (48, date(2028, 2, 29), date(2032, 2, 29)),
        (3, date(2027, 11, 30), date(2028, 2, 29)),
        (12, date(2027, 12, 31), date(2028, 12, 31)),
        (11, date(2027, 1, 31), date(2027, 12, 31)),  # December, not the month nought of the year after
        (360, date(2199, 12, 31), date(2229, 12, 31)),  # the longest span after the last day that is read
    ],
)
def test_months_of_the_calendar(months: int, start: date, end: date) -> None:
    """Over a year's end; the 31st becomes the last day of a shorter month; leap days."""
    assert Span(months=months).after(start) == end


def test_days_are_counted() -> None:
    """Three weeks from 20 February 2028 end on 12 March, one day earlier than without a leap day."""
    assert Span(days=21).after(date(2028, 2, 20)) == date(2028, 3, 12)
    assert Span(days=21).after(date(2027, 2, 20)) == date(2027, 3, 13)


@given(st.dates(date(1900, 1, 1), date(2199, 12, 31)), st.integers(0, 360), st.integers(0, 100))
def test_a_longer_span_never_ends_sooner(start: date, months: int, days: int) -> None:
    """The day lies in the month that was counted to, on the same day or the month's last."""
    end = Span(months=months).after(start)
    assert (end.year * 12 + end.month) - (start.year * 12 + start.month) == months
    assert end.day == start.day or (end + timedelta(days=1)).day == 1
    assert end <= Span(months=months + 1).after(start)
    assert Span(months=months, days=days).after(start) == end + timedelta(days=days)
