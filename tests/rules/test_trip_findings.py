"""What the rules find on a trip: each thing once, dishes under a stop's conditions, nothing of what lies behind."""

import time
from dataclasses import replace
from types import MappingProxyType

from tests.rules.build import Case, build

from packlarder.book.trip import Stands
from packlarder.faults import Severity
from packlarder.safety import Finding, check_trip, faults_of, in_the_booklet
from packlarder.safety.case import DishCase
from packlarder.safety.trip_case import TripCase
from packlarder.safety.trip_dishes import new_at_meals
from packlarder.safety.whole import at_home

EGG = "egg-cakes: {parts: [egg powder: 40 g], steps: [mix: egg powder, {fry: egg powder, pot: pan, for: 6 min}]}"
STEW = "steeped-stew: {parts: [squash stew: 220 g], steps: [pour over: squash stew]}"
LENTILS = "lentil-pot: {parts: [lentils: 60 g], steps: [{boil: lentils, in: 1 L, for: 30 min}]}"
SIMMERED = "steps: [soak: beef crumbles, drain: into the pot, {simmer: beef crumbles, in: 900 mL, for: 25 min}]"
BEEF = f"beef-pot: {{parts: [beef crumbles: 60 g], {SIMMERED}}}"
MUCH_BEEF = f"beef-pot: {{parts: [beef crumbles: 200 g], {SIMMERED}}}"
STEEPED_BEEF = """\
beef-cup:
  {parts: [beef crumbles: 60 g], steps: [{pour over: beef crumbles, with: 300 mL boiling water, for: 10 min}]},
raw-pot:
  {parts: [raw beef strips: 9 g], steps: [soak: raw beef strips, {fry: raw beef strips, for: 9 min}]}
"""


def trip_of(dishes: str, stops: str, people: str = "[Ann, Ben]", more: str = "") -> Case:
    """Give a trip with some dishes at some stops."""
    return build(f"dishes: {{{dishes}}}\ntrip: {{people: {people}, stops: [{stops}]{more}}}")


def new(case: Case) -> list[Finding]:
    """Give what the rules about dishes find at its meals."""
    return [finding for finding in case.findings() if finding.about]


def test_a_dish_cooked_as_at_home_is_not_told_again() -> None:
    """The usual height, air, water, stove and servings of the book: its page says all there is."""
    case = trip_of(f"{EGG}, {STEW}", "{place: camp, day: 1, meals: [supper: steeped stew, supper: egg cakes]}")
    assert new(case) == []


def test_wind_and_other_pots_are_not_as_at_home() -> None:
    """Wind makes the pot boil up later, and a smaller pot cooks in rounds: the rules look at the dish again."""

    def looked_at(more: str) -> int:
        case = trip_of(BEEF, f"{{place: camp, day: 1{more}, meals: [supper: beef pot]}}")
        seen: list[DishCase] = []

        def look(dish: DishCase) -> tuple[Finding, ...]:
            seen.append(dish)
            return ()

        assert case.trip is not None
        assert case.book is not None
        new_at_meals(TripCase(case.trip, case.household), at_home(case.book.dishes), look)
        return len(seen)

    assert (looked_at(""), looked_at(", windy: yes")) == (0, 1)


def test_more_people_alone_bring_nothing_that_the_page_says_too() -> None:
    """Three eat a dish whose page is for two: its cautions are the same, and stand on its page."""
    case = trip_of(EGG, "{place: camp, day: 1, meals: [supper: egg cakes]}", "[Ann, Ben, Cia]")
    assert new(case) == []


