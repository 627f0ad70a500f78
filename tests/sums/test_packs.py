"""Packs: as written, or worked out from what is RAW and from the moment at which it is used."""

from tests.sums.book_of import Worked, dish_of, packs_of

from packlarder.reckon.records import PlannedPack

RAW_BEEF = """\
    was: beef, ground, 93% lean, raw
    went in: raw
    contains: []
    dried: freeze-dried
    form: crumbles
    bring back: {soak: 100 g, with: 400 mL cold water, takes: 200 mL, wait: 10 min}
    """
RAW_FLOUR = """\
    was: flour, wheat, white
    contains: [wheat]
    dried: bought dry
    form: powder
    """


def held(worked: Worked) -> list[list[str]]:
    """Name the parts of each pack in their order of opening."""
    plan = worked.planned
    return [[plan.parts[index].component.id for index in pack.all_parts] for pack in plan.packs]


def numbers(packs: tuple[PlannedPack, ...]) -> list[str]:
    """Give the numbers on the packs."""
    return [pack.number for pack in packs]


def test_what_is_used_at_one_moment_lies_together() -> None:
    """Beef and onion are soaked together, the pasta comes later; the oil travels in its bottle."""
    worked = dish_of(
        "pasta: 100 g, beef: 50 g, onion: 9 g, oil: 10 mL",
        "soak: [onion, beef]",
        "drain: into the pot",
        "{boil: pasta, in: 600 mL, for: 8 min}",
        "stir in: [beef, onion, oil]",
    )
    assert held(worked) == [["beef", "onion"], ["pasta"]]
    assert worked.planned.loose == (3,)
    assert not any(pack.written for pack in worked.planned.packs)


def test_raw_lies_apart_and_raw_meat_alone() -> None:
    """RAW flour shares no pack with what is ready, and RAW beef none with RAW flour."""
    step = "{simmer: [raw beef, flour, onion], in: 500 mL, for: 20 min}"
    worked = dish_of("raw beef: 50 g, flour: 20 g, onion: 9 g", step, raw_beef=RAW_BEEF, flour=RAW_FLOUR)
    assert held(worked) == [["raw-beef"], ["flour"], ["onion"]]


def test_written_packs_hold_and_number_as_written() -> None:
    """Packs inside a pack are numbered under it."""
    worked = dish_of(
        "beef: 50 g, onion: 9 g, rice: 50 g",
        "soak: [beef, onion]",
        "drain: away",
        "moisten: rice",
        more=packs_of("{holds: [[onion], [beef]], called: Supper, sachet: yes}", "[rice]"),
    )
    (supper, rice) = worked.planned.packs
    assert (supper.number, supper.called, supper.sachet, supper.all_parts) == ("1", "Supper", True, (1, 0))
    assert numbers(supper.inside) == ["1.1", "1.2"]
    assert (rice.number, rice.written) == ("2", True)


def test_what_no_pack_holds_gets_one_and_a_warning() -> None:
    """The rice that the author forgot gets the next number."""
    worked = dish_of(
        "beef: 50 g, rice: 50 g", "soak: beef", "drain: away", "moisten: rice", more=packs_of("[beef]"), fails=True
    )
    assert [fault.message for fault in worked.faults] == ["no pack holds Rice; a pack was worked out"]
    assert numbers(worked.planned.packs) == ["1", "2"]
    assert [pack.written for pack in worked.planned.packs] == [True, False]


def test_a_part_that_no_step_names_lies_last() -> None:
    """What only a sentence speaks of is opened last."""
    assert held(dish_of("pasta: 50 g, beef: 50 g", "soak: beef", "Eat it with the pasta.")) == [["beef"], ["pasta"]]
