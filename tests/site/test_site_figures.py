"""Figures on the site are the sheet's own texts, every one of them."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path

import pytest
from tests.site.page import Element, read_page, read_picks
from tests.site.samples import BOOK, EGG_COMPONENT

from packlarder.publish.site_figures import PageFigures
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.facts import Fact
from packlarder.sheets.printed import Printed, System

FOR_THE_BOOKLET = frozenset({"minute"})


def printed_in(thing: object) -> Iterator[Printed]:
    """Find every figure inside a sheet that the site is meant to show."""
    if isinstance(thing, Printed):
        yield thing
    elif isinstance(thing, tuple):
        for item in thing:
            yield from printed_in(item)
    elif is_dataclass(thing):
        for field in fields(thing):
            if field.name not in FOR_THE_BOOKLET:
                yield from printed_in(getattr(thing, field.name))


def shown(page: Element) -> list[tuple[int, str]]:
    """Give the number and text of each figure that the script may change."""
    return [(int(cell.attributes["data-f"]), cell.text) for cell in page.all("span") if "data-f" in cell.attributes]


@pytest.mark.parametrize("dish", BOOK.dishes, ids=lambda dish: dish.id)
def test_each_figure_of_a_sheet_is_on_the_page(site: Path, dish: DishSheet) -> None:
    """For 1 to 12 servings and both systems of units, the page carries the very texts of the sheet."""
    page = read_page(site / "dishes" / f"{dish.id}.html")
    picks = read_picks(page)
    pairs = set(zip(picks.metric, picks.us, strict=True))
    assert picks.servings == dish.servings
    assert picks.usual == dish.usual
    for figure in printed_in(dish):
        if len(dish.servings) < len(figure.metric):
            continue  # the sample for one serving shares rows made for twelve
        steady = len({*figure.metric, *figure.us}) == 1
        unvaried = len(set(figure.metric)) == len(set(figure.us)) == 1
        pair = (figure.metric[:1], figure.us[:1]) if unvaried else (figure.metric, figure.us)
        assert (figure.metric[0] in page.text) if steady else (pair in pairs)


@pytest.mark.parametrize("dish", BOOK.dishes, ids=lambda dish: dish.id)
def test_the_page_as_written_shows_the_usual_servings(site: Path, dish: DishSheet) -> None:
    """Before any script runs, each figure that can change shows its text for the usual servings and units."""
    page = read_page(site / "dishes" / f"{dish.id}.html")
    picks = read_picks(page)
    for number, text in shown(page):
        row = picks.metric[number]
        assert text == row[min(picks.usual, len(row) - 1)]


def test_parts_read_across_like_the_sheet(site: Path) -> None:
    """The row of a part holds its measure, dry weight, worth and waters in this order."""
    page = read_page(site / "dishes" / "egg-and-leek-pan.html")
    [table] = page.all("table", class_="fold parts")
    dish = BOOK.dishes[0]
    for part, row in zip(dish.parts, table.all("tbody")[0].all("tr"), strict=True):
        figures = (part.measure, part.dry, part.fresh, part.offered, part.absorbed, part.drained)
        assert [cell.text for cell in row.all("td")] == [figure.metric[dish.usual] for figure in figures]


def test_a_table_for_all_servings_stands_in_the_page(site: Path) -> None:
    """Without scripts, water, clock, fuel and each part's weight and measure can be read for 1 to 12 servings."""
    dish = BOOK.dishes[0]
    page = read_page(site / "dishes" / "egg-and-leek-pan.html")
    [section] = page.all("section", class_="every")
    [table] = section.all("details")
    rows = {row.all("th")[0].text: [cell.text for cell in row.all("td")] for row in table.all("tr")}
    assert rows["Water to carry"] == list(dish.strip[0].figure.metric)
    assert rows["Clock to plate"] == list(dish.strip[2].figure.metric)
    by_part = [row for row in table.all("tr") if row.all("th")[0].text == "Leek rings"]
    assert [[cell.text for cell in row.all("td")] for row in by_part] == [
        list(dish.parts[1].measure.metric),
        list(dish.parts[1].dry.metric),
    ]


def test_a_column_that_holds_nothing_is_left_out(site: Path) -> None:
    """A dish without any water, worth or measure has a table of names and weights only."""
    page = read_page(site / "dishes" / "shore-soup.html")
    [head] = page.all("table", class_="fold parts")[0].all("thead")
    assert [heading.text for heading in head.all("th")] == ["Part", "Dry"]


def test_a_component_shows_both_systems(site: Path) -> None:
    """A fact of a component that differs between systems can be switched; one that does not is plain text."""
    page = read_page(site / "components" / "egg-powder.html")
    picks = read_picks(page)
    dry = EGG_COMPONENT.facts[1]
    assert ((dry.metric,), (dry.us,)) in zip(picks.metric, picks.us, strict=True)
    assert [text for _, text in shown(page)].count(dry.metric) == 1
    assert EGG_COMPONENT.facts[0].metric not in {text for _, text in shown(page)}


def test_equal_figures_are_carried_once() -> None:
    """The same figure in the parts and in a step has one number and one row of texts."""
    figures = PageFigures(system=System.METRIC, servings=(1, 2))
    weight = Printed(("1 g", "2 g"), ("a", "b"))
    again = Printed(("1 g", "2 g"), ("a", "b"))
    assert figures.show(weight) == figures.show(again) == '<span data-f="0">1 g</span>'
    assert '"rows":["1 g|2 g","a|b"]' in figures.picks()


def test_a_text_with_the_parting_sign_comes_back_whole() -> None:
    """A row whose text holds the sign between texts is written as a list."""
    figures = PageFigures(system=System.METRIC, servings=(1, 2))
    figures.show(Printed(("1|2", "3"), ("a", "b")))
    assert '"rows":[["1|2","3"],"a|b"]' in figures.picks()


def test_figures_can_not_close_the_script() -> None:
    """A text that looks like the end of the script is written so that it is none."""
    figures = PageFigures(system=System.METRIC, servings=(1, 2))
    figures.show(Printed(("</script><b>", "3"), ("a", "b")))
    assert "<" not in figures.picks()


def test_the_household_that_thinks_in_ounces() -> None:
    """Where the book is kept in US units, the page as written shows those."""
    figures = PageFigures(system=System.US, usual=1, servings=(1, 2))
    assert figures.show(Printed(("28 g", "57 g"), ("1 oz", "2 oz"))) == '<span data-f="0">2 oz</span>'
    assert figures.fact(Fact(label="", metric="28 g", us="1 oz")) == '<span data-f="1">1 oz</span>'


def test_units_stand_small_beside_large_figures() -> None:
    """In the strip, what follows the last no-break space is small; a figure without a unit keeps the place for one."""
    figures = PageFigures(system=System.METRIC, servings=(1, 2))
    assert figures.large(Printed(("5\u00a0g", "9\u00a0g"), ("a", "b"))) == (
        '<span data-f="0">5\u00a0<small>g</small></span>'
    )
    assert figures.large(Printed(("0:16", "0:18"), ("a", "b"))) == '<span data-f="1">0:16<small></small></span>'
