"""A step of a dish: a plain sentence, or a verb with its parts."""

import re
from collections.abc import Mapping
from enum import StrEnum
from functools import cached_property

from pydantic import model_validator

from packlarder.book.base import BookModel, in_words, slip
from packlarder.book.bring_back import Water
from packlarder.book.fields import Minutes, Text, Volume, YesNo
from packlarder.book.limits import InsideDegrees
from packlarder.book.meant import closest
from packlarder.book.names import PartNames
from packlarder.faults import Spot


class Verb(StrEnum):
    """What a step does; figures/verbs says of each what it wets, cooks and boils off."""

    SOAK = "soak"
    MIX = "mix"
    MOISTEN = "moisten"
    POUR_OVER = "pour over"
    DRAIN = "drain"
    BOIL = "boil"
    SIMMER = "simmer"
    FRY = "fry"
    BAKE = "bake"
    WARM = "warm"
    STIR_IN = "stir in"
    WAIT = "wait"


class Fate(StrEnum):
    """Where drained water goes."""

    INTO_THE_POT = "into the pot"
    DRUNK = "drunk"
    AWAY = "away"


class Lid(StrEnum):
    """Whether the lid is on."""

    ON = "on"
    OFF = "off"


class HeatedOn(StrEnum):
    """What heats a step, where it is not the stove."""

    STOVE = "stove"
    HEATER = "ration heater"


class Step(BookModel):
    """One verb with its parts; water and minutes that are left out come from the components."""

    soak: PartNames | None = None
    """give plenty of water, wait"""
    mix: PartNames | None = None
    """stir with the measured water"""
    moisten: PartNames | None = None
    """wet with what is absorbed, wait"""
    pour_over: PartNames | None = None
    """pour measured boiling water into the pack, wait"""
    drain: Fate | None = None
    """pour off what was not taken: into the pot, drunk or away"""
    boil: PartNames | None = None
    """cook in boiling water"""
    simmer: PartNames | None = None
    """cook gently below a rolling boil"""
    fry: PartNames | None = None
    """cook in a hot pan"""
    bake: PartNames | None = None
    """cook under a lid in dry heat"""
    warm: PartNames | None = None
    """heat what is already cooked; it does not cook"""
    stir_in: PartNames | None = None
    """add to what is in the pot"""
    wait: Minutes | None = None
    """leave it alone"""
    in_: Volume | None = None
    """all the water in the pot when it starts, drained water included"""
    with_: Water | None = None
    """another water than the component's: `cold water`"""
    for_: Minutes | None = None
    """how long"""
    until: Text = ""
    """how to tell it is done"""
    to: InsideDegrees | None = None
    """the temperature it must reach inside"""
    on: HeatedOn = HeatedOn.STOVE
    """stove, or ration heater"""
    pot: Text = ""
    """which pot or pan, if not the usual one"""
    lid: Lid | None = None
    """on or off, if not as the verb has it"""
    cosy: YesNo = False
    """whether it waits in an insulated cosy"""
    say: Text = ""
    """words to add to the step"""

    @model_validator(mode="before")
    @classmethod
    def _no_sentence(cls, value: object) -> object:
        if value is None or isinstance(value, list):
            help = "write a plain sentence, or a verb with its parts: `- boil: noodles`"
            raise slip("no-step", "a step is wanted here", help)
        if isinstance(value, dict):
            _verb_with_parts(value)
            _sentence_with_signs(value)
        return value

    @model_validator(mode="after")
    def _one_verb(self) -> "Step":
        named = [verb for verb, field in _FIELDS.items() if getattr(self, field) is not None]
        if not named:
            verbs = ", ".join(f"`{verb}`" for verb in Verb)
            raise slip("one-verb", "no verb says what to do in this step", f"name one of {verbs}")
        if len(named) > 1:
            message = f"a step has one verb, this has {' and '.join(f'`{verb}`' for verb in named)}"
            raise slip("one-verb", message, "begin each on a line of its own with `- `", at=(named[1],), spot=Spot.KEY)
        return self

    @model_validator(mode="after")
    def _fitting_keys(self) -> "Step":
        fitting = FITTING[self.verb]
        for key, value in (("in", self.in_), ("with", self.with_), ("for", self.for_), ("to", self.to)):
            if value is not None and key not in fitting:
                message = f"`{key}` says nothing in a step with `{self.verb}`"
                raise slip("key-without-use", message, _MEANT[key], at=(key,), spot=Spot.KEY)
        return self

    @cached_property
    def verb(self) -> Verb:
        """Give the verb."""
        return next(verb for verb, field in _FIELDS.items() if getattr(self, field) is not None)

    @property
    def parts(self) -> tuple[str, ...]:
        """Give the names of the parts it works on; none for `drain` and `wait`."""
        found = getattr(self, _FIELDS[self.verb])
        return found if isinstance(found, tuple) else ()


