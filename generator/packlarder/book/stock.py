"""book.yaml: dryers, jars and pouches, where they stand, and the household's rules for what it dries."""

from enum import StrEnum

from pydantic import Field, model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.days import KeepFor
from packlarder.book.fields import Text, Whole, YesNo
from packlarder.book.limits import DryerHours, JarVolume, RoomDegrees, StoredWeight, TrayDepth, TrayWeight
from packlarder.book.names import ComponentName
from packlarder.figures.dryness import Drying
from packlarder.figures.keeping import Kept


class Together(StrEnum):
    """Whether raw and cooked food may share a drying run."""

    CAUTION = "caution"
    NEVER = "never"


class Dryer(BookModel):
    """A dryer."""

    dries: Drying
    """freeze-dried or air-dried: how food comes out of it"""
    trays: Whole
    """how many trays it takes"""
    a_tray: TrayWeight
    """the most fresh food that goes on one tray"""
    deep: TrayDepth | None = None
    """how deep a tray is filled, if you keep to a depth"""
    takes: DryerHours | None = None
    """how long a run usually takes; left out, as your last runs"""
    between: DryerHours | None = None
    """how long it rests between two runs: defrosting, cooling down"""

    @model_validator(mode="after")
    def _dries_at_home(self) -> "Dryer":
        if self.dries not in (Drying.FREEZE_DRIED, Drying.AIR_DRIED):
            message = f"a dryer gives no food that is {self.dries.value}"
            raise slip("not-a-drying", message, "write `freeze-dried` or `air-dried`", at=("dries",))
        return self


class ContainerKind(StrEnum):
    """What a container is."""

    JAR = "jar"
    POUCH = "pouch"
    BAG = "bag"


class ContainerSize(BookModel):
    """A size of jar, pouch or bag."""

    kind: ContainerKind
    """jar, pouch or bag"""
    holds: JarVolume
    """what it holds to the brim"""


class KeepingRule(BookModel):
    """How long the household keeps something."""

    what: Text = ""
    """a component, a kind or a group of food (`fruit`, `egg`); left out, anything"""
    dried: Drying | None = None
    """only what was dried so: freeze-dried or air-dried"""
    kept: Kept = Kept.SEALED
    """sealed, opened, or trip pack"""
    for_: KeepFor
    """how long: `18 months`"""
    why: Text = ""
    """what it rests on"""


class LarderRules(BookModel):
    """How the household keeps what it dries."""

    stores: dict[Text, RoomDegrees] = Field(default_factory=dict)
    """where containers stand, and how warm it is there in summer: `cellar shelf: 15 °C`"""
    keeping: tuple[KeepingRule, ...] = ()
    """how long you keep things, where you have a rule of your own"""
    at_least: dict[ComponentName, StoredWeight] = Field(default_factory=dict)
    """what you want to have in store, dry: `egg powder: 200 g`; below it runs short"""
    raw_with_cooked: Together = Together.CAUTION
    """raw and cooked food in one run: caution, or never"""
    code_on_labels: YesNo = True
    """whether labels carry a QR code with the instructions as plain text"""
