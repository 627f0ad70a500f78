"""What is carried day by day and by whom, what it feeds, the kit and the rubbish of a trip."""

from dataclasses import replace
from textwrap import dedent

import pytest
from tests.sums.journey_of import DISHES, journey_of

from packlarder.figures import trips
from packlarder.figures.figure import Standing
from packlarder.reckon.trip.feeds import Beside, beside, beside_ranges
from packlarder.reckon.trip.journey import Fed
from packlarder.reckon.trip.kit import Kit
from packlarder.reckon.trip.travel import travel

THREE_DAYS = """\
    {place: A, day: 1, meals: [supper: rice, breakfast: milk]}
    {place: B, day: 2, meals: [supper: beef]}
    {place: C, day: 3, meals: [breakfast: milk]}
    """
SPARE = "spare day: [supper: noodles]"
ON_THE_MOVE = "on the move: [{milk powder: 10 g each}]"


def test_food_by_day() -> None:
    """Rice 200 g on day 1, milk 40 and beef 100 on day 2, milk 40 on day 3; noodles 200 in reserve to the end."""
    days = journey_of(THREE_DAYS, more=SPARE).journey.days
    assert [(day.day, day.food_g, day.carried_g) for day in days] == [
        (1, 200, 580),
        (2, 140, 380),
        (3, 40, 240),
        (4, 200, 200),
    ]


def test_food_on_the_move_is_carried_too() -> None:
    """10 g each of two people on each of three days."""
    days = journey_of(THREE_DAYS, more=ON_THE_MOVE).journey.days
    assert [(day.food_g, day.carried_g) for day in days] == [(220, 440), (160, 220), (60, 60)]


def test_volume_counts_what_was_weighed_by_the_cup() -> None:
    """Milk powder: 5 g a tablespoon of 14.79 mL, so 40 g are 118 mL; nobody ever weighed rice or beef by the cup."""
    days = journey_of(THREE_DAYS).journey.days
    assert [round(day.volume_ml) for day in days] == [237, 237, 118]
    assert [day.unmeasured for day in days] == [True, True, False]


def test_what_is_bought_is_carried_from_its_day_on() -> None:
    """The milk of day 3 is bought at C on day 3: 40 g less on the first two days, and nothing of it borne from home."""
    ada = "people: [Ada, Bo: {carries: 0 %}]"
    from_home = journey_of(THREE_DAYS, more=ada).journey
    bought = journey_of(THREE_DAYS.replace("day: 3,", "day: 3, to buy: milk powder,"), more=ada).journey
    assert [day.carried_g for day in from_home.days] == [380, 180, 40]
    assert [day.carried_g for day in bought.days] == [340, 140, 40]
    assert [day.food_g for day in bought.days] == [200, 140, 40]
    assert [round(day.volume_ml) for day in bought.days] == [118, 118, 118]
    assert bought.bearing[0].packs == ("1.1", "2.1", "3.1")
    assert bought.bearing[0].grams == 340


def test_who_bears_what() -> None:
    """All packs are Bo's: Ada carries nothing, and is told all the same."""
    ada, bo = journey_of(THREE_DAYS, more="people: [Ada: {carries: 0 %}, Bo]").journey.bearing
    assert (ada.name, ada.grams, ada.packs) == ("Ada", 0, ())
    assert (bo.name, bo.grams, bo.packs) == ("Bo", 380, ("1.1", "2.1", "3.1", "4.1"))


def test_what_a_day_feeds() -> None:
    """Skim milk powder, instant: 358 kcal, 35.1 g protein, 549 mg sodium in 100 g (SR28, 01092).

    Ada eats one and a half servings of 20 g: 30 g. Salt is sodium x 2.5.
    """
    trip = journey_of("{place: A, day: 1, meals: [breakfast: milk]}", more="people: [Ada: {appetite: 150 %}, Bo]")
    ada, bo = trip.fed("Ada", 1), trip.fed("Bo", 1)
    assert ada.energy_kcal == pytest.approx(358 * 0.30)
    assert ada.protein_g == pytest.approx(35.1 * 0.30)
    assert ada.salt_g == pytest.approx(0.549 * 0.30 * 2.5)
    assert ada.food_g == pytest.approx(30)
    assert bo.energy_kcal == pytest.approx(358 * 0.20)
    assert ada.complete


