"""The dated plan before a trip: from shopping to packing, worked backwards from the day before departure.

The freezer takes 36 h and rests 4 h (our figure), the rack takes 10 h and rests 1 h. A second weighing takes 2 h.
Dryers are loaded at 8:00 where there is time, and all is dry by 8:00 on the day of packing.
"""

from datetime import date

import pytest
from tests.sums.store_of import STORE, run_of
from tests.sums.trip_of import Travelled, dish_text, one_stop, trip_of, trip_text, trips_of

from packlarder.faults import Severity
from packlarder.figures.before_a_trip import CONDITIONING, DRYING_HOURS, SECOND_WEIGHING
from packlarder.figures.dryness import Drying
from packlarder.figures.facts import FACTS
from packlarder.reckon.trip.stores import TaskKind

STEW = one_stop("supper: stew")
FEAST = {"feast": dish_text("beef: 4 kg", steps="soak: beef; {boil: beef, in: 2 L, for: 10 min}")}
"""4 kg dry * 2.5 = 10 kg on ten trays: two full loads of the freezer."""


BEANS = """\
    was: black beans, boiled
    went in: cooked
    contains: []
    dried: air-dried
    form: beans
    yields: {from: 1 kg, gives: 380 g}
    bring back: {soak: 100 g, with: 400 mL hot water, wait: 10 min}
    """
"""Beans are cooked for the rack, and not conditioned after it."""


def plan(found: Travelled, trip: str = "trip") -> list[tuple[str, str, str, str, float | None, int]]:
    """Give the tasks: kind, from when to when, of what, how much, for which load; days alone where no hour matters."""
    return [
        (
            task.kind.value,
            f"{task.starts:%m-%d}" if task.whole_day else f"{task.starts:%m-%d %H:%M}",
            f"{task.ends:%m-%d}" if task.whole_day else f"{task.ends:%m-%d %H:%M}",
            ", ".join(one.id for one in task.components),
            task.grams,
            task.load,
        )
        for task in found.trips[trip].stores.tasks
    ]


def times(found: Travelled, trip: str = "trip") -> list[tuple[str, str, str]]:
    """Give dryer, start and end of each load."""
    return [
        (one.dryer, f"{one.starts:%m-%d %H:%M}", f"{one.ends:%m-%d %H:%M}") for one in found.trips[trip].stores.loads
    ]


def test_a_whole_plan_across_the_end_of_a_month() -> None:
    """Departure on Saturday, 3 July, so packs are filled on the 2nd; 100 g of beef, 20 g of onion, 2 g of salt lack.

    Beef: 36 h and 2 h more, done by 2 July 8:00. Loaded on 1 July at 8:00 it would be out on the 2nd at 22:00, too
    late; on 30 June: dry 1 July 20:00, out at 22:00. Frozen from the evening before, cooked on that day, 29 June, and
    bought on the 28th: 100 * 2.5 / 0.7 = 357, rounded up to 360 g.

    Onion: ten days of conditioning must be over on 2 July, so it is out by 22 June 8:00. Loaded on the 21st at 8:00,
    dry at 18:00, out at 20:00, conditioned until 1 July. It is not cooked, so it is bought on the 20th: 180 g.
    """
    found = trip_of(STEW, starts="2027-07-03")
    assert plan(found) == [
        ("buy", "06-20", "06-20", "onion", 180, 1),
        ("dry", "06-21 08:00", "06-21 18:00", "onion", 180, 1),
        ("weigh again", "06-21 18:00", "06-21 20:00", "onion", None, 1),
        ("condition", "06-21", "07-01", "onion", None, 1),
        ("buy", "06-28", "06-28", "beef", 360, 2),
        ("cook", "06-29", "06-29", "beef", 250, 2),
        ("freeze first", "06-29 20:00", "06-30 08:00", "beef", 250, 2),
        ("dry", "06-30 08:00", "07-01 20:00", "beef", 250, 2),
        ("buy", "07-01", "07-01", "salt", 2, 0),
        ("weigh again", "07-01 20:00", "07-01 22:00", "beef", None, 2),
        ("pack", "07-02", "07-02", "", None, 0),
    ]
    assert found.lacking("onion").start_by == date(2027, 6, 20)
    assert found.lacking("beef").start_by == date(2027, 6, 28)
    assert found.lacking("salt").start_by is None


