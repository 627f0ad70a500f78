"""A whole book made by hand for the site's tests. Its figures are invented; what is tested is how they are set."""

import struct
import zlib
from dataclasses import replace
from datetime import date

from tests.site.sample_dishes import EGG, GAPS, HANDS, LONG, MINIMAL, RICH
from tests.site.sample_figures import GAP
from tests.site.sample_store import EGG_STORED, LARDER, RUN, RUN_INDEX, RUN_SHEET

from packlarder.sheets.book_sheet import (
    BookSheet,
    FieldBook,
    FigureGroup,
    FigureRow,
    FormatSection,
    Index,
    IndexEntry,
    IndexGroup,
    KeyRow,
    RuleRow,
    WrittenPage,
)
from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish_sheet import Caution, DishSheet
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import NOTHING, System


def _picture(width: int, height: int) -> bytes:
    """Draw a grey ramp as PNG."""

    def chunk(kind: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))

    row = b"\x00" + bytes(55 + 200 * place // width for place in range(width))
    header = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", header)
        + chunk(b"IDAT", zlib.compress(row * height))
        + chunk(b"IEND", b"")
    )


PHOTO = _picture(640, 360)

EGG_COMPONENT = ComponentSheet(
    id="egg-powder",
    name="Egg powder",
    raw=True,
    state="RAW",
    about="Whole eggs, whisked and dried as they are.",
    facts=(
        Fact(label="Was", metric="egg, whole, raw", us="egg, whole, raw"),
        Fact(label="Dry, from 1 kg fresh", metric=f"245{GAP}g", us=f"8.6{GAP}oz", source="three of our batches"),
    ),
    allergens=("egg",),
    traces=(),
    yields=(Fact(label="Fresh for dry", metric="4.1 to 1", us="4.1 to 1", source="three of our batches"),),
    yield_notes=(f"One to one by volume gives back 79{GAP}% of the water that was lost; many like it so.",),
    weighs=(Fact(label="1 tbsp", metric=f"6.1{GAP}g", us=f"0.22{GAP}oz", source="weighed by us"),),
    bring_back="Mix 1 tbsp with 1 tbsp cold water and let it stand for 5 min.",
    waters=(Fact(label="For 1 egg", metric=f"30{GAP}mL", us=f"2{GAP}tbsp"),),
    to_dry=("Whisk without froth.", "Freeze on lined trays, 1 cm deep.", "Break the sheet and grind it cold."),
    made_of=(),
    feeds=(Fact(label="Energy, 100 g dry", metric="590 kcal", us="590 kcal"),),
    cautions=(EGG,),
    used_in=(
        Link(kind="dish", id="egg-and-leek-pan", name="Egg and leek pan"),
        Link(kind="dish", id="gone", name="Gone"),
    ),
    held_in=(Link(kind="component", id="leek-rings", name="Leek rings"),),
    missing=(),
    notes=("Keeps its foam better when ground cold.",),
    stored=EGG_STORED,
)


def plain_component(component_id: str, name: str, *, state: str = "ready") -> ComponentSheet:
    """Make a component of which only the name is known."""
    return ComponentSheet(
        id=component_id,
        name=name,
        raw=state == "RAW",
        state=state,
        about="",
        facts=(),
        allergens=(),
        traces=(),
        yields=(),
        yield_notes=(),
        weighs=(),
        bring_back="",
        waters=(),
        to_dry=(),
        made_of=(),
        feeds=(),
        cautions=(),
        used_in=(),
        held_in=(),
        missing=("Yield: no batch, no statement and no food of the table.",),
        notes=(),
    )


def _entry(sheet: DishSheet, *figures: str) -> IndexEntry:
    """List a dish."""
    return IndexEntry(link=Link(kind="dish", id=sheet.id, name=sheet.name), raw=bool(sheet.raw_parts), figures=figures)


INDEXES = (
    Index(
        id="by-meal",
        title="By meal",
        columns=("Water", "Clock", "Carried"),
        groups=(
            IndexGroup(heading="Breakfast", entries=(_entry(RICH, f"270{GAP}mL", "0:16", f"95{GAP}g"),)),
            IndexGroup(
                heading="Supper",
                entries=(
                    _entry(GAPS, NOTHING, "0:10", f"120{GAP}g"),
                    _entry(LONG, f"1480{GAP}mL", "1:45", f"320{GAP}g"),
                ),
            ),
        ),
    ),
    Index(
        id="by-water",
        title="By water to carry",
        columns=("Water",),
        groups=tuple(
            IndexGroup(heading=f"Up to {n}00{GAP}mL", entries=(_entry(RICH, f"270{GAP}mL"),)) for n in range(3, 11)
        ),
    ),
)

