"""The labels of all packs of a trip: with mark, day, meal, time of day and portions, and who carries it."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from packlarder.book.household import Household
from packlarder.reckon.records import ComponentSums, PlannedPack, PlannedStep
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.sheets import store_words, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.label_sheet import LabelSet, TripPackLabel
from packlarder.sheets.pack_labels import PackSetter, code_text, contained, traced
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import weight
from packlarder.sheets.trip_dish import at_its_stop, bought_besides, check_meals, is_tub, one_for_each
from packlarder.sheets.trip_field_clock import step_moments
from packlarder.sheets.trip_field_packs import bought_told
from packlarder.sheets.trip_field_people import components_of, not_for
from packlarder.sheets.trip_lists import named_in, pack_called
from packlarder.sheets.trip_names import FOR, clock, day_called, portions_called, short_date
from packlarder.sheets.trip_opening import meal_day
from packlarder.sheets.words import lowered


def trip_labels(trip: TripSums, household: Household, *, edition: str, title: str) -> LabelSet:
    """Build the labels of all packs, in the order in which they are opened; what is bought on the way has none."""
    system = System(household.units.value)
    of_meals = {
        mark: label
        for meal in trip.meals
        for mark, label in _MealSetter(meal, trip, household, system).by_mark().items()
    }
    return LabelSet(
        title=title,
        language=household.language,
        edition=edition,
        packs=tuple(
            of_meals.get(pack.mark) or _simple(pack, trip, system) for pack in trip.packs if pack.bought_at is None
        ),
        with_code=household.larder.code_on_labels,
    )


class _MealSetter(PackSetter):
    """Sets the packs of a meal; they are called by their marks, and times are those of the day."""

    def __init__(self, meal: TripMeal, trip: TripSums, household: Household, system: System) -> None:
        dish = at_its_stop((meal,), trip, household)
        super().__init__(dish, dish_sheet(dish, check_meals((meal,), dish.household)), system, trip.place)
        self.meal = meal
        self.trip = trip
        self.components = components_of(meal)
        self.moments = step_moments(meal, trip)
        self.packs: Mapping[str, TripPack] = MappingProxyType({pack.mark: pack for pack in trip.packs})

    def by_mark(self) -> dict[str, TripPackLabel]:
        """Give the labels by the marks of their packs, for each eater where they have packs of their own."""
        packs = [one for pack in self.dish.plan.packs for one in (pack, *pack.inside)]
        found: dict[str, TripPackLabel] = {}
        for pack, label in zip(packs, self.labels(), strict=True):
            own = one_for_each(self.meal, pack.number.partition(".")[2], self.trip)
            found |= {one.mark: self._for_one(label, pack, one) for one in own} or {pack.number: label}
        return found

    def _for_one(self, label: TripPackLabel, pack: PlannedPack, own: TripPack) -> TripPackLabel:
        """Set the pack of one eater: the name, their share of food and water, and how high both stand."""
        step = self._first_step(pack)
        dry_g = sum(item.grams for item in own.items)
        told = replace(
            label,
            servings=FOR.format(names=own.for_),
            number=self._numbered(own.mark, pack),
            holds=tuple(
                store_words.PART.format(weight=weight(item.grams, self.system), name=lowered(item.called))
                for item in own.items
            ),
            net=weight(own.grams, self.system),
            water="" if step is None else self._poured(step, own.water_ml),
            fill_mark=self._filled_to(own.water_ml, dry_g) if label.fill_mark else "",
            bearer=own.bearer,
        )
        return replace(told, code_text=code_text(told))

    def numbered(self, pack: PlannedPack) -> str:
        """Give its mark, and which pack of the meal it is."""
        return self._numbered(pack.number, pack)

    def _numbered(self, mark: str, pack: PlannedPack) -> str:
        nth, count = pack.number.partition(".")[2], len(self.dish.plan.packs)
        return trip_words.LABEL_PACK.format(mark=mark, nth=nth, count=count)

    def numbered_inside(self, inner: PlannedPack, outer: PlannedPack) -> str:
        """Give its mark, and that of the pack it lies in."""
        return trip_words.LABEL_INSIDE.format(mark=inner.number, outer=outer.number)

    def opened_at(self, step: PlannedStep) -> str:
        """Say at what time of day a pack is opened."""
        at = self.moments[step.index]
        return trip_words.OPEN_AT.format(clock=clock(at.poured_at or at.begins, self.meal.on))

    def framed(self, label: TripPackLabel, pack: PlannedPack) -> TripPackLabel:
        """Add day and meal, portions, and who carries it; what is bought on the way is not in it yet."""
        known = self.packs.get(pack.number)
        return replace(
            label if known is None else self._from_home(label, known),
            dish=named_in(self.sheet.name, pack.called),
            servings=self._for_whom(),
            not_for=not_for(self.components, self.trip),
            when=trip_words.LABEL_WHEN.format(day=meal_day(self.meal, self.trip), meal=self.meal.meal.value),
            bearer="" if known is None else known.bearer,
        )

    def held(self, pack: PlannedPack) -> Sequence[ComponentSums]:
        """Give what is in a pack, with the forms that stand in for its own."""
        return [self.components[index] for index in pack.all_parts]

    def _for_whom(self) -> str:
        """Say for how many portions, and for whom if not for all."""
        portions = portions_called(self.meal.portions)
        names = words.COMMA.join(self.meal.eaters)
        if len(self.meal.eaters) == len(self.trip.eaters):
            return trip_words.LABEL_PORTIONS.format(portions=portions)
        if len(self.meal.eaters) == 1:
            return FOR.format(names=names)
        return trip_words.LABEL_EATERS.format(names=names, portions=portions)

    def _from_home(self, label: TripPackLabel, known: TripPack) -> TripPackLabel:
        besides = bought_besides(known.mark, self.trip)
        if not besides:
            return label
        bought = (bought_told(one, self.trip) for one in besides)
        return replace(label, holds=(*_holds(known, self.system), *bought), net=weight(known.grams, self.system))


def _simple(pack: TripPack, trip: TripSums, system: System) -> TripPackLabel:
    """Set the label of what is eaten from the bag, and of a tub: what is in it, and for when."""
    held = [item.component for item in pack.items]
    label = TripPackLabel(
        file=trip.place.file,
        dish=pack_called(pack, trip),
        servings="",
        when=_when(pack, trip),
        number=pack.mark,
        order="",
        holds=_holds(pack, system),
        net=weight(pack.grams, system),
        raw=pack.raw,
        take_out=words.SACHET if pack.sachet else "",
        water="",
        minutes="",
        done="",
        fill_mark="",
        contains=contained(held),
        may_contain=traced(held),
        caution=store_words.RAW_PACK if pack.raw else "",
        not_for=not_for(held, trip),
        code_text="",
        bearer=pack.bearer,
    )
    return replace(label, code_text=code_text(label))


def _when(pack: TripPack, trip: TripSums) -> str:
    if is_tub(pack):
        return trip_words.LABEL_TUB
    day = day_called(trip, pack.day)
    return day if pack.spare else trip_words.DAY_AND_DATE.format(day=day, date=short_date(pack.on))


def _holds(pack: TripPack, system: System) -> tuple[str, ...]:
    """Name what is in it with its weight; in a tub, that of all its meals together."""
    by_name: dict[str, float] = {}
    for item in pack.items:
        name = lowered(item.component.model.name)
        by_name[name] = by_name.get(name, 0.0) + item.grams
    return tuple(trip_words.PART.format(name=name, weight=weight(grams, system)) for name, grams in by_name.items())
