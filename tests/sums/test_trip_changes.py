"""One change of the book changes in its trips what it should, and nothing else: each test names all fields that differ.

The trips are those of `changed_book`: coast, lake, and one that is gone. Those that a test does not name have not
changed in anything.
"""

from dataclasses import replace

from tests.sums.changed_book import BOOK, Written, before, dish, trip, worked_out
from tests.sums.store_of import RICE, run_of
from tests.sums.what_changed import changed_in, named


def changes(book: Written) -> dict[str, set[str]]:
    """Name what differs in each trip that a book has beside the one before; a trip without a difference is left out."""
    after = worked_out(book)
    found = {id: changed_in(before().trips[id], sums) for id, sums in after.trips.items()}
    return {id: names for id, names in found.items() if names}


def test_nothing_changes_by_itself() -> None:
    """Working out the same book twice gives the same trips."""
    assert changes(BOOK) == {}


def test_the_amount_of_one_part() -> None:
    """Ten grams more beef for two: one meal, its pack, its day, its water and fuel, and that beef must be dried.

    The trip that is gone had stew as well: its page tells of the dish as it is today.
    """
    meal = """
        meals[1].plan: parts
        meals[1]: settled
        meals[1].sums: parts steps water clock heat weight_g per_serving
        packs[1.1]: items
        journey.legs[1]: water
        journey.stops[0]: meals
        journey.fuels[gas-mix]: stops
        journey.clock[1]: start_at flame_at soaks steps
        journey.days[1]: food_g carried_g
        journey.fed[Ada+1 Bo+1]: energy_kcal protein_g salt_g food_g
        """
    assert changes(dish("stew", "beef: 100 g", "beef: 110 g")) == {
        "coast": named(meal)
        | named("""
            journey.bearing[Ada]: grams
            stores.fills[beef]: need_g short_g into
            stores.shortfalls[beef]: short_g fresh_g bought_g
            stores.loads[2]: on_the_trays
            stores.tasks[buy+beef cook+beef freeze-first+beef+rice dry+beef+rice]: grams
            """),
        "gone": named(meal) | named("journey.bearing[Bo]: grams"),
    }


def test_the_appetite_of_one_person() -> None:
    """Ada eats half as much again: every meal and ration grows, no plan, no conditions, and no plain water.

    Two and a half servings want three ration heaters, and in the packs that those warm only Ada's half grows. Bo eats
    what he ate, but for an omelette whose 62.5 g of egg are printed as 62. The stew moves to the larger pot and takes
    its lid along: the pan's 750 mL hold 642 mL of it (122 g, the 210 mL that they take, 310 mL around them), not 152.5
    + 263 + 397 = 812 mL. The lake finds 48 g of egg left in the first jar and takes 2 g from the second.
    """
    assert changes(trip("coast", "100 %", "150 %")) == {
        "coast": named("""
            eaters[Ada]: portion
            meals[1 2 3 4 5 6]: portions
            meals[1 2 3 4 5 6].sums: servings parts steps water weight_g
            meals[1 2 3 4 6].sums: heat
            meals[1 2 3].sums: clock
            meals[1].plan: pot_name steps
            meals[1]: settled
            on_the_move[raisins+1 raisins+2 raisins+3 raisins+4 raisins+5]: dry_g
            packs[1.1 2.1 2.2 3.1 4.1 5.1a 6.1 M1 M2 M3 M4 M5 T1 T2]: items
            packs[5.1a]: water_ml
            journey.legs[1 2]: water
            journey.stops[0 1 2]: meals
            journey.fuels[gas-mix]: stops margin_g
            journey.clock[1 2 3]: start_at flame_at steps
            journey.clock[1 2]: soaks
            journey.days[1 2 3 4 5]: food_g carried_g
            journey.days[1 2]: volume_ml
            journey.bearing[Ada]: grams
            journey.fed[Ada+1 Ada+2 Ada+3 Ada+4 Ada+5]: energy_kcal protein_g salt_g food_g
            journey.fed[Bo+2]: food_g
            journey.kit[lid ration-heater]: count
            journey.rubbish: heaters
            stores.fills[beef egg-powder milk-powder oil onion pasta raisins rice salt]: need_g into
            stores.fills[beef milk-powder oil onion pasta raisins rice salt]: short_g
            stores.fills[egg-powder]: drawn
            stores.shortfalls[beef milk-powder oil onion pasta raisins rice salt]: short_g bought_g
            stores.shortfalls[beef onion rice]: fresh_g
            stores.shortfalls[rice]: trays
            stores.loads[1 2]: on_the_trays
            stores.tasks[buy+beef buy+milk-powder buy+oil buy+onion buy+pasta buy+raisins buy+rice buy+salt]: grams
            stores.tasks[cook+beef cook+rice dry+onion freeze-first+beef+rice dry+beef+rice]: grams
            stores.tasks[freeze-first+beef+rice dry+beef+rice weigh-again+beef+rice]: components
            """),
        "lake": named("stores.fills[egg-powder]: drawn"),
    }


