"""Slips that only the whole of a checked book shows: clashing words, waters that do not fit, packs that do not."""

from collections.abc import Mapping

import pytest
from tests.rules.build import DISH, check

from packlarder.book.book import dish_place
from packlarder.faults import Fault, Severity, Spot

LARDER = """
components:
  pasta:
    {name: Pasta, was: "pasta, dry", dried: bought dry, contains: [wheat], form: ribbons,
     bring back: {in the pot: 100 g, takes: 140 mL, wait: 10 min}}
  onion:
    {name: Onion rings, was: "onion, raw", went in: raw, dried: freeze-dried, contains: [], form: rings,
     bring back: {soak: 10 g, with: 120 mL hot water, takes: 60 mL, wait: 3 min}}
"""


def faults(dish: str) -> Mapping[str, Fault]:
    """Give the faults of a dish by their codes; `dish` stands inside its braces."""
    found = check(f"{LARDER}dish: {{{dish}}}").faults
    assert len({fault.code for fault in found}) == len(found)
    return {fault.code: fault for fault in found}


def component(text: str) -> tuple[Fault, ...]:
    """Give the faults of a component `it`; `text` stands inside its braces."""
    return check(
        f"components: {{it: {{name: It, contains: [egg, milk, wheat], form: any, dried: freeze-dried, {text}}}}}"
    ).faults


@pytest.mark.parametrize(
    ("was", "offered"),
    [
        ("egg, whole, raw", '"egg, whole, scrambled" or "egg, whole, hard-boiled"'),
        ("beef, ground, 93% lean, raw", '"beef, ground, 93% lean, browned"'),
        ("chicken thigh, raw", '"chicken thigh, roasted"'),
        ("kidney beans, red, dry", '"kidney beans, red, boiled"'),
        ("flour, wheat, white", "`state: cooked`"),
        ("egg, whole, dried", '"egg, whole, '),
        ("cod, raw", '"cod, baked"; '),
    ],
)
def test_one_word_does_not_cook_what_must_be_cooked_to_be_safe(was: str, offered: str) -> None:
    """Both keys are named, and the way out: the cooked food's own name, or the state in which it really was."""
    found = component(f'was: "{was}", went in: cooked')
    (fault,) = (one for one in found if one.code == "cooked-in-words-only")
    assert fault.severity is Severity.ERROR
    assert (fault.place.path, [place.path for place in fault.also]) == (("went in",), [("was",)])
    assert "`went in: cooked`" in fault.message
    assert was in fault.message
    assert offered in fault.help
    assert "`went in: raw`" in fault.help


def test_nor_does_it_as_the_one_thing_that_something_is_made_of() -> None:
    """A list of one food is that food."""
    (fault,) = component('made of: [{"egg, whole, raw": 100 g}], went in: cooked')
    assert (fault.code, [place.path for place in fault.also]) == ("cooked-in-words-only", [("made of",)])


@pytest.mark.parametrize(
    "text",
    [
        'was: "egg, whole, scrambled", went in: cooked',
        'was: "carrot, raw", went in: cooked',
        'was: "mushroom, white, raw", went in: cooked',
        'made of: [{"beef, ground, 93% lean, raw": 200 g}, {"onion, raw": 100 g}], went in: cooked',
    ],
)
def test_what_may_be_told_in_short(text: str) -> None:
    """Cooked food, what is not unsafe uncooked, and a whole meal of raw things that was cooked."""
    assert component(text) == ()


def test_pot_that_holds_less_than_its_parts_take_up() -> None:
    """200 g of pasta take up 280 mL, and the pot has 150: 130 are missing, told at the step with enough water."""
    found = faults("parts: [pasta: 200 g], steps: [{boil: pasta, in: 150 mL, for: 10 min, lid: on}]")["pot-too-dry"]
    assert (found.severity, found.place.path) == (Severity.WARNING, ("steps", 0, "boil"))
    assert found.message == "the pot holds about 130 mL less than pasta takes up"
    # 280 mL and what boils off in 10 min: the sum of the whole stands in the help, in steps of 50 mL
    assert found.help.startswith("say more water: `in: ")
    enough = found.help.split("`")[1]
    assert faults(f"parts: [pasta: 200 g], steps: [{{boil: pasta, {enough}, for: 10 min, lid: on}}]") == {}


def test_pot_with_nothing_in_it() -> None:
    """One error, and no warning that says the same again."""
    found = faults("parts: [pasta: 200 g], steps: [{boil: pasta, for: 10 min}]")
    assert set(found) == {"no-water"}


def test_wet_food_brings_no_water_for_the_dry_food_beside_it() -> None:
    """The onion was moistened and all its water is in it: the pasta would boil in nothing."""
    steps = "moisten: onion rings, {boil: [onion rings, pasta], for: 10 min}"
    found = faults(f"parts: [onion rings: 10 g, pasta: 200 g], steps: [{steps}]")
    assert found["no-water"].severity is Severity.ERROR


def test_wet_food_alone_boils_in_its_own_water() -> None:
    """A batter or porridge that was mixed with water needs no more of it."""
    steps = "{mix: [onion rings, pasta], with: 600 mL cold water}, {boil: [onion rings, pasta], for: 10 min}"
    assert faults(f"parts: [onion rings: 10 g, pasta: 200 g], steps: [{steps}]") == {}


