"""The waters of a part: offered, absorbed, drained, by the way its step gives them."""

import pytest
from tests.sums.book_of import Worked, dish_of

from packlarder.book.bring_back import Way
from packlarder.reckon.part_waters import poured_ml
from packlarder.reckon.records import PartSums


def part(worked: Worked, index: int = 0, servings: int | None = None) -> PartSums:
    """Give the sums of one part."""
    return worked.sums(servings).parts[index]


def waters(worked: Worked, index: int = 0, servings: int | None = None) -> tuple[float, float | None, float]:
    """Give offered, absorbed and drained of one part."""
    one = part(worked, index, servings)
    return one.offered_ml, one.absorbed_ml, one.drained_ml


@pytest.mark.parametrize(
    ("exact_ml", "poured"),
    [(0, 0), (0.2, 1), (7.4, 7), (14.6, 15), (37, 35), (98, 100), (104, 100), (105, 110), (1234, 1230)],
)
def test_water_is_poured_in_kitchen_steps(exact_ml: float, poured: float) -> None:
    """Whole mL below 15, fives below 100, tens above; what is wanted is never nothing."""
    assert poured_ml(exact_ml) == poured


def test_soak_drains_what_is_not_taken() -> None:
    """100 g of beef get 400 mL, take 150 and leave 250."""
    assert waters(dish_of("beef: 100 g", "soak: beef")) == (400, 150, 250)


def test_military_onion() -> None:
    """100 g of dry onion: 620 mL offered, 300 taken up, to 4.0 times its weight (US military recipe card A-11)."""
    worked = dish_of("onion: 100 g", "soak: onion")
    assert waters(worked) == (620, 300, 320)
    one = part(worked)
    assert (one.dry_g + (one.absorbed_ml or 0)) / one.dry_g == 4.0
    assert one.fresh_g == pytest.approx(882, abs=1)  # SR28: 8.82 g fresh per g dry; the card says 8


def test_the_pieces_of_a_soak_are_whole() -> None:
    """Taken up and drained are whole mL that add up to what is poured: 13 g get 52 -> 50, take 19.5 -> 20, leave 30."""
    assert waters(dish_of("beef: 13 g", "soak: beef")) == (50, 20, 30)


def test_soak_without_amounts_follows_the_water_lost() -> None:
    """Without a word on amounts 1.2 times the water lost is offered, and 0.9 of it taken up when freeze-dried."""
    worked = dish_of(
        "peas: 100 g",
        "soak: peas",
        peas="""\
        was: peas, green, boiled
        went in: cooked
        contains: []
        dried: freeze-dried
        form: whole
        yields: {from: 1 kg, gives: 250 g}
        bring back: {soak: hot water, wait: 5 min}
        """,
    )
    # 1 kg -> 250 g: 3 g lost per g dry; 100 g: 1.2 x 300 = 360 mL offered, 0.9 x 300 = 270 taken, 90 left
    assert waters(worked) == (360, 270, 90)
    water = worked.components["peas"].water
    assert water is not None
    assert water.assumed


def test_mix_keeps_all_its_water() -> None:
    """A cup of egg powder (80 g) takes a cup of water: 40 g get 118 -> 120 mL, and nothing is drained."""
    assert waters(dish_of("egg powder: 40 g", "mix: egg powder")) == (120, 120, 0)


def test_moisten_gives_what_is_taken_up() -> None:
    """100 g of rice get 200 mL."""
    assert waters(dish_of("rice: 100 g", "moisten: rice")) == (200, 200, 0)


def test_pour_over_is_given_boiling() -> None:
    """A whole dried meal steeps in its own 300 mL, all of it stays in and all of it is hot."""
    worked = dish_of("stew: 1 portion each", "pour over: stew", stew=STEW)
    assert waters(worked) == (600, 600, 0)  # 2 x 300
    assert worked.sums().water.hot_ml == 600


