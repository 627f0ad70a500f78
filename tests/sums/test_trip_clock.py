"""The clock of a trip: when each dish is begun, when its soaks get water, and dishes that share the flame.

The burner brings 1 kJ a second into the pot: 0.4 L from 10 °C take 150.8 s, 2.51 min. Rice for two: 2.51 min of flame,
a minute in hand, 8 of soak: 12 min. Supper is at 18:30.
"""

from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.journey_of import DISHES, journey_of
from tests.sums.trip_of import Travelled

from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.trip.clock import burning
from packlarder.reckon.trip.flame_share import Burning, Turn, flame_minutes, turns
from packlarder.reckon.trip.journey import SoakStart, StepTime

DAY = datetime(2027, 6, 26)  # noqa: DTZ001  # times of day at camp have no zone


def at(hour: int, minute: int) -> datetime:
    """Give a time on the first day."""
    return DAY + timedelta(hours=hour, minutes=minute)


def supper(*dishes: str, more: str = "") -> Travelled:
    """Eat some dishes for supper at 18:30."""
    return journey_of(f"{{place: A, day: 1, meals: [{', '.join(f'supper: {dish}' for dish in dishes)}]}}", more=more)


def test_one_dish_by_itself() -> None:
    """Rice takes 11.51 min, so 12: begun at 18:18. Its water boils after 2.51 min, so by 18:21."""
    clock = supper("rice").clock(1)
    assert (clock.start_at, clock.ready_at, clock.eat_at) == (at(18, 18), at(18, 30), at(18, 30))
    assert clock.soaks == (SoakStart(step=0, at=at(18, 21), minutes=8),)
    assert (clock.waits_min, clock.after, clock.flame_at) == (0, None, at(18, 18))


def test_food_without_a_flame() -> None:
    """Milk is mixed in a minute and does not soak; a pinch takes no time; nobody waits for a flame."""
    trip = supper("milk", "a pinch", "rice")
    milk, pinch, rice = trip.journey.clock
    assert (milk.start_at, milk.soaks, milk.after, milk.flame_at) == (at(18, 29), (), None, None)
    assert (pinch.start_at, pinch.ready_at) == (at(18, 30), at(18, 30))
    assert (rice.start_at, rice.waits_min, rice.after) == (at(18, 18), 0, None)


def test_a_soak_that_waits_for_a_heater() -> None:
    """Heated rice soaks 8 min or longer in cold water, by itself; the heater is no soak. It needs no flame."""
    clock = supper("heated rice").clock(1)
    assert [soak.step for soak in clock.soaks] == [0]
    assert clock.soaks[0].at == clock.start_at
    assert clock.ready_at == at(18, 30)


def test_two_dishes_on_one_burner() -> None:
    """Rice has the flame in its first 3 min of 12; noodles need 17 min, all on the flame.

    Rice last: noodles end when rice begins at 18:18, stand ready 12 min, and are begun at 18:01. Noodles last: begun at
    18:13; rice has the flame from 18:10 to 18:13, soaks beside them until 18:22 and stands ready 8 min. That is later.
    """
    rice, noodles = supper("rice", "noodles").journey.clock
    assert (noodles.start_at, noodles.ready_at, noodles.waits_min, noodles.after) == (at(18, 13), at(18, 30), 0, 1)
    assert (rice.start_at, rice.ready_at, rice.waits_min, rice.after) == (at(18, 10), at(18, 22), 8, None)
    assert rice.soaks == (SoakStart(step=0, at=at(18, 13), minutes=8),)
    assert (rice.flame_at, noodles.flame_at) == (at(18, 10), at(18, 13))


def test_two_burners() -> None:
    """Each has its own flame: both are ready at 18:30."""
    assert [one.waits_min for one in supper("rice", "noodles", more="burners: 2").journey.clock] == [0, 0]
    assert [one.after for one in supper("rice", "noodles", more="burners: 2").journey.clock] == [None, None]


def test_three_dishes_on_two_burners() -> None:
    """Two noodles keep both flames from 18:13 on, so rice is begun at 18:10 and has either flame before."""
    trip = supper("noodles", "noodles", "rice", more="burners: 2")
    assert [one.start_at for one in trip.journey.clock] == [at(18, 13), at(18, 13), at(18, 10)]
    assert [one.after for one in trip.journey.clock] == [3, 3, None]


