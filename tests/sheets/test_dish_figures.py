"""Figures of sheets: pieces add up as printed, page and data and booklet say the same, RAW stands where it must."""

import re

import pytest
from tests.sheets.demo import checked, demo, dish_ids

from packlarder.figures.kinds import Cooking
from packlarder.measure import NO_BREAK, Dimension, Quantity, parse
from packlarder.sheets import field_words
from packlarder.sheets.dish_sheet import DishSheet, PackRow
from packlarder.sheets.printed import NOTHING, Printed, System, plain
from packlarder.sheets.step_rows import field_lines

SERVINGS = range(12)
every_dish = pytest.mark.parametrize("id", dish_ids())


def number(text: str) -> float:
    """Give the number that a printed figure begins with, litres in mL, nought for a dot."""
    found = re.match(r"[\d.]+", text)
    if not found:
        return 0.0
    return round(float(found[0]) * 1000) if text.endswith(f"{NO_BREAK}L") else float(found[0])


def figure(sheet: DishSheet, key: str) -> Printed:
    """Give a figure of the strip, the clock or the heat by its key."""
    return next(reading.figure for reading in (*sheet.strip, *sheet.clock, *sheet.heat) if reading.key == key)


def packs(rows: tuple[PackRow, ...]) -> list[PackRow]:
    """Give all packs, those inside others too."""
    return [row for outer in rows for row in (outer, *packs(outer.inside))]


def test_there_are_dishes() -> None:
    """The demo book has at least twenty, or the tests below would look at nothing."""
    assert len(dish_ids()) >= 20
    assert set(dish_ids()) == set(checked().dishes)


@every_dish
def test_printed_water_adds_up_in_both_systems(id: str) -> None:
    """The pieces as printed are the total as printed, in mL and in fl oz, for every number of servings."""
    sheet = demo(id).sheet
    for at in SERVINGS:
        for system in System:
            pieces = [number(row.figure.text(system, at)) for row in sheet.waters]
            assert sum(pieces) == number(sheet.water_total.text(system, at))


@every_dish
def test_printed_weights_add_up(id: str) -> None:
    """What the parts weigh as printed is what the packs and the dish weigh as printed."""
    sheet = demo(id).sheet
    for at in SERVINGS:
        total = sum(_grams(row.dry.metric[at]) for row in sheet.parts)
        assert _grams(figure(sheet, "weight").metric[at]) == pytest.approx(total, abs=0.5)  # whole grams from 10 g on
        packed = sum(_grams(row.weight.metric[at]) for row in sheet.packs)
        assert packed == pytest.approx(total, abs=0.5 * len(sheet.packs))


def _grams(text: str) -> float:
    return number(text) * (1000 if text.endswith("kg") else 1)


@every_dish
def test_page_and_data_say_the_same(id: str) -> None:
    """Every figure of the page is the figure of `show dish --json`, for every number of servings."""
    one = demo(id)
    sheet = one.sheet
    for at in SERVINGS:
        data = one.data(at)
        assert data["servings"] == sheet.servings[at]
        assert data["water"]["carry_ml"] == number(sheet.water_total.metric[at])
        shown = {row.key: number(row.figure.metric[at]) for row in sheet.waters}
        step_ml = 10 if data["water"]["carry_ml"] >= 1000 else 0  # pieces of what is told in litres are told to 10 mL
        for key, value in data["water"].items():
            assert key == "carry_ml" or shown.get(key, 0) == pytest.approx(value, abs=step_ml), key
        fuel_g = _grams(figure(sheet, "fuel").metric[at])
        assert (data["heat"]["fuel_g"] or 0) == pytest.approx(fuel_g, rel=0.02, abs=0.5)
        assert data["heat"]["hot_water_ml"] == number(figure(sheet, "hot").metric[at])
        assert data["heat"]["boiling_point_c"] == number(figure(sheet, "boils").metric[at])
        hours, minutes = figure(sheet, "clock").metric[at].split(":")
        assert data["clock"]["minutes"] == int(hours) * 60 + int(minutes)
        assert _minutes(figure(sheet, "minutes").metric[at]) == data["clock"]["minutes"]
        assert _minutes(figure(sheet, "soak").metric[at]) == data["clock"]["soak_minutes"]
        assert _minutes(figure(sheet, "heat").metric[at]) == data["clock"]["heat_minutes"]


@every_dish
def test_parts_and_steps_of_page_and_data_are_the_same(id: str) -> None:
    """Amounts, waters and sentences too."""
    one = demo(id)
    for at in SERVINGS:
        data = one.data(at)
        for row, part in zip(one.sheet.parts, data["parts"], strict=True):
            assert part["dry_g"] == _grams(row.dry.metric[at])
            assert part["amount"] == {"metric": _told(row.dry.metric[at]), "us": _told(row.dry.us[at])}
            water = part["water"]
            assert water["offered_ml"] == number(row.offered.metric[at])
            assert water["drained_ml"] == number(row.drained.metric[at])
            assert (water["absorbed_ml"] or 0) == number(row.absorbed.metric[at])
        for step, told in zip(one.sheet.steps, data["steps"], strict=True):
            assert told["text"]["metric"] == plain(step.line, System.METRIC, at).replace(NO_BREAK, " ")
            assert told["start_minute"] == int(step.minute.metric[at])


def _told(text: str) -> str | None:
    return None if text == NOTHING else text.replace(NO_BREAK, " ")


def _minutes(text: str) -> int:
    hours, minutes = re.search(r"(\d+)\u00a0h", text), re.search(r"(\d+)\u00a0min", text)
    return (int(hours[1]) * 60 if hours else 0) + (int(minutes[1]) if minutes else 0)


