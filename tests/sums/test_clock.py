"""The clock of a dish: what waits by itself, what waits for what, and how long things take at height or in cool water.

The kitchen of the tests brings 1 kJ a second into the pot, so a litre from 10 °C boils after 377 s = 6.3 min.
"""

import pytest
from tests.sums.book_of import Worked, dish_of

SOAK_AND_BOIL = ("soak: beef", "{boil: pasta, in: 1 L, for: 10 min}")
BOIL_UP_HEAT_KJ_PER_L = 377.0
"""1 L from 10 °C to the boil at sea level (numbers.md, section 5)."""


def starts(worked: Worked, servings: int | None = None, **conditions: float) -> list[float]:
    """Give the minute at which each step starts."""
    return [step.start_min for step in worked.sums(servings, **conditions).steps]


def minutes_to_boil(water_ml: float) -> float:
    """Give the minutes in which the tests' burner (1 kW into the pot) boils some water from 10 °C."""
    return water_ml / 1000 * BOIL_UP_HEAT_KJ_PER_L / 60


def test_food_soaks_while_the_pasta_boils() -> None:
    """The soak keeps the cook for heating its 400 mL (2.5 min) and a minute in hand, then waits by itself."""
    worked = dish_of("beef: 100 g, pasta: 100 g", *SOAK_AND_BOIL)
    first, second = worked.sums().steps
    assert (first.start_min, first.wait_min) == (0, 10)
    assert second.start_min == pytest.approx(minutes_to_boil(400) + 1, abs=0.01)
    assert first.end_min == pytest.approx(minutes_to_boil(400) + 1 + 10, abs=0.01)
    # the boil: 1 L to heat with 100 g of dry pasta in it, and ten minutes
    assert second.boil_up_min == pytest.approx(minutes_to_boil(1000), abs=0.3)
    assert second.end_min == pytest.approx(second.start_min + second.boil_up_min + 10)


def test_a_step_waits_for_what_it_needs() -> None:
    """Frying the beef waits for its soak; the drain does too, and a sentence waits for everything."""
    worked = dish_of(
        "beef: 100 g, rice: 50 g", "soak: beef", "moisten: rice", "drain: away", "{fry: beef, for: 3 min}", "Eat."
    )
    soak, moisten, drain, fry, eat = worked.sums().steps
    assert moisten.start_min == pytest.approx(soak.boil_up_min + 1)
    assert drain.start_min == pytest.approx(soak.end_min)
    assert fry.start_min >= drain.start_min + 1
    assert eat.start_min == max(fry.end_min, moisten.end_min)


def test_minutes_count_the_soak_and_are_rounded_up() -> None:
    """400 mL to heat 2.51 min, a minute in hand, ten of soak: 13.51, so 14; the soak is 10 of them, the flame 3."""
    clock = dish_of("beef: 100 g", "soak: beef").sums().clock
    assert (clock.minutes, clock.soak_minutes, clock.heat_minutes) == (14, 10, 3)


def test_two_soaks_at_once_are_counted_once() -> None:
    """Two cold soaks of five minutes, a minute apart, cover six minutes, not ten."""
    steps = ("{soak: beef, with: 100 mL cold water, for: 5 min}", "{soak: onion, with: 100 mL cold water, for: 5 min}")
    clock = dish_of("beef: 10 g, onion: 10 g", *steps).sums().clock
    assert (clock.minutes, clock.soak_minutes, clock.heat_minutes) == (7, 6, 0)


def test_a_wait_holds_the_cook() -> None:
    """`wait: 5 min` keeps everything that comes after it waiting."""
    assert starts(dish_of("salt: 1 g", "wait: 5 min", "stir in: salt")) == [0, 5]


def test_pasta_takes_longer_at_height_but_cooked_food_does_not() -> None:
    """At 3000 m water boils at 89.9 °C: 10^((99.97 - 89.9) / 36) = 1.9 times for pasta; beef was cooked before drying.

    z of rice and pasta 36 K (numbers.md, section 5).
    """
    pasta = dish_of("pasta: 100 g", "{boil: pasta, in: 1 L, for: 10 min}")
    assert pasta.sums(height_m=0.0).steps[0].cook_min == pytest.approx(10)
    sums = pasta.sums(height_m=3000.0)
    assert sums.steps[0].cook_min == pytest.approx(10 * 10 ** (10.0 / 36), abs=0.3)  # 10.0 K below 99.97: 18.96 min
    assert sums.heat.time_factor == pytest.approx(1.9, abs=0.05)
    beef = dish_of("beef: 50 g", "{simmer: beef, in: 300 mL, for: 10 min}").sums(height_m=3000.0)
    assert (beef.steps[0].cook_min, beef.heat.time_factor) == (10, 1)


def test_the_slowest_part_governs() -> None:
    """Lentils (z 19 K) take 10^(10 / 19) = 3.4 times as long at 3000 m, and the pasta with them."""
    worked = dish_of(
        "pasta: 50 g, lentils: 50 g",
        "{boil: [pasta, lentils], in: 1 L, for: 10 min}",
        lentils="""\
        was: lentils, dry
        contains: []
        dried: bought dry
        form: whole
        bring back: {in the pot: 100 g, takes: 200 mL}
        """,
    )
    assert worked.sums(height_m=3000.0).steps[0].cook_min == pytest.approx(10 * 10 ** (10.0 / 19), rel=0.03)


@pytest.mark.parametrize(
    ("part", "longer"),
    [
        # exp(Ea / R x (1 / 283.15 - 1 / 368.15)), R = 8.314 J/(mol K): the bracket is 8.154e-4 / K
        ("beef", 2.42),  # freeze-dried 9.0 kJ/mol: exp(1082.5 x 8.154e-4) = exp(0.883)
        ("onion", 6.57),  # air-dried 19.2 kJ/mol: exp(2309.4 x 8.154e-4) = exp(1.883)
    ],
)
def test_a_cold_soak_takes_longer(part: str, longer: float) -> None:
    """Water of 10 °C in place of hot makes the component's own minutes so many times as long."""
    hot = dish_of(f"{part}: 50 g", f"soak: {part}").sums().steps[0].wait_min
    cold = dish_of(f"{part}: 50 g", f"{{soak: {part}, with: cold water}}").sums().steps[0].wait_min
    assert cold / hot == pytest.approx(longer, abs=0.01)


def test_minutes_of_the_step_outrank_those_of_the_component() -> None:
    """Who writes `for: 30 min` with cold water has tried it."""
    worked = dish_of("beef: 50 g", "{soak: beef, with: cold water, for: 30 min}")
    assert worked.sums().steps[0].wait_min == 30


def test_rounds_take_their_minutes_each() -> None:
    """A second round takes its own ten minutes of flame, told together."""
    worked = dish_of("pasta: 200 g", "{boil: pasta, in: 600 mL, for: 10 min}")
    assert worked.sums(4).clock.heat_minutes >= 20 > worked.sums(2).clock.heat_minutes


def test_drained_pasta_waits_for_its_pot() -> None:
    """A drain without a soak waits for what was cooked last."""
    boil, drain = dish_of("pasta: 50 g", "{boil: pasta, in: 1 L, for: 10 min}", "drain: away").sums().steps
    assert drain.start_min == boil.end_min


def test_heater_minutes() -> None:
    """A ration heater takes its 12 minutes (US military requirement, quoted) unless the step says otherwise."""
    for text, wanted in (("{warm: rice, on: ration heater}", 12), ("{warm: rice, on: ration heater, for: 20 min}", 20)):
        assert dish_of("rice: 50 g", "moisten: rice", text).sums().steps[1].wait_min == wanted
