"""Amounts: what is read, what is refused and how kindly, what is printed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.measure import (
    DOWN,
    LONGEST,
    NEAREST,
    UNITS,
    UP,
    Dimension,
    Quantity,
    Rounding,
    Unreadable,
    as_weighed,
    in_celsius,
    in_centimetres,
    in_cups,
    in_fahrenheit,
    in_feet,
    in_fluid_ounces,
    in_grams,
    in_inches,
    in_kcal,
    in_kj,
    in_metres,
    in_minutes,
    in_ml,
    in_ounces,
    in_percent,
    parse,
    plural,
    rounded,
    singular,
    written,
)
from packlarder.measure.rounding import on_ladder

AMOUNT = (Dimension.WEIGHT, Dimension.VOLUME)
CUP_ML = 236.5882365  # NIST Handbook 44, exact


def read(text: str, expect: Dimension | tuple[Dimension, ...] | None = None) -> Quantity:
    """Read an amount that must be readable."""
    found = parse(text, expect)
    assert isinstance(found, Quantity), found
    return found


def refused(text: str, expect: Dimension | tuple[Dimension, ...] | None = None) -> Unreadable:
    """Read an amount that must be refused."""
    found = parse(text, expect)
    assert isinstance(found, Unreadable), found
    return found


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("2 g", 2),
        ("2.5 g", 2.5),
        (".5 g", 0.5),
        ("1/2 g", 0.5),
        ("1 1/2 g", 1.5),
        ("3/2 g", 1.5),
        ("½ g", 0.5),
        ("1½ g", 1.5),
        ("1 ½ g", 1.5),
        ("1⁄3 g", 1 / 3),
        ("2g", 2),
        ("  2   g ", 2),
        ("2\u00a0g", 2),
        ("2\u2009g", 2),
        ("1\u202f250 g", 1250),
        ("1\u00a01/2 g", 1.5),
    ],
)
def test_numbers_are_read_as_cooks_write_them(text: str, number: float) -> None:
    """Whole numbers, points, fractions and fraction signs, with any kind of space, are all read."""
    assert read(text).number == pytest.approx(number)


@pytest.mark.parametrize(
    ("text", "base"),
    [
        ("1 kg", 1000),
        ("500 mg", 0.5),
        ("1 oz", 28.349523125),
        ("2 lbs", 907.18474),  # 2 x 453.59237
        ("250 mL", 250),
        ("250 ml", 250),
        ("250 ML", 250),
        ("3 dl", 300),
        ("4 cL", 40),
        ("1.5 L", 1500),
        ("2 cups", 2 * CUP_ML),
        ("2 Cups", 2 * CUP_ML),
        ("1 tbsp.", CUP_ML / 16),
        ("1 tsp", CUP_ML / 48),
        ("8 fl oz", CUP_ML),
        ("8 fl. oz", CUP_ML),
        ("1 pint", 2 * CUP_ML),
        ("1 quart", 4 * CUP_ML),
        ("90 s", 1.5),
        ("2 h", 120),
        ("2 days", 2880),
        ("-10 °C", -10),
        ("−10 C", -10),
        ("212 °F", 100),
        ("32F", 0),
        ("5 mm", 0.005),
        ("3 km", 3000),
        ("1000 ft", 304.8),
        ("10 in", 0.254),
        ("12 %", 0.12),
        ("12%", 0.12),
        ("100 kJ", 23.900573613766732),  # 100 / 4.184
        ("800 W", 0.8),
        ("3 kgs", 3000),
    ],
)
def test_units_come_to_their_size_in_the_base_unit(text: str, base: float) -> None:
    """Each unit comes to g, mL, min, °C, m, a share, kcal or kW by its exact size."""
    assert read(text).base == pytest.approx(base, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("2 tbsp + 1 tsp", 7, "tsp"),  # 2 x 3 + 1
        ("1 h 30 min", 90, "min"),
        ("1h30min", 90, "min"),
        ("1 lb 4 oz", 20, "oz"),  # 16 + 4
        ("1 cup + 1 tbsp", 17, "tbsp"),  # 16 + 1
        ("1 kg + 200 g", 1200, "g"),
        ("5 ft 6 in", 66, "in"),  # 5 x 12 + 6
        ("1 day 6 h", 30, "h"),
    ],
)
def test_sums_come_back_in_their_smallest_unit(text: str, number: float, unit: str) -> None:
    """Pieces of one kind add up, and the sum is exact because it is counted in the smallest unit."""
    found = read(text)
    assert (found.number, found.unit.name) == (number, unit)


@pytest.mark.parametrize(
    ("text", "number", "noun"),
    [
        ("2 eggs", 2, "egg"),
        ("1 egg", 1, "egg"),
        ("1½ eggs", 1.5, "egg"),
        ("3 slices", 3, "slice"),
        ("2 slices of bread", 2, "slice of bread"),
        ("2 egg yolks", 2, "egg yolk"),
        ("1 portion", 1, "portion"),
        ("4 tomatoes", 4, "tomato"),
        ("2 leaves", 2, "leaf"),
        ("3 berries", 3, "berry"),
        ("2 pouches", 2, "pouch"),
        ("3 mugs", 3, "mug"),
        ("2 pinches", 2, "pinch"),
        ("2 eggs + 1 egg", 3, "egg"),
    ],
)
def test_plain_nouns_are_counted(text: str, number: float, noun: str) -> None:
    """A noun that is no unit is a count of that thing, kept in the form for one."""
    found = read(text, Dimension.COUNT)
    assert (found.number, found.noun, found.dimension) == (number, noun, Dimension.COUNT)


@pytest.mark.parametrize(
    ("text", "message", "help_"),
    [
        ("1,5 L", '"1,5 L" has a comma in its number, which can mean two things', "write 1.5 L"),
        (
            "1,500 g",
            '"1,500 g" has a comma in its number, which can mean two things',
            "write 1.500 g, or 1500 g if thousands are meant",
        ),
        (
            "1:30",
            '"1:30" has a colon, which can mean two things',
            "for a time write 1 h 30 min; for one amount to another write both in full",
        ),
        (
            "1 500 g",
            '"1 500 g" has a space inside its number',
            "write 1500 g, or both units if two amounts are meant",
        ),
        ("2-3 g", '"2-3 g" gives a range; the sums need one amount', "write one of the two, or the middle"),
        ("2 – 3 cups", '"2 – 3 cups" gives a range; the sums need one amount', "write one of the two, or the middle"),
        ("1/0 g", '"1/0 g" divides by zero', "write a fraction such as ½ or 1/2"),
        (
            "1 3/2 g",
            '"1 3/2 g" has a fraction of one or more after a whole number',
            "write a whole number and a part of one, such as 1 1/2",
        ),
        ("-2 g", '"-2 g" is below zero, which only a temperature can be', "leave out the minus sign"),
        ("0 g", '"0 g" comes to nothing', "write an amount above zero, or leave the line out"),
        ("0.0000000001 g", '"0.0000000001 g" comes to nothing', "write an amount above zero, or leave the line out"),
        ("-300 °C", '"-300 °C" is colder than anything can be', "look for a slip in the number or the unit"),
        (
            "12345678901 g",
            '"12345678901 g" is more than any kitchen holds',
            "amounts have at most nine digits before the point: look for a slip",
        ),
        ("10 c", 'no unit is called "c"', "c can be a cup or a degree Celsius: write cup or °C"),
        ("2 T", 'no unit is called "T"', "T can be a spoon of either size: write tbsp or tsp"),
        ("20 °", 'no unit is called "°"', "write °C or °F"),
        ("2 gramms", 'no unit is called "gramms"', 'did you mean "grams"?'),
        ("2 tbps", 'no unit is called "tbps"', 'did you mean "tbsp"?'),
        ("150 g fresh", '"150 g fresh" has words after its unit', "write the amount alone: a number and its unit"),
        ("10 °C + 5 °C", '"10 °C + 5 °C" adds temperatures', "write one temperature"),
        (
            "2 g + 3 mL",
            '"2 g + 3 mL" adds things that can not be added',
            "add a weight to a weight, a volume to a volume; write the others on their own",
        ),
        (
            "2 eggs + 1 onion",
            '"2 eggs + 1 onion" adds things that can not be added',
            "add a weight to a weight, a volume to a volume; write the others on their own",
        ),
    ],
)
def test_what_can_mean_two_things_is_refused_in_kind_words(text: str, message: str, help_: str) -> None:
    """Each way of writing that people read in two ways gives its own sentence and its own way out."""
    assert refused(text) == Unreadable(message=message, help=help_)


@pytest.mark.parametrize("text", ["nan g", "inf", "-inf °C", "two eggs", "about 2 g", "+ 2 g", "٣ g", "g", "%", "½½"])
def test_what_starts_with_no_number_is_refused(text: str) -> None:
    """Words in place of a number, digits of other scripts and nan are no amounts."""
    assert refused(text).help


@pytest.mark.parametrize("text", ["1..2 g", "2.5.3 g", "1_000 g", "1e3 g", "2 g +", "2 x 100 g", "0x10 g", "1/2/3 g"])
def test_what_only_looks_like_a_number_is_refused(text: str) -> None:
    """Programmers' numbers and unfinished sums are no amounts."""
    assert refused(text).message


