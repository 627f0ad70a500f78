"""The water of a dish: what is poured, what the pot gets back, what boils off; each drop in one piece only."""

import pytest
from tests.sums.book_of import Worked, dish_of

from packlarder.reckon.records import WaterSums

PIECES = ("in_food_ml", "drained_away_ml", "pot_ml", "boiled_off_ml", "drink_ml", "heater_ml", "spare_ml")


def pieces(water: WaterSums) -> dict[str, int]:
    """Give the pieces that are not nought."""
    assert sum(getattr(water, name) for name in PIECES) == water.carry_ml
    return {name: value for name in PIECES if (value := getattr(water, name))}


def water(worked: Worked, servings: int | None = None) -> dict[str, int]:
    """Give the pieces of a dish's water that are not nought."""
    return pieces(worked.sums(servings).water)


def test_drained_water_is_counted_once() -> None:
    """Of 400 mL for the soak 250 go into the pot: of the 600 there 350 are fresh, and 750 in all are carried.

    A gentle simmer without lid takes 16.29 kg/(h m²) x 0.0201 m² = 5.46 g a minute, a boil of 10 min 54.6.
    """
    worked = dish_of(
        "beef: 100 g, pasta: 100 g",
        "soak: beef",
        "drain: into the pot",
        "{boil: pasta, in: 600 mL, for: 10 min, lid: off}",
        "stir in: beef",
    )
    sums = worked.sums()
    assert sums.steps[2].water_ml == 350
    assert sums.steps[2].from_drain_ml == 250
    # in the food: beef 150 + pasta 140 = 290; boiled off 55; pot 600 - 140 - 54.6 = 405.4
    assert pieces(sums.water) == {"in_food_ml": 290, "pot_ml": 405, "boiled_off_ml": 55}


def test_water_drained_away_and_drunk() -> None:
    """What is poured off is a piece of its own, and what is drunk another."""
    assert water(dish_of("beef: 100 g", "soak: beef", "drain: away")) == {"in_food_ml": 150, "drained_away_ml": 250}
    assert water(dish_of("beef: 100 g", "soak: beef", "drain: drunk")) == {"in_food_ml": 150, "drink_ml": 250}


def test_a_soak_that_is_never_drained_is_eaten() -> None:
    """Without a drain all 400 mL stay with the food."""
    assert water(dish_of("beef: 100 g", "soak: beef")) == {"in_food_ml": 400}


def test_a_soak_that_goes_into_the_pot_undrained() -> None:
    """The 250 mL around the beef count in the pot: of 600 there 350 are fresh."""
    sums = dish_of("beef: 100 g", "soak: beef", "{simmer: beef, in: 600 mL, for: 5 min}").sums()
    assert sums.steps[1].water_ml == 350
    assert sums.steps[1].from_drain_ml == 250


def test_pasta_water_is_drained_from_its_pot() -> None:
    """Pasta takes 140 of 1000 mL, 54.6 boil off, and the rest is poured away."""
    worked = dish_of("pasta: 100 g", "{boil: pasta, in: 1 L, for: 10 min, lid: off}", "drain: away")
    assert water(worked) == {"in_food_ml": 140, "boiled_off_ml": 55, "drained_away_ml": 805}


def test_pots_are_kept_apart() -> None:
    """Draining empties the pot that was used last, not the one beside it."""
    worked = dish_of(
        "pasta: 100 g, beef: 100 g",
        "{simmer: beef, in: 300 mL, for: 5 min, pot: little pot}",
        "{boil: pasta, in: 1 L, for: 10 min, lid: off}",
        "drain: away",
        "stir in: beef",
    )
    sums = worked.sums()
    assert sums.steps[2].drained_ml == pytest.approx(1000 - 140 - 54.6, abs=0.1)
    # little pot, 12 cm, lid on: 16.29 x 0.01131 m² / 60 / 4 = 0.77 g/min, 3.8 in 5 min; beef takes 150 in the pot
    assert sums.water.pot_ml == pytest.approx(300 - 150 - 3.8, abs=1)


