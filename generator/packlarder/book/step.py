"""A step of a dish: a plain sentence, or a verb with its parts."""

from enum import StrEnum

from pydantic import model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.bring_back import Water
from packlarder.book.fields import Degrees, Minutes, Text, Volume, YesNo
from packlarder.book.names import PartNames


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
    to: Degrees | None = None
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

    @model_validator(mode="after")
    def _one_verb(self) -> "Step":
        named = [verb for verb in Verb if getattr(self, verb.replace(" ", "_")) is not None]
        if len(named) != 1:
            verbs = ", ".join(f"`{verb}`" for verb in Verb)
            raise slip("one-verb", f"a step has one verb, this has {len(named) or 'none'}", f"name one of {verbs}")
        return self

    @property
    def verb(self) -> Verb:
        """Give the verb."""
        return next(verb for verb in Verb if getattr(self, verb.replace(" ", "_")) is not None)

    @property
    def parts(self) -> tuple[str, ...]:
        """Give the names of the parts it works on; none for `drain` and `wait`."""
        found = getattr(self, self.verb.replace(" ", "_"))
        return found if isinstance(found, tuple) else ()


class Sentence(BookModel):
    """A step that is a plain sentence."""

    sentence: Text

    @model_validator(mode="before")
    @classmethod
    def _text_alone(cls, value: object) -> object:
        return {"sentence": value} if isinstance(value, str) else value
