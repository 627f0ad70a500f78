"""What is said of a quantity that can not be read. One place, so that a second language needs no code."""

from packlarder.measure.units import UNITS, Dimension

WANTED: dict[Dimension, str] = {
    Dimension.WEIGHT: "a weight",
    Dimension.VOLUME: "a volume",
    Dimension.COUNT: "a number of things",
    Dimension.TIME: "a time",
    Dimension.TEMPERATURE: "a temperature",
    Dimension.LENGTH: "a length",
    Dimension.SHARE: "a share",
    Dimension.ENERGY: "an energy",
    Dimension.POWER: "a power",
}
EXAMPLES: dict[Dimension, tuple[str, ...]] = {
    Dimension.WEIGHT: ("g", "kg", "oz", "lb"),
    Dimension.VOLUME: ("mL", "L", "cup", "tbsp", "tsp", "fl oz"),
    Dimension.COUNT: ("a plain noun, as in 2 eggs",),
    Dimension.TIME: ("min", "h", "s", "days"),
    Dimension.TEMPERATURE: ("°C", "°F"),
    Dimension.LENGTH: ("mm", "cm", "m", "km", "ft", "in"),
    Dimension.SHARE: ("%",),
    Dimension.ENERGY: ("kcal", "kJ"),
    Dimension.POWER: ("W", "kW"),
}
UNCLEAR_WORDS: dict[str, str] = {
    "c": "c can be a cup or a degree Celsius: write cup or °C",
    "t": "t can be a spoon of either size or a tonne: write tsp, tbsp or kg",
    "T": "T can be a spoon of either size: write tbsp or tsp",
    "°": "write °C or °F",
    "degrees": "write °C or °F",
    "cal": "on food, cal may mean either size of calorie: write kcal",
    "calories": "on food, calories may mean either size: write kcal",
    "Cal": "on food, Cal means kcal: write kcal",
    "M": "write m for metres, min for minutes",
    "#": "write lb",
}
"""Words that mean different things to different people, and what to write in their place."""
HINTS: dict[tuple[str, Dimension], str] = {
    ("oz", Dimension.VOLUME): "oz is a weight; for a volume write fl oz",
    ("fl oz", Dimension.WEIGHT): "fl oz is a volume; for a weight write oz",
    ("m", Dimension.TIME): "m is a length; for minutes write min",
    ("%", Dimension.WEIGHT): "a share has no weight of its own; write g or oz",
}
"""(unit, what is wanted): the likely slip."""

EMPTY = "there is no amount here"
TOO_LONG = "an amount takes a few words, this has {length} characters"
TOO_LONG_HELP = "write one amount, such as 150 g or 1 h 30 min"
NO_NUMBER = '"{text}" does not start with a number'
COMMA = '"{text}" has a comma in its number, which can mean two things'
COMMA_HELP = "write {with_point}"
COMMA_OR_THOUSANDS_HELP = "write {with_point}, or {without} if thousands are meant"
COLON = '"{text}" has a colon, which can mean two things'
COLON_HELP = "for a time write {first} h {second} min; for one amount to another write both in full"
GAP = '"{text}" has a space inside its number'
GAP_HELP = "write {without}, or both units if two amounts are meant"
RANGE = '"{text}" gives a range; the sums need one amount'
RANGE_HELP = "write one of the two, or the middle"
NEGATIVE = '"{text}" is below zero, which only a temperature can be'
NEGATIVE_HELP = "leave out the minus sign"
ZERO = '"{text}" comes to nothing'
ZERO_HELP = "write an amount above zero, or leave the line out"
BY_NOTHING = '"{text}" divides by zero'
BY_NOTHING_HELP = "write a fraction such as ½ or 1/2"
BAD_FRACTION = '"{text}" has a fraction of one or more after a whole number'
BAD_FRACTION_HELP = "write a whole number and a part of one, such as 1 1/2"
TOO_LARGE = '"{text}" is more than any kitchen holds'
TOO_LARGE_HELP = "amounts have at most nine digits before the point: look for a slip"
TOO_COLD = '"{text}" is colder than anything can be'
TOO_COLD_HELP = "look for a slip in the number or the unit"
NO_UNIT = '"{text}" has a number without a unit'
WRITTEN_WITH = "{wanted} is written with {units}"
UNKNOWN_UNIT = 'no unit is called "{word}"'
DID_YOU_MEAN = 'did you mean "{word}"?'
WRONG_KIND = "{wanted} is wanted here, {unit} is {kind}"
WORDS_AFTER = '"{text}" has words after its unit'
WORDS_AFTER_HELP = "write the amount alone: a number and its unit"
MIXED_KINDS = '"{text}" adds things that can not be added'
MIXED_KINDS_HELP = "add a weight to a weight, a volume to a volume; write the others on their own"
NO_SUMS_OF_DEGREES = '"{text}" adds temperatures'
NO_SUMS_OF_DEGREES_HELP = "write one temperature"
CAN_NOT_READ = '"{text}" can not be read as an amount'
CAN_NOT_READ_HELP = "write a number and a unit, such as 150 g, 1½ cups or 1 h 30 min"


def wanted(dimensions: tuple[Dimension, ...]) -> str:
    """Say what is wanted: "a weight or a volume"."""
    return _either(tuple(WANTED[dimension] for dimension in dimensions))


def written_with(dimensions: tuple[Dimension, ...]) -> str:
    """Say how what is wanted is written: "a weight is written with g, kg, oz or lb"."""
    if len(dimensions) == len(Dimension):
        return CAN_NOT_READ_HELP
    examples = _either(tuple(example for dimension in dimensions for example in EXAMPLES[dimension]))
    return WRITTEN_WITH.format(wanted=wanted(dimensions), units=examples)


def words_of(dimensions: tuple[Dimension, ...]) -> tuple[str, ...]:
    """Give every word that a unit of these dimensions is written with."""
    return tuple(
        word for unit in UNITS if unit.dimension in dimensions for word in (unit.name, unit.plural, *unit.words) if word
    )


def _either(words: tuple[str, ...]) -> str:
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last