def test_what_stands_in_the_pot_is_not_poured_twice() -> None:
    """`in` is all the water in the pot: for 900 mL after 600 only what is missing is poured, and none is drained."""
    worked = dish_of(
        "pasta: 100 g, rice: 50 g",
        "{boil: pasta, in: 600 mL, for: 10 min, lid: off}",
        "{simmer: rice, in: 900 mL, for: 1 min}",
    )
    second = worked.sums().steps[1]
    standing = 600 - 140 - 54.6
    assert second.standing_ml == pytest.approx(standing, abs=0.1)
    assert second.water_ml == 490  # 900 - 405.4 = 494.6, poured in tens
    assert second.from_drain_ml == 0


def test_boil_off_does_not_grow_with_servings() -> None:
    """The same pot boils off the same: 54.6 mL for two and for four, while what is left in it doubles."""
    worked = dish_of("pasta: 50 g", "{boil: pasta, in: 500 mL, for: 10 min, lid: off}")
    two, four = worked.sums(2), worked.sums(4)
    assert two.steps[0].boiled_off_ml == four.steps[0].boiled_off_ml == pytest.approx(54.6, abs=0.1)
    # 500 - 54.6 = 445.4 grow to 890.8; with the 54.6 that is 945.4, not 1000
    assert (two.water.carry_ml, four.water.carry_ml) == (500, 950)


def test_rounds_when_a_dish_outgrows_its_pot() -> None:
    """A boil fills 0.75 of 2 L: 1500 mL. For two 600 + 200 g go in one round, for four 2 x 800 = 1.6 L in two.

    Each round boils off its own 54.6 mL and takes its own ten minutes.
    """
    worked = dish_of("pasta: 200 g", "{boil: pasta, in: 600 mL, for: 10 min, lid: off}")
    two, four = worked.sums(2).steps[0], worked.sums(4).steps[0]
    assert (two.rounds, two.cook_min) == (1, 10)
    assert (four.rounds, four.cook_min) == (2, 20)
    assert four.boiled_off_ml == pytest.approx(2 * 54.6, abs=0.1)
    assert four.water_ml == 1200  # 545.4 x 2 + 54.6 x 2


def test_what_is_in_the_pot_already_counts_for_rounds() -> None:
    """Warming the beef warms the whole pot: what was cooked in it in two rounds is warmed in two."""
    worked = dish_of(
        "pasta: 200 g, beef: 50 g",
        "{boil: pasta, in: 600 mL, for: 10 min}",
        "stir in: beef",
        "{warm: beef, for: 3 min}",
        serves=1,
    )
    sums = worked.sums(2)
    # warm fills 0.85 of 2 L = 1700; pasta 400 + 560 taken, beef 100 + 150, free about 410: 1.6 L; for three 2.4 L
    assert (sums.steps[0].rounds, sums.steps[2].rounds) == (2, 1)
    assert worked.sums(3).steps[2].rounds == 2


def test_drained_food_has_left_its_pot() -> None:
    """300 g of pasta drained and set aside leave the pot to the beef: 200 of 1.7 L is one round."""
    steps = ("{boil: pasta, in: 900 mL, for: 10 min}", "drain: away", "{simmer: beef, in: 900 mL, for: 5 min}")
    sums = dish_of("pasta: 300 g, beef: 300 g", *steps).sums()
    # with the pasta, 300 + 420 mL taken up, it would be 300 + 900 + 720 = 1.92 L: more than 0.85 x 2 L
    assert [step.rounds for step in sums.steps] == [1, 1, 1]


def test_a_drink_is_drunk() -> None:
    """What a drink holds is to drink, not in the food."""
    worked = dish_of("milk powder: 20 g", "mix: milk powder", more="meal: drink\n")
    assert water(worked) == {"drink_ml": 180}


HEATED = "{warm: rice, on: ration heater}"


def test_heater_water_is_carried_only_if_it_must_be() -> None:
    """Each serving has a heater with 60 mL; where they are filled from the sea those are not carried."""
    carried = dish_of("rice: 100 g", "moisten: rice", HEATED)
    assert water(carried) == {"in_food_ml": 200, "heater_ml": 120}
    sums = carried.sums(2, heater_water_carried=False)
    assert pieces(sums.water) == {"in_food_ml": 200}
    assert sums.steps[1].heater_ml == 120