@pytest.mark.parametrize("text", ["", "   ", "\u00a0"])
def test_nothing_at_all_is_refused(text: str) -> None:
    """An empty text is said to be empty."""
    assert refused(text).message == "there is no amount here"


def test_a_text_too_long_is_refused_unread() -> None:
    """A text of more than 60 characters is refused by its length, and one of 60 is read."""
    longest = "1" + " " * (LONGEST - 2) + "g"
    assert read(longest).base == 1
    assert refused(f"{longest} ").message == "an amount takes a few words, this has 61 characters"


@pytest.mark.parametrize(
    ("text", "expect", "message", "help_"),
    [
        (
            "10 °C",
            AMOUNT,
            "a weight or a volume is wanted here, °C is a temperature",
            "a weight or a volume is written with g, kg, oz, lb, mL, L, cup, tbsp, tsp or fl oz",
        ),
        (
            "8 oz",
            Dimension.VOLUME,
            "a volume is wanted here, oz is a weight",
            "oz is a weight; for a volume write fl oz",
        ),
        ("10 m", Dimension.TIME, "a time is wanted here, m is a length", "m is a length; for minutes write min"),
        (
            "250",
            AMOUNT,
            '"250" has a number without a unit',
            "a weight or a volume is written with g, kg, oz, lb, mL, L, cup, tbsp, tsp or fl oz",
        ),
        ("1 h 30", Dimension.TIME, '"1 h 30" has a number without a unit', "a time is written with min, h, s or days"),
        ("2 eggs", Dimension.WEIGHT, 'no unit is called "eggs"', "a weight is written with g, kg, oz or lb"),
        (
            "2 cups",
            Dimension.COUNT,
            "a number of things is wanted here, cup is a volume",
            "a number of things is written with a plain noun, as in 2 eggs",
        ),
        ("3 litters", Dimension.VOLUME, 'no unit is called "litters"', 'did you mean "liters"?'),
    ],
)
def test_another_kind_than_wanted_is_refused(
    text: str, expect: Dimension | tuple[Dimension, ...], message: str, help_: str
) -> None:
    """Where a weight is wanted and a temperature stands, the sentence names both."""
    assert refused(text, expect) == Unreadable(message=message, help=help_)