def test_soak_that_nobody_drains() -> None:
    """10 g of onion are offered 120 mL and take 60: the other 60 are told."""
    found = faults("parts: [onion rings: 10 g], steps: [soak: onion rings, {fry: onion rings, for: 3 min}]")
    assert set(found) == {"not-drained"}
    assert found["not-drained"].place == dish_place(DISH).at("steps", 0, "soak", spot=Spot.KEY)
    assert "60 mL" in found["not-drained"].message
    assert "`drain: into the pot`" in found["not-drained"].help


@pytest.mark.parametrize(
    "steps",
    [
        "soak: onion rings, drain: away, {fry: onion rings, for: 3 min}",
        "moisten: onion rings, {fry: onion rings, for: 3 min}",
        "{simmer: onion rings, in: 300 mL, for: 3 min}",
    ],
)
def test_nothing_to_drain_or_drained(steps: str) -> None:
    """A soak that is drained, water that is all taken up, and what takes its water in the pot."""
    assert faults(f"parts: [onion rings: 10 g], steps: [{steps}]") == {}


def test_bowl_that_no_pot_is_as_large_as() -> None:
    """500 g in 2 L fill 2.5 L, and the larger of the two pots holds 2 L."""
    found = faults("parts: [pasta: 500 g], steps: [{pour over: pasta, with: 2 L boiling water, for: 5 min}]")
    assert "food and water fill 2.5 L, and the largest of the pots holds 2.0 L" in found["bowl-too-small"].message
    assert "bowl-too-small" not in faults(
        "parts: [pasta: 400 g], steps: [{pour over: pasta, with: 1.6 L boiling water, for: 5 min}]"
    )


@pytest.mark.parametrize(
    ("way", "fires"),
    [
        ("soak: 10 g, with: 200 mL hot water, takes: 100 mL", True),
        ("moisten: 10 g, with: 100 mL hot water", True),
        ("in the pot: 10 g, takes: 100 mL", True),
        ("soak: 10 g, with: 200 mL hot water, takes: 90 mL", False),
        ("mix: 10 g, with: 200 mL hot water", False),
    ],
)
def test_more_water_than_was_lost(way: str, *, fires: bool) -> None:
    """10 g of dry onion stand for 80 g fresh, and so lost 70 mL: 100 are 143 %, 90 are 129; a powder may be thin."""
    yields = "yields: {from: 80 g, gives: 10 g}"
    found = component(f'was: "onion, raw", went in: raw, {yields}, bring back: {{{way}, wait: 3 min}}')
    assert [fault.code for fault in found] == ["more-water-than-lost"] * fires
    for fault in found:
        assert fault.place.path == ("bring back",)
        assert "143% of the water that was lost in drying: 10 g dry lost 70 mL" in fault.message


SOAK_AND_BOIL = "soak: onion rings, drain: into the pot, {boil: [pasta, onion rings], in: 500 mL, for: 10 min}"
PARTS = "parts: [onion rings: 10 g, pasta: 100 g]"


def test_pack_that_holds_what_the_steps_need_apart() -> None:
    """Nobody picks dry pasta out of a bag in which onion soaks; an inner pack keeps them apart."""
    found = faults(f"{PARTS}, packs: [[onion rings, pasta]], steps: [{SOAK_AND_BOIL}]")
    assert set(found) == {"pack-needed-apart"}
    assert found["pack-needed-apart"].place.path == ("packs", 0)
    assert (
        "onion rings and pasta lie in one pack, and step 1 wants only onion rings" in found["pack-needed-apart"].message
    )
    assert faults(f"{PARTS}, packs: [[onion rings, [pasta]]], steps: [{SOAK_AND_BOIL}]") == {}


def test_pack_whose_parts_are_used_together() -> None:
    """One step takes the whole pack; nor does it matter who takes what is eaten as it is out of a bag."""
    together = "{boil: [pasta, onion rings], in: 500 mL, for: 10 min}"
    assert faults(f"{PARTS}, packs: [[onion rings, pasta]], steps: [{together}]") == {}
    nibbles = "parts: [almonds: 9 g, cheese: 9 g], packs: [[almonds, cheese]], steps: [Eat almonds., Eat cheese.]"
    assert faults(nibbles) == {}


def test_packs_out_of_order() -> None:
    """Packs are numbered as they are opened; the one that is too late in the list is marked."""
    found = faults(f"{PARTS}, packs: [[pasta], [onion rings]], steps: [{SOAK_AND_BOIL}]")
    assert set(found) == {"packs-out-of-order"}
    assert found["packs-out-of-order"].place.path == ("packs", 1)
    assert found["packs-out-of-order"].message == "pack 2 is opened in step 1, before pack 1 in step 3"
    assert faults(f"{PARTS}, packs: [[onion rings], [pasta]], steps: [{SOAK_AND_BOIL}]") == {}


def test_packs_inside_a_pack_out_of_order() -> None:
    """The same holds of the packs inside one."""
    found = faults(f"{PARTS}, packs: [[[pasta], [onion rings]]], steps: [{SOAK_AND_BOIL}]")
    assert "pack 1.2 is opened in step 1, before pack 1.1 in step 3" in found["packs-out-of-order"].message


def test_sentence_opens_a_pack() -> None:
    """A part that only a sentence names is wanted there."""
    parts = "parts: [almonds: 9 g, onion rings: 10 g], packs: [[onion rings], [almonds]]"
    assert "packs-out-of-order" in faults(f"{parts}, steps: [Chop the almonds., moisten: onion rings]")
