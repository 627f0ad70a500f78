"""What a rule is shown: a component, or a dish with its clock and the journeys of its food, and where they stand."""

from collections.abc import Iterable, Iterator
from functools import cached_property

from packlarder.book.book import component_place, dish_place
from packlarder.book.bring_back import Warmth
from packlarder.book.component import Component
from packlarder.book.household import Household
from packlarder.book.step import Verb
from packlarder.faults import Place, Spot
from packlarder.figures.allergens import Allergen
from packlarder.figures.kinds import Cooking, Doneness, Group, Kind
from packlarder.figures.verbs import VERBS, Wets
from packlarder.reckon.ledger import bowl_warmth
from packlarder.reckon.records import ComponentSums, DishPlan, DishSums, PlannedPack, PlannedPart, PlannedStep
from packlarder.safety.food import follow
from packlarder.safety.heat import groups_of, perishable, raw_kinds, rows_asked
from packlarder.safety.hit import Hit
from packlarder.safety.journey import Journey


class ComponentCase:
    """A component that is held against the rules."""

    def __init__(self, sums: ComponentSums, household: Household) -> None:
        self.sums = sums
        self.household = household
        self.place = component_place(sums.id)

    @property
    def model(self) -> Component:
        """Give the component as written."""
        return self.sums.model

    @property
    def raw_kinds(self) -> frozenset[Kind]:
        """Give the kinds in it that are raw and must be cooked to be safe."""
        return raw_kinds(self.sums)

    @property
    def groups(self) -> frozenset[Group]:
        """Give the groups of the kinds in it."""
        return groups_of(self.sums.kinds)

    def hit(self, key: str, **words: str) -> Hit:
        """Make a hit at a key of the component's file."""
        return Hit(places=(self.place.at(key),), words={"component": self.model.name, **words})


