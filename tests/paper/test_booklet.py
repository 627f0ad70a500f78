"""The plain booklet, read back from its PDF."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import ArrayObject, BooleanObject, StreamObject
from tests.paper import reading, samples
from tests.paper.conftest import Booklet, Printed, print_it
from tests.paper.reading import PT_PER_MM, Word

from packlarder.faults import Severity
from packlarder.publish.paper import build_booklets, field_copy
from packlarder.publish.paper_setting import Room, plan_booklet
from packlarder.publish.paper_words import bodies
from packlarder.publish.press import Press
from packlarder.sheets.field_sheet import FieldOpening, Span

LONG = {"name-day-supper-of-everything", "tern-rock-hotpot"}
"""The dishes of the sample book that can not stand on one opening."""


def said(line: tuple[Span, ...]) -> str:
    """Give a line as plain text."""
    return "".join(span.text for span in line)


def parts_of(opening: FieldOpening) -> list[str]:
    """Give every text that an opening must print."""
    return [
        opening.name, opening.done_when, opening.allergens, opening.conditions, *opening.cautions,
        *(text for pack in opening.packs for text in (pack.number, pack.holds, pack.weight)),
        *(text for figure in opening.figures for text in (figure.label, figure.figure)),
        *(text for step in opening.steps for text in (step.minute, step.verb)),
        *(said(step.line) for step in opening.steps), said(opening.raw),
    ]  # fmt: skip  # one line for each kind


def test_page_size_and_number(printed: Booklet) -> None:
    """Every page has the size asked for, and the pages fill whole sheets."""
    wanted = (printed.size.width_mm * PT_PER_MM, printed.size.height_mm * PT_PER_MM)
    for page in printed.reader.pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(wanted, abs=0.01)
    assert len(printed.reader.pages) % (4 * printed.bed.rows) == 0


def test_every_dish_on_a_left_page(printed: Printed) -> None:
    """Each dish starts on an even page and takes two pages, or four if it is long."""
    for opening in printed.openings:
        pages = printed.pages_of(opening)
        assert pages.start % 2 == 0, opening.name
        assert len(pages) == (4 if opening.id in LONG else 2), opening.name


def test_in_hand_on_the_left_to_do_on_the_right(printed: Booklet) -> None:
    """On one opening the packs and figures stand on the left page, the steps and cautions on the right."""
    for opening in printed.openings:
        if opening.id in LONG:
            continue
        left, right = (set(printed.text_of(range(page, page + 1)).split()) for page in printed.pages_of(opening))
        assert all(set(pack.holds.split()) <= left for pack in opening.packs), opening.name
        assert all(set(figure.label.split()) <= left for figure in opening.figures), opening.name
        assert all(set(said(step.line).split()) <= right for step in opening.steps), opening.name
        assert all(set(caution.split()) <= right for caution in opening.cautions), opening.name


def test_allergens_stand_with_the_name_on_the_left_page(printed: Booklet) -> None:
    """What a dish contains is read on its first page, before any pack is opened, however long the dish is."""
    said = [opening for opening in printed.openings if opening.allergens]
    assert said
    for opening in said:
        first = printed.pages_of(opening).start
        text = printed.text_of(range(first, first + 1))
        assert text.index(opening.allergens) < text.index(opening.packs[0].holds), opening.name


def test_only_who_says_so_is_printed_of_a_source() -> None:
    """Each body once, without its works; what names no work is left out beside what does, and alone it stays."""
    assert bodies("CDC: MMWR 48(32): deaths; CPSC: Document 5012; CDC: Filters; Worked out") == "CDC; CPSC"
    assert bodies("NCHFP and several extension services") == "NCHFP and several extension services"


def test_long_dishes_are_said(printed: Printed) -> None:
    """A dish of two openings is a warning at its file, and nothing else is said of the sample book."""
    assert {fault.place.file for fault in printed.faults} == {f"dishes/{dish}.yaml" for dish in LONG}
    assert {(fault.code, fault.severity) for fault in printed.faults} == {("long-dish", Severity.WARNING)}
    assert all("takes 2 openings" in fault.message for fault in printed.faults)


def test_right_pages_say_that_a_dish_goes_on(printed: Printed) -> None:
    """The third page of the booklet's long dishes can not be missed: the second says that it goes on overleaf."""
    for opening in printed.openings:
        pages = printed.pages_of(opening)
        said = [page for page in pages if "Goes on overleaf" in printed.text_of(range(page, page + 1))]
        assert said == ([pages.start + 1] if opening.id in LONG else []), opening.name