def test_loads_of_one_dryer_follow_each_other() -> None:
    """Two loads of beef: the second from 30 June 8:00, as above. Before that the first is out, and the freezer rested.

    Out by 30 June 8:00 less 4 h, 4:00: loaded on the 28th at 8:00, dry on the 29th at 20:00, out at 22:00.
    """
    found = trip_of(one_stop("supper: feast"), dishes=FEAST, starts="2027-07-03")
    assert times(found) == [
        ("freezer", "06-28 08:00", "06-29 22:00"),
        ("freezer", "06-30 08:00", "07-01 22:00"),
    ]
    assert [task for task in plan(found) if task[0] == "let the dryer rest"] == [
        ("let the dryer rest", "06-29 22:00", "06-30 02:00", "beef", None, 1)
    ]
    shopping = [task for task in plan(found) if task[0] == "buy"]
    assert [(task[1], task[4], task[5]) for task in shopping] == [("06-26", 7150, 1), ("06-28", 7140, 2)]
    assert found.lacking("beef").bought_g == 7150 + 7140  # 10 kg / 0.7 = 14,286 g, rounded up by 10 g
    assert found.lacking("beef").start_by == date(2027, 6, 26)


def test_a_run_that_ends_at_night_is_weighed_in_the_morning() -> None:
    """20 h from 8:00 end at 4:00: weighed at 7:00 and 9:00, too late on the day of packing: so a day before."""
    store = STORE.replace("takes: 36 h", "takes: 20 h")
    found = trip_of(STEW, starts="2027-07-03", store=store)
    assert [one[1:] for one in times(found) if one[0] == "freezer"] == [("06-30 08:00", "07-01 09:00")]


def test_without_a_figure_of_the_household_a_published_one_holds() -> None:
    """Nobody said how long the freezer takes: 48 h, the longer of what is published, from 29 June 8:00."""
    store = STORE.replace(", takes: 36 h", "").replace(", takes: 10 h", "")
    found = trip_of(STEW, starts="2027-07-03", store=store)
    freezing, airing = DRYING_HOURS[Drying.FREEZE_DRIED], DRYING_HOURS[Drying.AIR_DRIED]
    assert [one.value for one in (freezing, airing, SECOND_WEIGHING)] == [48, 24, 2]
    assert times(found) == [
        ("rack", "06-20 08:00", "06-21 10:00"),
        ("freezer", "06-29 08:00", "07-01 10:00"),
    ]


def test_our_own_runs_tell_how_long_it_takes() -> None:
    """Two runs of beef took 30 and 33 h: the median, 31.5 h, is 32 h, from 30 June 8:00 to 1 July 16:00."""
    beef = "beef: {{fresh: 1 kg, trays: 1, dry: 400 g, tested: no lighter, put in: [{{in: jar, holds: {holds} g}}]}}"
    runs = run_of(beef.format(holds=20), took="30 h"), run_of(beef.format(holds=30), took="33 h")
    found = trip_of(STEW, starts="2027-07-03", runs=runs)
    assert found.lacking("beef").short_g == 50  # 100 g less 20 g and 30 g
    assert [one[1:] for one in times(found) if one[0] == "freezer"] == [("06-30 08:00", "07-01 18:00")]


def test_the_slowest_food_says_how_long_a_load_takes() -> None:
    """Their beef took 30 h, rice nobody dried yet: both together lie as long as the dryer takes, 36 h."""
    jar = "put in: [{in: jar, holds: 20 g}]"
    beef = f"beef: {{fresh: 1 kg, trays: 1, dry: 400 g, tested: no lighter, {jar}}}"
    dishes = {"both": dish_text("beef: 100 g", "rice: 100 g", steps="soak: beef; moisten: rice; stir in: [beef, rice]")}
    found = trip_of(one_stop("supper: both"), dishes=dishes, starts="2027-07-03", runs=(run_of(beef, took="30 h"),))
    assert times(found) == [("freezer", "06-30 08:00", "07-01 22:00")]


def test_a_dryer_rests_as_long_as_its_household_says() -> None:
    """With 12 h of rest, the first load must be out by 29 June 20:00; of the 28th it would be at 22:00."""
    store = STORE.replace("takes: 36 h", "takes: 36 h, between: 12 h")
    found = trip_of(one_stop("supper: feast"), dishes=FEAST, starts="2027-07-03", store=store)
    assert times(found) == [
        ("freezer", "06-27 08:00", "06-28 22:00"),
        ("freezer", "06-30 08:00", "07-01 22:00"),
    ]


