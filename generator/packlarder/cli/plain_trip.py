"""A trip as plain text of 80 columns, for a terminal: menu, water, fuel, what is still to get and to do, cautions."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from textwrap import wrap

from packlarder.cli import sheet_words as common
from packlarder.cli import trip_words as words
from packlarder.cli.plain import COLUMNS, GAP, columns, listed, page, paragraph, section, told
from packlarder.cli.plain_store import named
from packlarder.measure import UP, as_weighed, in_cups, in_kcal, in_minutes, in_ml, in_ounces
from packlarder.reckon.trip.journey import Fuel, Leg
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.reckon.trip.stores import Shortfall, Task
from packlarder.safety import Finding, on_the_page
from packlarder.sheets.printed import System
from packlarder.sheets.trip_names import clock, day_called, leg_called, short_date, stop_called

INSET = " " * 4


def plain_trip(trip: TripSums, findings: Iterable[Finding], system: System, foot: str) -> str:
    """Set a trip with what the rules found, and `foot` below it."""
    return page(_Page(trip, tuple(findings), system).lines(), foot)


class _Page:
    """Sets one trip, section by section."""

    def __init__(self, trip: TripSums, findings: tuple[Finding, ...], system: System) -> None:
        self.trip = trip
        self.journey = trip.journey
        self.findings = findings
        self.system = system
        self.clock_of = {one.number: one for one in trip.journey.clock}

    def lines(self) -> Iterator[str]:
        yield from self._title()
        yield from section(common.MISSING, listed(f"{gap.what}: {gap.missing}" for gap in self.trip.gaps))
        yield from section(common.CAUTIONS, listed(f"{one.text} ({one.source})" for one in on_the_page(self.findings)))
        yield from section(words.MENU, self._menu())
        yield from section(words.WATER, (line for leg in self.journey.legs for line in self._leg(leg)))
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
        first, last = short_date(trip.model.starts), short_date(trip.ends)
        count = len(trip.eaters)
        people = words.PERSON if count == 1 else words.PEOPLE.format(count=count)
        dates = words.FROM_TO.format(first=first, last=last, year=trip.ends.year)
        yield from wrap(words.HEADING.format(dates=dates, people=people, stands=trip.model.stands.value), COLUMNS)
        if trip.model.about:
            yield from ("", *paragraph(trip.model.about))

    def _menu(self) -> Iterator[str]:
        for (_, stop), meals in groupby(self.trip.meals, lambda meal: (meal.day, meal.stop)):
            held = list(meals)
            day = day_called(self.trip, held[0].day)
            here = words.AT_STOP.format(day=day, date=short_date(held[0].on), place=stop_called(self.trip, stop))
            yield from wrap(day if stop is None else here, COLUMNS)
            for meal in held:
                yield from self._meal(meal)

    def _meal(self, meal: TripMeal) -> Iterator[str]:
        taken = {**dict(enumerate(part.component for part in meal.plan.parts)), **meal.instead}
        name = named(meal.plan.model.name, raw=any(component.raw for component in taken.values()))
        head = f"{GAP}{clock(meal.eat_at, meal.on):>5}{GAP}{meal.meal.value:<10}"
        text = "; ".join([name, *self._starts(meal), *self._particulars(meal)])
        yield from wrap(text, COLUMNS, initial_indent=head, subsequent_indent=" " * len(head))

    def _starts(self, meal: TripMeal) -> Iterator[str]:
        times = self.clock_of.get(meal.number)
        if times is None:
            return
        yield words.START.format(clock=clock(times.start_at, meal.on))
        for soak in times.soaks:
            yield words.SOAK.format(clock=clock(soak.at, meal.on), minutes=in_minutes(soak.minutes, UP))
        if times.after is not None:
            yield words.AFTER.format(dish=self.trip.by_number[times.after].plan.model.name)
        if times.waits_min:
            yield words.READY.format(clock=clock(times.ready_at, meal.on))

    def _particulars(self, meal: TripMeal) -> Iterator[str]:
        if len(meal.eaters) < len(self.trip.eaters):
            yield words.FOR.format(names=common.COMMA.join(meal.eaters))
        for index, taken in meal.instead.items():
            yield words.INSTEAD.format(taken=taken.model.name, named=meal.plan.parts[index].called)

    def _leg(self, leg: Leg) -> Iterator[str]:
        days = words.DAY.format(number=leg.first_day)
        if leg.last_day != leg.first_day:
            days = words.DAYS.format(first=leg.first_day, last=leg.last_day)
        yield from wrap(words.LEG.format(leg=leg_called(self.trip, leg), days=days), COLUMNS)
        rows = [(self._volume(leg.carry_ml), common.COMMA.join(self._pieces(leg)) or common.IN_ALL)]
        yield from (f"{GAP}{line}" for line in _inset(rows))
        for text in self._leg_notes(leg):
            yield from paragraph(text, INSET)

    def _pieces(self, leg: Leg) -> Iterator[str]:
        for kind, millilitres in leg.water._asdict().items():
            if millilitres:
                yield words.PIECE.format(water=self._volume(millilitres), kind=words.LEG_WATERS[kind])

    def _leg_notes(self, leg: Leg) -> Iterator[str]:
        if leg.short_ml:
            yield words.LACKS.format(water=self._volume(leg.short_ml))
        if leg.treated_by is not None and leg.treated_ml:
            says = words.TREATED_WAIT if leg.wait_min else words.TREATED
            minutes = in_minutes(leg.wait_min, UP)
            water = self._volume(leg.treated_ml)
            yield says.format(water=water, way=leg.treated_by.value, minutes=minutes)
        if leg.from_other_ml:
            yield words.OTHER.format(water=self._volume(leg.from_other_ml))

    def _fuel(self, fuel: Fuel) -> str:
        cartridges = [words.PART_USED.format(weight=self._weight(one)) for one in fuel.in_hand_g]
        for weight_g, count in Counter(fuel.new_g).items():
            cartridges.append(words.WHOLE.format(count=count, weight=self._weight(weight_g)))
        need = words.NEED.format(weight=self._weight(fuel.need_g))
        return f"{need}: {' + '.join(cartridges)}" if cartridges else need

    def _short(self, one: Shortfall) -> str:
        return common.COMMA.join(self._way_of(one))

    def _way_of(self, one: Shortfall) -> Iterator[str]:
        """Say how much is short and how it is come by."""
        yield words.SHORT.format(weight=self._weight(one.short_g))
        yield words.SOURCES[one.source.value]
        if one.bought_g not in (None, one.short_g):
            yield words.BUY.format(weight=self._weight(one.bought_g))
        if one.fresh_g is not None:
            yield words.LOADED.format(weight=self._weight(one.fresh_g))
        if one.trays is not None:
            yield (words.TRAY if one.trays == 1 else words.TRAYS).format(count=one.trays)
        if one.loads:
            says = words.LOAD if len(one.loads) == 1 else words.LOADS
            yield says.format(number=common.COMMA.join(map(str, one.loads)))
        if one.start_by is not None:
            yield words.START_BY.format(day=short_date(one.start_by))

    def _when(self, task: Task) -> str:
        day = short_date(task.starts.date())
        return day if task.whole_day else words.AT.format(date=day, clock=clock(task.starts, task.starts.date()))

    def _task(self, task: Task) -> str:
        what = task.kind.value
        names = [named(one.model.name, raw=one.raw) for one in task.components]
        told = [words.TASK_OF.format(what=what, names=common.COMMA.join(names)) if names else what]
        if task.grams is not None:
            told.append(self._weight(task.grams))
        if task.load:
            told.append(words.LOAD.format(number=task.load))
        line = common.COMMA.join([*told, *self._until(task)])
        foods = [words.FOOD.format(name=name, weight=self._weight(grams)) for name, grams in task.foods]
        return words.MADE_OF.format(task=line, foods=words.BETWEEN_FOODS.join(foods)) if foods else line

    def _until(self, task: Task) -> Iterator[str]:
        first, last = task.starts, task.ends
        if task.whole_day:
            if last.date() > first.date():
                yield words.UNTIL.format(day=short_date(last.date()))
        elif last > first:
            end = clock(last, last.date())
            same = last.date() == first.date()
            yield words.UNTIL.format(day=end if same else words.AT.format(date=short_date(last.date()), clock=end))

    def _carried(self) -> Iterator[str]:
        rows = []
        for one in self.journey.days:
            room = self._volume(one.volume_ml)
            weight = self._weight(one.carried_g)
            rows.append(
                (day_called(self.trip, one.day), weight, f"{common.AT_LEAST}{room}" if one.unmeasured else room)
            )
        yield from columns(rows)

    def _feeds(self) -> Iterator[str]:
        rows = []
        for eater in self.trip.eaters:
            eaten = [one for one in self.journey.fed if one.name == eater.name]
            if eaten:
                known = all(one.complete for one in eaten)
                energies = [one.energy_kcal for one in eaten]
                least, most = in_kcal(min(energies)), in_kcal(max(energies))
                span = least if least == most else words.SPAN.format(least=least, most=most)
                rows.append((eater.name, span if known else f"{common.AT_LEAST}{span}"))
        yield from columns(rows)

    def _volume(self, millilitres: float) -> str:
        return in_cups(millilitres, UP) if self.system is System.US else in_ml(millilitres, UP)

    def _weight(self, grams: float) -> str:
        return in_ounces(grams, UP) if self.system is System.US else as_weighed(grams, UP)


def _inset(rows: Sequence[tuple[str, str]]) -> Iterator[str]:
    for total, pieces in rows:
        head = f"{total:>10}{GAP}"
        yield from wrap(pieces, COLUMNS - len(GAP), initial_indent=head, subsequent_indent=" " * len(head))
