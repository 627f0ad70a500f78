"""From a trip as written to its meals: people and dishes found, dates counted, every dish worked out."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from types import MappingProxyType

from packlarder.book.book import Book, spoken, trip_place
from packlarder.book.person import Person
from packlarder.book.stop import Stop
from packlarder.book.trip import OnTheMove, Trip
from packlarder.faults import Fault, Gap, Place, Spot, has_errors
from packlarder.figures.kinds import Cooking, Group, Kind
from packlarder.figures.trips import CARRIES_FROM
from packlarder.reckon.amounts import dry_grams
from packlarder.reckon.batch_slips import unknown_component
from packlarder.reckon.dish import printed_g, work_out_each
from packlarder.reckon.records import ComponentSums, Conditions, DishPlan
from packlarder.reckon.settled import Settled
from packlarder.reckon.trip import slips
from packlarder.reckon.trip.camp import at_camp, conditions_at, hardest, settled_at, wants_stove
from packlarder.reckon.trip.menu import MenuLine, menu_of
from packlarder.reckon.trip.pot_use import Cook
from packlarder.reckon.trip.records import Eater, MoveRation, PlannedTrip, StopSums, TripMeal
from packlarder.reckon.trip.sitting_pots import in_their_pots

PlanOf = Callable[[str], DishPlan | None]
"""Gives the plan of a dish by its id; None for one that could not be planned, of which its own file tells."""


_DRY_AND_HARD = frozenset(
    kind for kind in Kind if kind.rules.group in (Group.STARCH, Group.LEGUME, Group.MEAL) and kind is not Kind.BREAD
)
"""What is hard to eat before it has had its water; fruit and vegetables are crisp."""


def plan_trip(
    book: Book, components: Mapping[str, ComponentSums], plan_of: PlanOf, id: str
) -> tuple[PlannedTrip | None, tuple[Fault, ...]]:
    """Resolve a trip and work out its meals; None where something in it can not be understood."""
    planner = _Planner(book, components, plan_of, id)
    planned = planner.planned()
    lost = planner.unread or has_errors(planner.faults)
    return (None if lost else planned), tuple(dict.fromkeys(planner.faults))


def portions_of(eaters: Sequence[Eater]) -> float:
    """Give how many servings some people eat together."""
    return round(sum(one.portion for one in eaters), 6)


class _Planner:
    """Goes through one trip and gathers what is wrong with it.

    `unread` says that it wants a dish or component that could not be worked out, of which that one's own file tells.
    """

    def __init__(self, book: Book, components: Mapping[str, ComponentSums], plan_of: PlanOf, id: str) -> None:
        self.book = book
        self.components = components
        self.plan_of = plan_of
        self.id = id
        self.trip = book.trips[id]
        self.place = trip_place(id)
        self.faults: list[Fault] = []
        self.unread = False
        self.eaters = tuple(_eater(person, self.trip) for person in self.trip.people)
        self.stops = tuple(self._stop(index, stop) for index, stop in enumerate(self.trip.stops))
        self._line_pots: dict[int, str] = {}
        self._settled: dict[tuple[object, ...], tuple[DishPlan, Settled] | None] = {}

    def planned(self) -> PlannedTrip:
        """Give the trip with its meals; those that could not be planned are missing, and a fault says why."""
        self._check_kit()
        self.faults += slips.unknown_components(self.book, self.trip, self.place)
        menu = menu_of(self.trip, self.stops, self.place)
        self.faults += menu.faults
        rations = tuple(self._on_the_move(menu.last_day))
        found = in_their_pots(tuple(self._meals(menu.lines)), self._line_pots, Cook(self.stops, self._fuel_margin))
        return PlannedTrip(
            id=self.id,
            model=self.trip,
            place=self.place,
            eaters=self.eaters,
            stops=self.stops,
            meals=found,
            on_the_move=rations,
            last_day=menu.last_day,
            fuel_margin=self._fuel_margin,
            gaps=_gaps(found),
        )

    def date_of(self, day: int) -> date:
        """Give the date of a day of the trip."""
        return self.trip.starts + timedelta(days=day - 1)

    def _stop(self, index: int, stop: Stop) -> StopSums:
        return StopSums(
            index=index,
            model=stop,
            place=self.place.at("stops", index),
            on=self.date_of(stop.day),
            conditions=conditions_at(stop, self.book.household),
        )

    def _check_kit(self) -> None:
        household = self.book.household
        for key, what, names, ours in (
            ("stoves", "stove", self.trip.stoves, household.stoves),
            ("pots", "pot", self.trip.pots, household.pots),
        ):
            self.faults += [
                slips.unknown_kit(what, name, ours, self.place.at(key, index))
                for index, name in enumerate(names)
                if name not in ours
            ]
        for stop in self.stops:
            self.faults += slips.nothing_to_heat_water_on(stop.model, self.trip, stop.place)

    def _meals(self, lines: Sequence[MenuLine]) -> Iterator[TripMeal]:
        """Work out dishes in the order of lines, and number those that somebody eats."""
        number = 0
        for line in lines:
            meal = self._meal(number + 1, line)
            if meal is not None:
                number += 1
                self._line_pots[number] = line.detail.pot
                yield meal

    def _meal(self, number: int, line: MenuLine) -> TripMeal | None:
        named = self._eaters(line)
        eaters = [one for one in named if one.portion > 0]
        dish = self.book.dish_ids.get(spoken(line.detail.dish))
        if dish is None:
            self.faults += slips.unknown_dish(self.book, line.detail.dish, line.place)
            self.unread = True
            return None
        settled = self._at_stop(dish, line)
        self.unread = self.unread or settled is None
        portions = portions_of(eaters)
        if named and not eaters:
            self.faults.append(slips.nobody_eats(line.place))
        if settled is None or not eaters:
            return None
        plan, kept = settled
        if wants_stove(plan):
            self.faults += slips.nothing_to_cook_on(plan.model.name, self.trip, line.place)
        (sums,) = work_out_each(kept, (_whole(portions),), self._fuel_margin)
        on = self.date_of(line.day)
        return TripMeal(
            number=number,
            stop=line.stop,
            day=line.day,
            on=on,
            eat_at=datetime.combine(on, line.eat_at),
            meal=line.meal,
            dish=dish,
            line=line.place,
            eaters=tuple(one.name for one in eaters),
            portions=portions,
            plan=plan,
            settled=kept,
            sums=sums,
            instead=MappingProxyType({}),
        )

    @property
    def _fuel_margin(self) -> float:
        own = self.trip.margins.fuel
        return (own or self.book.household.margins.fuel).base

    def _eaters(self, line: MenuLine) -> tuple[Eater, ...]:
        """Find who eats a dish: those it names, or all."""
        if not line.detail.for_:
            return self.eaters
        known = {one.name.casefold(): one for one in self.eaters}
        for index, name in enumerate(line.detail.for_):
            if name.casefold() not in known:
                self.faults.append(slips.unknown_person(name, self.trip, line.place.at("for", index)))
        wanted = {name.casefold() for name in line.detail.for_}
        return tuple(one for name, one in known.items() if name in wanted)

    def _at_stop(self, dish: str, line: MenuLine) -> tuple[DishPlan, Settled] | None:
        """Settle a dish for where it is cooked, once for all meals that share it; None where it is not planned."""
        conditions = self._conditions(line)
        windy = any(stop.model.windy for stop in self.stops if line.stop in (None, stop.index))
        asked = dish, conditions, windy, line.detail.stove, line.detail.pot
        if asked not in self._settled:
            plan = self.plan_of(dish)
            if plan is None:
                self._settled[asked] = None
            else:
                there, wrong = at_camp(plan, self.trip, line.detail, self.book.household, line.place)
                self.faults += wrong
                self._settled[asked] = there, settled_at(there, conditions, windy=windy)
        return self._settled[asked]

    def _conditions(self, line: MenuLine) -> Conditions:
        if line.stop is not None:
            return self.stops[line.stop].conditions
        return hardest([stop.conditions for stop in self.stops])

    def _on_the_move(self, last_day: int) -> Iterator[MoveRation]:
        """Share out what is eaten from the bag over the days, the spare one included where there is one."""
        days = last_day + (1 if self.trip.spare_day else 0)
        for index, ration in enumerate(self.trip.on_the_move):
            place = self.place.at("on the move", index, ration.name)
            component = self._ready(ration, place)
            if component is None:
                continue
            grams = self._ration_g(ration, component, place)
            for day in range(1, days + 1) if grams else ():
                yield MoveRation(
                    day=day,
                    on=self.date_of(day),
                    component=component,
                    dry_g=printed_g(grams),
                    spare=day > last_day,
                    line=replace(place, spot=Spot.KEY),
                )

    def _ready(self, ration: OnTheMove, place: Place) -> ComponentSums | None:
        id = self.book.component_id(ration.name)
        component = None if id is None else self.components.get(id)
        if component is None:
            self.unread = True
            if id is None and not self.book.has_unread_component(ration.name):
                self.faults.append(unknown_component(self.book, ration.name, place))
            return None
        if component.must_be_cooked is not Cooking.NO:
            self.faults.append(slips.cooked_on_the_move(component.model.name, replace(place, spot=Spot.KEY)))
            return None
        if component.water is not None and component.kinds & _DRY_AND_HARD:
            self.faults.append(slips.dry_from_the_bag(component.model.name, replace(place, spot=Spot.KEY)))
        return component

    def _ration_g(self, ration: OnTheMove, component: ComponentSums, place: Place) -> float:
        grams = dry_grams(ration.take, component, self.book.household)
        if isinstance(grams, Gap):
            self.faults.append(slips.not_weighed(grams.what, grams.missing, place))
            return 0.0
        return grams * (portions_of(self.eaters) if ration.take.each else 1)


def _eater(person: Person, trip: Trip) -> Eater:
    detail = person.detail
    young = detail.age is not None and detail.age < CARRIES_FROM.value
    burden = (0.0 if young else 1.0) if detail.carries is None else detail.carries.base
    return Eater(
        name=person.name,
        model=detail,
        portion=detail.appetite.base,
        burden=burden,
        drinks_ml=(detail.drinks or trip.drinking).base,
    )


def _whole(portions: float) -> float:
    """Give a whole number of servings as one, so that it is printed as one."""
    return int(portions) if portions == int(portions) else portions


def _gaps(meals: Sequence[TripMeal]) -> tuple[Gap, ...]:
    return tuple(dict.fromkeys(gap for meal in meals for gap in meal.sums.gaps))
