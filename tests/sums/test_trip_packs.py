"""The packs of a trip: by meal, tubs for the whole of it, food on the move, bearers; what is bought on the way."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.trip_of import Travelled, dish_text, one_stop, trip_of

from packlarder.reckon.trip.records import TripPack

FOOD_BY_THE_BAG = "on the move: [milk powder: 30 g each, raisins: 20 g]"
TWO_TUBS = one_stop("supper: stew", "breakfast: omelette", "supper: stew")


def marks(found: Travelled) -> list[str]:
    """Give the marks of all packs, in their order."""
    return [pack.mark for pack in found.trip.packs]


def held(pack: TripPack) -> dict[str, float]:
    """Give what a pack holds of its own."""
    return {item.called: item.grams for item in pack.items}


def test_a_pack_for_each_of_a_dish() -> None:
    """Number of the meal, a stop, number of the pack; RAW egg lies apart from milk powder, as its dish has it."""
    found = trip_of(TWO_TUBS)
    assert marks(found) == ["T1", "1.1", "T2", "2.1", "2.2", "3.1"]
    assert held(found.pack("1.1")) == {"Beef": 100, "Onion": 20}
    assert held(found.pack("2.1")) == {"Egg powder": 50}
    assert [pack.mark for pack in found.trip.packs if pack.raw] == ["2.1"]
    assert [(pack.meal, pack.day, pack.on.isoformat()) for pack in found.trip.packs if pack.mark == "2.2"] == [
        (2, 2, "2027-06-27")
    ]


def test_a_tub_serves_the_whole_trip() -> None:
    """Salt of two stews lies in one tub, 2 g + 2 g, oil in another: 10 mL weigh 9 g."""
    found = trip_of(TWO_TUBS)
    tub = found.pack("T1")
    assert (tub.called, tub.meal, tub.day, tub.grams) == ("the salt tub", None, 1, 4)
    assert [(item.grams, item.number) for item in tub.items] == [(2, 1), (2, 3)]
    assert held(found.pack("T2")) == {"Oil": 9}


def test_a_pack_inside_a_pack() -> None:
    """What lies in another pack is told by it, and goes with its bearer."""
    found = trip_of(one_stop("supper: salad"))
    assert [(pack.mark, pack.inside) for pack in found.trip.packs] == [("1.1", ""), ("1.1.1", "1.1"), ("1.2", "")]
    assert held(found.pack("1.1")) == {"Rice": 160}
    assert held(found.pack("1.1.1")) == {"Pasta": 50}
    assert found.pack("1.1").bearer == found.pack("1.1.1").bearer == "Ada"
    assert found.pack("1.2").bearer == "Bo"


def test_food_on_the_move_is_packed_by_day() -> None:
    """Two people: 2 * 30 g of milk powder and 20 g of raisins a day, in one bag each for days 1 and 2."""
    found = trip_of(one_stop("supper: rice", "breakfast: rice"), more=FOOD_BY_THE_BAG)
    assert marks(found) == ["M1", "1.1", "M2", "2.1"]
    assert held(found.pack("M2")) == {"Milk powder": 60, "Raisins": 20}
    assert [item.number for item in found.pack("M2").items] == [0, 0]


def test_what_somebody_avoids_lies_apart_on_the_move() -> None:
    """Bo avoids milk, and can eat raisins from a bag that held none."""
    found = trip_of(one_stop("supper: rice"), people="[Ada, Bo: {avoids: milk}]", more=FOOD_BY_THE_BAG)
    assert marks(found) == ["M1.1", "M1.2", "1.1"]
    assert held(found.pack("M1.1")) == {"Raisins": 20}
    assert held(found.pack("M1.2")) == {"Milk powder": 60}


def test_food_for_a_spare_day_is_marked() -> None:
    """The meals in reserve come last, on the day after the last; so does their food on the move."""
    found = trip_of(one_stop("supper: rice"), more=f"spare day: [supper: pasta]\n{FOOD_BY_THE_BAG}")
    assert [(pack.mark, pack.day, pack.spare) for pack in found.trip.packs] == [
        ("M1", 1, False),
        ("1.1", 1, False),
        ("M2", 2, True),
        ("2.1", 2, True),
    ]


def test_what_a_stop_sells_is_bought_there() -> None:
    """Pasta is bought at the quay for meals from there on; rice is dried at home, and comes from there."""
    stops = one_stop("supper: pasta") + one_stop(
        "supper: pasta", "lunch: rice", place="the quay", day=2, more="to buy: [pasta, rice]"
    )
    found = trip_of(stops + one_stop("supper: pasta", day=3), more="spare day: [supper: pasta]")
    assert [(pack.mark, pack.bought_at) for pack in found.trip.packs] == [
        ("1.1", None),
        ("2.1", 1),
        ("3.1", None),
        ("4.1", 1),
        ("5.1", None),  # in reserve: from home, for nobody knows when it is wanted
    ]
    fill = found.fill("pasta")
    assert (fill.need_g, fill.bought_on_the_way_g, fill.short_g) == (800, 400, 400)


def test_food_on_the_move_is_bought_from_the_day_after() -> None:
    """The quay is reached some time on day 2: raisins of days 1 and 2 come from home, those of day 3 are bought there.

    What is bought on the way was not filled at home, so the household's rule for packs does not speak of it.
    """
    stops = one_stop("supper: rice") + one_stop(place="the quay", day=2, more="to buy: raisins") + one_stop(day=3)
    rules = "keeping: [{what: raisins, kept: trip pack, for: 2 days}]"
    found = trip_of(stops, more="on the move: [raisins: 20 g each]", larder=rules)
    bags = [pack for pack in found.trip.packs if pack.mark.startswith("M")]
    assert [(pack.mark, pack.bought_at) for pack in bags] == [("M1", None), ("M2", None), ("M3", 1)]


def test_a_sachet_lies_where_the_dish_has_it() -> None:
    """The pack of rice holds a sachet, by its dish; what is bought for it on the way has none."""
    rice = dish_text("rice: 80 g each", "raisins: 10 g", steps="moisten: rice; {stir in: [rice, raisins]}")
    dishes = {"sweet-rice": f"{rice}packs: [{{holds: [rice, raisins], sachet: yes}}]\n"}
    found = trip_of(one_stop("supper: sweet rice", more="to buy: raisins"), dishes=dishes)
    assert [(pack.mark, pack.sachet) for pack in found.trip.packs] == [("1.1", True), ("1.1b", False)]


def test_what_is_bought_for_a_pack_from_home_lies_apart() -> None:
    """Milk powder that is bought on the way can not lie in a pack that was filled at home."""
    porridge = dish_text(
        "rice: 80 g each",
        "milk powder: 10 g",
        steps="moisten: rice; {stir in: [rice, milk powder]}",
        packs=("[rice, milk powder]",),
    )
    found = trip_of(one_stop("supper: porridge", more="to buy: milk powder"), dishes={"porridge": porridge})
    assert [(pack.mark, held(pack), pack.bought_at) for pack in found.trip.packs] == [
        ("1.1", {"Rice": 160}, None),
        ("1.1b", {"Milk powder": 10}, 0),
    ]


def test_the_heaviest_pack_goes_to_whoever_carries_least() -> None:
    """Packs of 200, 160, 120 and 4 g; Bo bears half as much as Ada, the child nothing.

    200 to Ada (200 / 1), 160 to Bo (160 / 0.5 = 320), 120 to Ada (320 / 1), then a tie of 320: to Ada, who is first.
    """
    stops = one_stop("supper: stew", "lunch: rice", "supper: pasta")
    people = "[Ada, Bo: {carries: 50 %}, Pim: {age: 6, appetite: 0 %}]"
    found = trip_of(stops, people=people)
    assert {pack.mark: pack.bearer for pack in found.trip.packs} == {
        "3.1": "Ada",
        "2.1": "Bo",
        "1.1": "Ada",
        "T1": "Ada",
    }


def test_inner_packs_weigh_with_their_outer_one() -> None:
    """160 g and the pack of 50 g in it are more than 200 g of pasta: Ada takes the 210 g."""
    found = trip_of(one_stop("supper: salad", "sweet: pasta"))
    assert [(pack.mark, pack.bearer) for pack in found.trip.packs] == [
        ("1.1", "Ada"),
        ("1.1.1", "Ada"),
        ("1.2", "Bo"),  # 10 g: after 210 g for Ada and 200 g for Bo
        ("2.1", "Bo"),
    ]


def test_what_is_bought_on_the_way_is_shared_out_last() -> None:
    """At first only 160 g of rice are there, for Ada; the 200 g of pasta from the quay then go to Bo."""
    found = trip_of(one_stop("lunch: rice", "supper: pasta", more="to buy: pasta"))
    assert [(pack.mark, pack.bearer) for pack in found.trip.packs] == [("1.1", "Ada"), ("2.1", "Bo")]


def test_nobody_carries() -> None:
    """By trailer nobody bears anything, and packs have no bearer."""
    found = trip_of(one_stop("supper: stew"), people="[Ada: {carries: 0 %}, Bo: {carries: 0 %}]")
    assert {pack.bearer for pack in found.trip.packs} == {""}


def test_a_trip_that_is_gone_keeps_its_packs() -> None:
    """What was carried can still be looked up."""
    found = trip_of(TWO_TUBS, more="stands: gone")
    assert marks(found) == ["T1", "1.1", "T2", "2.1", "2.2", "3.1"]


HEATED = dish_text(
    "rice: 80 g",
    "milk powder: 10 g",
    steps="{moisten: rice, with: 160 mL cold water}; {warm: rice, on: ration heater}; stir in: milk powder",
    serves=1,
    packs=("[rice]", "[milk powder]"),
)
STEEPED = dish_text("rice: 80 g", steps="{pour over: rice, with: 160 mL boiling water, for: 10 min}", serves=1)
FAMILY = "[Ada, Bo: {appetite: 120 %}, Cia: {appetite: 70 %, age: 8}]"


def shares(found: Travelled) -> list[tuple[str, str, float, int]]:
    """Give marks, for whom, grams and water of the packs of the first meal."""
    return [(pack.mark, pack.for_, pack.grams, pack.water_ml) for pack in found.trip.packs if pack.meal == 1]


def test_a_heater_warms_one_pack_for_each_eater() -> None:
    """1 + 1.2 + 0.7 portions of 80 g are 232 g, packed as 230: 79.3, 95.2, 55.5, so 79, 95 and 56 g.

    2.9 * 160 mL are poured as 460: 158.6, 190.3 and 111.0, so 160, 190 and 110. The milk stays in one pack.
    """
    found = trip_of(one_stop("lunch: heated"), dishes={"heated": HEATED}, people=FAMILY)
    assert shares(found) == [
        ("1.1a", "Ada", 79, 160),
        ("1.1b", "Bo", 95, 190),
        ("1.1c", "Cia", 56, 110),
        ("1.2", "", 29, 0),
    ]
    assert found.trip.meals[0].sums.steps[0].water_ml == 460
    assert found.fill("rice").into == (("1.1a", 79), ("1.1b", 95), ("1.1c", 56))


def test_what_is_steeped_in_its_pack_is_packed_for_each() -> None:
    """A dish of one serving that boiling water is poured over: two people, two packs of 80 g with 160 mL each."""
    assert shares(trip_of(one_stop("supper: cup"), dishes={"cup": STEEPED})) == [
        ("1.1a", "Ada", 80, 160),
        ("1.1b", "Bo", 80, 160),
    ]


def test_a_dish_for_two_is_steeped_in_one_pack() -> None:
    """Written for two it is poured over for all; soaked food of one serving is as well."""
    two = STEEPED.replace("serves: 1", "serves: 2")
    assert shares(trip_of(one_stop("supper: cup"), dishes={"cup": two})) == [("1.1", "", 80, 0)]
    soaked = dish_text("rice: 80 g", steps="moisten: rice", serves=1)
    assert shares(trip_of(one_stop("supper: cup"), dishes={"cup": soaked})) == [("1.1", "", 160, 0)]


def test_packs_that_share_their_water_are_not_parted() -> None:
    """Rice and milk powder lie in two packs, and one water is poured over both: nobody knows whose it would be."""
    steps = "{pour over: [rice, milk powder], with: 200 mL boiling water, for: 10 min}"
    dish = dish_text("rice: 80 g", "milk powder: 10 g", steps=steps, serves=1, packs=("[rice]", "[milk powder]"))
    found = trip_of(one_stop("supper: cup"), dishes={"cup": dish})
    assert shares(found) == [("1.1", "", 160, 0), ("1.2", "", 20, 0)]


def test_who_eats_alone_has_one_pack() -> None:
    """It bears the mark of the dish's pack, and the name."""
    meal = "supper: {dish: cup, for: Bo}"
    assert shares(trip_of(one_stop(meal), dishes={"cup": STEEPED})) == [("1.1", "Bo", 80, 160)]


