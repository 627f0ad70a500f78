"""What a dish feeds, what it holds that someone may not eat, and whether it is RAW; through mixes and whole meals."""

import pytest
from tests.sums.book_of import components_of, dish_of

from packlarder.figures.allergens import Allergen
from packlarder.figures.kinds import Cooking
from packlarder.reckon.records import ComponentSums

EGG_MIX = """\
    made of: [{egg powder: 30 g}, {milk powder: 70 g}]
    contains: [egg, milk]
    may contain: [soya]
    form: powder
    bring back: {mix: 100 g, with: 300 mL cold water}
    """
MEAL = """\
    made of: [{"rice, white, boiled": 600 g}, {"beef, ground, 93% lean, browned": 400 g}]
    went in: cooked
    contains: [celery]
    dried: freeze-dried
    form: crumble
    yields: {from: 1 kg, gives: 400 g}
    """
LABELLED = """
    crackers:
      name: crackers, oat
      kind: bread
      state: ready
      contains: [oats]
      water: 4 %
      energy: 400 kcal
      protein: 10 g
    """


def test_energy_by_hand() -> None:
    """100 g of pasta: 371 kcal and 13.04 g of protein (SR28), for two 185.5 kcal and 6.52 g each."""
    sums = dish_of("pasta: 100 g", "{boil: pasta, in: 1 L, for: 10 min}").sums()
    assert sums.per_serving.energy_kcal == pytest.approx(185.5)
    assert sums.per_serving.protein_g == pytest.approx(6.52)
    assert sums.incomplete == frozenset()


def test_energy_is_scaled_by_the_yield() -> None:
    """1 g of dry egg stands for 4.076 g at 1.43 kcal: 5.83 kcal (SR28's dried egg: 5.92, within 2 %)."""
    egg = components_of().components["egg-powder"]
    assert egg.nutrients.energy_kcal == pytest.approx(4.0763 * 1.43, abs=0.001)
    assert egg.nutrients.energy_kcal == pytest.approx(5.92, rel=0.02)


def test_what_is_unknown_stays_unknown() -> None:
    """A label without salt: energy is known of all parts, sodium only of the pasta, and the dish says so."""
    worked = dish_of(
        "crackers: 50 g, pasta: 100 g",
        "{boil: pasta, in: 1 L, for: 10 min}",
        "Eat the crackers.",
        foods=LABELLED,
        crackers="was: crackers, oat\ncontains: [oats]\ndried: not dried\nform: squares",
    )
    sums = worked.sums()
    assert worked.components["crackers"].nutrients.sodium_mg is None
    assert sums.per_serving.energy_kcal == pytest.approx((50 * 4 + 371) / 2)
    assert sums.per_serving.sodium_mg == pytest.approx(6 / 2)  # SR28: 6 mg in 100 g of pasta
    assert {"sodium_mg", "fat_g"} <= sums.incomplete
    assert "energy_kcal" not in sums.incomplete


def test_nothing_known_is_no_figure() -> None:
    """Where no part's figure is known there is none, not nought."""
    worked = dish_of(
        "crackers: 50 g",
        "Eat the crackers.",
        foods=LABELLED,
        crackers="was: crackers, oat\ncontains: [oats]\ndried: not dried\nform: squares",
    )
    assert worked.sums().per_serving.sodium_mg is None


def test_fixed_parts_are_shared_by_more() -> None:
    """18 g of oil for any number: 884 kcal per 100 g shared by two or by four."""
    worked = dish_of("{oil: {take: 20 mL, fixed: yes}}", "{fry: oil, for: 2 min}")
    assert [one.per_serving.energy_kcal for one in worked.each((2, 4))] == pytest.approx([18 * 8.84 / 2, 18 * 8.84 / 4])


def test_a_mix_is_blended_and_stays_raw() -> None:
    """30 % egg powder, 70 % milk powder: blended by weight, RAW through the egg, allergens of both, its own traces."""
    worked = components_of(mix=EGG_MIX)
    mix, egg, milk = (worked.components[id] for id in ("mix", "egg-powder", "milk-powder"))
    assert mix.must_be_cooked is Cooking.TO_BE_SAFE
    assert sorted(mix.allergens) == [Allergen.EGG, Allergen.MILK]
    assert list(mix.traces) == [Allergen.SOYA]
    assert energy(mix) == pytest.approx(0.3 * energy(egg) + 0.7 * energy(milk))


def energy(component: ComponentSums) -> float:
    """Give the energy of one dry gram."""
    assert component.nutrients.energy_kcal is not None
    return component.nutrients.energy_kcal


def test_a_whole_meal_is_scaled_by_its_yield() -> None:
    """1 kg of wet meal gave 400 g: (600 x 1.30 + 400 x 2.09) / 400 kcal a gram; cooked, so not RAW."""
    meal = components_of(meal=MEAL).components["meal"]
    assert energy(meal) == pytest.approx((600 * 1.30 + 400 * 2.09) / 400)  # SR28: boiled rice 130, browned beef 209
    assert meal.must_be_cooked is Cooking.NO
    assert list(meal.allergens) == [Allergen.CELERY]


def test_raw_is_raised_but_never_lowered() -> None:
    """A household may call cooked beef RAW; raw egg stays RAW whatever it writes."""
    raised = components_of(
        careful="""\
        was: beef, ground, 93% lean, browned
        went in: cooked
        contains: []
        dried: freeze-dried
        form: crumbles
        must be cooked: to be safe
        """
    ).components["careful"]
    lowered = components_of(
        bold="""\
        was: egg, whole, raw
        went in: raw
        contains: [egg]
        dried: freeze-dried
        form: powder
        must be cooked: no
        """
    ).components["bold"]
    assert raised.raw
    assert lowered.raw


def test_a_mix_of_itself_is_a_fault() -> None:
    """A mix that holds a mix that holds it can not be worked out."""
    one = "made of: [{other: 50 g}]\ncontains: []\nform: powder"
    other = "made of: [{one: 50 g}]\ncontains: []\nform: powder"
    (fault,) = components_of(fails=True, one=one, other=other).faults
    assert (fault.code, fault.marked) == ("made-of-itself", "one")


def test_unknown_foods_are_faults_at_their_words() -> None:
    """A food that neither the table nor foods.yaml knows brings the closest."""
    text = "was: onoin, raw\nwent in: raw\ncontains: []\ndried: air-dried\nform: flakes"
    (fault,) = components_of(fails=True, flakes=text).faults
    assert (fault.code, fault.marked, fault.line) == ("unknown-food", "onoin, raw", 2)
    assert '"onion, raw"' in fault.help


def test_a_dish_weighs_what_its_parts_are_printed_to_weigh() -> None:
    """10.4 g are printed 10, 5.3 g 5.5: the dish weighs 15.5 g."""
    sums = dish_of("beef: 10.4 g, salt: 5.3 g", "soak: beef", "stir in: salt").sums()
    assert sums.weight_g == 15.5


def test_a_gap_says_what_is_missing() -> None:
    """Soaking what nobody said how to soak gives no water, and says so."""
    worked = dish_of(
        "crumbs: 50 g",
        "soak: crumbs",
        crumbs="""\
        was: beef, ground, 93% lean, browned
        went in: cooked
        contains: []
        dried: freeze-dried
        form: crumbs
        """,
    )
    (gap,) = worked.sums().gaps
    assert gap.what == "the water of crumbs"
    assert "components/crumbs.yaml" in gap.missing
