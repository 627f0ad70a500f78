"""Makers of rows and dishes for the site's tests, with little to say about each."""

from tests.site.sample_figures import NONE, SERVINGS, clock, grams, millilitres

from packlarder.sheets.dish_sheet import DishSheet, PackItem, PackRow, PartRow, StepRow
from packlarder.sheets.printed import Printed, Strong


def step(minutes: int, verb: str, *line: str | Printed | Strong, each: int = 0) -> StepRow:
    """Make a step."""
    shown, bare = clock(minutes, each=each)
    return StepRow(clock=shown, minute=bare, verb=verb, line=line)


def part(
    name: str,
    dry: float,
    *,
    raw: bool = False,
    must: str = "no",
    way: str = "",
    measure: Printed = NONE,
    fresh: Printed = NONE,
    water: tuple[float, float] | None = None,
    instead: tuple[str, ...] = (),
) -> PartRow:
    """Make a part; `water` is what a serving is offered and what it absorbs, in mL."""
    offered, absorbed = water or (0, 0)
    return PartRow(
        name=name,
        component=name.lower().replace(" ", "-"),
        raw=raw,
        must_be_cooked="to be safe" if raw else must,
        way=way,
        measure=measure,
        dry=grams(dry),
        fresh=fresh,
        offered=millilitres(offered) if water else NONE,
        absorbed=millilitres(absorbed) if water else NONE,
        drained=millilitres(offered - absorbed) if water else NONE,
        yield_from="three of our own batches",
        instead=instead,
    )


def pack(
    number: str,
    *parts: PartRow,
    where: str = "",
    sachet: bool = False,
    inside: tuple[PackRow, ...] = (),
    weight: float = 40,
) -> PackRow:
    """Make a pack of whole parts."""
    return PackRow(
        number=number,
        items=tuple(PackItem(name=row.name, component=row.component, raw=row.raw, weight=row.dry) for row in parts),
        weight=grams(weight),
        raw=any(row.raw for row in parts),
        sachet=sachet,
        where=where,
        inside=inside,
    )


def dish(
    dish_id: str, name: str, *, parts: tuple[PartRow, ...] = (), steps: tuple[StepRow, ...] = (), **more: object
) -> DishSheet:
    """Make a dish of which only what is given is known."""
    known: dict[str, object] = {
        "id": dish_id,
        "name": name,
        "meal": "supper",
        "method": "in the pot",
        "about": "",
        "servings": SERVINGS,
        "usual": 1,
        "parts": parts,
        "steps": steps,
        "water_total": NONE,
        "done_when": "",
        "photo": "",
    }
    empty: tuple[str, ...] = (
        "strip",
        "raw_parts",
        "raw",
        "packs",
        "waters",
        "clock",
        "heat",
        "conditions",
        "cautions",
        "feeds",
    )
    empty += ("allergens", "traces", "origins", "missing", "tried", "learnt", "notes")
    # The record checks nothing by itself; a wrong name fails here, a wrong type in the test that uses it.
    return DishSheet(**dict.fromkeys(empty, ()) | known | more)  # type: ignore[arg-type]  # made by field name
