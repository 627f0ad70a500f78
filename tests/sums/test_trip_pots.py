"""Pots at camp: one for each dish of a sitting, the smallest that takes it; what must leave its pot; a second pot.

The pot holds 2 L, the little pot and the pan 1 L each. Boiled food fills three quarters of a pot, simmered 0.85, water
that is only brought to the boil 0.9. Two people eat.
"""

from tests.sums.journey_of import DISHES, journey_of
from tests.sums.trip_of import Travelled

ALL_POTS = "pots: [pot, little pot, pan]\n"
OTHERS = {
    **DISHES,
    "soup": "meal: supper\nparts: [{rice: 50 g}]\nsteps: [{simmer: rice, in: 300 mL, for: 5 min}]",
    "stew": "meal: supper\nparts: [{rice: 50 g}]\nsteps: [{simmer: rice, in: 300 mL, for: 5 min}]\npot: little pot",
    "feast": "meal: supper\nparts: [{rice: 50 g}]\nsteps: [{simmer: rice, in: 500 mL, for: 5 min}]\npot: little pot",
    "bread": "meal: bread\nparts: [{beef: 50 g}]\nsteps: [soak: beef, drain: away, {fry: beef, for: 5 min}]\npot: pan",
    "fried noodles": """\
        meal: supper
        parts: [{beef: 50 g}, {pasta: 50 g}]
        steps: [soak: beef, drain: away, {fry: beef, for: 5 min, pot: pan}, {boil: pasta, in: 200 mL, for: 5 min}]
        """,
    "tea": "meal: drink\nparts: [{milk powder: 20 g}]\nsteps: [{mix: milk powder, with: 200 mL hot water}]",
    "mash": """\
        meal: supper
        parts: [{beef: 50 g}, {rice: 50 g}]
        steps: [{simmer: beef, in: 300 mL, for: 5 min}, {moisten: rice, with: 200 mL boiling water}, {stir in: rice}]
        """,
}
"""Soup and stew for two: 600 mL, and 100 g of rice, which was dry: 700 of the 850 mL of a litre pot. A feast: 1,100 mL.
Tea for two: 400 mL hot. Bread is fried in the pan. The mash wants 400 mL boiling while its beef is in the pot."""


def eaten(*dishes: str, more: str = ALL_POTS) -> Travelled:
    """Eat some dishes for supper, in all pots unless others are named."""
    meals = ", ".join(f"supper: {dish}" for dish in dishes)
    return journey_of(f"{{place: A, day: 1, meals: [{meals}]}}", more=more, dishes=OTHERS)


def pots(trip: Travelled) -> list[list[str]]:
    """Give the pots of the steps of each dish."""
    return [[step.pot for step in meal.plan.steps if step.pot] for meal in trip.trip.meals]


def test_a_dish_has_the_smallest_pot_that_takes_it() -> None:
    """Soup takes 700 mL: the little pot has room for 850. Noodles want 950 mL and 200 g: only the pot has 1,500."""
    assert pots(eaten("soup")) == [["little pot"]]
    assert pots(eaten("noodles")) == [["pot"]]


def test_of_two_dishes_each_has_its_own() -> None:
    """Two soups: the little pot and, as the smallest that is left, the pan; a third has the pot."""
    assert pots(eaten("soup", "soup")) == [["little pot"], ["pan"]]
    assert pots(eaten("soup", "soup", "soup")) == [["little pot"], ["pan"], ["pot"]]
    assert {clock.pot_after for clock in eaten("soup", "soup", "soup").journey.clock} == {None}


def test_the_pan_is_left_to_what_is_fried() -> None:
    """Bread has the pan, so of two soups the second has the pot."""
    assert pots(eaten("soup", "soup", "bread")) == [["little pot"], ["pot"], ["pan", "pan", "pan"]]


def test_a_pan_comes_after_all_pots() -> None:
    """Bread is fried on the day after: of two soups the second has the pot, though the pan would be large enough."""
    stop = "{place: A, day: 1, meals: [supper: soup, supper: soup, breakfast: bread]}"
    assert pots(journey_of(stop, more=ALL_POTS, dishes=OTHERS))[:2] == [["little pot"], ["pot"]]


def test_other_sittings_have_the_same_pots() -> None:
    """Soup for supper and for lunch on the next day: the little pot twice."""
    trip = journey_of("{place: A, day: 1, meals: [supper: soup, lunch: soup]}", more=ALL_POTS, dishes=OTHERS)
    assert pots(trip) == [["little pot"], ["little pot"]]


def test_what_names_its_pot_keeps_it() -> None:
    """Stew names the little pot, so the soup has another though it is eaten first."""
    assert pots(eaten("soup", "stew")) == [["pan"], ["little pot"]]
    assert pots(eaten("{dish: stew, pot: pot}")) == [["little pot"]]  # the line speaks of a pot that stays at home


