"""Following the food from pack to plate, where a rule's case does not show the whole of it."""

import pytest
from tests.rules.build import build

from packlarder.figures.temperatures import Authority
from packlarder.safety.food import follow, wet_from_the_start
from packlarder.safety.journey import Journey, Trail, Why


def trail(parts: str, *steps: str, authority: Authority = Authority.USDA_FSIS) -> Trail:
    """Follow a dish of these parts (in grams) through these steps, each in YAML's short form."""
    case = build(f"dish: {{parts: [{parts}], steps: [{', '.join(steps)}]}}")
    assert case.plan is not None
    return follow(case.plan, authority)


def first(parts: str, *steps: str) -> Journey:
    """Give the journey of a dish's first part."""
    return trail(parts, *steps).journeys[0]


def test_journey_of_a_fried_egg() -> None:
    """Egg is wetted by the first step and cooked by the second."""
    egg = first("egg powder: 20 g", "mix: egg powder", "{fry: egg powder, for: 5 min}")
    assert (egg.wet_at, egg.cooked_at, egg.last, egg.why) == (0, 1, 1, None)


def test_part_that_no_step_names() -> None:
    """What no step names has no journey, and raw it stays."""
    egg = first("egg powder: 20 g, noodles: 100 g", "{boil: noodles, in: 1 L, for: 8 min}")
    assert egg == Journey(wet_at=None, cooked_at=None, last=None, why=Why.NOT_HEATED)


@pytest.mark.parametrize(
    ("steps", "why"),
    [
        (["mix: egg powder"], Why.NOT_HEATED),
        (["{pour over: egg powder, with: 100 mL boiling water, for: 9 min}"], Why.STEEPED),
        (["mix: egg powder", "{warm: egg powder, on: ration heater}"], Why.ON_HEATER),
        (["mix: egg powder", "{boil: egg powder, on: ration heater, for: 9 min}"], Why.ON_HEATER),
        (["{fry: egg powder, for: 5 min}", "mix: egg powder"], Why.HEATED_DRY),
        (["mix: egg powder", "{simmer: egg powder, in: 200 mL, for: 1 min}"], Why.TOO_SHORT),
        (["mix: egg powder", "{simmer: egg powder, in: 200 mL, for: 9 min, to: 60 °C}"], Why.TOO_COOL),
    ],
)
def test_why_it_is_not_cooked(steps: list[str], why: Why) -> None:
    """The most telling reason is named, whatever else was done."""
    assert first("egg powder: 20 g", *steps).why is why


@pytest.mark.parametrize("verb", ["boil", "simmer", "fry", "bake"])
def test_what_cooks(verb: str) -> None:
    """Four verbs cook what was wetted before."""
    water = ", in: 300 mL" if verb in ("boil", "simmer") else ""
    assert first("egg powder: 20 g", "mix: egg powder", f"{{{verb}: egg powder{water}, for: 10 min}}").cooked


def test_cooked_with_its_pot() -> None:
    """A step that names something in the pot cooks all that lies in that pot."""
    found = trail(
        "egg powder: 20 g, leek rings: 10 g, noodles: 100 g",
        "mix: egg powder",
        "{boil: noodles, in: 1 L, for: 5 min}",
        "stir in: [egg powder, leek rings]",
        "{simmer: leek rings, for: 3 min}",
    )
    assert [journey.cooked_at for journey in found.journeys] == [3, 3, 3]


def test_another_filling_of_the_pot() -> None:
    """A boil that names nothing of what lies in the pot is taken for a new filling: the safe side."""
    found = trail(
        "egg powder: 20 g, leek rings: 10 g, noodles: 100 g",
        "mix: egg powder",
        "{boil: leek rings, in: 500 mL, for: 5 min}",
        "stir in: egg powder",
        "{boil: noodles, in: 1 L, for: 8 min}",
    )
    assert found.journeys[0].why is Why.STIRRED_IN_LATE


def test_pot_that_is_named() -> None:
    """What is stirred into a pot by its name is not cooked by the boil of another."""
    found = trail(
        "egg powder: 20 g, leek rings: 10 g, noodles: 100 g",
        "mix: egg powder",
        "{boil: leek rings, in: 500 mL, for: 5 min, pot: pan}",
        "{boil: noodles, in: 1 L, for: 5 min}",
        "{stir in: egg powder, pot: pan}",
        "{simmer: noodles, for: 3 min}",
    )
    assert found.journeys[0].why is Why.STIRRED_IN_LATE