def test_how_long_conditioning_takes() -> None:
    """Services give 7 to 10, 4 to 10 days, and 1 to 2 weeks in all: ten days suit most, marked as a copy."""
    assert CONDITIONING.value == 10
    assert FACTS["T4-15"].figures == "7-10 days"
    assert FACTS["T4-16"].figures.startswith("4-10 days")
    assert FACTS["T4-17"].figures.endswith("1-2 weeks in all")


def test_the_dryers_time_is_taken_in_the_order_of_trips() -> None:
    """The first trip has the freezer from 30 June 8:00 to 2 July 2:00, with its rest.

    The second, a day later, would load on 1 July at 8:00; so it must be out, and rested, by 30 June 8:00: 28 June 8:00.
    """
    trips = {"trip": trip_text(STEW, starts="2027-07-03"), "later": trip_text(STEW, starts="2027-07-04")}
    found = trips_of(trips)
    assert [one[1:] for one in times(found) if one[0] == "freezer"] == [("06-30 08:00", "07-01 22:00")]
    assert [one[1:] for one in times(found, "later") if one[0] == "freezer"] == [("06-28 08:00", "06-29 22:00")]
    alone = trips_of({"later": trip_text(STEW, starts="2027-07-04")})
    assert [one[1:] for one in times(alone, "later") if one[0] == "freezer"] == [("07-01 08:00", "07-02 22:00")]


def test_a_dryer_rests_before_the_load_of_another_trip() -> None:
    """Beans of the first trip lie on the rack from 1 July 8:00. It rests 14 h after each load.

    Onion of the second, on 12 July, would be out by 1 July 8:00 from 30 June 8:00 to 20:00, for ten days of
    conditioning; but then the rack would rest until 1 July 10:00, so it is dried a day earlier.
    """
    dishes = {
        "chilli": dish_text("beans: 380 g", steps="soak: beans; {boil: beans, in: 2 L, for: 10 min}"),
        "soup": dish_text("onion: 20 g", steps="soak: onion; {boil: onion, in: 1 L, for: 10 min}"),
    }
    trips = {
        "trip": trip_text(one_stop("supper: chilli"), starts="2027-07-03"),
        "later": trip_text(one_stop("supper: soup"), starts="2027-07-12"),
    }
    store = STORE.replace("takes: 10 h", "takes: 10 h, between: 14 h")
    found = trips_of(trips, dishes=dishes, store=store, components={"beans": BEANS})
    assert times(found) == [("rack", "07-01 08:00", "07-01 20:00")]
    assert times(found, "later") == [("rack", "06-29 08:00", "06-29 20:00")]


@pytest.mark.parametrize(("on", "late"), [(date(2027, 6, 28), False), (date(2027, 6, 29), True)])
def test_a_load_that_would_have_begun_in_the_past(on: date, late: bool) -> None:
    """Beef has to be bought on 28 June: on that day there is time; on the next the trip must wait a day.

    The dish is of beef alone, so that onion, which takes longer, does not come first.
    """
    dishes = {"feast": FEAST["feast"].replace("4 kg", "400 g")}
    found = trip_of(one_stop("supper: feast"), dishes=dishes, starts="2027-07-03", on=on, fails=late)
    if late:
        (fault,) = found.faults
        assert (fault.code, fault.marked, fault.severity) == ("starts-in-the-past", "2027-07-03", Severity.ERROR)
        assert "400\u00a0g of beef lack" in fault.message
        assert "begun on 2027-06-28" in fault.message
        assert fault.help.startswith("start on 2027-07-04 or later")


@pytest.mark.parametrize(
    ("on", "first", "second"),
    [
        (date(2027, 6, 28), ("06-30 08:00", "06-30 14:00"), ("07-01 08:00", "07-01 14:00")),
        (date(2027, 6, 29), ("07-01 10:00", "07-01 16:00"), ("07-01 17:00", "07-01 23:00")),
    ],
)
def test_other_hours_are_taken_where_time_is_short(on: date, first: tuple[str, str], second: tuple[str, str]) -> None:
    """Cooked beans on 15 trays take a rack of eight twice, 4 h each and 2 h more, and an hour's rest between.

    On two mornings, the first begins on 30 June and is bought for on the 28th. On the 29th that is too late: both are
    made on 1 July. The last is out before 8:00: loaded at 17:00, dry at 21:00, out at 23:00; an hour later it would be
    dry at 22:00, weighed at 7:00 and out at 9:00. The first is out by 17:00 less an hour, so it is loaded at 10:00.
    """
    dishes = {"chilli": dish_text("beans: 2850 g", steps="soak: beans; {boil: beans, in: 2 L, for: 10 min}")}
    found = trip_of(
        one_stop("supper: chilli"),
        dishes=dishes,
        starts="2027-07-03",
        on=on,
        store=STORE.replace("takes: 10 h", "takes: 4 h"),
        components={"beans": BEANS},
    )
    assert times(found) == [("rack", *first), ("rack", *second)]