def test_a_dish_cooked_high_up_is_told_at_its_line() -> None:
    """At 2,900 m raw egg is cooked longer; the finding stands at the meals' lines, once for all, with their days."""
    case = trip_of(
        EGG,
        "{place: the hut, day: 1, height: 2900 m, meals: [supper: egg cakes, breakfast: egg cakes, supper: egg cakes]}",
    )
    [found] = [finding for finding in new(case) if finding.rule.id == "cooking-at-height"]
    assert found.text.startswith("Egg cakes (days 1, 2): Up here water boils cooler")
    lines = [place.path for place in found.places if place.file == "trips/trip.yaml"]
    assert lines == [
        ("stops", 0, "meals", 0, "supper"),
        ("stops", 0, "meals", 1, "breakfast"),
        ("stops", 0, "meals", 2, "supper"),
    ]
    assert found in in_the_booklet(case.findings(), most=99)


def test_legumes_too_high_up_are_a_warning_of_the_trip() -> None:
    """Above 3,000 m dry lentils are carried cooked: nothing to mend on their page, something to mend in this trip."""
    low, high = (
        trip_of(LENTILS, f"{{place: the pass, day: 1, height: {height} m, meals: [supper: lentil pot]}}")
        for height in (2900, 3100)
    )
    assert "legumes-at-height" not in low.fired()
    [fault] = [fault for fault in faults_of(high.findings()) if fault.code == "legumes-at-height"]
    assert fault.message.startswith("Lentil pot (day 1): at 3,100")
    assert fault.place.file == "trips/trip.yaml"
    assert "dishes/lentil-pot.yaml" in {place.file for place in fault.also}


def test_the_hot_day_limit_is_told() -> None:
    """At 33 °C perishable food is eaten within an hour; at 32 °C its page says all there is."""
    hot = trip_of(BEEF, "{place: camp, day: 1, air: 33 °C, meals: [supper: beef pot]}")
    assert [finding.rule.id for finding in new(hot)] == ["hot-day"]
    assert new(trip_of(BEEF, "{place: camp, day: 1, air: 32 °C, meals: [supper: beef pot]}")) == []


def test_what_stands_at_the_front_is_not_told_of_a_meal() -> None:
    """On a fire ring embers are new; they stand among the general cautions, which every trip has."""
    case = trip_of(BEEF, "{place: camp, day: 1, meals: [supper: beef pot]}", more=", stoves: [fire ring]")
    assert case.trip is not None
    assert case.trip.meals[0].plan.stove_name == "fire ring"
    assert new(case) == []


def test_steeping_is_told_where_it_ends_cooler_than_at_home() -> None:
    """In frost the stew ends cooler than its page says, on a hot day warmer: only the first is told."""
    cold, warm = (
        trip_of(STEW, f"{{place: camp, day: 1, air: {air} °C, water: 10 °C, meals: [supper: steeped stew]}}")
        for air in (0, 30)
    )
    assert {finding.rule.id for finding in new(cold)} == {"steeping-only-warms", "reheat-falls-short"}
    assert new(warm) == []


def test_a_large_group_in_one_pot_takes_over_two_hours() -> None:
    """The beef of 24 people goes through the pot in so many rounds that two hours pass."""
    many = ", ".join(f"P{number}" for number in range(24))
    case = trip_of(MUCH_BEEF, "{place: camp, day: 1, meals: [supper: beef pot]}", f"[{many}]")
    assert "over-two-hours" in {finding.rule.id for finding in new(case)}


def test_a_form_that_stands_in_is_followed_through_the_steps() -> None:
    """The larder gives raw beef for cooked: steeped, it is an error at the meal's line, though its dish has none."""
    case = trip_of(STEEPED_BEEF, "{place: camp, day: 1, meals: [supper: beef cup, supper: raw pot]}")
    assert case.trip is not None
    assert case.book is not None
    assert "raw-steeped" not in case.fired()
    cup, raw = case.trip.meals
    stood_in = replace(cup, instead=MappingProxyType({0: raw.plan.parts[0].component}))
    findings = check_trip(replace(case.trip, meals=(stood_in, raw)), case.household, at_home(case.book.dishes))
    [error] = [finding for finding in findings if finding.severity is Severity.ERROR]
    assert error.rule.id == "raw-steeped"
    assert error.fault.message.startswith("Beef cup (day 1): pouring boiling water over")
    assert error.places[0] == cup.line