def test_outline(printed: Printed) -> None:
    """The outline leads to front, contents, cautions, each dish in order, index."""
    titles = [title for title, _ in reading.outline(printed.reader)]
    dishes = [opening.name for opening in printed.openings]
    assert titles == ["The Skerry Book", "Contents", "For every meal", *dishes, "By component"]


def listed(printed: Printed, first: int, end: int) -> dict[str, list[int]]:
    """Read names and page numbers from some pages; a name can take two rows, the number stands on the first."""
    found: dict[str, list[int]] = {}
    last = ""
    for page in range(first, end):
        if printed.words[page - 1][0].text == "NOTES":
            break
        for row in reading.rows([word for word in printed.words[page - 1] if not in_footer(word, printed)]):
            name, numbers = re.fullmatch(r"(.*?)((?:(?:^| )\d+,?)*)", row).groups()  # type: ignore[union-attr]  # .* fits all
            if numbers:
                last = name
                found[name] = [int(number) for number in numbers.replace(",", "").split()]
            elif last:
                found[f"{last} {name}"] = found.pop(last)
    return found


def in_footer(word: Word, printed: Booklet) -> bool:
    """Tell whether a word stands below the text."""
    return word.top > (printed.size.height_mm - printed.size.bottom_mm) * PT_PER_MM


def test_contents_name_the_real_pages(printed: Printed) -> None:
    """Each dish stands in the contents with the page that its title is on."""
    contents = listed(printed, printed.starts["Contents"], printed.starts["For every meal"])
    assert contents == {opening.name: [printed.starts[opening.name]] for opening in printed.openings}


def test_index_names_the_real_pages(printed: Printed) -> None:
    """Each component stands in the index with the pages of all dishes that use it."""
    names = {opening.id: opening.name for opening in printed.openings}
    pages = {dish: printed.starts[name] for dish, name in names.items()}
    wanted = {component: [pages[dish] for dish in dishes] for component, dishes in printed.book.component_index}
    assert listed(printed, printed.starts["By component"], len(printed.reader.pages) + 1) == wanted


def test_every_word_is_printed(printed: Booklet) -> None:
    """No word of an opening is lost on its pages."""
    for opening in printed.openings:
        found = set(printed.text_of(printed.pages_of(opening)).split())
        for text in parts_of(opening):
            assert set(text.split()) <= found, (opening.name, text)
        assert opening.heading.upper() in printed.text_of(printed.pages_of(opening))


def test_front_matter_is_printed(printed: Printed) -> None:
    """Title, edition, day, how to use and how to print it stand on page 1; general cautions once, with who says so."""
    front = printed.text_of(range(1, 2))
    for text in ("The Skerry Book", "7f3a9c", "1 June 2027", "actual size", *printed.book.how_to_use):
        assert text in front
    everything = printed.text_of(range(1, len(printed.reader.pages) + 1))
    for caution in printed.book.general_cautions:
        assert everything.count(" ".join(caution.text.split())) == 1
        assert bodies(caution.source) in everything


def test_raw_where_it_is_raw_and_nowhere_else(printed: Booklet) -> None:
    """The word RAW stands once at each raw pack and once in the box of the dish; on no page of another dish."""
    for opening in printed.openings:
        printed_words = re.findall(r"\bRAW\b", printed.text_of(printed.pages_of(opening)))
        assert len(printed_words) == sum(pack.raw for pack in opening.packs) + bool(opening.raw), opening.name


