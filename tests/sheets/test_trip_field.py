"""The booklet of a trip as a sheet: times worked by hand, marks, sums that add up, who must not eat what."""

from dataclasses import replace
from functools import cache

import pytest
from tests.sheets import trip_sample

from packlarder.book.stop import WaterTreatment
from packlarder.book.trip import Cooler, WaterContainer
from packlarder.measure import Dimension, Quantity, parse
from packlarder.reckon.trip.records import TripMeal, TripPack
from packlarder.safety.rule import Shows
from packlarder.safety.rules import check_trip
from packlarder.safety.whole import at_home
from packlarder.sheets.field_sheet import FieldOpening, Span
from packlarder.sheets.printed import System
from packlarder.sheets.trip_dish import served_alike
from packlarder.sheets.trip_field import trip_book
from packlarder.sheets.trip_field_sheet import MenuLine, TripBook
from packlarder.sheets.trip_field_water import filled, leg_cards, spot_cards
from packlarder.sheets.trip_labels import trip_labels
from packlarder.sheets.trip_lists import cooled
from packlarder.sheets.trip_opening import trip_opening
from packlarder.sheets.trip_water import leg_ounces
from packlarder.sheets.words import lowered

HOUSEHOLD = trip_sample.book().book.household
TRIP = trip_sample.trip()


@cache
def made() -> TripBook:
    """Build the booklet of the sample trip."""
    return trip_book(trip_sample.checked_trip(), HOUSEHOLD, edition="0", on=trip_sample.ON)


def opening(name: str) -> FieldOpening:
    """Give the opening of a dish."""
    return next(one for one in made().openings if one.name == name)


def size(text: str) -> float:
    """Read a printed amount in its base unit."""
    found = parse(text.replace("\u00a0", " ").replace("\u202f", " "), (Dimension.WEIGHT, Dimension.VOLUME))
    assert isinstance(found, Quantity), text
    return found.base


def meal(dish: str) -> TripMeal:
    """Give the first meal of a dish."""
    return next(one for one in TRIP.meals if one.dish == dish)


def test_times_of_day_are_those_of_the_clock() -> None:
    """Noodles take 39 min, so 18:30 - 39 min = 17:51; eggs wait 15 min: 7:30 - 15 = 7:15, and 23 min before it 6:52."""
    (noodles,) = opening("Beef and leek noodles").meals
    assert (noodles.begins, noodles.ready, noodles.eaten) == ("17:51", "", "18:30")
    (eggs,) = opening("Eggs and ham").meals
    assert (eggs.begins, eggs.ready, eggs.eaten) == ("6:52", "7:15", "7:30")
    assert eggs.note == "On the flame after beef and leek noodles."


def said(line: tuple[Span, ...]) -> str:
    """Give a line as plain text."""
    return "".join(span.text for span in line)


def test_each_step_has_a_time_of_day_and_hot_water_is_put_on_before_it() -> None:
    """Noodles: water on at 17:51, hot after 5.95 min and so poured at 17:57; the next moves follow its 10 minutes."""
    noodles = opening("Beef and leek noodles")
    sums = meal("beef-and-leek-noodles").sums.steps
    assert 5 < sums[0].boil_up_min <= 6
    assert [step.minute for step in noodles.steps] == [""] * len(noodles.steps)
    assert [(step.at, step.verb) for step in noodles.steps[:3]] == [
        ("17:51", "Put"),
        ("17:57", "Soak"),
        ("18:08", "Drain"),
    ]
    assert said(noodles.steps[0].line).endswith("on the flame, big pot.")
    assert noodles.steps[-1].at == "18:30"


def test_what_boils_says_when() -> None:
    """Noodles go into the pot 24.97 min after 17:51, at 18:16; the pot boils 33.05 after it: at about 18:25."""
    noodles = opening("Beef and leek noodles")
    (boil,) = [step for step in noodles.steps if step.verb == "Boil"]
    assert (boil.at, boil.line[-1]) == ("18:16", Span(" Boils at about 18:25.", strong=True))


