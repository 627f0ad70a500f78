"""A small book made of YAML texts that stand in the test, worked out by the real reader and the real sums.

The kitchen is fixed and round, so that sums can be followed by hand: sea level, air and water of 10 °C, a burner of
2 kW that brings half of its heat into the pot, a pot of 2 L and 16 cm, a pan of 1 L and 20 cm, fuel margin 15 %.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from textwrap import dedent, indent

from packlarder.book.book import Book
from packlarder.book.places import locate
from packlarder.book.read import read_book
from packlarder.faults import Fault, Severity
from packlarder.reckon.components import reckon_components
from packlarder.reckon.dish import usual_conditions, work_out, work_out_each
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import ComponentSums, Conditions, DishPlan, DishSums
from packlarder.reckon.settled import settle

DISH = "dish"
FUEL_MARGIN = 0.15
KITCHEN = """\
packlarder: 1
title: A book for the sums
servings: 2
measures: {mug: 300 mL}
stoves:
  burner: {fuel: gas mix, kind: gas burner, power: 2 kW, efficiency: 50 %}
  spirit: {fuel: denatured alcohol, kind: alcohol burner with screen}
pots:
  pot: {holds: 2 L, across: 16 cm}
  little pot: {holds: 1 L, across: 12 cm}
  pan: {holds: 1 L, across: 20 cm}