def test_a_meal_in_reserve_is_told_as_one() -> None:
    """What is eaten on the spare day is worked out for the hardest stop, and told with the spare day's name."""
    case = trip_of(EGG, "{place: the hut, day: 1, height: 2900 m}", more=", spare day: [supper: egg cakes]")
    [found] = [finding for finding in new(case) if finding.rule.id == "cooking-at-height"]
    assert found.text.startswith("Egg cakes (the spare day):")


def test_what_lies_behind_is_held_against_no_rule() -> None:
    """A trip that is gone can not be mended."""
    case = trip_of(LENTILS, "{place: the pass, day: 1, height: 3500 m, meals: [supper: lentil pot]}")
    assert case.trip is not None
    assert case.book is not None
    assert case.findings()
    gone = replace(case.trip, model=case.trip.model.model_copy(update={"stands": Stands.GONE}))
    assert check_trip(gone, case.household, at_home(case.book.dishes)) == ()


def test_one_avoider_and_many_meals_are_few_faults() -> None:
    """A dish with almonds eaten four times by one who avoids them is one error, with four lines."""
    nuts = "nut-board: {parts: [almonds: 20 g], steps: [Eat the almonds.]}"
    meals = ", ".join(["supper: nut board"] * 4)
    case = trip_of(nuts, f"{{place: camp, day: 1, meals: [{meals}]}}", "[Ann, Ben: {avoids: nuts}]")
    [error] = [finding for finding in case.findings() if finding.severity is Severity.ERROR]
    assert len(error.places) == 4
    assert error.words["person"] == "Ben"


def test_a_long_trip_of_many_takes_little_time() -> None:
    """Twelve people, fourteen days, three meals a day at ever other heights: held against all rules in under 0.2 s."""
    people = ", ".join(f"P{number}: {{avoids: milk, age: {number}}}" for number in range(1, 13))
    stops = ", ".join(
        f"{{place: S{day}, day: {day}, height: {day * 200} m, air: {day} °C,"
        " meals: [breakfast: egg cakes, lunch: steeped stew, supper: beef pot, supper: lentil pot]}"
        for day in range(1, 15)
    )
    case = trip_of(f"{EGG}, {STEW}, {BEEF}, {LENTILS}", stops, f"[{people}]")
    assert case.trip is not None
    assert len(case.trip.meals) == 56  # 14 x 4
    spent = []
    for _ in range(3):
        start = time.process_time()
        case.findings()
        spent.append(time.process_time() - start)
    assert min(spent) < 0.2


NUTS = "nut-rice: {parts: [cooked rice: 80 g, almonds: 20 g], steps: [soak: cooked rice, stir in: almonds]}"


def _help(case: Case, rule: str) -> str:
    (found,) = [finding for finding in case.findings() if finding.rule.id == rule]
    return found.fault.help


def test_an_allergen_names_the_line_to_write() -> None:
    """Ben avoids nuts: the others' names stand in the line; where nobody else eats it, another dish is the way out."""
    people = "[Ann, Ben: {avoids: tree nuts}, Cia]"
    case = trip_of(NUTS, "{place: camp, day: 1, meals: [supper: nut rice]}", people)
    line = "- supper: {dish: nut rice, for: [Ann, Cia]}"
    assert _help(case, "eats-allergen") == f"give it to others alone, `{line}`, or take another dish"
    alone = trip_of(NUTS, "{place: camp, day: 1, meals: [supper: {dish: nut rice, for: Ben}]}", people)
    assert _help(alone, "eats-allergen") == "take another dish"
    daily = trip_of(NUTS, "{place: camp, day: 1}", people, more=", drinks: [nut rice]")
    line = "- drink: {dish: nut rice, for: [Ann, Cia]}"
    assert _help(daily, "eats-allergen").startswith(
        f"take it off `drinks`, and at a stop give it to others alone, `{line}`"
    )