def test_head_and_steps_never_disagree() -> None:
    """Each time in the head of an opening is that of a step in which water is poured; soaks are told by clock."""
    told = 0
    for one in made().openings:
        for row in one.meals if len(one.meals) == 1 else ():
            told += len(row.soaks)
            assert set(row.soaks) <= {step.at for step in one.steps}, one.name
            assert row.begins == one.steps[0].at
    assert told > 5
    figures = {one.label: one.figure for one in opening("Beef and leek noodles").figures}
    assert figures["Soak 2.1 from 17:57"] == "10\u00a0min"


def test_the_head_has_the_water_that_the_steps_pour() -> None:
    """The noodles' two waters add up to the figure of the head, unrounded."""
    noodles = opening("Beef and leek noodles")
    poured_ml = sum(step.water_ml for step in meal("beef-and-leek-noodles").sums.steps)
    assert size(noodles.figures[0].figure) == poured_ml
    assert noodles.figures[0].label == "Water, all of it heated"


def test_what_soaks_says_when_its_water_goes_on_which_pack() -> None:
    """Water for the ham is put on at 6:52 and poured a minute later; the egg is mixed at 6:54."""
    eggs = opening("Eggs and ham")
    assert eggs.soaks == ("pour on 3.1", "pour on 3.2")
    assert eggs.meals[0].soaks == ("6:53", "6:54")


def test_each_step_that_handles_something_raw_says_so() -> None:
    """Egg powder is mixed and fried RAW; what is stirred in and eaten after that is not."""
    eggs = opening("Eggs and ham")
    assert [step.verb for step in eggs.steps if step.raw] == ["Mix", "Fry"]
    assert not any(step.raw for one in made().openings if one is not eggs for step in one.steps)


def test_poured_over_reads_well() -> None:
    """The booklet of a trip says `Pour`, not `Pour over ... over`."""
    verbs = {step.verb for one in made().openings for step in one.steps}
    assert "Pour over" not in verbs


def test_a_share_for_each_is_in_proportion() -> None:
    """860 mL or so of cocoa with 0.7 mL a gram of powder, shared 1 : 1.2 : 1 : 0.6, to 10 mL; bread by weight."""
    cocoa = meal("cocoa")
    whole_ml = cocoa.sums.water.carry_ml + 0.7 * cocoa.sums.parts[0].dry_g
    (share,) = opening("Hot cocoa").shares
    told = dict(one.rsplit(" ", 1) for one in share.each.split(", "))
    assert share.what == "Share out, about"
    assert size(told["Eskil"]) == pytest.approx(whole_ml * 1.2 / 3.8, abs=5)
    assert size(told["Pim"]) == pytest.approx(whole_ml * 0.6 / 3.8, abs=5)
    board = opening("Crispbread, smoked cheese and apple").shares
    assert [one.what for one in board] == ["Crispbread, about", "Smoked cheese, about", "Apple rings, about"]


def test_a_dish_of_several_steps_has_an_opening_for_each_time() -> None:
    """Two suppers of rice do not share one, so that each has its own clock; one eater has nothing to share out."""
    rice = meal("chicken-and-pea-rice")
    again = replace(rice, number=99)
    groups = served_alike(replace(TRIP, meals=(*TRIP.meals, again)))
    assert (again,) in groups
    alone = replace(rice, eaters=("Runa",))
    assert trip_opening((alone,), TRIP, HOUSEHOLD, System.METRIC).shares == ()


def test_meals_alike_share_an_opening_that_names_them_all() -> None:
    """The same board on two days for the same people stands once, with both days, places and marks."""
    board = opening("Crispbread, smoked cheese and apple")
    assert board.heading == "lunch, made 2 times"
    assert [(one.called, one.where) for one in board.meals] == [
        ("Day 1, Saturday", "Gull skerry"),
        ("Day 2, Sunday", "The pilots' quay"),
    ]
    assert [(pack.number, pack.marks) for pack in board.packs] == [("", ("1.1", "4.1")), ("", ("1.2", "4.2"))]
    assert [one.marks for one in board.meals] == ["1.1, 1.2", "4.1, 4.2"]
    assert [line.number for line in menu_lines() if line.opening == board.id] == ["1", "4"]