def test_sachets_are_taken_out(printed: Booklet) -> None:
    """Each pack with a sachet says so in full."""
    for opening in printed.openings:
        said = printed.text_of(printed.pages_of(opening)).count("TAKE OUT THE SACHET")
        assert said == sum(pack.sachet for pack in opening.packs), opening.name


def test_nothing_under_nine_points(printed: Booklet) -> None:
    """No text is smaller than 9 pt anywhere."""
    for page in printed.runs:
        assert all(run.size >= 9 - 0.01 for run in page), page


def test_water_and_minutes_are_large_and_bold(printed: Booklet) -> None:
    """Each figure of water and minutes, and each step's minute, is set at 14 pt bold or more; steps at 12 or more."""
    for opening in printed.openings:
        runs = [run for page in printed.pages_of(opening) for run in printed.runs[page - 1]]
        large = " ".join(run.text.strip() for run in runs if run.size >= 14 - 0.01 and run.font.endswith("-Bold"))
        large = " ".join(large.split())
        for text in (*(figure.figure for figure in opening.figures), *(step.minute for step in opening.steps)):
            assert " ".join(text.split()) in large, (opening.name, text)
        steps = "".join("".join(run.text.split()) for run in runs if run.size >= 12 - 0.01)
        for step in opening.steps:
            assert "".join(said(step.line).split()) in steps, opening.name


def test_one_ink(printed: Booklet) -> None:
    """Nothing is set in grey or colour, which a red lamp or a copier would lose."""
    colours = {colour for _, colour in reading.inks(printed.reader)}
    assert colours
    assert all(set(colour) == {0.0} for colour in colours)


def test_nothing_near_the_edge(printed: Booklet) -> None:
    """Every word stands at least 6.35 mm inside the page, so that no printer cuts it off."""
    least = 6.35 * PT_PER_MM - 0.01
    width, height = printed.size.width_mm * PT_PER_MM, printed.size.height_mm * PT_PER_MM
    for number, page in enumerate(printed.words, 1):
        for word in page:
            assert word.left >= least, (number, word)
            assert word.right <= width - least, (number, word)
            assert word.top + 2 >= least, (number, word)  # a word's box has about 2 pt of air above its letters
            assert word.bottom - 2 <= height - least, (number, word)


def test_no_word_lies_on_another(printed: Booklet) -> None:
    """No two words of a page overlap: nothing runs out of its column or into the footer."""
    for number, page in enumerate(printed.words, 1):
        for place, word in enumerate(page):
            for other in page[place + 1 :]:
                assert not reading.overlap(word, other), (number, word, other)


def test_footer_has_title_edition_and_number(printed: Booklet) -> None:
    """From page 2 on a page bears its number, large, at the outer corner, and title and edition unless it goes on."""
    middle = printed.size.width_mm * PT_PER_MM / 2
    for number, page in enumerate(printed.words, 1):
        foot = [word for word in page if in_footer(word, printed)]
        if number == 1:
            assert foot == []
            continue
        text = " ".join(word.text for word in foot)
        assert f"{printed.title} · 7f3a9c" in text or "Goes on overleaf" in text
        (own,) = [word for word in foot if word.text == str(number)]
        assert (own.left < middle) == (number % 2 == 0)
        assert any(run.text.strip() == str(number) and run.size >= 12 for run in printed.runs[number - 1])


def test_fonts_are_ours_and_embedded(printed: Booklet) -> None:
    """Four fonts, all embedded, none from the machine it was printed on."""
    assert sorted(reading.fonts(printed.plain)) == [
        ("Booklet-Sans", True), ("Booklet-Sans-Bold", True), ("Booklet-Serif", True), ("Booklet-Serif-Bold", True),
    ]  # fmt: skip  # two and two