class DishCase:
    """A dish that is held against the rules; `sums` is None where it could not be worked out.

    What is more than a look at the plan is worked out once, when a rule first asks for it; nearly all ask for the trail
    and for `perishable`, the parts that the two-hour limit holds for.
    """

    def __init__(self, plan: DishPlan, sums: DishSums | None, household: Household) -> None:
        self.plan = plan
        self.sums = sums
        self.household = household
        self.place = dish_place(plan.id)
        self.perishable = [part for part in plan.parts if perishable(part.component.kinds)]
        self.trail = follow(plan, household.authority)
        usual = household.usual_conditions
        self.height_m = usual.height.base if sums is None else sums.conditions.height_m
        self.air_c = usual.air.base if sums is None else sums.conditions.air_c

    @cached_property
    def here(self) -> Hit:
        """Give a hit about the dish as a whole, without words of its own."""
        return Hit(places=(self.place,))

    @cached_property
    def raw(self) -> list[PlannedPart]:
        """Give the parts that must be cooked to be safe."""
        return [part for part in self.plan.parts if part.component.must_be_cooked is Cooking.TO_BE_SAFE]

    @cached_property
    def ready_at(self) -> float:
        """Give the minute at which it is ready to eat."""
        return 0.0 if self.sums is None else ready_at(self.sums)

    @cached_property
    def kinds(self) -> frozenset[Kind]:
        """Give all kinds in it."""
        return frozenset().union(*[part.component.kinds for part in self.plan.parts])

    @cached_property
    def rows(self) -> list[frozenset[Doneness]]:
        """Give for each part the rows of the temperature table that it is heated by."""
        return [rows_asked(part.component) for part in self.plan.parts]

    @cached_property
    def asked(self) -> frozenset[Doneness]:
        """Give all these rows."""
        return frozenset().union(*self.rows)

    @cached_property
    def allergens(self) -> frozenset[Allergen]:
        """Give the allergens in it."""
        return frozenset().union(*[part.component.allergens for part in self.plan.parts])

    @cached_property
    def wets_perishable(self) -> frozenset[int]:
        """Give the steps that first wet what the two-hour limit holds for."""
        found = [self.journey(part).wet_at for part in self.perishable]
        return frozenset(index for index in found if index is not None)

    @cached_property
    def verbs(self) -> set[Verb | None]:
        """Give the verbs of its steps."""
        return {step.verb for step in self.plan.steps}

    @cached_property
    def on_stove(self) -> bool:
        """Tell whether it wants the stove, if only for hot water."""
        return any(_wants_stove(self.plan, step) for step in self.plan.steps)

    @cached_property
    def heater_steps(self) -> list[PlannedStep]:
        """Give the steps on a ration heater."""
        return [step for step in self.plan.steps if step.heater]

    @cached_property
    def unboiled(self) -> bool:
        """Tell whether some water reaches a mouth without a boil."""
        return any(_drinks_unboiled(self.plan, journey) for journey in self.trail.journeys)

    def journey(self, part: PlannedPart) -> Journey:
        """Give the journey of a part."""
        return self.trail.journeys[part.index]

    def raw_with(self, kind: Kind) -> Iterator[PlannedPart]:
        """Give the raw parts that hold a kind raw."""
        return (part for part in self.raw if kind in raw_kinds(part.component))

    def steps_with(self, part: int, *verbs: Verb) -> Iterator[PlannedStep]:
        """Give the steps with one of these verbs that name a part, those on a heater left out."""
        return (step for step in self.plan.steps if step.verb in verbs and part in step.parts and not step.heater)

    def minutes(self, step: PlannedStep) -> float:
        """Give how long a step lasts: as it says, as the clock has it, or as its parts' components say."""
        if step.minutes is not None:
            return step.minutes
        if self.sums is not None:
            return self.sums.steps[step.index].wait_min
        waters = (self.plan.parts[index].component.water for index in step.parts)
        return max((water.wait_min for water in waters if water is not None), default=0.0)

    def step_place(self, index: int) -> Place:
        """Give the place of a step: its verb, or the sentence."""
        verb = self.plan.steps[index].verb
        place = self.place.at("steps", index)
        return place if verb is None else place.at(verb.value, spot=Spot.KEY)

    def part_place(self, part: PlannedPart) -> Place:
        """Give the place of a part's line in the dish."""
        return self.place.at("parts", part.index, self.plan.model.parts[part.index].name, spot=Spot.KEY)

    def pack_place(self, pack: PlannedPack) -> Place:
        """Give the place of a pack; of one that was worked out, the list of parts."""
        if not pack.written:
            return self.place.at("parts", spot=Spot.KEY)
        outer, _, nth = pack.number.partition(".")
        place = self.place.at("packs", int(outer) - 1)
        if not nth:
            return place
        holds = self.plan.model.packs[int(outer) - 1].holds
        inner = [position for position, item in enumerate(holds) if not isinstance(item, str)]
        return place.at(inner[int(nth) - 1])

    def packs(self) -> Iterator[PlannedPack]:
        """Give every pack, those inside packs too."""
        waiting = list(self.plan.packs)
        while waiting:
            pack = waiting.pop(0)
            yield pack
            waiting = [*pack.inside, *waiting]

    def hit(self, part: PlannedPart, step: int | None, *also: Place, **words: str) -> Hit:
        """Make a hit about a part at a step (None: at its line in the dish), naming its component's file as well."""
        source = component_place(part.component.id)
        here = (self.part_place(part),) if step is None else (self.step_place(step), self.part_place(part))
        return Hit(places=(*here, *also, source), words={"part": spoken(part), **words})

    def note(self, facts: tuple[str, ...] = (), **words: str) -> Hit:
        """Make a hit about the dish as a whole; `facts` outrank the rule's own."""
        return Hit(places=(self.place,), words=words, facts=facts)


def ready_at(sums: DishSums) -> float:
    """Give the minute at which a dish is ready to eat."""
    return max([step.end_min for step in sums.steps], default=0.0)


def _wants_stove(plan: DishPlan, step: PlannedStep) -> bool:
    """Tell whether a step wants the stove, for food or for hot water."""
    if step.verb is None or step.heater:
        return False
    does = VERBS[step.verb]
    return does.on_stove or (does.gives_water and bowl_warmth(plan, step) is not Warmth.COLD)


def _drinks_unboiled(plan: DishPlan, journey: Journey) -> bool:
    """Tell whether a part takes water that never boils, before or after it is given; what the pot holds has boiled."""
    if journey.wet_at is None or journey.cooked_at is not None:
        return False
    step = plan.steps[journey.wet_at]
    if step.verb is None or VERBS[step.verb].wets is not Wets.YES:
        return False
    return bowl_warmth(plan, step) in (Warmth.COLD, Warmth.WARM)


def spoken(part: PlannedPart) -> str:
    """Give a part's name as it stands inside a sentence."""
    return part.called.lower()


def listed(names: Iterable[str]) -> str:
    """Give names as a list to read, each once."""
    return ", ".join(dict.fromkeys(names))