def test_stirred_into_the_pot_used_last() -> None:
    """What is stirred in without a pot's name goes into the one used last."""
    found = trail(
        "egg powder: 20 g, leek rings: 10 g, noodles: 100 g",
        "mix: egg powder",
        "{boil: noodles, in: 1 L, for: 5 min}",
        "{boil: leek rings, in: 500 mL, for: 5 min, pot: pan}",
        "stir in: egg powder",
        "{simmer: leek rings, for: 3 min, pot: pan}",
    )
    assert found.journeys[0].cooked_at == 4


def test_germs_travel() -> None:
    """Leek that soaked with raw chicken brings its germs to the noodles it is stirred into."""
    found = trail(
        "noodles: 100 g, leek rings: 10 g, raw chicken: 40 g",
        "{boil: noodles, in: 1 L, for: 8 min}",
        "soak: [leek rings, raw chicken]",
        "drain: away",
        "{fry: raw chicken, for: 8 min, pot: pan}",
        "{stir in: leek rings, pot: pot}",
    )
    noodles, leek, chicken = found.journeys
    assert (noodles.touched_by, noodles.touched_at) == (2, 4)
    assert (leek.touched_by, leek.touched_at) == (2, 1)
    assert chicken.cooked


def test_ready_food_needs_only_the_heat_of_its_germs() -> None:
    """Cooked beef that lay with raw egg is safe at 71 °C, though by itself it is reheated to 74 °C."""
    found = trail(
        "egg powder: 20 g, beef crumbles: 40 g",
        "mix: [egg powder, beef crumbles]",
        "{fry: [egg powder, beef crumbles], for: 4 min, to: 71 °C}",
    )
    assert [journey.touched_by for journey in found.journeys] == [None, None]


def test_drain_takes_the_soak_and_not_the_pot() -> None:
    """With noodles in the pot and chicken in its soak, `drain` pours off the soak."""
    found = trail(
        "raw chicken: 40 g, noodles: 100 g",
        "soak: raw chicken",
        "{boil: noodles, in: 1 L, for: 8 min}",
        "drain: drunk",
        "{fry: raw chicken, for: 8 min, pot: pan}",
    )
    assert [(water.step, water.part) for water in found.bad_waters] == [(2, 0)]


def test_second_drain_takes_the_pot() -> None:
    """Once the soak is drained, the next `drain` pours off the pot, where all is cooked."""
    found = trail(
        "raw chicken: 40 g, noodles: 100 g",
        "soak: raw chicken",
        "drain: away",
        "{boil: [noodles, raw chicken], in: 1 L, for: 8 min}",
        "drain: drunk",
    )
    assert found.bad_waters == ()


def test_a_soak_is_drained_once() -> None:
    """The water of noodles is theirs, though raw chicken that was soaked and drained before still waits for its pan."""
    found = trail(
        "raw chicken: 40 g, noodles: 100 g",
        "soak: raw chicken",
        "drain: away",
        "{boil: noodles, in: 1 L, for: 8 min}",
        "drain: drunk",
        "{fry: raw chicken, for: 8 min, pot: pan}",
    )
    assert found.bad_waters == ()


def test_water_of_what_went_into_the_pot() -> None:
    """A soak that goes into the pot with its food leaves nothing to drain."""
    found = trail(
        "raw chicken: 40 g",
        "soak: raw chicken",
        "{boil: raw chicken, in: 1 L, for: 8 min}",
        "drain: drunk",
    )
    assert found.bad_waters == ()


@pytest.mark.parametrize(
    ("was", "dried", "wet"),
    [
        ("egg, whole, raw", "{dried: not dried}", True),
        ("egg, whole, raw", "{dried: freeze-dried, went in: raw}", False),
        ("flour, wheat, white", "{dried: not dried}", False),
    ],
)
def test_wet_from_the_start(was: str, dried: str, wet: bool) -> None:
    """Only what is carried with its own water is wet before any step."""
    rest = dried.strip("{}")
    case = build(
        f'components: {{it: {{name: It, was: "{was}", {rest}, contains: [egg, wheat], form: any}}}}\ncomponent: it'
    )
    assert case.component is not None
    assert wet_from_the_start(case.component) is wet