def test_food_on_the_move_is_shared_by_appetite() -> None:
    """25 g each for two and a half portions: 62.5 g, printed as 63, of which Bo with half a portion eats 12.6."""
    trip = journey_of(
        "{place: A, day: 1}", more="people: [Ada, Bo: {appetite: 50 %}, Cai]\non the move: [{milk powder: 25 g each}]"
    )
    assert trip.trip.on_the_move[0].dry_g == 63
    assert trip.fed("Bo", 1).energy_kcal == pytest.approx(3.58 * 63 / 5)
    assert trip.fed("Cai", 1).food_g == pytest.approx(63 * 2 / 5)


def test_who_does_not_eat_is_not_fed() -> None:
    """Rice for Ada alone; the spare day is a day of its own."""
    trip = journey_of("{place: A, day: 1, meals: [supper: {dish: rice, for: Ada}]}", more=SPARE)
    assert (trip.fed("Bo", 1).food_g, trip.fed("Bo", 1).energy_kcal) == (0, 0)
    assert trip.fed("Ada", 1).food_g == 100
    assert [trip.fed(name, 2).food_g for name in ("Ada", "Bo")] == [100, 100]


def test_a_spare_day_without_meals_is_a_day() -> None:
    """Its one meal is for an infant that eats nothing, but Ada has her 10 g of milk powder on it too."""
    trip = journey_of(
        "{place: A, day: 1, meals: [supper: rice]}",
        more=f"people: [Ada, Ida: {{appetite: 0 %}}]\nspare day: [supper: {{dish: rice, for: Ida}}]\n{ON_THE_MOVE}",
        fails=True,
    )
    assert trip.codes == ["nobody-eats"]
    assert [(day.day, day.food_g, day.carried_g) for day in trip.journey.days] == [(1, 110, 120), (2, 10, 10)]
    assert trip.fed("Ada", 2).food_g == 10


def test_what_is_not_known_is_said() -> None:
    """A meal with an unknown figure leaves its day incomplete, and its eaters' alone."""
    trip = journey_of("{place: A, day: 1, meals: [supper: {dish: rice, for: Ada}, lunch: milk]}")
    first = trip.meal(1)
    unknown = replace(first, sums=first.sums._replace(incomplete=frozenset({"sodium_mg"})))
    planned = replace(trip.trip, meals=(unknown, *trip.trip.meals[1:]))
    fed = travel(planned, trip.trip.packs, trip.book.household).fed
    assert [(one.name, one.complete) for one in fed if one.day == first.day] == [("Ada", False), ("Bo", True)]


def test_fibre_is_not_told_and_not_missed() -> None:
    """An unknown figure that no day tells leaves the day complete."""
    trip = journey_of("{place: A, day: 1, meals: [supper: rice]}")
    first = trip.meal(1)
    unknown = replace(first, sums=first.sums._replace(incomplete=frozenset({"fibre_g"})))
    planned = replace(trip.trip, meals=(unknown,))
    assert all(one.complete for one in travel(planned, trip.trip.packs, trip.book.household).fed)


@pytest.mark.parametrize(
    ("kcal", "told"),
    [(2249, Beside.BELOW), (2250, Beside.WITHIN), (4500, Beside.WITHIN), (4501, Beside.ABOVE)],
)
def test_energy_beside_the_planning_range(kcal: float, told: Beside) -> None:
    """2,250 to 4,500 kcal a day (outdoor-school rationing, numbers.md section 8)."""
    assert beside(kcal, trips.DAY_ENERGY) is told


def a_day(*, energy_kcal: float, protein_g: float, salt_g: float, food_g: float, complete: bool = True) -> Fed:
    """Make a day of somebody."""
    return Fed(
        name="Ada", day=1, energy_kcal=energy_kcal, protein_g=protein_g, salt_g=salt_g, food_g=food_g, complete=complete
    )