def test_what_is_bought_on_the_last_day_is_no_fault() -> None:
    """Pasta can still be bought on the day of packing, or of departure: nothing has to be dried for it."""
    for on in (date(2027, 6, 25), date(2027, 6, 26)):
        found = trip_of(one_stop("supper: pasta"), on=on)
        assert [task[:2] for task in plan(found)] == [("buy", f"{on:%m-%d}"), ("pack", f"{on:%m-%d}")]


def test_a_mix_is_made_on_the_day_of_packing() -> None:
    """200 g of batter: 100 g of flour is bought beside 50 g of milk powder, and the egg of it is dried before."""
    found = trip_of(one_stop("supper: pancakes"))
    kinds = [(task[0], task[3], task[4]) for task in plan(found) if task[5] == 0]
    assert kinds == [("buy", "batter", 100), ("buy", "milk-powder", 50), ("mix", "batter", 200), ("pack", "", None)]
    (load,) = found.trip.stores.loads
    assert f"{load.ends:%m-%d %H:%M}" <= "06-25 08:00"
    assert load.raw


def foods(found: Travelled, kind: TaskKind) -> list[tuple[str, tuple[tuple[str, float], ...]]]:
    """Give what tasks of a kind are for, with their foods, where there are several."""
    return [(task.components[0].id, task.foods) for task in found.trip.stores.tasks if task.kind is kind and task.foods]


def test_what_goes_into_a_mix() -> None:
    """200 g of batter: a quarter egg powder, a quarter milk powder, half flour; the flour alone is bought for it."""
    found = trip_of(one_stop("supper: pancakes"))
    flour = "flour, wheat, white"
    assert foods(found, TaskKind.MIX) == [("batter", (("egg powder", 50), ("milk powder", 50), (flour, 100)))]
    assert foods(found, TaskKind.SHOP) == [("batter", ((flour, 100),))]


def test_a_pinch_in_a_mix_is_not_lost() -> None:
    """21 g of milk powder and flour, 100 to 1: 20.79 g of milk are filled as 21 g, beside 0.21 g of flour."""
    made_of = 'made of: [{milk powder: 100 g}, {"flour, wheat, white": 1 g}]\ncontains: [milk, wheat]\nform: powder\n'
    mix = made_of + "bring back: {mix: 21 g, with: 100 mL cold water}"
    dish = {"drink": dish_text("mixed: 21 g", steps="mix: mixed; {boil: mixed, in: 1 L, for: 5 min}")}
    found = trip_of(one_stop("supper: drink"), dishes=dish, components={"mixed": mix})
    assert foods(found, TaskKind.MIX) == [("mixed", (("milk powder", 21), ("flour, wheat, white", 0.2)))]


def test_what_is_bought_for_a_meal_that_is_dried_whole() -> None:
    """It holds 600 g of beef to 400 g of onion, and one gram dry stands for 2.5 g.

    100 g dry are 250 g: 150 g and 100 g. 230 g dry are 575 g: 345 g and 230 g.
    """
    goulash = """\
        made of: [{"beef, ground, 93% lean, browned": 600 g}, {"onion, raw": 400 g}]
        went in: cooked
        contains: []
        dried: freeze-dried
        form: crumble
        yields: {from: 1 kg, gives: 400 g}
        bring back: {soak: 100 g, with: 400 mL hot water, wait: 10 min}
        """
    for dry_g, beef_g, onion_g in ((100, 150, 100), (230, 345, 230)):
        dish = {"supper": dish_text(f"goulash: {dry_g} g", steps="soak: goulash; {boil: goulash, in: 1 L, for: 5 min}")}
        found = trip_of(one_stop("supper: supper"), dishes=dish, components={"goulash": goulash})
        wanted = (("beef, ground, 93% lean, browned", beef_g), ("onion, raw", onion_g))
        assert foods(found, TaskKind.SHOP) == [("goulash", wanted)]


def test_one_food_is_told_by_its_component() -> None:
    """Beef, onion and salt are bought as they are called."""
    assert foods(trip_of(STEW, starts="2027-07-03"), TaskKind.SHOP) == []