margins: {fuel: 15 %}
usual conditions: {height: 0 m, air: 10 °C, water: 10 °C, stove: burner, pot: pot}
"""
LARDER: Mapping[str, str] = {
    "egg powder": """\
        was: egg, whole, raw
        went in: raw
        contains: [egg]
        dried: freeze-dried
        form: powder
        dry water: 2.78 %
        counts: {1 egg: 50 g}
        weighs: {1 cup: 80 g}
        bring back: {mix: 1 cup, with: 1 cup cold water, wait: 5 min}
        """,
    "beef": """\
        was: beef, ground, 93% lean, browned
        went in: cooked
        contains: []
        dried: freeze-dried
        form: crumbles
        yields: {from: 1 kg, gives: 400 g}
        bring back: {soak: 100 g, with: 400 mL hot water, takes: 150 mL, wait: 10 min}
        """,
    "onion": """\
        was: onion, raw
        went in: raw
        contains: []
        dried: air-dried
        form: flakes
        dry water: 3.93 %
        bring back: {soak: 100 g, with: 620 mL hot water, takes: 300 mL, wait: 20 min}
        """,
    "pasta": """\
        was: pasta, dry
        contains: [wheat]
        dried: bought dry
        form: tubes
        bring back: {in the pot: 100 g, takes: 140 mL, wait: 10 min}
        """,
    "rice": """\
        was: rice, white, boiled
        went in: cooked
        contains: []
        dried: freeze-dried
        form: grains
        yields: {from: 1 kg, gives: 325 g}
        bring back: {moisten: 100 g, with: 200 mL boiling water, wait: 8 min}
        """,
    "milk powder": """\
        was: milk powder, skim, instant
        contains: [milk]
        dried: bought dry
        form: powder
        weighs: {1 tbsp: 5 g}
        bring back: {mix: 100 g, with: 900 mL cold water}
        """,
    "oil": """\
        was: oil, olive
        contains: []
        dried: not dried
        form: liquid
        weighs: {10 mL: 9 g}
        carried in: the oil bottle
        """,
    "salt": """\
        was: salt
        contains: []
        dried: not dried
        form: grains
        carried in: the salt tub
        """,
}
"""Components that a dish may name without writing them out; `name` is filled in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """A fault as its author sees it: its code, what is marked in the file, message, way out, and lines it names too."""

    code: str
    file: str
    line: int
    marked: str
    message: str
    help: str
    severity: Severity
    also: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A book worked out. `faults` holds what the planner and the components gave; empty unless faults were expected."""

    book: Book
    components: Mapping[str, ComponentSums]
    plan: DishPlan | None
    faults: tuple[Told, ...]

    @property
    def planned(self) -> DishPlan:
        """Give the plan of the dish."""
        assert self.plan is not None, self.faults
        return self.plan

    def sums(self, servings: int | None = None, **conditions: float) -> DishSums:
        """Work the dish out, for the servings it is written for unless others are named, under usual conditions."""
        plan = self.planned
        number = plan.model.serves if servings is None else servings
        return work_out(plan, number, self.conditions(**conditions), FUEL_MARGIN)

    def each(self, servings: Sequence[int], **conditions: float) -> tuple[DishSums, ...]:
        """Work the dish out for a row of servings."""
        return work_out_each(settle(self.planned, self.conditions(**conditions)), servings, FUEL_MARGIN)

    def conditions(self, **others: float) -> Conditions:
        """Give the usual conditions, with others in their place."""
        return replace(usual_conditions(self.book.household), **others)  # type: ignore[arg-type]  # numbers by name


def dish_of(
    parts: str,
    *steps: str,
    serves: int = 2,
    more: str = "",
    fails: bool | None = False,
    foods: str = "",
    **components: str,
) -> Worked:
    """Work out a dish: its parts in YAML's short form (`beef: 100 g, salt: 2 g`), its steps, one text each.

    `more` are further keys of the dish (its `meal` may be another), `foods` the household's own foods, `components`
    further components by id (an underscore is a hyphen). Fails if there are faults, unless `fails` expects them; None
    takes what comes.
    """
    items = "".join(f"  - {one}\n" for one in _split(parts))
    told = "".join(f"  - {one}\n" for one in steps)
    meal = "" if "meal:" in more else "meal: supper\n"
    dish = f"name: Dish\nserves: {serves}\n{meal}parts:\n{items}steps:\n{told}{more}"
    return book_of({DISH: dish}, foods=foods, fails=fails, **components)


def components_of(*, foods: str = "", fails: bool | None = False, **components: str) -> Worked:
    """Work out components alone."""
    return book_of({}, foods=foods, fails=fails, **components)


def book_of(dishes: Mapping[str, str], *, foods: str = "", fails: bool | None = False, **components: str) -> Worked:
    """Read and work out a book; the dish called `dish` is planned."""
    files = {"book.yaml": KITCHEN.encode()}
    if foods:
        files["foods.yaml"] = dedent(foods).encode()
    files |= component_files(components)
    files |= {f"dishes/{id}.yaml": text.encode() for id, text in dishes.items()}
    read = read_book(files)
    assert read.book is not None, read.faults
    assert not read.faults, [(fault.place, fault.message, fault.help) for fault in read.faults]
    sums, found = reckon_components(read.book)
    plan, more = plan_dish(read.book, sums, DISH) if DISH in dishes else (None, ())
    faults = tuple(told(files, fault) for fault in (*found, *more))
    assert fails in (None, bool(faults)), faults or "faults were expected, and there are none"
    return Worked(book=read.book, components=sums, plan=plan, faults=faults)


def component_files(components: Mapping[str, str]) -> dict[str, bytes]:
    """Give the files of `LARDER` and of further components by id (an underscore is a hyphen), each with a name."""
    files = {}
    for id, text in {**LARDER, **{id.replace("_", "-"): text for id, text in components.items()}}.items():
        own = dedent(text)
        named = own if own.startswith("name:") else f"name: {id.replace('-', ' ').capitalize()}\n{own}"
        files[f"components/{id.replace(' ', '-')}.yaml"] = named.encode()
    return files


def told(files: Mapping[str, bytes], fault: Fault) -> Told:
    """Show a fault as its author sees it."""
    at = locate(files[fault.place.file], fault.place)
    marked = at.line_text[at.column - 1 : at.column - 1 + at.length]
    return Told(
        code=fault.code,
        file=fault.place.file,
        line=at.line,
        marked=marked,
        message=fault.message,
        help=fault.help,
        severity=fault.severity,
        also=tuple([locate(files[place.file], place).line for place in fault.also]),
    )


def _split(parts: str) -> list[str]:
    """Split at the commas that stand outside braces and brackets."""
    found, depth = [""], 0
    for letter in parts:
        depth += (letter in "{[") - (letter in "}]")
        if letter == "," and depth == 0:
            found.append("")
        else:
            found[-1] += letter
    return [one.strip() for one in found]


def packs_of(*packs: str) -> str:
    """Write packs as further keys of a dish."""
    return "packs:\n" + indent("".join(f"- {pack}\n" for pack in packs), "  ")
