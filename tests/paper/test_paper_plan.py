"""Where blocks stand, by counting alone; nothing is printed here."""

from hypothesis import given
from hypothesis import strategies as st
from tests.paper import samples

from packlarder.publish.paper import FRONT, INDEX, field_copy
from packlarder.publish.paper_plan import LINE_MM, Blocks, Extent, halves, in_hand, settle, to_do

BLOCKS = field_copy(samples.field_book(samples.twenty()[:3])).blocks
DISHES = BLOCKS.dishes
NAMES = (*FRONT, *halves(DISHES), INDEX)

EXTENT = st.builds(Extent, pages=st.integers(1, 4), room_mm=st.floats(0, 120))
EXTENTS = st.fixed_dictionaries(dict.fromkeys(NAMES, EXTENT))


def extents(**pages: int) -> dict[str, Extent]:
    """Give every block one page but those named (`_` for `-`), with no room left on any."""
    found = dict.fromkeys(NAMES, Extent(pages=1, room_mm=0))
    found.update({name.replace("_", "-"): Extent(pages=count, room_mm=0) for name, count in pages.items()})
    return found


@given(EXTENTS, st.integers(1, 3))
def test_blocks_follow_each_other_and_fill_whole_sheets(measured: dict[str, Extent], rows: int) -> None:
    """Whatever the blocks measure: no gap between them, dishes on whole openings from a left page, whole sheets."""
    plan = settle(BLOCKS, measured, rows)
    page = 1
    for name in NAMES:
        assert plan.blocks[name].page == page
        page = plan.blocks[name].end
    assert page - 1 == plan.pages
    assert plan.pages % (4 * rows) == 0
    for dish in DISHES:
        assert plan.page_of(dish) % 2 == 0
        assert 2 * plan.openings[dish] == plan.blocks[to_do(dish)].end - plan.page_of(dish)


def test_short_dishes_take_one_opening_each() -> None:
    """Front, contents, cautions on pages 1 to 3, dishes from 4, 6, 8, index on 10; two leaves to a sheet make 16."""
    plan = settle(BLOCKS, extents(), rows=2)
    assert [plan.page_of(dish) for dish in DISHES] == [4, 6, 8]
    assert (plan.blocks[INDEX].page, plan.pages) == (10, 16)
    assert list(plan.goes_on()) == []


def test_odd_front_matter_is_evened_out() -> None:
    """Contents of two pages end the front matter on page 4; a page of lines brings the first dish to page 6."""
    plan = settle(BLOCKS, extents(contents=2), rows=1)
    assert plan.blocks["cautions"].lined_pages == 1
    assert plan.page_of(DISHES[0]) == 6


def test_three_pages_make_two_openings() -> None:
    """One page in hand and two of steps are filled up to four with lines; page 5 says that it goes on."""
    plan = settle(BLOCKS, extents(**{to_do(DISHES[0]): 2}), rows=1)
    assert plan.openings == {DISHES[0]: 2, DISHES[1]: 1, DISHES[2]: 1}
    assert list(plan.goes_on()) == [5]
    assert plan.longer_than(2) == ()


def test_very_long_dish_is_named() -> None:
    """Two pages in hand and three to do make five pages, three openings: more than a long dish takes."""
    plan = settle(BLOCKS, extents(**{in_hand(DISHES[1]): 2, to_do(DISHES[1]): 3}), rows=1)
    assert plan.longer_than(2) == (DISHES[1],)


def test_steps_that_join_save_a_page() -> None:
    """Run on, three pages to do that start on the second page in hand end on the fourth; that page has no lines."""
    measured = extents(**{in_hand(DISHES[1]): 2})
    measured[to_do(DISHES[1])] = Extent(pages=3, room_mm=0, joins=True)
    measured[in_hand(DISHES[1])] = Extent(pages=2, room_mm=60)
    plan = settle(BLOCKS, measured, rows=1)
    assert plan.openings[DISHES[1]] == 2
    assert plan.blocks[to_do(DISHES[1])].page == plan.page_of(DISHES[1]) + 1
    assert plan.blocks[in_hand(DISHES[1])].lines == 0


def test_lines_fill_the_room_within_reason() -> None:
    """Room for one line is left empty, for three takes three; for ten it takes four at a dish, and ten at the front."""
    for name, most in ((to_do(DISHES[0]), 4), ("contents", 10)):
        for room, lines in ((1.5, 0), (3.2, 3), (10.0, most)):
            measured = extents() | {name: Extent(pages=1, room_mm=room * LINE_MM)}
            assert settle(BLOCKS, measured, rows=1).blocks[name].lines == lines


def test_some_blocks_begin_on_a_left_page() -> None:
    """After a front of one page a menu that wants a left page has one; after two, a page of lines comes between."""
    made_of = Blocks(before=("front", "menu", "card"), dishes=(), behind=("notes",), on_the_left=frozenset({"menu"}))
    measured = dict.fromkeys(made_of.others, Extent(pages=1, room_mm=0))
    assert settle(made_of, measured, rows=1).blocks["menu"].page == 2
    plan = settle(made_of, measured | {"front": Extent(pages=2, room_mm=0)}, rows=1)
    assert (plan.blocks["front"].lined_pages, plan.blocks["menu"].page, plan.blocks["card"].page) == (1, 4, 5)


def test_only_the_last_block_is_followed_by_the_lines_that_fill_the_sheet() -> None:
    """Front, safety and notes on pages 1 to 3: one page of lines fills a sheet of 4, five fill one of 8."""
    made_of = Blocks(before=("front",), dishes=(), behind=("safety", "notes"))
    measured = dict.fromkeys(made_of.others, Extent(pages=1, room_mm=0))
    for rows, lined in ((1, 1), (2, 5)):
        plan = settle(made_of, measured, rows=rows)
        assert [plan.blocks[name].page for name in made_of.others] == [1, 2, 3]
        assert [plan.blocks[name].lined_pages for name in made_of.others] == [0, 0, lined]