def test_one_person_left_out_of_one_meal() -> None:
    """Without Bo there is half the pasta, which is eaten on day 2; nobody else's food changes.

    Of the pan's litre 750 mL are filled: 400 mL of water and 100 g of pasta go into it, 800 mL and 200 g do not.
    """
    assert changes(trip("coast", "for: [Ada, Bo]", "for: [Ada]")) == {
        "coast": named("""
            meals[3]: eaters portions settled
            meals[3].plan: pot_name steps
            meals[3].sums: servings parts steps water clock heat weight_g
            packs[3.1]: items
            journey.stops[1]: meals
            journey.fuels[gas-mix]: stops margin_g
            journey.clock[3]: start_at flame_at steps
            journey.days[1 2]: carried_g
            journey.days[2]: food_g
            journey.bearing[Ada]: grams
            journey.fed[Bo+2]: energy_kcal protein_g salt_g food_g
            stores.fills[pasta]: need_g short_g into
            stores.shortfalls[pasta]: short_g bought_g
            stores.tasks[buy+pasta]: grams
            """)
    }


def test_what_one_person_carries() -> None:
    """Once Bo bears his share, packs change hands; what is in them does not.

    The heaviest first, each to whoever has less, Ada if both have the same: she takes the 200 g of 3.1, Bo 4.1 and 6.1
    of 160 g, she 1.1 of 120 (320 each), then 2.1, 5.1a and 5.1b of 50 g go to her, him, her; M1 and M2 of 40 to him
    (450 to 420), M3, M4, M5 to her, him, her (500 to 490); 2.2 of 10 to him, T2 of 9 to her, T1 of 2 to him.
    """
    assert changes(trip("coast", "carries: 0 %", "carries: 100 %")) == {
        "coast": named("""
            eaters[Bo]: burden
            packs[2.2 4.1 5.1a 6.1 M1 M2 M4 T1]: bearer
            journey.bearing[Ada Bo]: grams packs
            """)
    }


def test_the_height_of_one_stop() -> None:
    """At 2,500 m the pasta cooks longer and boils more away; so does the spare day's rice, for it may be cooked there.

    Its water needs less heat up to the boil, and is poured on sooner; what is eaten and carried stays the same. The
    margin does too: of 74 g it is 11.1, of 78 g 11.7, both 12 in whole grams.
    """
    assert changes(trip("coast", "height: 500 m", "height: 2500 m")) == {
        "coast": named("""
            stops[1].conditions: height_m
            meals[3 6]: settled
            meals[3 6].sums: conditions steps clock heat
            meals[3].sums: water
            journey.stops[1]: meals
            journey.fuels[gas-mix]: stops
            journey.clock[3]: start_at flame_at steps
            journey.clock[6]: soaks steps
            """)
    }


def test_the_air_of_one_stop() -> None:
    """In the frost dry pasta goes colder into the pot: more fuel; rice only has boiling water poured over it."""
    assert changes(trip("coast", "air: 8 °C", "air: -5 °C")) == {
        "coast": named("""
            stops[1].conditions: air_c
            meals[3 6]: settled
            meals[3 6].sums: conditions
            meals[3].sums: steps heat
            journey.fuels[gas-mix]: stops
            """)
    }


def test_the_water_of_one_stop() -> None:
    """Colder water takes more fuel for the pasta there, and for the rice in reserve."""
    assert changes(trip("coast", "water: 6 °C", "water: 3 °C")) == {
        "coast": named("""
            stops[1].conditions: water_c
            meals[3 6]: settled
            meals[3 6].sums: conditions steps heat
            journey.fuels[gas-mix]: stops
            """)
    }


def test_a_stop_becomes_a_fill_point() -> None:
    """From two legs come three: the first ends at the shore, whose meals nobody carries water for any more."""
    assert changes(trip("coast", "day: 1\n", "day: 1\n    fills: tap\n")) == {
        "coast": named("""
            journey.stops[0]: on_the_spot
            journey.legs[1]: to_stop last_day stops water
            journey.legs[2]: from_stop to_stop first_day last_day stops water
            journey.legs[3]
            """)
    }


def test_other_water_beside_a_stop() -> None:
    """The sea serves washing and heaters at the bay: the leg there is lighter, its rice takes the water it took."""
    assert changes(trip("coast", "day: 3\n", "day: 3\n    other water: sea\n")) == {
        "coast": named("""
            stops[2].conditions: heater_water_carried
            meals[4 5]: settled
            meals[4 5].sums: conditions
            meals[5].sums: water
            journey.stops[2]: meals from_other from_other_ml
            journey.legs[2]: water from_other_ml
            """)
    }