def test_other_portions_or_people_have_an_opening_of_their_own() -> None:
    """The second board for fewer portions, or for other people, does not share the first one's."""
    board = TRIP.by_number[4]
    for other in (replace(board, portions=2.0), replace(board, eaters=("Runa",))):
        meals = tuple(other if one is board else one for one in TRIP.meals)
        groups = [[one.number for one in group] for group in served_alike(replace(TRIP, meals=meals))]
        assert [1] in groups
        assert [4] in groups


def test_ration_heaters_take_the_water_of_the_stop() -> None:
    """The household usually takes sea water; the quay lies at a lake, and so says its dish."""
    assert HOUSEHOLD.usual_conditions.heater_water.value == "sea"
    labels = [figure.label for figure in opening("Lentil rice from the heater").figures]
    assert "for ration heaters, from the lake" in labels


def test_every_pack_is_led_to_by_its_mark() -> None:
    """Each pack of the trip stands on an opening, inner ones and tubs too, or as food from the bag on the menu."""
    told = {mark for one in made().openings for pack in one.packs for mark in (pack.marks or (pack.number,))}
    bags = {day.on_the_move.partition(" ")[0] for day in made().menu}
    for pack in TRIP.packs:
        assert pack.mark in told | bags, pack.mark
    assert any(pack.is_inside for one in made().openings for pack in one.packs)


def test_steps_and_cautions_name_packs_by_their_marks() -> None:
    """Pack 3 of the rice is 6.3 wherever it is named: in its step, and where its sachet is told of."""
    rice = opening("Chicken and pea rice")
    assert any("pack 6.3" in "".join(span.text for span in step.line) for step in rice.steps)
    assert any(caution.endswith("pack 6.3, Cooked rice.") for caution in rice.cautions)


def test_portions_read_well_and_say_whose_they_are() -> None:
    """1 + 1.2 + 1 + 0.6 = 3.8 portions."""
    assert opening("Hot cocoa").for_whom == "3.8\u00a0portions: Runa, Eskil 1.2, Tove, Pim 0.6"


@pytest.mark.parametrize("system", list(System))
def test_the_water_of_a_leg_is_the_sum_of_its_pieces_as_printed(system: System) -> None:
    """In litres and in fluid ounces; 1.89 + 0.62 + 1.04 + 0.13 + 0.02 = 3.70 L stand as one line of dishes."""
    for card in leg_cards(TRIP, HOUSEHOLD, system):
        unit = 1.0 if system is System.METRIC else size("1 fl oz")
        assert sum(round(size(one.figure) / unit) for one in card.made_of) == round(size(card.fill) / unit)
    assert leg_cards(TRIP, HOUSEHOLD, System.METRIC)[0].made_of[0].figure == "3.70\u00a0L"


def test_the_booklet_fills_as_much_as_the_page_says() -> None:
    """In ounces more than the millilitres are: cooks pour cups, and their dishes say so."""
    cards = leg_cards(TRIP, HOUSEHOLD, System.US)
    for card, leg in zip(cards, TRIP.journey.legs, strict=True):
        assert round(size(card.fill) / size("1 fl oz")) == leg_ounces(TRIP, leg, HOUSEHOLD)
    assert leg_ounces(TRIP, TRIP.journey.legs[0], HOUSEHOLD) > TRIP.journey.legs[0].carry_ml / size("1 fl oz") + 1


def test_water_that_is_used_where_it_is_filled_says_how_it_is_treated() -> None:
    """The quay's 200 + 10 + 500 = 710 mL are carried on no leg, and come from a lake; the skerry fills nothing."""
    assert made().on_the_spot == ()  # it stands with the leg that begins there
    assert made().legs[1].notes[:3] == (
        "Filled at the pilots' quay: to be treated.",
        "In all 17.33\u00a0L at the pilots' quay: 710\u00a0mL of it is used there, the rest is carried on.",
        "17.33\u00a0L must be made fit to drink: filter it, chlorinate it, and wait 30\u00a0min.",
    )


def test_a_stop_at_which_the_trip_ends_has_its_water_told_too() -> None:
    """No leg goes on from there, so no leg's card would speak of it."""
    first = TRIP.journey.legs[:1]
    ending = replace(TRIP, journey=replace(TRIP.journey, legs=first))
    assert [one.place for one in spot_cards(ending, System.METRIC)] == ["The pilots' quay"]