def test_what_is_bought_for_it_on_the_way_is_not_parted() -> None:
    """Nobody weighs shares at a shop: rice with pasta from the shore comes in packs for all."""
    both = dish_text(
        "rice: 80 g",
        "pasta: 20 g",
        steps="{pour over: [rice, pasta], with: 200 mL boiling water, for: 10 min}",
        serves=1,
        packs=("[rice, pasta]",),
    )
    found = trip_of(one_stop("supper: cup", more="to buy: pasta"), dishes={"cup": both})
    assert shares(found) == [("1.1", "", 160, 0), ("1.1b", "", 40, 0)]


def test_tenths_of_a_gram_are_shared_out_too() -> None:
    """2.9 servings of 1 g are packed as 3 g: 1.03, 1.24 and 0.72, of which Bo's is cut off most: 1.0, 1.3 and 0.7."""
    dish = dish_text("milk powder: 1 g", steps="{pour over: milk powder, with: 100 mL boiling water}", serves=1)
    found = trip_of(one_stop("supper: cup"), dishes={"cup": dish}, people=FAMILY)
    assert [pack[2] for pack in shares(found)] == [1.0, 1.3, 0.7]


@given(st.lists(st.integers(30, 200), min_size=1, max_size=8), st.integers(1, 300), st.integers(10, 400))
@settings(max_examples=30, deadline=None)
def test_shares_add_up_to_what_is_printed(appetites: list[int], grams: int, water: int) -> None:
    """Whatever people eat: to the printed gram, and to the millilitre that the step pours."""
    people = ", ".join(f"P{number}: {{appetite: {share} %}}" for number, share in enumerate(appetites))
    steps = f"{{pour over: rice, with: {water} mL boiling water, for: 10 min}}"
    dish = dish_text(f"rice: {grams} g", steps=steps, serves=1)
    found = trip_of(one_stop("supper: cup"), dishes={"cup": dish}, people=f"[{people}]")
    (meal,) = found.trip.meals
    assert sum(pack.grams for pack in found.trip.packs) == pytest.approx(meal.sums.weight_g)
    assert sum(pack.water_ml for pack in found.trip.packs) == meal.sums.steps[0].water_ml
    assert [pack.for_ for pack in found.trip.packs] == list(meal.eaters)