def test_the_total_is_rounded_up_and_says_by_how_much() -> None:
    """12 g of powder get 108 -> 110 mL; 35 and 4 mL make 39 -> 40, one to spare."""
    assert water(dish_of("milk powder: 12 g", "mix: milk powder")) == {"in_food_ml": 110}
    spare = dish_of(
        "milk powder: 4 g, oil: 4 g", "{mix: milk powder, with: 35 mL cold water}", "{mix: oil, with: 4 mL cold water}"
    )
    assert water(spare) == {"in_food_ml": 39, "spare_ml": 1}


def test_no_water_is_none() -> None:
    """A dish without water carries none."""
    assert water(dish_of("salt: 2 g", "Lick the salt.")) == {}


def test_hot_water_is_what_is_heated() -> None:
    """Cold mixes are not hot; soaks in hot water and all water for the pot are."""
    worked = dish_of("egg powder: 80 g, beef: 100 g", "mix: egg powder", "soak: beef", "drain: away")
    assert worked.sums().water.hot_ml == 400


@pytest.mark.parametrize(
    ("steps", "heated_ml"),
    [
        (("mix: milk powder", "{boil: milk powder, for: 3 min}"), 90),  # 10 g x 9, mixed cold and boiled
        (("mix: milk powder", "{boil: pasta, in: 500 mL, for: 10 min}", "stir in: milk powder"), 500),
        (("mix: milk powder", "{fry: milk powder, for: 3 min, pot: pan}"), 0),
        (("{soak: beef, with: 400 mL cold water}", "drain: away", "{simmer: beef, in: 100 mL, for: 5 min}"), 250),
        (("{soak: beef, with: 400 mL cold water}", "drain: into the pot", "{simmer: beef, for: 5 min}"), 400),
        (("{soak: beef, with: 400 mL cold water}", "drain: drunk", "stir in: beef"), 0),
    ],
)
def test_water_that_is_heated_later_counts_as_heated(steps: tuple[str, ...], heated_ml: int) -> None:
    """What is mixed or soaked cold and then cooks in the pot is heated: 150 of 400 mL stay in the beef, 250 do not.

    In the fourth case 150 in the beef and 100 for the pot are.
    """
    worked = dish_of("milk powder: 10 g, beef: 100 g, pasta: 50 g", *steps, fails=None)
    assert worked.sums().water.hot_ml == heated_ml


def test_cold_water_that_is_heated_later_takes_its_heat_once() -> None:
    """Counting it as heated moves no heat: the mix comes cold onto the flame, as it did."""
    worked = dish_of("milk powder: 10 g", "mix: milk powder", "{boil: milk powder, for: 3 min}")
    assert worked.sums().steps[0].heat_kj == 0
    assert worked.sums().steps[1].heat_kj > 0


def test_each_round_is_poured_in_kitchen_steps() -> None:
    """For 7 what does not boil off grows 3.5 times, the boil-off by the rounds; each round is a whole 10 mL."""
    step = dish_of("pasta: 200 g", "{boil: pasta, in: 600 mL, for: 10 min, lid: off}").sums(7).steps[0]
    assert step.rounds > 1
    assert step.water_ml / step.rounds % 10 == 0
    boils_off = step.boiled_off_ml / step.rounds
    assert step.water_ml == pytest.approx((600 - boils_off) * 3.5 + step.boiled_off_ml, abs=5 * step.rounds)


def test_what_outgrows_the_largest_bowl_takes_several() -> None:
    """100 g of rice and its 200 mL fill 300 of the 2 L that the largest pot holds; for 16, 2400 mL take two."""
    worked = dish_of("rice: 100 g", "moisten: rice")
    assert [worked.sums(number).steps[0].vessels for number in (2, 12, 14, 16)] == [1, 1, 2, 2]  # 1800, 2100, 2400


def test_fixed_parts_do_not_grow() -> None:
    """Two handfuls of salt for the pot stay two for any number."""
    parts = "{salt: {take: 10 g, fixed: yes}}, pasta: 50 g each"
    worked = dish_of(parts, "{boil: [pasta, salt], in: 1 L, for: 10 min}")
    for servings, grams in ((1, 50), (2, 100), (12, 600)):
        sums = worked.sums(servings)
        assert [part.dry_g for part in sums.parts] == [10, grams]