def test_another_form_is_told_by_what_the_dish_calls_its_part() -> None:
    """Where the same component stands in under its own name, there is nothing to say."""
    rice = meal("chicken-and-pea-rice")
    part, other = rice.plan.parts[0], meal("beef-and-leek-noodles").plan.parts[0].component
    for instead, told in ((other, f"{other.model.name} in place of {lowered(part.called)}."), (part.component, None)):
        found = trip_opening((replace(rice, instead={0: instead}),), TRIP, HOUSEHOLD, System.METRIC)
        assert found.notes == ((told,) if told else ())


def test_the_water_of_a_leg_says_which_containers_to_fill() -> None:
    """6 cans of 10 L, a bag of 6 L, 4 bottles of 1 L: 44.2 L are 4 cans, and the bag takes what is left by itself."""
    read = {"bottle": {"holds": "1 L", "count": 4}, "big can": {"holds": "10 L", "count": 6}, "bag": {"holds": "6 L"}}
    along = {name: WaterContainer.model_validate(one) for name, one in read.items()}
    assert filled(along, 44_200) == "4\u00a0big cans, the bag"
    assert filled(along, 68_500) == "6\u00a0big cans, the bag, 3\u00a0bottles"
    assert filled(along, 900) == "1\u00a0bottle"
    assert filled(along, 99_000) == "6\u00a0big cans, the bag, 4\u00a0bottles"
    assert filled({}, 900) == ""


def test_what_is_boiled_says_how_often_the_pot_is_filled() -> None:
    """One figure for all that is boiled at a fill point, with its potfuls and minutes; the spare day's stays apart."""
    boiled = replace(TRIP.journey.legs[1], treated_by=WaterTreatment.BOILING, wait_min=3, treated_ml=9_000)
    spot = replace(TRIP.journey.stops[1], treated_ml=1_000, boil_ml=9_700, potfuls=5, boil_min=71)
    journey = replace(TRIP.journey, legs=(TRIP.journey.legs[0], boiled), stops=(TRIP.journey.stops[0], spot))
    (_, card) = leg_cards(replace(TRIP, journey=journey), HOUSEHOLD, System.METRIC)
    told = "9.70\u00a0L must be made fit to drink: boil it for 3\u00a0min."
    pot = "In 5 potfuls of the big pot, 1\u00a0h\u00a011\u00a0min on the flame in all."
    assert f"{told} {pot}" in card.notes
    assert any(note.startswith("1.23\u00a0L of it is for the spare day: use it last") for note in card.notes)


def test_fuel_stops_and_margin_are_what_is_needed() -> None:
    """71 + 42 + 29 g and a margin of 29 g are 171 g; a part-used cartridge of 85 g and two whole ones are taken."""
    (card,) = made().fuels
    assert sum(size(one.figure) for one in card.stops) == size(card.need) == pytest.approx(171)
    assert card.taken == ("85\u00a0g part used", "2\u00a0×\u00a0100\u00a0g whole")


def menu_lines() -> list[MenuLine]:
    """Give the lines of the menu in order."""
    return [line for day in made().menu for there in day.places for line in there.lines]


def test_the_menu_goes_by_the_clock_and_names_places_and_raw() -> None:
    """Rice is begun before the heater's lunch of the same supper; each place stands over its dishes; eggs are RAW."""
    for day in made().menu:
        begun = [
            int(line.begins.split(":")[0]) * 60 + int(line.begins.split(":")[1])
            for there in day.places
            for line in there.lines
        ]
        assert begun == sorted(begun)
    assert [[there.place for there in day.places] for day in made().menu] == [
        ["Gull skerry"],
        ["Gull skerry", "The pilots' quay"],
        [""],
    ]
    assert [line.dish for line in menu_lines() if line.raw] == ["Eggs and ham"]


def test_packs_are_called_the_same_on_list_and_label() -> None:
    """Dish and own name of a pack, on the list as on its label; what is for the day says so."""
    labels = {one.number.split(",")[0]: one.dish for one in trip_labels(TRIP, HOUSEHOLD, edition="0", title="").packs}
    listed = {pack.mark: pack.called for day in made().packing for pack in day.packs}
    assert listed == labels
    assert (listed["3.1"], listed["2.1"]) == ("Eggs and ham: Ham", "Beef and leek noodles")
    assert listed["M1"] == "On the move"