@pytest.mark.parametrize("text", ["0 min", "0 °C", "0 m", "0 %"])
def test_some_kinds_may_be_zero(text: str) -> None:
    """No wait, freezing point, sea level and no loss are all real."""
    assert read(text).number == 0


def test_zero_is_read_where_it_is_allowed() -> None:
    """A packet's label may say 0 g of fat."""
    assert parse("0 g", Dimension.WEIGHT, zero=True) == Quantity(number=0, unit=read("1 g").unit)


@given(text=st.text(max_size=80), expect=st.sampled_from([None, *Dimension]))
def test_reading_never_fails(text: str, expect: Dimension | None) -> None:
    """Any text gives an amount of what was expected or a sentence with a way out, never an exception."""
    found = parse(text, expect)
    if isinstance(found, Quantity):
        assert expect is None or found.dimension is expect
    else:
        assert found.message
        assert found.help


@given(text=st.text(alphabet="0123456789½¼/.,:+- \u00a0gkLmlcuptsbohdays°CF%e", max_size=20))
def test_reading_near_amounts_never_fails(text: str) -> None:
    """Texts made of an amount's own characters are read or refused, never an exception."""
    assert isinstance(parse(text), Quantity | Unreadable)


NOUNS = (
    "egg",
    "slice",
    "portion",
    "tomato",
    "leaf",
    "berry",
    "pouch",
    "box",
    "egg yolk",
    "slice of bread",
    "mug",
    "toe",
)
POSITIVE = st.floats(min_value=1e-4, max_value=9e8, allow_nan=False)
QUANTITIES = st.one_of(
    st.builds(
        lambda number, unit: Quantity(number=number, unit=unit),
        st.one_of(POSITIVE, st.integers(1, 999).map(float), st.integers(1, 96).map(lambda eighths: eighths / 8)),
        st.sampled_from(UNITS),
    ),
    st.builds(
        lambda number, noun: Quantity(number=number, unit=read("1 egg").unit, noun=noun),
        POSITIVE,
        st.sampled_from(NOUNS),
    ),
    st.builds(
        lambda number: Quantity(number=number, unit=read("1 °C").unit), st.floats(min_value=-273, max_value=-0.001)
    ),
)