def test_only_one_sitting_shares_the_flame() -> None:
    """Rice at seven and noodles at half past six do not wait for each other; nor do two stops, nor the spare day."""
    trip = supper("noodles", "{dish: rice, at: 19:00}", more="spare day: [supper: noodles]")
    assert [one.waits_min for one in trip.journey.clock] == [0, 0, 0]
    assert [one.number for one in trip.journey.clock] == [1, 2, 3]


def test_a_meal_that_is_begun_the_evening_before() -> None:
    """Noodles at a quarter past midnight are begun the day before."""
    clock = journey_of("{place: A, day: 1, meals: [supper: {dish: noodles, at: 00:15}]}").clock(1)
    assert clock.start_at == at(0, 0) - timedelta(minutes=2)


def test_minutes_as_bits() -> None:
    """Of ten minutes the first two and the sixth are on the flame: bits 9, 8 and 4, counted from the last minute."""
    assert flame_minutes(10, [(0, 2), (5, 6)]) == 0b1100010000
    assert flame_minutes(3, []) == 0


def dish(minutes: int, *spans: tuple[int, int], soak: int = 0) -> Burning:
    """Make a dish as the flame sees it."""
    return Burning(minutes=minutes, soak_min=soak, flame=flame_minutes(minutes, spans))


def test_a_flame_that_is_free_while_food_soaks() -> None:
    """The first dish has the flame in minutes 0 to 5 and 15 to 20; ten minutes between are enough for the second."""
    assert turns([dish(20, (0, 5), (15, 20)), dish(8, (0, 8))], 1) == (Turn(0, None), Turn(5, 0))


def test_six_dishes_are_begun_by_their_soaks() -> None:
    """Of six dishes of ten minutes, all on the flame, the one that soaks longest is begun first, an hour before."""
    dishes = [dish(10, (0, 10), soak=soak) for soak in (0, 9, 3, 5, 7, 1)]
    found = turns(dishes, 1)
    assert [turn.waits_min for turn in found] == [0, 50, 20, 30, 40, 10]
    assert [turn.after for turn in found] == [5, None, 3, 4, 1, 2]


def test_equal_orders_leave_the_least_standing() -> None:
    """10 min and 2 min, all on the flame: either order takes 12; cooking the long one first lets it stand 2, not 10."""
    assert turns([dish(2, (0, 2)), dish(10, (0, 10))], 1) == (Turn(0, 1), Turn(2, None))


@given(st.lists(st.sampled_from([*DISHES]), min_size=1, max_size=7), st.integers(1, 3))
@settings(max_examples=40, deadline=None)
def test_no_flame_is_used_twice(dishes: list[str], burners: int) -> None:
    """In no minute more dishes are on the flame than there are burners, no dish is late, and none is begun late."""
    trip = supper(*dishes, more=f"burners: {burners}")
    flames = []
    for clock in trip.journey.clock:
        meal = trip.meal(clock.number)
        assert clock.start_at + timedelta(minutes=meal.sums.clock.minutes) == clock.ready_at
        assert clock.ready_at + timedelta(minutes=clock.waits_min) == clock.eat_at
        assert clock.waits_min >= 0
        assert all(clock.start_at <= soak.at < clock.ready_at for soak in clock.soaks)
        flames.append(burning(meal).flame << clock.waits_min)
    for minute in range(max(flame.bit_length() for flame in flames)):
        assert sum(flame >> minute & 1 for flame in flames) <= burners


def test_times_of_steps() -> None:
    """Beef for two: 0.4 L boil after 2.51 min, a minute in hand, 10 of soak, a minute to drain, then the pan.

    In the pan 100 g of beef with the 150 mL that it took up come from 10 °C to the boil: 4.186 * 150 * 90 J and 1.4 J
    for each dry gram and degree are 69.1 s, 1.15 min; then 5 min. So 13.51, 14.51, 15.66 and 20.66 min, of 21.
    """
    clock = supper("beef").clock(1)
    assert (clock.start_at, clock.ready_at) == (at(18, 9), at(18, 30))
    assert clock.steps == (
        StepTime(step=0, begins=at(18, 9), boils_at=at(18, 12), ends=at(18, 23)),
        StepTime(step=1, begins=at(18, 23), boils_at=None, ends=at(18, 24)),
        StepTime(step=2, begins=at(18, 24), boils_at=at(18, 25), ends=at(18, 30)),
    )