def test_tagged_with_title_language_and_day(printed: Printed) -> None:
    """The plain PDF is tagged, says that it follows PDF/UA-1, and has title, language and the edition's day."""
    root = reading.inside(printed.reader.trailer, "/Root")
    assert reading.inside(root, "/MarkInfo", "/Marked") == BooleanObject(value=True)
    assert isinstance(reading.inside(root, "/StructTreeRoot", "/K"), ArrayObject)
    assert reading.inside(root, "/Lang") == "en"
    assert reading.inside(root, "/ViewerPreferences", "/DisplayDocTitle") == BooleanObject(value=True)
    metadata = reading.inside(root, "/Metadata")
    assert isinstance(metadata, StreamObject)
    assert b"pdfuaid:part" in metadata.get_data()
    told = printed.reader.metadata
    assert told is not None
    assert told.title == "The Skerry Book · Field booklet"
    assert str(told["/CreationDate"]).startswith("D:20270601")


def test_same_book_same_bytes(checkout: Path, tmp_path: Path) -> None:
    """Printed twice, a booklet is the same to the byte, plain and imposed."""
    book = samples.field_book((samples.EGG_PAN,))
    first, second = (print_it(book, "a6", checkout / "theme", tmp_path / name) for name in ("one", "two"))
    assert first.plain.read_bytes() == second.plain.read_bytes()
    assert first.imposed.read_bytes() == second.imposed.read_bytes()


def test_no_dishes_at_all(checkout: Path, tmp_path: Path) -> None:
    """A book without dishes still gives a booklet: front, contents, cautions, index, lines."""
    printed = print_it(samples.field_book(()), "a6", checkout / "theme", tmp_path)
    assert len(printed.reader.pages) == 8  # front, contents, cautions (2 pages), index; up to two rows of 4
    assert printed.faults == ()


@pytest.mark.parametrize("size", ["a6", "quarter-letter"])
def test_dish_that_just_overruns_is_set_snug(size: str, checkout: Path, tmp_path: Path) -> None:
    """Four packs more, or four steps more, would overrun the opening by a little; with less air each keeps to it."""
    packs = tuple(samples.pack(str(number), "Parsley", "3 g") for number in range(3, 7))
    steps = samples.steps(
        *((str(minute), "Stir", "once more to the corners, and let it stand for a while.") for minute in range(20, 24))
    )
    egg = samples.EGG_PAN
    full = (
        replace(egg, id="packs", name="Egg pan of packs", packs=egg.packs + packs),
        replace(egg, id="steps", name="Egg pan of steps", steps=egg.steps + steps),
    )
    printed = print_it(samples.field_book(full), size, checkout / "theme", tmp_path)
    assert printed.faults == ()
    assert [len(printed.pages_of(opening)) for opening in full] == [2, 2]
    room = Room(checkout / "theme" / "print", field_copy(printed.book), printed.size)
    fits = plan_booklet(room, Press()).fits
    assert (fits["packs"].small_right, fits["steps"].small_right) == (True, False)
    for holds in (
        test_every_word_is_printed, test_no_word_lies_on_another, test_nothing_near_the_edge,
        test_nothing_under_nine_points, test_water_and_minutes_are_large_and_bold,
    ):  # fmt: skip  # read as a list
        holds(printed)


def test_empty_opening(checkout: Path, tmp_path: Path) -> None:
    """A dish of which nothing is known but its name still has its opening, without empty tables."""
    bare = FieldOpening(
        id="bare", name="Bare", heading="", packs=(), figures=(), raw=(), done_when="", steps=(), cautions=(),
        allergens="", conditions="", components=(),
    )  # fmt: skip  # nothing to read
    printed = print_it(samples.field_book((bare,)), "a6", checkout / "theme", tmp_path)
    assert printed.text_of(printed.pages_of(bare)).split()[0] == "Bare"
    assert len(printed.pages_of(bare)) == 2


