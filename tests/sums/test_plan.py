"""What the planner finds wrong in a dish, each at its exact place."""

import pytest
from tests.sums.book_of import Told, dish_of, packs_of

from packlarder.faults import Severity


def fault_of(parts: str, *steps: str, more: str = "") -> Told:
    """Give the only fault of a dish."""
    (fault,) = dish_of(parts, *steps, more=more, fails=True).faults
    assert fault.file == "dishes/dish.yaml"
    return fault


@pytest.mark.parametrize(
    ("code", "marked", "line", "dish"),
    [
        ("unknown-component", "beeff", 5, ("beeff: 100 g", "soak: beef")),
        ("unknown-part", "beeef", 7, ("beef: 100 g", "soak: beeef")),
        ("unknown-part", "onoin", 8, ("beef: 100 g, onion: 5 g", "soak: [beef, onoin, onion]")),
        ("unknown-stove", "campfire", 8, ("beef: 100 g", "soak: beef", "stove: campfire")),
        ("unknown-pot", "wok", 8, ("beef: 100 g", "soak: beef", "{simmer: beef, for: 3 min, pot: wok}")),
        ("no-minutes", "simmer", 7, ("beef: 100 g", "{simmer: beef, in: 200 mL}")),
        ("no-water", "boil", 7, ("pasta: 100 g", "{boil: pasta, for: 10 min}")),
        ("nothing-to-drain", "drain", 8, ("rice: 100 g", "moisten: rice", "drain: away")),
        ("wetted-twice", "mix", 8, ("beef: 100 g", "soak: beef", "mix: beef")),
        ("part-not-used", "salt", 6, ("beef: 100 g, salt: 2 g", "soak: beef")),
    ],
)
def test_each_fault_stands_at_its_place(code: str, marked: str, line: int, dish: tuple[str, ...]) -> None:
    """The line, and the very words that are wrong."""
    parts, *steps = dish
    more = "".join(f"{step}\n" for step in steps if step.startswith("stove"))
    told = [step for step in steps if not step.startswith("stove")]
    faults = dish_of(parts, *told, more=more, fails=True).faults
    fault = next(one for one in faults if one.code == code)
    assert (fault.marked, fault.line) == (marked, line)
    assert fault.message
    assert fault.help


def test_closest_names_are_suggested() -> None:
    """A slip in a name brings the nearest one."""
    assert 'did you mean "beef"?' in fault_of("beeff: 100 g", "Eat.").help
    faults = dish_of("beef: 100 g", "soak: beeef", "Eat the beef.", fails=True).faults
    assert [fault.help for fault in faults] == ['did you mean "beef"?']
    pot = fault_of("beef: 9 g", "{simmer: beef, in: 50 mL, for: 3 min, pot: litle pot}")
    assert pot.help.startswith("did you mean `little pot`?")


def test_two_parts_of_one_name() -> None:
    """The same component twice needs a name of its own; the second one is marked."""
    fault = dish_of("beef: 100 g, beef: 20 g", "soak: beef", fails=True).faults[0]
    assert (fault.code, fault.line, fault.marked) == ("part-twice", 6, "beef")
    dish_of("beef: 100 g, {beef: {take: 20 g, called: topping}}", "soak: [beef, topping]")


def test_two_parts_of_one_component_by_name_and_id() -> None:
    """Name and id are the same component."""
    codes = [fault.code for fault in dish_of("egg powder: 9 g, egg-powder: 9 g", "mix: egg powder", fails=True).faults]
    assert "part-twice" in codes


@pytest.mark.parametrize(
    ("packs", "code", "marked"),
    [
        (("[beef, onion]", "[beef]"), "packed-twice", "packs"),
        (("[beef]",), "not-packed", "packs"),
        (("[beef, onion, leek]",), "unknown-part", "leek"),
        (("{holds: [beef, onion, leek]}",), "unknown-part", "leek"),
        (("[beef, [onion, leek]]",), "unknown-part", "leek"),
    ],
)
def test_faults_of_packs(packs: tuple[str, ...], code: str, marked: str) -> None:
    """A part in two packs, in none, or in none of the parts."""
    fault = fault_of("beef: 100 g, onion: 20 g", "soak: [beef, onion]", more=packs_of(*packs))
    assert (fault.code, fault.marked) == (code, marked)


def test_warnings_are_warnings() -> None:
    """What is most likely a slip does not stop a build."""
    assert fault_of("beef: 100 g, salt: 2 g", "soak: beef").severity is Severity.WARNING
    assert fault_of("beef: 9 g", "soak: beef", "soak: beef").severity is Severity.WARNING
    assert fault_of("pasta: 9 g", "{boil: pasta, for: 10 min}").severity is Severity.ERROR


def test_a_sentence_uses_what_it_names() -> None:
    """The salt named in a sentence is used; the oil in "boil" is not."""
    dish_of("beef: 100 g, salt: 2 g", "soak: beef", "Taste, and add the salt.")
    fault = fault_of("beef: 100 g, oil: 10 mL", "soak: beef", "Do not boil it.")
    assert (fault.code, fault.marked) == ("part-not-used", "oil")


@pytest.mark.parametrize(
    "steps",
    [
        ("soak: beef", "drain: into the pot", "{simmer: onion, for: 5 min}"),
        ("{mix: [beef, onion], with: 200 mL cold water}", "{boil: [beef, onion], for: 3 min}"),
        ("{simmer: beef, in: 200 mL, for: 5 min}", "{simmer: onion, for: 5 min}"),
    ],
)
def test_water_from_a_step_before_will_do(steps: tuple[str, ...]) -> None:
    """Drained water, a batter, or what stands in the pot: there is water to boil in."""
    dish_of("beef: 100 g, onion: 10 g", *steps)


def test_parts_are_found_by_name_id_and_their_own_name() -> None:
    """Steps may speak of a part by its component's name or id, or by what the dish calls it."""
    plan = dish_of(
        "egg powder: 10 g, {milk powder: {take: 5 g, called: topping}}",
        "{mix: [egg-powder, topping], with: 50 mL cold water}",
        "Then eat.",
    ).planned
    assert plan.steps[0].parts == (0, 1)


def test_all_faults_in_one_run() -> None:
    """One dish may be wrong in many places, and all are told."""
    faults = dish_of("beef: 1 cup, beeff: 2 g, onion: 9 g", "soak: onion", fails=True).faults
    assert {fault.code for fault in faults} == {"no-weight-known", "unknown-component"}