def test_what_would_take_two_rounds_gets_a_larger_pot() -> None:
    """A feast names the little pot and takes 1,100 mL of its 850: in the pot it is one round."""
    trip = eaten("feast")
    assert (pots(trip), trip.meal(1).sums.steps[0].rounds) == ([["pot"]], 1)
    kept = eaten("feast", more="pots: [little pot, pan]\n")
    assert (pots(kept), kept.meal(1).sums.steps[0].rounds) == ([["little pot"]], 2)


def test_a_larger_pot_is_taken_from_nobody() -> None:
    """Noodles fit the pot alone; so the feast, which would be one round there, stays in the little pot with two."""
    assert pots(eaten("feast", "noodles")) == [["little pot"], ["pot"]]


def test_a_dish_does_not_get_a_pot_that_it_has() -> None:
    """What is fried in the pan can not be boiled there as well: its noodles want the pot, which the others have."""
    trip = eaten("fried noodles", "noodles", more="pots: [pan, pot]\n")
    assert pots(trip) == [["pot", "pot", "pan", "pot"], ["pot"]]
    assert [clock.pot_after for clock in trip.journey.clock] != [None, None]


def test_fried_food_keeps_its_pan() -> None:
    """However many rounds it takes: a pot is no pan."""
    many = eaten("bread", more=f"{ALL_POTS}people: [{', '.join(f'P{number}' for number in range(9))}]\n")
    assert (pots(many), many.meal(1).sums.steps[2].rounds > 1) == ([["pan", "pan", "pan"]], True)


def test_a_pot_that_must_be_emptied_is_told() -> None:
    """Two dishes of noodles want the only pot that takes them. On one flame one of them stands there, ready early.

    The second has the pot only when the first is in bowls; that is told of the second, whichever is eaten first.
    """
    first, second = sorted(eaten("noodles", "noodles").journey.clock, key=lambda clock: clock.start_at)
    assert (first.pot_after, second.pot_after) == (None, first.number)


def test_drinks_have_a_pot_of_their_own() -> None:
    """Noodles stand in the pot; the water for tea gets hot in the little one. Two teas: the second in the pan."""
    trip = eaten("noodles", "tea", "tea")
    assert pots(trip) == [["pot"], ["little pot"], ["pan"]]
    assert [meal.plan.pot_name for meal in trip.trip.meals] == ["pot", "little pot", "pan"]


def test_water_that_is_poured_out_leaves_its_pot_free() -> None:
    """Three teas, two pots: the first two have one each, the third comes after one of them, and nobody empties it."""
    trip = eaten("tea", "tea", "tea", more="pots: [pot, little pot]\n")
    assert pots(trip) == [["little pot"], ["pot"], ["little pot"]]
    assert {clock.pot_after for clock in trip.journey.clock} == {None}


def test_water_in_a_pot_that_is_full() -> None:
    """Noodles and tea with one pot: the tea is made last, and the noodles must leave the pot before."""
    noodles, tea = eaten("noodles", "tea", more="pots: [pot]\n").journey.clock
    assert (noodles.pot_after, tea.pot_after) == (None, 1)


def test_a_second_pot_for_water() -> None:
    """The mash's beef is in the little pot while its rice wants 400 mL boiling: they get hot in the pan, or in none."""
    trip = eaten("mash")
    assert (pots(trip), trip.meal(1).water_pot) == ([["little pot", "pan", "little pot"]], "pan")
    alone = eaten("mash", more="pots: [pot]\n")
    assert (pots(alone), alone.meal(1).water_pot) == ([["pot", "pot", "pot"]], "")


def test_the_second_pot_is_not_the_one_for_the_tea() -> None:
    """The mash is in the little pot and the tea's water in the pan: so that of the mash gets hot in the pot."""
    trip = eaten("mash", "tea")
    assert (trip.meal(2).plan.pot_name, trip.meal(1).water_pot) == ("pan", "pot")


def test_the_second_pot_is_nobody_elses() -> None:
    """Mash and soup stand in the little pot and the pan: its water gets hot in the pot, as that of the tea does."""
    trip = eaten("mash", "soup", "tea")
    assert trip.meal(1).water_pot == "pot"
    assert [meal.plan.pot_name for meal in trip.trip.meals] == ["little pot", "pan", "pot"]


def test_kit_has_every_pot_that_is_used() -> None:
    """Little pot for the beef, pan for the water; the pot stays at home."""
    assert [name for name in eaten("mash").kit if name in ("pot", "little pot", "pan")] == ["little pot", "pan"]