@given(st.lists(st.sampled_from([*DISHES]), min_size=1, max_size=4), st.integers(0, 4000))
@settings(max_examples=30, deadline=None)
def test_times_never_contradict_each_other(dishes: list[str], height_m: int) -> None:
    """Within a step time runs on; no step begins before the one above, or a step that it waits for, is over."""
    stop = f"{{place: A, day: 1, height: {height_m} m, meals: [{', '.join(f'supper: {dish}' for dish in dishes)}]}}"
    trip = journey_of(stop)
    for clock in trip.journey.clock:
        meal = trip.meal(clock.number)
        assert clock.steps[0].begins == clock.start_at
        for time, facts in zip(clock.steps, meal.settled.steps, strict=True):
            assert time.begins <= time.poured_at <= time.ends <= clock.ready_at
            assert all(clock.steps[before].ends <= time.begins for before in facts.waits_for)
            if time.step:
                assert clock.steps[time.step - 1].begins <= time.begins
        assert all(soak.at == clock.steps[soak.step].poured_at for soak in clock.soaks)
        assert all(soak.at + timedelta(minutes=soak.minutes) <= clock.steps[soak.step].ends for soak in clock.soaks)
        flames = [clock.steps[index].begins for index, step in enumerate(meal.sums.steps) if step.heat_kj]
        assert clock.flame_at == min(flames, default=None)


def test_a_hot_drink_is_made_last() -> None:
    """A drink of 12 min on the flame, food of 10: the drink is made last, though the food then stands longer."""
    food, drink = dish(10, (0, 10)), dish(12, (0, 12))._replace(drink=True)
    assert turns([food, drink], 1) == (Turn(12, None), Turn(0, 0))
    assert turns([food, drink._replace(drink=False)], 1) == (Turn(0, 1), Turn(10, None))


def test_of_six_dishes_the_drink_is_made_last() -> None:
    """However long it soaks."""
    dishes = [dish(10, (0, 10), soak=soak) for soak in (0, 9, 3, 5, 7)]
    found = turns([*dishes, dish(10, (0, 10), soak=60)._replace(drink=True)], 1)
    assert found[-1].waits_min == 0
    assert [turn.waits_min for turn in found[:-1]] == [10, 50, 20, 30, 40]


def test_nobody_waits_without_need() -> None:
    """20 min with the flame in the first 5, and 10 min all on the flame: the other has it in the last ten."""
    assert turns([dish(20, (0, 5)), dish(10, (0, 10))], 1) == (Turn(0, None), Turn(0, 0))


def test_least_stands_ready_before_all_begins_late() -> None:
    """60 min with the flame from 20 to 15 min before the end, and 20 min with it from 20 to 10 before the end.

    Either the short one comes 10 min earlier, and all begins 60 min before; or the long one 5, and it begins 65 before.
    """
    assert turns([dish(60, (40, 45)), dish(20, (0, 10))], 1) == (Turn(5, None), Turn(0, 0))


def test_the_first_round_is_timed() -> None:
    """Noodles for six want more than the pot holds: each round boils up for its share of the minutes, the first too."""
    trip = supper("noodles", more=f"people: [{', '.join(f'P{number}' for number in range(6))}]")
    (step,), (time,) = trip.meal(1).sums.steps, trip.clock(1).steps
    assert step.rounds > 1
    assert time.boils_at is not None
    first_min = step.boil_up_min / step.rounds
    assert time.boils_at - time.begins == timedelta(minutes=whole_minutes(first_min))
    assert time.ends - time.begins == timedelta(minutes=whole_minutes(step.boil_up_min + step.cook_min))


@pytest.mark.parametrize("dishes", [("rice", "noodles"), ("rice", "rice", "beef"), ("noodles", "beef", "rice", "rice")])
def test_no_order_leaves_less_standing(dishes: tuple[str, ...]) -> None:
    """Every way to place dishes by whole minutes: none that keeps the flame lets dishes stand for fewer minutes."""
    trip = supper(*dishes)
    ours = [burning(trip.meal(clock.number)) for clock in trip.journey.clock]
    stand_min = sum(clock.waits_min for clock in trip.journey.clock)
    assert _fits(ours, 0, stand_min)
    assert not _fits(ours, 0, stand_min - 1)


def _fits(dishes: list[Burning], taken: int, stand_min: int) -> bool:
    """Tell whether dishes can be placed on one flame so that all together stand ready for at most some minutes."""
    if not dishes:
        return True
    first, *rest = dishes
    shifts = range(stand_min + 1)
    return any(_fits(rest, taken | first.flame << by, stand_min - by) for by in shifts if not taken & first.flame << by)