@given(quantity=QUANTITIES)
def test_what_is_written_reads_back_the_same(quantity: Quantity) -> None:
    """A quantity written out is read back exactly, and written again it is the same text."""
    text = written(quantity)
    if len(text) <= LONGEST:
        assert read(text) == quantity
        assert written(read(text)) == text


@pytest.mark.parametrize(
    ("text", "same"),
    [("1.5 cups", "1½ cups"), ("1 cups", "1 cup"), ("0.5 cup", "½ cup"), ("2.5 g", "2.5 g"), ("-3 C", "−3 °C")],
)
def test_amounts_are_written_as_cooks_write_them(text: str, same: str) -> None:
    """Cups take fraction signs and a plural, grams a decimal point, temperatures a real minus."""
    assert written(read(text)) == same.replace(" ", "\u00a0")


@given(noun=st.text(alphabet="aehilmnorstuxyz ", min_size=1, max_size=12))
def test_the_noun_for_one_stays_the_noun_for_one(noun: str) -> None:
    """Taking the noun for one twice, or by way of its plural, changes nothing more."""
    one = singular(noun)
    assert singular(one) == one
    assert singular(plural(one)) == one


@pytest.mark.parametrize(
    ("grams", "nearest", "up", "weighed"),
    [
        (0, "0 g", "0 g", "0 g"),
        (0.01, "0.1 g", "0.1 g", "0.1 g"),  # never to nothing
        (0.34, "0.3 g", "0.4 g", "0.3 g"),
        (0.97, "1 g", "1 g", "1 g"),
        (2.2, "2 g", "2.5 g", "2.2 g"),
        (9.8, "10 g", "10 g", "9.8 g"),
        (47.4, "47 g", "48 g", "47 g"),
        (112, "110 g", "115 g", "112 g"),
        (998, "1.00 kg", "1.00 kg", "998 g"),  # 200 x 5 g
        (1247, "1.25 kg", "1.25 kg", "1247 g"),
        (12_345, "12.35 kg", "12.35 kg", "12.35 kg"),
    ],
)
def test_weights_are_rounded_for_a_kitchen(grams: float, nearest: str, up: str, weighed: str) -> None:
    """Worked-out weights go to steps a kitchen can weigh, weighed ones keep the gram that was read."""
    assert (in_grams(grams), in_grams(grams, UP), as_weighed(grams)) == tuple(
        text.replace(" ", "\u00a0") for text in (nearest, up, weighed)
    )


