"""The labels of a trip's packs: one for each that comes from home, with its mark, day, meal and bearer."""

from dataclasses import replace

from tests.sheets import trip_sample

from packlarder.figures.allergens import Allergen
from packlarder.sheets.label_sheet import TripPackLabel
from packlarder.sheets.trip_labels import trip_labels

HOUSEHOLD = trip_sample.book().book.household
TRIP = trip_sample.trip()
MADE = trip_labels(TRIP, HOUSEHOLD, edition="0", title="Two days")


def label(mark: str) -> TripPackLabel:
    """Give the label of a pack."""
    places = {pack.mark: place for place, pack in enumerate(TRIP.packs)}
    return MADE.packs[places[mark]]


def test_every_pack_has_a_label_with_its_mark_and_bearer() -> None:
    """Labels stand in the order of packs; each begins with its mark, says when, and who carries it."""
    assert len(MADE.packs) == len(TRIP.packs)
    for pack, made in zip(TRIP.packs, MADE.packs, strict=True):
        assert made.number.split(",")[0] == pack.mark
        assert (made.bearer, made.raw) == (pack.bearer, pack.raw)
        assert made.when
        assert pack.mark in made.code_text


def test_a_pack_says_when_it_is_opened_and_for_how_many() -> None:
    """Noodles go into the pot 25 minutes after 17:51, at 18:16; the beef gets its water when that is hot, at 17:57."""
    noodles = label("2.2")
    assert noodles.number == "2.2, pack 2 of 3"
    assert noodles.when == "Day 1, Saturday 26 June, supper"
    assert noodles.servings == "for 3.8\u00a0portions"
    assert noodles.order == "open at 18:16"
    assert label("2.1").order == "open at 17:57"


def test_water_names_packs_by_their_marks() -> None:
    """Noodles and stock powder share one water: each label names the other's mark."""
    assert label("2.2").water.endswith("together with pack 2.3")
    assert label("2.3").water.endswith("together with pack 2.2")


def test_inner_packs_and_sachets_are_told() -> None:
    """A pack inside the chowder bag says so, and that of the rice says TAKE OUT THE SACHET."""
    assert label("8.1.1").number == "8.1.1, inside 8.1"
    assert label("6.3").take_out.startswith("TAKE OUT THE SACHET")
    assert label("3.2").raw


def test_food_from_the_bag_and_tubs_have_simple_labels() -> None:
    """Day, contents with weights (25 g x 3.8 = 95 g of raisins), allergens; a tub sums up all its meals."""
    bag = label("M1")
    assert (bag.when, bag.holds[0], bag.contains) == ("Day 1, Saturday 26 June", "raisins 95\u00a0g", "almond")
    tub = next(pack for pack in TRIP.packs if pack.mark.startswith("T") and len(pack.items) > 1)
    assert label(tub.mark).when == "for the whole trip"
    assert len(label(tub.mark).holds) == 1


def test_what_is_bought_on_the_way_has_no_label() -> None:
    """A pack that is bought at a stop is left out; the others keep theirs."""
    bought = replace(TRIP.packs[0], bought_at=1)
    made = trip_labels(replace(TRIP, packs=(bought, *TRIP.packs[1:])), HOUSEHOLD, edition="0", title="")
    assert [one.number for one in made.packs] == [one.number for one in MADE.packs[1:]]


def test_a_pack_of_one_eater_bears_the_name_and_its_own_water() -> None:
    """Lentil rice that lies in two packs: each has its own weight and water, and how high both stand."""
    whole = next(pack for pack in TRIP.packs if pack.mark == "5.1")
    own = [
        replace(whole, mark=f"5.1{letter}", for_=name, water_ml=water, items=(replace(whole.items[0], grams=grams),))
        for letter, name, water, grams in (("a", "Runa", 200, 90), ("b", "Eskil", 240, 108))
    ]
    at = TRIP.packs.index(whole)
    packs = (*TRIP.packs[:at], *own, *TRIP.packs[at + 1 :])
    made = trip_labels(replace(TRIP, packs=packs), HOUSEHOLD, edition="0", title="").packs[at : at + 2]
    assert [one.number for one in made] == ["5.1a, pack 1 of 3", "5.1b, pack 1 of 3"]
    assert [one.servings for one in made] == ["for Runa", "for Eskil"]
    assert [one.water for one in made] == ["200\u00a0mL cold water", "240\u00a0mL cold water"]
    assert [one.holds for one in made] == [("90\u00a0g lentil rice",), ("108\u00a0g lentil rice",)]
    assert all(one.number in one.code_text for one in made)


def test_raw_has_a_sign_of_doneness_and_its_caution_apart() -> None:
    """Done when: firm all over, 71 \u00b0C inside (the table of doneness); that it is wetted first is a caution."""
    egg = label("3.2")
    assert egg.done == "firm all over, no liquid egg: 71\u00a0\u00b0C inside"
    assert egg.caution.startswith("Wet right through")
    assert not label("2.1").caution


def test_who_must_not_eat_a_dish_stands_on_each_of_its_packs() -> None:
    """Tove avoids tree nuts: the bag of each day holds almonds; a dish that may hold some says so on all its packs."""
    (bag,) = label("M1").not_for
    assert (bag.name, bag.why) == ("NOT FOR TOVE", "tree nuts: holds almond")
    assert not label("2.1").not_for
    noodles = next(meal for meal in TRIP.meals if meal.number == 2)
    part = noodles.plan.parts[0]
    near = replace(part.component, traces=part.component.traces | {Allergen.ALMOND})
    plan = replace(noodles.plan, parts=(replace(part, component=near), *noodles.plan.parts[1:]))
    other = replace(noodles, plan=plan, eaters=("Runa", "Eskil"), portions=2.2)
    trip = replace(TRIP, meals=tuple(other if meal is noodles else meal for meal in TRIP.meals))
    made = {one.number.split(",")[0]: one for one in trip_labels(trip, HOUSEHOLD, edition="0", title="").packs}
    assert [one.why for mark in ("2.1", "2.2", "2.3") for one in made[mark].not_for] == [
        "tree nuts: may hold almond"
    ] * 3
    assert "almond" in made["2.1"].may_contain
    assert "almond" not in made["2.2"].may_contain
    assert "NOT FOR TOVE" in made["2.2"].code_text
    assert made["2.2"].servings == "for Runa, Eskil: 2.2\u00a0portions"


def test_a_dish_for_one_says_for_whom() -> None:
    """Nobody asks whose pack it is."""
    alone = tuple(replace(meal, eaters=("Tove",), portions=1.0) for meal in TRIP.meals)
    made = trip_labels(replace(TRIP, meals=alone), HOUSEHOLD, edition="0", title="")
    assert {one.servings for one in made.packs} == {"for Tove", ""}