def test_a_pack_with_others_inside_says_what_all_of_it_weighs() -> None:
    """The bag of the chowder weighs what its three inner packs weigh."""
    weights = {pack.mark: pack.weight for day in made().packing for pack in day.packs}
    inner = sum(size(weights[f"8.1.{nth}"]) for nth in (1, 2, 3))
    assert weights["8.1"].endswith(" in all")
    assert size(weights["8.1"].removesuffix(" in all")) == pytest.approx(inner)


def test_what_spoils_goes_into_the_cooler() -> None:
    """Smoked cheese is not dried and spoils; without a cooler nothing is said of one."""
    assert made().cooled == ""
    model = TRIP.model.model_copy(update={"cooler": Cooler(keeps_cold=2)})
    assert cooled(replace(TRIP, model=model)) == "Into the cooler, which keeps cold for 2 days: 1.2, 4.2, 5.3."


def test_all_findings_of_the_trip_stand_on_the_safety_card() -> None:
    """What the page tells the booklet tells too: cheese without a cooler, which is for the page alone."""
    checked = trip_sample.checked_trip()
    findings = check_trip(checked.sums, HOUSEHOLD, at_home(trip_sample.book().dishes))
    told = trip_book(replace(checked, findings=findings), HOUSEHOLD, edition="0", on=trip_sample.ON).safety.findings
    assert any(finding.rule.id == "cheese-without-cold" for finding in findings)
    for finding in findings:
        if finding.rule.shows is not Shows.FRONT:
            assert finding.text[1:] in " ".join(told)


def test_packs_weigh_what_the_trip_weighs_and_jars_give_what_packs_take() -> None:
    """Days add up to the trip's food; what is filled from jars or still to be got is what goes into packs."""
    assert sum(size(day.weight.removeprefix("its packs ")) for day in made().packing) == pytest.approx(TRIP.grams)
    for fill in made().fills:
        assert sum(size(jar.weight) for jar in fill.jars) == pytest.approx(size(fill.need))
        assert sum(size(one.figure) for one in fill.into) == pytest.approx(size(fill.need))


def test_who_avoids_nuts_is_told_of_the_almonds() -> None:
    """Tove avoids tree nuts and peanut: of all that comes along only the almonds concern her, which nobody cooks."""
    (tove,) = made().safety.people
    assert (tove.name, tove.avoids) == ("Tove", "tree nuts, peanut")
    assert [(ref.name, ref.opening) for ref in tove.dishes] == [("Almonds", "")]
    assert tove.dishes[0].says.startswith("contains almond")


def test_raw_dishes_are_named_with_what_is_raw() -> None:
    """Egg powder is the one thing along that must be cooked to be safe."""
    (eggs,) = made().safety.raw
    assert (eggs.name, eggs.says) == ("Eggs and ham", "Egg powder")


def test_what_is_bought_on_the_way_stands_apart_from_its_pack() -> None:
    """Of a pack of chicken with ghee only what comes from home is weighed; what is bought has a mark of its own."""
    rice = meal("chicken-and-pea-rice")
    first = next(pack for pack in TRIP.packs if pack.mark == f"{rice.number}.2")
    home, bought = replace(first, items=first.items[:1]), _bought(first)
    packs = tuple(one for pack in TRIP.packs for one in ((home, bought) if pack is first else (pack,)))
    found = trip_opening((rice,), replace(TRIP, packs=packs), HOUSEHOLD, System.METRIC)
    rows = {pack.number: pack for pack in found.packs}
    assert rows[home.mark].holds == home.items[0].called
    assert rows[bought.mark].holds.endswith(", bought at the pilots' quay")
    assert size(rows[home.mark].weight) + size(rows[bought.mark].weight) == pytest.approx(first.grams)


def _bought(pack: TripPack) -> TripPack:
    return replace(pack, mark=f"{pack.mark}b", items=pack.items[1:], bought_at=1)