@pytest.mark.parametrize(
    ("millilitres", "nearest", "up"),
    [
        (0.02, "0.1 mL", "0.1 mL"),
        (2.46, "2.5 mL", "2.5 mL"),  # half a teaspoon
        (7.2, "7 mL", "8 mL"),
        (47, "45 mL", "50 mL"),
        (246, "250 mL", "250 mL"),
        (241, "240 mL", "250 mL"),
        (240, "240 mL", "240 mL"),
        (996, "1.00 L", "1.00 L"),
        (1234, "1.23 L", "1.24 L"),
    ],
)
def test_volumes_are_rounded_for_a_kitchen(millilitres: float, nearest: str, up: str) -> None:
    """Water goes to steps that a jug shows; rounded up it never falls short."""
    assert (in_ml(millilitres), in_ml(millilitres, UP)) == (nearest.replace(" ", "\u00a0"), up.replace(" ", "\u00a0"))


@pytest.mark.parametrize(
    ("printed", "text"),
    [
        (in_ounces(1.0), "0.04 oz"),  # 1 / 28.35 = 0.035
        (in_ounces(10), "0.4 oz"),  # 0.353
        (in_ounces(50), "1¾ oz"),  # 1.764
        (in_ounces(453.59237), "1 lb"),
        (in_ounces(567), "1 lb 4 oz"),  # 20.0 oz
        (in_ounces(580), "1 lb 4½ oz"),  # 20.46
        (in_ounces(453.0), "1 lb"),  # 15.98 goes to 16
        (in_ounces(2268), "5 lb"),
        (in_fluid_ounces(30), "1 fl oz"),
        (in_fluid_ounces(100), "3½ fl oz"),  # 3.38
        (in_fluid_ounces(250), "8½ fl oz"),  # 8.45
        (in_cups(CUP_ML), "1 cup"),
        (in_cups(80), "⅓ cup"),  # 0.338
        (in_cups(250), "1 cup"),  # 1.057
        (in_cups(250, UP), "1¼ cups"),
        (in_cups(250, DOWN), "1 cup"),
        (in_cups(400), "1⅔ cups"),  # 1.691
        (in_cups(1000), "4 cups"),  # 4.227
        (in_cups(1000, UP), "4½ cups"),
        (in_cups(3780), "4 quarts"),  # 15.98 cups
        (in_cups(5000), "5¼ quarts"),  # 21.1 cups
        (in_cups(20), "0.7 fl oz"),  # less than ¼ cup
        (in_minutes(0.5), "30 s"),
        (in_minutes(0.999), "1 min"),
        (in_minutes(59.4), "59 min"),
        (in_minutes(92), "1 h 30 min"),
        (in_minutes(92, UP), "1 h 35 min"),
        (in_minutes(120), "2 h"),
        (in_minutes(36 * 60), "36 h"),
        (in_minutes(5 * 1440), "5 days"),
        (in_minutes(4.6 * 1440), "4½ days"),
        (in_minutes(0), "0 min"),
        (in_celsius(89.98), "90 °C"),
        (in_celsius(98.31, step=0.5), "98.5 °C"),
        (in_celsius(-9.8), "−10 °C"),
        (in_celsius(-0.3), "0 °C"),
        (in_celsius(71.9, DOWN), "71 °C"),
        (in_fahrenheit(100), "212 °F"),
        (in_fahrenheit(-18), "0 °F"),  # -0.4
        (in_metres(1609.3), "1609 m"),
        (in_metres(-430), "−430 m"),
        (in_feet(1524), "5000 ft"),
        (in_centimetres(0.0104), "1 cm"),
        (in_centimetres(0.163), "16 cm"),
        (in_inches(0.01), "½ in"),  # 0.39
        (in_percent(0.0034), "0.3 %"),
        (in_percent(0.123), "12 %"),
        (in_kcal(643), "640 kcal"),
        (in_kcal(48), "50 kcal"),
        (in_kj(376.8), "380 kJ"),
    ],
)
def test_other_amounts_are_rounded_for_a_kitchen(printed: str, text: str) -> None:
    """Each kind of amount has steps of its own, in metric and in US customary units."""
    assert printed == text.replace("fl oz", "fl\u202foz").replace(" ", "\u00a0")