def test_a_day_beside_all_ranges() -> None:
    """3,000 kcal; 0.4 kg of 0.5 to 1.1; 60 g protein x 4 = 240 kcal, 8 % of 10 to 35; 6 g salt of 5."""
    day = beside_ranges(a_day(energy_kcal=3000, protein_g=60, salt_g=6, food_g=400))
    assert day == (Beside.WITHIN, Beside.BELOW, Beside.BELOW, Beside.ABOVE)
    good = beside_ranges(a_day(energy_kcal=3000, protein_g=100, salt_g=5, food_g=700))
    assert good == (Beside.WITHIN, Beside.WITHIN, Beside.WITHIN, Beside.WITHIN)


def test_nothing_is_called_low_that_is_not_known() -> None:
    """With a figure missing only what is above can be told: 5.5 g of salt already, but not how little energy."""
    day = beside_ranges(a_day(energy_kcal=1000, protein_g=10, salt_g=5.5, food_g=700, complete=False))
    assert day == (None, Beside.WITHIN, None, Beside.ABOVE)
    assert beside_ranges(a_day(energy_kcal=0, protein_g=0, salt_g=0, food_g=0)).protein is None


def test_the_ranges_are_those_of_their_sources() -> None:
    """numbers.md section 8; 10 to 35 % of energy as protein for adults (National Academies, 2002); 5 g salt (WHO)."""
    assert trips.DAY_ENERGY.least is not None
    assert trips.DAY_FOOD.least is not None
    assert trips.PROTEIN_SHARE.least is not None
    assert (trips.DAY_ENERGY.least.value, trips.DAY_ENERGY.most.value) == (2250, 4500)
    assert (trips.DAY_FOOD.least.value, trips.DAY_FOOD.most.value) == (500, 1100)
    assert (trips.PROTEIN_SHARE.least.value, trips.PROTEIN_SHARE.most.value) == (0.10, 0.35)
    assert (trips.DAY_SALT.least, trips.DAY_SALT.most.value) == (None, 5)
    assert trips.DAY_ENERGY.most.standing is trips.DAY_SALT.most.standing is Standing.COPY


def test_kit() -> None:
    """Two people, beef with a temperature to reach, heated rice, a filter, two bottles, a cooler."""
    kit = journey_of(
        "{place: A, day: 1, fills: to be treated, treated by: filter and chlorine,"
        " meals: [supper: beef, lunch: heated rice]}",
        more="water containers: {bottle: {holds: 1 L, count: 2}}\ncooler: {keeps cold: 2}\nstoves: [burner, spirit]",
    ).kit
    assert kit == {
        "burner": 1,
        "spirit": 1,  # along, though no dish asks for it
        "cartridge": 1,
        "pot": 1,  # the pan is not: beef is fried in the usual pot here
        "lid": 1,  # the water for the beef boils under it
        "mug": 2,
        "bowl or plate": 2,
        "spoon": 2,
        "knife": 1,
        "turner": 1,
        "measuring jug": 1,
        "lighter": 2,
        "ration heater": 2,
        "food thermometer": 1,
        "bottle": 2,
        "water filter": 1,
        "chlorine": 1,
        "cooler": 1,
        "soap": 1,
        "rubbish bag": 1,
    }


def test_kit_without_a_flame() -> None:
    """Milk and a pinch, which comes from its tub by the spoon, want no lighter, no pot and no thermometer."""
    kit = journey_of("{place: A, day: 1, meals: [supper: milk, snack: a pinch]}").kit
    people = {"mug": 2, "bowl or plate": 2, "spoon": 2}
    measures = {"knife": 1, "measuring jug": 1, "measuring spoons": 1}
    assert kit == {"burner": 1, **people, **measures, "soap": 1, "rubbish bag": 1}


def test_kit_of_the_cook() -> None:
    """Noodles are shared out with a ladle; oil comes from a tub by the spoon; frying wants a turner, and no lid."""
    dishes = {
        **DISHES,
        "fried": "meal: supper\nparts: [{beef: 50 g}, {oil: 10 mL}]\nsteps: [{fry: [beef, oil], for: 5 min}]",
    }
    kit = journey_of("{place: A, day: 1, meals: [supper: fried]}", dishes=dishes).kit
    assert {"turner", "measuring spoons"} <= kit.keys()
    assert not {"ladle", "lid", "measuring jug"} & kit.keys()
    boiled = journey_of("{place: A, day: 1, meals: [supper: noodles]}").kit
    assert {"ladle", "measuring jug"} <= boiled.keys()
    assert not {"turner", "measuring spoons", "lid"} & boiled.keys()  # noodles are boiled without their lid