def _verb_with_parts(written: Mapping[str, object]) -> None:
    """Raise slip(...) for a verb with nothing behind it."""
    if None not in written.values():
        return
    for verb in Verb:
        if verb in written and written[verb] is None:
            help = f"write it behind the verb, like `{verb}: {_EXAMPLES.get(verb, 'leek rings')}`"
            raise slip("empty-value", f"nothing stands after `{verb}`", help, at=(verb,), spot=Spot.KEY)


def _sentence_with_signs(written: Mapping[str, object]) -> None:
    """Raise slip(...) for a sentence that a colon or braces made a group of keys."""
    if not written.keys().isdisjoint(_FIELDS):
        return
    first, value = next(iter(written.items()), ("", None))
    is_sentence = isinstance(value, str) and bool(_SENTENCE.search(value))
    if not (is_sentence or " " in first or first[:1].isupper()):
        return
    if closest(first, map(in_words, Step.model_fields), least=_SURE if is_sentence else _LIKELY):
        return
    if all(value is None for value in written.values()):
        message = "braces make keys of this sentence"
    else:
        message = "the colon makes a key of what stands before it"
    raise slip("sentence-with-signs", message, "put the whole sentence in quotes", at=(first,), spot=Spot.KEY)


_FIELDS: Mapping[Verb, str] = {verb: verb.replace(" ", "_") for verb in Verb}
"""The field that holds what stands after each verb."""
_SENTENCE = re.compile(r"[.!?]$|(\S+\s+){3}\S")
"""What a value looks like that goes on with a sentence: a stop at its end, or four words."""
_LIKELY, _SURE = 0.6, 0.75
"""How alike a first word must be to a key to be taken for one: `Mind: it is hot.` does not mean `in`."""
_GIVES_WATER = frozenset({"with", "for"})
_HEATS = frozenset({"in", "for", "to"})
FITTING: Mapping[Verb, frozenset[str]] = {
    Verb.SOAK: _GIVES_WATER,
    Verb.MIX: _GIVES_WATER,
    Verb.MOISTEN: _GIVES_WATER,
    Verb.POUR_OVER: _GIVES_WATER,
    Verb.DRAIN: frozenset(),
    Verb.BOIL: _HEATS,
    Verb.SIMMER: _HEATS,
    Verb.FRY: _HEATS,
    Verb.BAKE: _HEATS,
    Verb.WARM: _HEATS,
    Verb.STIR_IN: frozenset({"in"}),
    Verb.WAIT: frozenset(),
}
"""Which of the keys for water, minutes and heat each verb heeds; another would be lost without a word."""

_MEANT = {
    "in": "for water that is given to the food write `with: 300 mL hot water`",
    "with": "for the water in the pot write `in: 600 mL`",
    "for": "write `- wait: 5 min` as a step of its own",
    "to": "leave it out, or heat it in a step of its own: simmer, fry, bake or warm",
}
_EXAMPLES = {Verb.DRAIN: "into the pot", Verb.WAIT: "5 min"}


class Sentence(BookModel):
    """A step that is a plain sentence."""

    sentence: Text

    @model_validator(mode="before")
    @classmethod
    def _text_alone(cls, value: object) -> object:
        return {"sentence": value} if isinstance(value, str) else value