PRINTERS = {
    in_grams: Dimension.WEIGHT,
    as_weighed: Dimension.WEIGHT,
    in_ml: Dimension.VOLUME,
    in_ounces: Dimension.WEIGHT,
    in_fluid_ounces: Dimension.VOLUME,
    in_cups: Dimension.VOLUME,
    in_minutes: Dimension.TIME,
    in_kcal: Dimension.ENERGY,
}


@given(
    value=st.floats(min_value=1e-3, max_value=1e5),
    printer=st.sampled_from(list(PRINTERS)),
    rounding=st.sampled_from(Rounding),
)
def test_what_is_printed_rounds_no_further(value: float, printer: object, rounding: Rounding) -> None:
    """A printed amount, read back and printed again, is the same text, and never nothing."""
    assert callable(printer)
    text = printer(value, rounding)
    back = read(text, PRINTERS[printer]).base
    assert back > 0
    assert printer(back, rounding) == text


@given(
    value=st.floats(min_value=0.5, max_value=1e5),
    printer=st.sampled_from([in_grams, as_weighed, in_ml, in_minutes]),
)
def test_safe_rounding_is_on_its_side(value: float, printer: object) -> None:
    """Rounded up is never less, rounded down never more, than what was worked out."""
    assert callable(printer)
    above, below = (read(printer(value, rounding)).base for rounding in (UP, DOWN))
    assert below <= value * (1 + 1e-9) or value < 1  # below one step it is that step, not nothing
    assert above >= value * (1 - 1e-9)


@given(value=st.floats(min_value=20, max_value=1e5))
def test_grams_and_millilitres_are_close(value: float) -> None:
    """From 20 up, rounding moves a weight by 2.5 % at most, a volume by 12.5 % at most below 100 mL, then 5 %."""
    assert abs(read(in_grams(value)).base - value) <= 0.025 * value  # 0.5 / 20
    assert abs(read(in_ml(value)).base - value) <= (0.125 if value < 100 else 0.05) * value  # 2.5 / 20, 5 / 100


def test_arithmetic_noise_does_not_round_up() -> None:
    """0.1 + 0.2 = 0.30000000000000004 rounds up to 0.3, not to 0.4."""
    assert in_grams(0.1 + 0.2, UP) == "0.3\u00a0g"
    assert rounded(3 * 1.1, 1.1, UP) == pytest.approx(3.3)
    assert rounded(29.999999999999996, 10, DOWN) == 30
    assert rounded(25, 10, NEAREST) == 30


@pytest.mark.parametrize("bad", [-1.0, float("nan"), float("inf")])
@pytest.mark.parametrize("printer", [in_grams, in_ml, in_ounces, in_cups, in_fluid_ounces, in_minutes, in_kcal])
def test_no_amount_is_not_printed(printer: object, bad: float) -> None:
    """Below zero, nan and infinity are bugs of ours and are not printed as if they were amounts."""
    assert callable(printer)
    with pytest.raises(ValueError, match="no amount"):
        printer(bad)


def test_a_ladder_must_reach_up_to_what_is_rounded() -> None:
    """A ladder that ends too low is a bug of ours and says so."""
    assert on_ladder(0.44, ((1, 0.1), (10, 1))) == (4, 0.1)
    with pytest.raises(ValueError, match="above the last rung"):
        on_ladder(11, ((1, 0.1), (10, 1)))


def test_every_unit_is_read_by_every_one_of_its_words() -> None:
    """No two units share a word, and each word leads to its own unit."""
    for unit in UNITS:
        for word in (unit.name, unit.plural or unit.name, *unit.words):
            assert read(f"2 {word}").unit is unit