def test_hostile_words_stay_words(checkout: Path, tmp_path: Path) -> None:
    """Tags, quotes, backslashes and unbreakable words in a book print as they are and stay within the page."""
    dish = replace(
        samples.EGG_PAN,
        name='<b>Egg & "leek"</b> \\0',
        packs=(samples.pack("1", "Unbreakable" * 6, "49 g", raw=True),),
        steps=samples.steps(("0", "Soak", "Rindfleisch" * 8)),
    )
    title = 'The "Skerry" <i>Book</i>; } @page { size: 1mm }'
    printed = print_it(samples.field_book((dish,), title=title), "a6", checkout / "theme", tmp_path)
    assert len({page.mediabox.width for page in printed.reader.pages}) == 1
    assert '<b>Egg & "leek"</b> \\0' in printed.text_of(printed.pages_of(dish))
    assert 'The "Skerry" <i>Book</i>' in printed.text_of(range(2, 3))
    test_nothing_near_the_edge(printed)
    test_no_word_lies_on_another(printed)


def test_unknown_size_is_a_fault(checkout: Path, tmp_path: Path) -> None:
    """A size that is not known is said, with those that are; nothing is printed for it."""
    (fault,) = build_booklets(samples.field_book(()), sizes=("a66",), theme=checkout / "theme", out=tmp_path)
    assert (fault.code, fault.severity) == ("unknown-print-size", Severity.ERROR)
    assert '"a66"' in fault.message
    assert "a6, quarter-letter" in fault.help
    assert list(tmp_path.iterdir()) == []


def test_thick_booklet_is_a_warning(checkout: Path, tmp_path: Path) -> None:
    """Forty dishes make more than 20 leaves (40 x 2 + front and index > 80 pages), which do not fold: a warning."""
    dishes = tuple(replace(samples.EGG_PAN, id=f"egg-{number}", name=f"Egg pan {number}") for number in range(40))
    printed = print_it(samples.field_book(dishes), "a6", checkout / "theme", tmp_path)
    (fault,) = printed.faults
    assert (fault.code, fault.severity, fault.place.file) == ("thick-booklet", Severity.WARNING, "book.yaml")
    assert f"{len(printed.reader.pages) // 4} leaves" in fault.message


@pytest.mark.parametrize("size", ["a5", "half-letter", "card-4x6"])
def test_further_sizes_hold_the_same(size: str, checkout: Path, tmp_path: Path) -> None:
    """Each further size keeps to the edges, the least type and one ink, with a short and a long dish."""
    book = samples.field_book((samples.EGG_PAN, samples.long_supper()))
    printed = print_it(book, size, checkout / "theme", tmp_path)
    for holds in (
        test_page_size_and_number, test_nothing_near_the_edge, test_no_word_lies_on_another, test_every_word_is_printed,
        test_nothing_under_nine_points, test_water_and_minutes_are_large_and_bold, test_one_ink,
    ):  # fmt: skip  # read as a list
        holds(printed)
    assert PdfReader(printed.imposed).pages


def test_very_long_dishes_keep_together_what_belongs_together(checkout: Path, tmp_path: Path) -> None:
    """From 6 to 14 packs with 20 long steps: the figures stay in one table, and no lone line stands above the steps."""
    line = "in the big pot, lid on, until every piece of it steams right through; then move it aside into the lid."
    supper = replace(
        samples.long_supper(), steps=samples.steps(*((str(5 * number), "Simmer", line) for number in range(20)))
    )
    packs = tuple(samples.pack(str(number), f"Dried leek rings of jar {number}", "33 g") for number in range(1, 15))
    dishes = tuple(
        replace(supper, id=f"packs-{many}", name=f"Supper of {many} packs", packs=packs[:many]) for many in range(6, 15)
    )
    printed = print_it(samples.field_book(dishes), "a6", checkout / "theme", tmp_path)
    for dish in dishes:
        texts = [printed.text_of(range(page, page + 1)) for page in printed.pages_of(dish)]
        assert dish.allergens in texts[0]
        [figures] = [text for text in texts if "From start to plate" in text]
        assert all(" ".join(figure.label.split()) in figures for figure in dish.figures), dish.name
        [first] = [text for text in texts if " 0 Simmer in the big pot" in text]
        above = first[: first.index(" 0 Simmer")]
        assert above == f"min {dish.name}" or "From start to plate" in above or "RAW" in above, dish.name
    test_every_word_is_printed(printed)
    test_no_word_lies_on_another(printed)
