"""A trip as plain text of 80 columns, for a terminal: menu, water, fuel, what is still to get and to do, cautions."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from textwrap import wrap

from packlarder.book.household import Household
from packlarder.cli import sheet_words as common
from packlarder.cli import trip_words as words
from packlarder.cli.plain import COLUMNS, GAP, columns, listed, page, paragraph, section, told
from packlarder.cli.plain_store import named
from packlarder.measure import UP, as_weighed, in_cups, in_kcal, in_minutes, in_ml, in_ounces
from packlarder.reckon.trip.journey import Fuel, Leg
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.reckon.trip.stores import Shortfall, Task
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_water_words as water_words
from packlarder.sheets.printed import NOTHING, Printed, System, plain
from packlarder.sheets.trip_figures import heavy
from packlarder.sheets.trip_journey_sheet import LegRow
from packlarder.sheets.trip_load import loads
from packlarder.sheets.trip_water import leg_rows
from packlarder.sheets.words import lowered

INSET = " " * 4


def plain_trip(trip: TripSums, findings: Iterable[Finding], household: Household, foot: str) -> str:
    """Set a trip with what the rules found, and `foot` below it."""
    return page(_Page(trip, tuple(findings), household).lines(), foot)


class _Page:
    """Sets one trip, section by section."""

    def __init__(self, trip: TripSums, findings: tuple[Finding, ...], household: Household) -> None:
        self.trip = trip
        self.journey = trip.journey
        self.findings = findings
        self.household = household
        self.system = System(household.units.value)
        self.clock_of = {one.number: one for one in trip.journey.clock}

    def lines(self) -> Iterator[str]:
        yield from self._title()
        yield from section(common.MISSING, listed(f"{gap.what}: {gap.missing}" for gap in self.trip.gaps))
        yield from section(common.CAUTIONS, listed(f"{one.text} ({one.source})" for one in on_the_page(self.findings)))
        yield from section(words.MENU, self._menu())
        rows = zip(self.journey.legs, leg_rows(self.trip, self.household), strict=True)
        legs = (line for leg, row in rows for line in self._leg(leg, row))
        yield from section(words.WATER, (*legs, *self._on_the_spot()))
        yield from section(words.FUEL, told([(fuel.fuel, self._fuel(fuel)) for fuel in self.journey.fuels]))
        short = [(named(one.component.model.name, raw=one.component.raw), self._short(one)) for one in self._lacking]
        yield from section(words.TO_GET, told(short))
        yield from section(words.PLAN, told([(self._when(task), self._task(task)) for task in self.trip.stores.tasks]))
        yield from section(words.CARRIED, self._carried())
        yield from section(words.FEEDS, self._feeds())
        yield from section(common.NOTES, (line for note in self.trip.model.notes for line in paragraph(note)))

    @property
    def _lacking(self) -> Sequence[Shortfall]:
        return self.trip.stores.shortfalls

    def _title(self) -> Iterator[str]:
        trip = self.trip
        yield from wrap(trip.model.name, COLUMNS)
        count = len(trip.eaters)
        people = words.PERSON if count == 1 else words.PEOPLE.format(count=count)
        stands = trip.model.stands.value
        yield from wrap(words.HEADING.format(dates=names.from_to(trip), people=people, stands=stands), COLUMNS)
        if trip.model.about:
            yield from ("", *paragraph(trip.model.about))

    def _menu(self) -> Iterator[str]:
        for (_, stop), meals in groupby(self.trip.meals, lambda meal: (meal.day, meal.stop)):
            held = list(meals)
            day = names.day_called(self.trip, held[0].day)
            here = words.AT_STOP.format(
                day=day, date=names.short_date(held[0].on), place=names.stop_called(self.trip, stop)
            )
            yield from wrap(day if stop is None else here, COLUMNS)
            for meal in held:
                yield from self._meal(meal)

    def _meal(self, meal: TripMeal) -> Iterator[str]:
        taken = {**dict(enumerate(part.component for part in meal.plan.parts)), **meal.instead}
        name = named(meal.plan.model.name, raw=any(component.raw for component in taken.values()))
        head = f"{GAP}{names.clock(meal.eat_at, meal.on):>5}{GAP}{meal.meal.value:<10}"
        text = "; ".join([name, *self._starts(meal), *self._particulars(meal)])
        yield from wrap(text, COLUMNS, initial_indent=head, subsequent_indent=" " * len(head))

    def _starts(self, meal: TripMeal) -> Iterator[str]:
        times = self.clock_of.get(meal.number)
        if times is None:
            return
        yield words.START.format(clock=names.clock(times.start_at, meal.on))
        for soak in times.soaks:
            yield words.SOAK.format(clock=names.clock(soak.at, meal.on), minutes=in_minutes(soak.minutes, UP))
        yield from names.sharing(times, self.trip)
        if times.waits_min:
            yield words.READY.format(clock=names.clock(times.ready_at, meal.on))

    def _particulars(self, meal: TripMeal) -> Iterator[str]:
        if len(meal.eaters) < len(self.trip.eaters):
            yield names.FOR.format(names=common.COMMA.join(meal.eaters))
        yield from names.stand_ins(meal)

    def _leg(self, leg: Leg, row: LegRow) -> Iterator[str]:
        """Set a leg with the figures of its page, which count what cooks pour more where they pour cups."""
        days = lowered(names.days_called(self.trip, leg))
        yield from wrap(words.LEG.format(leg=names.leg_called(self.trip, leg), days=days), COLUMNS)
        told = [(self._printed(piece.figure), piece.label) for piece in row.pieces]
        pieces = [words.PIECE.format(water=water, kind=kind) for water, kind in told if water != NOTHING]
        rows = [(self._printed(row.total), common.COMMA.join(pieces) or common.IN_ALL)]
        yield from (f"{GAP}{line}" for line in _inset(rows))
        for line in (row.short, row.treated, row.other):
            yield from paragraph(plain(line, self.system, 0), INSET)

    def _on_the_spot(self) -> Iterator[str]:
        """Give what is used at each stop where it is filled, and how it is treated."""
        for one in self.journey.stops:
            stop = self.trip.stops[one.stop].model
            if one.on_the_spot and one.meals.carry_ml:
                day = lowered(names.day_called(self.trip, stop.day))
                yield from wrap(words.LEG.format(leg=stop.place, days=day), COLUMNS)
                yield from (f"{GAP}{line}" for line in _inset([(self._volume(one.meals.carry_ml), words.ON_THE_SPOT)]))
                if one.treated_ml and stop.treatment is not None:
                    treated = water_words.treated(self._volume(one.treated_ml), stop.treatment, one.wait_min)
                    yield from paragraph(treated, INSET)

    def _fuel(self, fuel: Fuel) -> str:
        cartridges = names.cartridges(fuel, self._weight)
        need = words.NEED.format(weight=self._weight(fuel.need_g))
        return f"{need}: {' + '.join(cartridges)}" if cartridges else need

    def _short(self, one: Shortfall) -> str:
        return common.COMMA.join(self._way_of(one))

    def _way_of(self, one: Shortfall) -> Iterator[str]:
        """Say how much is short and how it is come by."""
        yield words.SHORT.format(weight=self._weight(one.short_g))
        yield names.SOURCES[one.source]
        if one.bought_g not in (None, one.short_g):
            yield words.BUY.format(weight=self._weight(one.bought_g))
        if one.fresh_g is not None:
            yield words.LOADED.format(weight=self._weight(one.fresh_g))
        if one.trays is not None:
            yield names.trays_called(one.trays)
        if one.loads:
            several = words.LOADS.format(numbers=common.COMMA.join(map(str, one.loads)))
            yield names.LOAD.format(number=one.loads[0]) if len(one.loads) == 1 else several
        if one.start_by is not None:
            yield words.START_BY.format(day=names.short_date(one.start_by))

    def _when(self, task: Task) -> str:
        if task.overdue:
            return names.NOW
        return names.short_date(task.starts.date()) if task.whole_day else names.moment(task.starts)

    def _task(self, task: Task) -> str:
        what = names.TASKS[task.kind]
        foods = [named(one.model.name, raw=one.raw) for one in task.components]
        told = [words.TASK_OF.format(what=what, names=common.COMMA.join(foods)) if foods else what]
        if task.grams is not None:
            told.append(self._weight(task.grams))
        if task.load:
            told.append(names.LOAD.format(number=task.load))
        line = common.COMMA.join(filter(None, [*told, names.lasting(task)]))
        foods = [words.FOOD.format(name=name, weight=self._weight(grams)) for name, grams in task.foods]
        return words.MADE_OF.format(task=line, foods=names.BETWEEN_FOODS.join(foods)) if foods else line

    def _carried(self) -> Iterator[str]:
        rows = []
        for one in loads(self.trip):
            room = self._volume(one.volume_ml)
            weight = heavy(one.carried_g).text(self.system, 0)
            rows.append(
                (names.day_called(self.trip, one.day), weight, f"{common.AT_LEAST}{room}" if one.unmeasured else room)
            )
        yield from columns(rows)

    def _feeds(self) -> Iterator[str]:
        rows = []
        for eater in self.trip.eaters:
            eaten = [one for one in self.journey.fed if one.name == eater.name and one.day <= self.trip.last_day]
            if eaten:
                known = all(one.complete for one in eaten)
                energies = [one.energy_kcal for one in eaten]
                least, most = in_kcal(min(energies)), in_kcal(max(energies))
                span = least if least == most else words.SPAN.format(least=least, most=most)
                rows.append((eater.name, span if known else f"{common.AT_LEAST}{span}"))
        yield from columns(rows)

    def _printed(self, figure: Printed) -> str:
        return figure.text(self.system, 0)

    def _volume(self, millilitres: float) -> str:
        return in_cups(millilitres, UP) if self.system is System.US else in_ml(millilitres, UP)

    def _weight(self, grams: float) -> str:
        return in_ounces(grams, UP) if self.system is System.US else as_weighed(grams, UP)


def _inset(rows: Sequence[tuple[str, str]]) -> Iterator[str]:
    for total, pieces in rows:
        head = f"{total:>10}{GAP}"
        yield from wrap(pieces, COLUMNS - len(GAP), initial_indent=head, subsequent_indent=" " * len(head))