WRITTEN = WrittenPage(
    id="our-year",
    title="Our year",
    markdown="""# Our year

We dry from *July* to **October**; see [the pan](../dishes/egg-and-leek-pan.yaml),
[the powder](../components/egg-powder.yaml#top) and [the weather](https://weather.example/).

| Month | What |
|---|---|
| July | leeks |
| September | eggs |

![The pan](../photos/egg-and-leek-pan.png)

## What we keep

1. Jars in the dark.
2. Pouches cold.
""",
)

FOODS = tuple(
    FigureRow(
        name=f"{letter}{tail}, raw",
        value=f"water 80{GAP}g, 60{GAP}kcal",
        source=f"a food table, {letter.upper()}{tail.upper()}, RAW",
        standing="published",
    )
    for letter in "abcdefghjk"
    for tail in "abcdefghijkl"
)
"""120 foods under ten letters."""

DISHES = (RICH, MINIMAL, GAPS, LONG)
BOOK = BookSheet(
    title="The Skerry Book",
    language="en",
    address="",
    system=System.METRIC,
    edition="7f3a9c",
    day="1 June 2027",
    about=(
        "What one household dries at home and cooks among islands without fresh water.",
        "Written down so that anyone can cook it.",
    ),
    dish_links=tuple(Link(kind="dish", id=dish.id, name=dish.name) for dish in DISHES),
    dishes=DISHES,
    spread={dish.id: dish for dish in DISHES},
    components=(
        EGG_COMPONENT,
        plain_component("leek-rings", "Leek rings"),
        plain_component("noodles", "Noodles", state="cook before eating"),
    ),
    indexes=INDEXES,
    general_cautions=(
        Caution(
            rule="two-hours",
            severity="note",
            text="Two hours after water goes in, food is eaten or thrown away; one hour on a hot day.",
            source="USDA FSIS",
            standing="published",
        ),
        HANDS,
    ),
    rules=(
        RuleRow(
            id="egg-dishes",
            severity="error",
            title="Egg is cooked",
            text=EGG.text,
            source="USDA FSIS",
            standing="published",
        ),
        RuleRow(
            id="raw-hands",
            severity="note",
            title="Raw on hands",
            text=HANDS.text,
            source="NCHFP",
            standing="from memory",
        ),
    ),
    figures=(
        FigureGroup(
            heading="Heat",
            rows=(
                FigureRow(
                    name="Heat of vaporisation of water",
                    value=f"2257{GAP}kJ/kg",
                    source="IAPWS-95",
                    standing="computed",
                ),
                FigureRow(
                    name="Spoons level, not heaped", value="1", source="no published source", standing="common practice"
                ),
            ),
        ),
        FigureGroup(
            heading="Safety facts",
            rows=(
                FigureRow(
                    name="How long a wet meal may stand before it is eaten or thrown away.",
                    value="2 h below 32 °C (90 °F); 1 h above; never kept warm on the embers; " * 4,
                    source="an authority with a long name: a long title of a long page (2027); and a second one " * 2,
                    standing="copy",
                ),
            ),
        ),
        FigureGroup(heading="Foods", rows=FOODS),
    ),
    format=(
        FormatSection(
            id="component",
            title="A component",
            says="One food in the form in which it is carried; a file in components/.",
            keys=(
                KeyRow(key="name", takes="text", required=True, says="How people call it.", example="name: Egg powder"),
                KeyRow(
                    key="went in",
                    takes="raw, blanched or cooked",
                    required=True,
                    says="Its state when the dryer was loaded.",
                    example="",
                ),
                KeyRow(
                    key="counts",
                    takes="pairs",
                    required=False,
                    says="How people count it fresh.",
                    example="counts: {1 egg: 50 g}",
                ),
            ),
            example="name: Egg powder\nwent in: raw\nbring back: {mix: 1 tbsp, with: 1 tbsp cold water, wait: 5 min}\n",
        ),
        FormatSection(
            id="dish",
            title="A dish",
            says="A recipe in terms of components.",
            keys=(),
            example="name: Egg and leek pan\n",
        ),
    ),
    pages=(WRITTEN,),
    field=FieldBook(
        title="The Skerry Book",
        language="en",
        edition="7f3a9c",
        day="1 June 2027",
        on=date(2027, 6, 1),
        how_to_use=(),
        general_cautions=(),
        openings=(),
        component_index=(),
    ),
    larder=LARDER,
    run_index=RUN_INDEX,
    runs={RUN: RUN_SHEET},
    photos=(("egg-and-leek-pan.png", PHOTO),),
)


def with_dishes(book: BookSheet, *dishes: DishSheet) -> BookSheet:
    """Give a book with these dishes in place of its own."""
    return replace(
        book,
        dish_links=tuple(Link(kind="dish", id=dish.id, name=dish.name) for dish in dishes),
        dishes=dishes,
        spread={dish.id: dish for dish in dishes},
    )