def test_the_rule_for_drinking() -> None:
    """Who drinks more carries more on each leg, and drinks more at the bay on the day they stay there."""
    assert changes(trip("coast", "drinking: 3 L", "drinking: 4 L")) == {
        "coast": named("""
            eaters[Ada Bo]: drinks_ml
            journey.legs[1 2]: water
            journey.stops[0 1 2]: on_the_way
            journey.stops[2]: meals
            """)
    }


def test_a_jar_more_in_the_larder() -> None:
    """320 g of rice more: 100 g for the coast, 160 for the lake; none must be dried, only the beef beside it."""
    more = replace(BOOK, runs=(*BOOK.runs, run_of(RICE, loaded="2027-04-01 08:30")))
    no_rice = named("""
        stores.fills[rice]: drawn short_g
        stores.shortfalls[rice]
        stores.tasks[buy+rice cook+rice]
        """)
    assert changes(more) == {
        "coast": no_rice
        | named("""
            stores.loads[2]: on_the_trays
            stores.tasks[freeze-first+beef freeze-first+beef+rice dry+beef dry+beef+rice]
            stores.tasks[weigh-again+beef weigh-again+beef+rice]
            """),
        "lake": no_rice | named("stores.loads[1]\nstores.tasks[freeze-first+rice dry+rice weigh-again+rice]"),
    }


def test_a_trip_has_gone() -> None:
    """What the coast had reserved goes back: the lake has rice and a full jar of egg. All else stays, on both trips."""
    assert changes(trip("coast", "starts:", "stands: gone\nstarts:")) == {
        "coast": named("""
            stores.fills[beef egg-powder milk-powder oil onion pasta raisins rice salt]
            stores.shortfalls[beef milk-powder oil onion pasta raisins rice salt]
            stores.loads[1 2]
            stores.tasks[buy+beef buy+milk-powder buy+oil buy+onion buy+pasta buy+raisins buy+rice buy+salt]
            stores.tasks[cook+beef cook+rice freeze-first+beef+rice dry+beef+rice weigh-again+beef+rice]
            stores.tasks[dry+onion weigh-again+onion condition+onion pack]
            """),
        "lake": named("""
            stores.fills[rice]: drawn short_g
            stores.fills[egg-powder]: drawn
            stores.shortfalls[rice]
            stores.loads[1]
            stores.tasks[buy+rice cook+rice freeze-first+rice dry+rice weigh-again+rice]
            """),
    }


def test_a_trip_that_is_gone_changes_no_other() -> None:
    """With five people on it, or without it, all others are as they were."""
    assert set(changes(trip("gone", "[Ada, Bo]", "[Ada, Bo, Cai, Dee, Eik]"))) == {"gone"}
    planned = {id: text for id, text in BOOK.trips.items() if id != "gone"}
    assert changes(replace(BOOK, trips=planned)) == {}


def test_the_order_of_two_starts() -> None:
    """A lake before the coast takes its rice and its egg first; the coast keeps everything but what it finds.

    On 20 and 21 June people are at the lake: what is cooked on the 22nd for the coast is bought that day, not the eve.
    """
    assert changes(trip("lake", "2027-07-04", "2027-06-20")) == {
        "lake": named("""
            stops[0]: on
            meals[1 2]: on eat_at
            packs[1.1 2.1 2.2 T1]: on
            journey.clock[1 2]: start_at flame_at ready_at eat_at soaks steps
            journey.days[1 2]: on
            stores.fills[egg-powder milk-powder oil rice]: first_on last_on
            stores.fills[egg-powder rice]: drawn
            stores.fills[rice]: short_g
            stores.shortfalls[rice]
            stores.loads[1]
            stores.tasks[buy+rice cook+rice freeze-first+rice dry+rice weigh-again+rice]
            stores.tasks[buy+milk-powder buy+oil pack]: starts ends
            """),
        "coast": named("""
            stores.fills[egg-powder rice]: drawn
            stores.fills[rice]: short_g
            stores.shortfalls[rice]: short_g fresh_g bought_g trays
            stores.shortfalls[beef rice]: start_by
            stores.loads[2]: on_the_trays
            stores.tasks[buy+beef buy+rice]: starts ends
            stores.tasks[buy+rice cook+rice]: grams
            stores.tasks[freeze-first+beef+rice dry+beef+rice]: grams components
            stores.tasks[weigh-again+beef+rice]: components
            """),
    }


def test_a_dish_that_no_trip_uses() -> None:
    """Porridge is on no menu: nothing changes anywhere."""
    assert changes(dish("porridge", "50 g each", "60 g each")) == {}