STEW = """\
    made of: [{"rice, white, boiled": 600 g}, {"beef, ground, 93% lean, browned": 300 g}]
    went in: cooked
    contains: []
    dried: freeze-dried
    form: crumble
    weighs: {1 portion: 110 g}
    bring back: {pour over: 1 portion, with: 300 mL boiling water, stir at: 7 min, wait: 15 min, cosy: yes}
    """


def test_in_the_pot_takes_its_water_there() -> None:
    """100 g of pasta take 140 of the 500 mL in the pot; nothing is offered to it alone."""
    worked = dish_of("pasta: 100 g", "{boil: pasta, in: 500 mL, for: 10 min}")
    assert waters(worked) == (0, 140, 0)
    assert part(worked).way is Way.IN_THE_POT


def test_a_pot_can_not_give_more_than_it_holds() -> None:
    """300 g of pasta want 420 mL of 300: they get 300, and the sheet says that it is short."""
    worked = dish_of("pasta: 300 g", "{boil: pasta, in: 300 mL, for: 10 min}")
    assert waters(worked)[1] == 300
    assert [gap.what for gap in worked.sums().gaps] == ["all the water that pasta takes up"]


def test_a_step_may_give_less_than_a_component_asks_for() -> None:
    """300 mL named for two parts are shared by what each would get: rice 200 and egg 118 -> 189 and 111."""
    worked = dish_of("rice: 100 g, egg powder: 40 g", "{mix: [rice, egg powder], with: 300 mL hot water}")
    # 300 x 200 / (200 + 118.29) = 188.51 -> 189 by the largest remainder, 111.49 -> 111
    assert [waters(worked, index)[0] for index in (0, 1)] == [189, 111]


def test_water_named_for_parts_that_ask_for_none() -> None:
    """Salt asks for no water: by weight it takes its share of what the step names."""
    worked = dish_of("salt: 10 g", "{mix: salt, with: 100 mL cold water}")
    assert waters(worked) == (100, 100, 0)


def test_soak_of_what_is_moistened_elsewhere() -> None:
    """A dish may soak rice that its component moistens: what it takes up is then all it gets."""
    assert waters(dish_of("rice: 100 g", "soak: rice")) == (200, 200, 0)


def test_moistening_what_is_soaked_elsewhere() -> None:
    """A dish may moisten beef that its component soaks: it gets the 150 mL that it takes up, none is drained."""
    assert waters(dish_of("beef: 100 g", "moisten: beef")) == (150, 150, 0)


def test_powder_in_the_pot_only_dissolves() -> None:
    """Milk powder stirred into a pot takes no water out of it."""
    parts = "pasta: 100 g, milk powder: 20 g"
    worked = dish_of(parts, "{boil: pasta, in: 500 mL, for: 10 min}", "stir in: milk powder")
    assert waters(worked, 1) == (0, 0, 0)


def test_parts_that_get_no_water() -> None:
    """Oil has no way of water, and its waters are nought."""
    worked = dish_of("beef: 50 g, oil: 10 mL", "soak: beef", "{fry: [beef, oil], for: 3 min}")
    assert part(worked, 1).way is None
    assert waters(worked, 1) == (0, 0, 0)


def test_more_water_for_what_is_wet_is_counted() -> None:
    """Beef soaked and drained, then mixed with 200 mL more: those 200 must be carried too."""
    worked = dish_of("beef: 100 g", "soak: beef", "drain: away", "{mix: beef, with: 200 mL boiling water}")
    sums = worked.sums()
    assert sums.water.carry_ml == 600  # 400 + 200
    assert sums.water.drained_away_ml == 250
    assert sums.steps[2].water_ml == 200


def test_one_bowl_has_one_warmth() -> None:
    """Beef wants hot water, the powder cold; in one bowl both get hot, and all of it is heated."""
    worked = dish_of("beef: 100 g, milk powder: 10 g", "soak: [milk powder, beef]")
    assert worked.sums().water.hot_ml == 490  # 400 + 10 g x 9