def test_cartridges_are_kit() -> None:
    """What the fuel counts: 146 g to boil water and 15 % are 168 g, so the 85 g in hand and a new one of 100 g."""
    trip = journey_of(
        "{place: A, day: 1, fills: to be treated, treated by: boiling}\n{place: B, day: 2}", more="fuel in hand: [85 g]"
    )
    fuel = trip.fuel
    told = [(item.what, item.count, item.why) for item in trip.journey.kit if "cartridge" in item.what]
    assert (fuel.in_hand_g, fuel.new_g) == ((85,), (100,))
    assert told == [("part-used cartridge", 1, "gas mix, 85\u00a0g"), ("cartridge", 1, "gas mix, 100\u00a0g")]


def test_kit_for_raw_food_and_for_a_cosy() -> None:
    """Raw egg wants a thermometer though no step names a temperature; a cosy comes along where a step waits in one."""
    dishes = {
        **DISHES,
        "egg": "meal: supper\nparts: [{egg powder: 20 g}]\nsteps: [mix: egg powder, {fry: egg powder, for: 5 min}]",
        "steep": "meal: supper\nparts: [{rice: 50 g}]\nsteps: [{pour over: rice, cosy: yes}]",
    }
    raw = journey_of("{place: A, day: 1, meals: [supper: egg]}", dishes=dishes)
    assert Kit.THERMOMETER in raw.kit
    assert next(item for item in raw.journey.kit if item.what == Kit.THERMOMETER).why.startswith("RAW")
    warm = journey_of("{place: A, day: 1, meals: [supper: steep]}", dishes=dishes).kit
    assert warm["cosy"] == 1
    assert Kit.THERMOMETER not in warm
    assert (warm["pan"], "pot" in warm) == (1, False)  # its water gets hot in the smallest pot along


def test_a_sachet_bag() -> None:
    """A pack with a sachet wants a bag to carry it home in."""
    stop = "{place: A, day: 1, meals: [supper: rice]}"
    packed = f"{dedent(DISHES['rice'])}packs: [{{holds: [rice], sachet: yes}}]\n"
    assert Kit.SACHET_BAG in journey_of(stop, dishes={**DISHES, "rice": packed}).kit
    assert Kit.SACHET_BAG not in journey_of(stop).kit


def test_snow_wants_a_flame_and_the_largest_pot() -> None:
    """No dish is cooked, but snow is melted on the first stove in the pot of 2 L."""
    trip = journey_of("{place: A, day: 1, fills: snow}", more="stoves: [spirit, burner]\npots: [little pot, pot]")
    why = {item.what: item.why for item in trip.journey.kit}
    assert why["spirit"] == why["pot"] == "water is boiled or snow is melted with it"
    assert "little pot" not in why
    assert trip.kit["lighter"] == 2


def test_rubbish() -> None:
    """Day 1: a pack of rice, and one of heated rice for each of two; then milk and beef; then milk: 3 + 2 + 1 = 6.

    Two heaters, a cartridge, and nothing of the spare day.
    """
    stops = THREE_DAYS.replace("supper: rice, breakfast", "lunch: heated rice, supper: rice, breakfast")
    rubbish = journey_of(stops, more=SPARE).journey.rubbish
    assert dict(rubbish.by_day) == {1: 3, 2: 2, 3: 1}
    assert (rubbish.packs, rubbish.heaters, rubbish.cartridges) == (6, 2, 1)


def test_a_tub_is_empty_after_its_last_meal() -> None:
    """One tub holds the salt of days 2 and 3: it is carried out on day 3, the rice's pack on day 1, the beef's on 2."""
    rubbish = journey_of(THREE_DAYS.replace("milk", "a pinch")).journey.rubbish
    assert dict(rubbish.by_day) == {1: 1, 2: 1, 3: 1}