@every_dish
def test_the_clock_of_the_steps_runs_forward(id: str) -> None:
    """Printed starts never fall back, end before the plate, and the long form is the minute told otherwise."""
    sheet = demo(id).sheet
    for at in SERVINGS:
        starts = [int(step.minute.metric[at]) for step in sheet.steps]
        assert starts == sorted(starts)
        assert starts[-1] <= _minutes(figure(sheet, "minutes").metric[at])
        for step, start in zip(sheet.steps, starts, strict=True):
            assert step.clock.metric[at] == f"{start // 60}:{start % 60:02d}"


@every_dish
def test_the_booklet_says_what_the_page_says(id: str) -> None:
    """Its minutes, its steps and its RAW are those of the page at the usual servings; its water is not less."""
    one = demo(id)
    sheet, at = one.sheet, one.sheet.usual
    for system in System:
        opening = one.opening(system)
        told = {one.label: one.figure for one in opening.figures}
        assert _minutes(told["From start to plate"]) == _minutes(figure(sheet, "minutes").metric[at])
        carry_ml = number(sheet.water_total.metric[at])
        # rounded up to 50 mL, or the fluid ounces of the page, which are what the cups of the steps come to
        assert carry_ml - 0.5 <= _told_ml(told["Water"]) < carry_ml * 1.05 + 50
        if system is System.US and carry_ml:
            assert told["Water"] == sheet.water_total.us[at]
        assert [step.minute for step in opening.steps] == [step.minute.text(system, at) for step in sheet.steps]
        for step, line in zip(opening.steps, field_lines(one.series), strict=True):
            assert "".join(span.text for span in step.line) == plain(line, system, at)
        assert bool(opening.raw) is bool(sheet.raw)


AMOUNT = r"[\d.¼⅓⅜½⅝⅔¾⅛⅞]+\u00a0[a-zL]+(?: \+ )?"
POURED = re.compile(rf"(?P<water>(?:{AMOUNT})+)(?: (?:cold|warm|hot|boiling|more))? water\b")
ROUNDS = re.compile(r"in (\d+) rounds")


def poured_ml(sheet: DishSheet, system: System, at: int) -> float:
    """Add up what the steps say to pour, as their words say it, in all rounds; heaters in the demo take sea water."""
    total = 0.0
    for step in sheet.steps:
        text = plain(step.line, system, at)
        rounds = ROUNDS.search(text)
        for found in POURED.finditer("" if "ration heater" in text else text):
            total += read_ml(found["water"]) * (int(rounds[1]) if rounds else 1)
    return total


def read_ml(text: str) -> float:
    """Read a printed water back; a dot is nothing."""
    if text == NOTHING:
        return 0.0
    found = parse(text.strip(" +"), Dimension.VOLUME, zero=True)
    assert isinstance(found, Quantity), text
    return found.base


@every_dish
def test_what_the_steps_pour_is_carried(id: str) -> None:
    """In both systems what is poured, read back from the page, is no more than what is carried, nor is what is heated.

    In metric units nothing is left over but what the rounding to 10 mL adds.
    """
    sheet = demo(id).sheet
    for at in SERVINGS:
        for system in System:
            carried, poured = read_ml(sheet.water_total.text(system, at)), poured_ml(sheet, system, at)
            assert poured <= carried + 1e-6
            assert read_ml(figure(sheet, "hot").text(system, at)) <= carried
            assert carried - poured < 10 if system is System.METRIC else carried - poured < 0.05 * carried + 30


def test_pours_are_read_back() -> None:
    """The pattern above finds what it looks for, or the test would prove nothing: 180 + 1500 mL of pasta and sauce."""
    assert poured_ml(demo("pasta-with-ragu").sheet, System.METRIC, 1) == 1680
    assert poured_ml(demo("pasta-with-ragu").sheet, System.METRIC, 11) == 2 * 500 + 6 * 1500


def _told_ml(text: str) -> float:
    """Give what the booklet's water comes to: mL, cups, or the household's own measure."""
    if text == field_words.NO_WATER:
        return 0.0
    found = parse(text, (Dimension.VOLUME, Dimension.COUNT))
    assert isinstance(found, Quantity), text
    return found.base * (checked().book.household.millilitres(found.noun) or 1.0)


@every_dish
def test_raw_stands_where_something_must_be_cooked_to_be_safe(id: str) -> None:
    """RAW is in the sheet, at the part and on the pack if, and only if, a component must be cooked to be safe."""
    one = demo(id)
    raw = {part.component.id for part in one.series.plan.parts if part.component.must_be_cooked is Cooking.TO_BE_SAFE}
    sheet = one.sheet
    assert bool(sheet.raw) is bool(raw)
    assert {row.component for row in sheet.parts if row.raw} == raw
    assert len(sheet.raw_parts) == len(raw)
    for pack in packs(sheet.packs):
        held = {item.component for inner in packs((pack,)) for item in inner.items}
        assert pack.raw is bool(held & raw)


def test_some_are_raw_and_some_are_not() -> None:
    """The demo book shows both, or the test above would say little."""
    assert {bool(demo(id).sheet.raw) for id in dish_ids()} == {True, False}


@every_dish
def test_steps_read_as_sentences(id: str) -> None:
    """Each begins with a capital or a figure (behind its verb in the booklet, small), and ends with one stop."""
    for step, short in zip(demo(id).sheet.steps, field_lines(demo(id).series), strict=True):
        for at in SERVINGS:
            for system in System:
                for line in (step.line, short):
                    text = plain(line, system, at)
                    behind_verb = bool(step.verb) and line is short
                    assert text[0].isupper() is not behind_verb or not text[0].isalpha(), text
                    assert text[-1] in ".!?", text
                    assert NOTHING not in text, text
                    assert ".." not in text, text
                    assert "  " not in text, text
                    assert " ," not in text, text
