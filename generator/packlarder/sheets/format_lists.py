"""The closed lists of the file format: units, verbs, kinds of food and more, from the tables themselves."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from packlarder.book.base import in_words
from packlarder.book.bring_back import Way
from packlarder.book.dish import Meal
from packlarder.book.docstrings import said_of_fields
from packlarder.book.step import Step
from packlarder.figures.allergens import ALLERGENS, AllergenFacts, allergens_meant
from packlarder.figures.fuels import FUELS
from packlarder.figures.kinds import KINDS
from packlarder.figures.stoves import STOVES
from packlarder.figures.temperatures import Authority
from packlarder.figures.verbs import VERBS, VerbFigures
from packlarder.measure import NO_BREAK, Dimension
from packlarder.measure.units import UNITS
from packlarder.sheets import format_words as words
from packlarder.sheets.book_sheet import KeyRow
from packlarder.sheets.words import opened


def _row(word: str, says: str, takes: str = "", example: str = "") -> KeyRow:
    return KeyRow(key=word, takes=takes, required=False, says=says, example=example)


def _amounts() -> tuple[KeyRow, ...]:
    units = {kind: ", ".join(unit.name for unit in UNITS if unit.dimension is kind) for kind in Dimension}
    units[Dimension.COUNT] = words.ANY_NOUN
    return tuple(
        _row(kind.value, says, units[kind], example) for kind in Dimension for says, example in (words.AMOUNTS[kind],)
    )


def _ways() -> tuple[KeyRow, ...]:
    return tuple(_row(way.value, words.WAYS[way]) for way in Way)


def _verbs() -> tuple[KeyRow, ...]:
    says = {in_words(name): opened(text) for name, text in said_of_fields(Step).items()}
    return tuple(_row(word, f"{says[word]}.", _what_it_does(verb)) for word, verb in VERBS.items())


def _what_it_does(verb: VerbFigures) -> str:
    facts = [verb.wets.value, verb.heats.value]
    facts += [words.LID_ON] if verb.lid_on else []
    facts += [words.BOILS_OFF] if verb.boils_off else []
    return "; ".join(facts)


def _kinds() -> tuple[KeyRow, ...]:
    return tuple(
        _row(
            kind.value,
            " ".join(
                filter(
                    None,
                    (
                        words.DONE.format(done=rules.done_when),
                        rules.caution,
                        words.DRYERS.format(freeze_dry=rules.freeze_dry.value, air_dry=rules.air_dry.value),
                    ),
                )
            ),
            words.UNCOOKED[rules.uncooked],
        )
        for kind, rules in KINDS.items()
    )


def _allergens() -> tuple[KeyRow, ...]:
    return tuple(
        _row(
            allergen.value,
            _also_read(facts),
            words.PART_OF.format(whole=facts.part_of.value) if facts.part_of else "",
        )
        for allergen, facts in ALLERGENS.items()
    )


def _also_read(facts: AllergenFacts) -> str:
    """Say what it is, and which other words are read as it; a word that could mean several is none of them."""
    others = [word for word in facts.also_called if allergens_meant(word) == (facts.allergen,)]
    also = f" {words.ALSO_READ.format(words=', '.join(others))}" if others else ""
    return f"{opened(facts.plain)}.{also}"


def _fuels() -> tuple[KeyRow, ...]:
    return tuple(
        _row(name, words.FUELS[name], words.HEAT.format(heat=f"{fuel.heat.value:g}")) for name, fuel in FUELS.items()
    )


def _stove_kinds() -> tuple[KeyRow, ...]:
    return tuple(
        _row(
            name,
            words.STOVES[name],
            words.EFFICIENCY.format(
                share=f"{stove.efficiency.value * 100:g}{NO_BREAK}%", power=f"{stove.power.value:g}{NO_BREAK}kW"
            ),
        )
        for name, stove in STOVES.items()
    )


def _authorities() -> tuple[KeyRow, ...]:
    return tuple(_row(one.value, words.AUTHORITIES[one]) for one in Authority)


def _meals() -> tuple[KeyRow, ...]:
    return tuple(_row(meal.value, words.MEALS[meal]) for meal in Meal)


CLOSED_LISTS: Mapping[str, Callable[[], tuple[KeyRow, ...]]] = MappingProxyType(
    {
        "amounts": _amounts,
        "ways": _ways,
        "verbs": _verbs,
        "kinds": _kinds,
        "allergens": _allergens,
        "fuels": _fuels,
        "stove-kinds": _stove_kinds,
        "authorities": _authorities,
        "meals": _meals,
    }
)
"""What gives the rows of each closed list, by the id of its section."""
