"""A splice changes what it is asked to change: comments, quotes, brackets, blank lines stay as they are."""

import difflib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.book.amend import as_written, with_first, with_key, with_value
from packlarder.book.nodes import Node, read_yaml

DISH = b"""\
# ours
name: Soup   # the good one

parts:
  # from the garden
  - "leek": '150 g'   # thin
  - {oats: {take: 40 g each, fixed: no}}   # in braces

learnt:   # newest first
  # that was a cold day
  - date: 2027-01-01
    change: more oats
tried: at home
# the end
"""
LESSON = {"date": "2027-05-02", "change": "leek 150 g -> 120 g", "why": "too much, we say: far"}


def read(data: bytes) -> dict[str, Node]:
    """Read a file that is sound."""
    found = read_yaml("a.yaml", data)
    assert found.faults == ()
    assert found.value is not None
    return found.value


def changes(before: bytes, after: bytes | None) -> list[str]:
    """Give the lines that went and came."""
    assert after is not None
    lines = difflib.ndiff(before.decode().splitlines(keepends=True), after.decode().splitlines(keepends=True))
    return [line.rstrip("\n") for line in lines if line[0] in "+-"]


def test_an_amount_is_put_in_the_place_of_another() -> None:
    """Its quotes and what stands behind it stay; in braces too."""
    assert changes(DISH, with_value(DISH, ("parts", 0, "leek"), "120 g")) == [
        "-   - \"leek\": '150 g'   # thin",
        "+   - \"leek\": '120 g'   # thin",
    ]
    assert changes(DISH, with_value(DISH, ("parts", 1, "oats", "take"), "1/2 cup")) == [
        "-   - {oats: {take: 40 g each, fixed: no}}   # in braces",
        "+   - {oats: {take: 1/2 cup, fixed: no}}   # in braces",
    ]


def test_a_lesson_comes_first_and_looks_like_the_others() -> None:
    """A comment that stands above the former first entry stays with it."""
    assert changes(DISH, with_first(DISH, "learnt", LESSON)) == [
        "+   - date: 2027-05-02",
        "+     change: leek 150 g -> 120 g",
        '+     why: "too much, we say: far"',
    ]


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("a: 1", "a: 1\nlearnt:\n  - date: 2"),
        ("a: 1\n", "a: 1\nlearnt:\n  - date: 2\n"),
        ("a: 1\n...\n", "a: 1\nlearnt:\n  - date: 2\n...\n"),
        ("a: 1 # x\r\nb: 2\r\n", "a: 1 # x\r\nb: 2\r\nlearnt:\r\n  - date: 2\r\n"),
        ("a: |\n  two\n  lines\n", "a: |\n  two\n  lines\nlearnt:\n  - date: 2\n"),
        ("a:\n- {date: 1}\nlearnt:\n- {date: 1}\n", "a:\n- {date: 1}\nlearnt:\n- {date: 2}\n- {date: 1}\n"),
        ("learnt: []  # none yet\na: 1\n", "learnt: [{date: 2}]  # none yet\na: 1\n"),
        ("learnt: [{date: 1}]\n", "learnt: [{date: 2}, {date: 1}]\n"),
        ("learnt: [  # x\n  {date: 1},\n]\n", "learnt: [  # x\n  {date: 2},\n  {date: 1},\n]\n"),
        ("{a: 1, b: [c]}\n", "{a: 1, b: [c], learnt: [{date: 2}]}\n"),
        ("\ufeffa: 1\n", "\ufeffa: 1\nlearnt:\n  - date: 2\n"),
        ("learnt:\n  -\n    date: 1\n", "learnt:\n  - date: 2\n  -\n    date: 1\n"),
    ],
)
def test_lists_of_all_kinds_take_an_entry(before: str, after: str) -> None:
    """A list over lines, in brackets, empty, or not there yet; line ends and a byte order mark are kept."""
    assert with_first(before.encode(), "learnt", {"date": "2"}) == after.encode()


def test_a_key_is_added_behind_another() -> None:
    """It stands on a line of its own below it, and what belongs to it below that."""
    gone = with_key(DISH, "stands", "gone", after="name")
    assert changes(DISH, gone) == ["+ stands: gone"]
    assert gone is not None
    assert gone.index(b"stands") == gone.index(b"one\n") + 4
    home: Node = {"date": "2027-05-02", "left": [{"leek": {"weight": "1 oz", "why": "x, y"}}, {"oats": "3 g"}]}
    assert changes(DISH, with_key(DISH, "came home", home)) == [
        "+ came home:",
        "+   date: 2027-05-02",
        "+   left:",
        '+     - leek: {weight: 1 oz, why: "x, y"}',
        "+     - oats: 3 g",
    ]


@pytest.mark.parametrize(
    ("data", "path"),
    [
        (DISH, ("parts", 2, "leek")),
        (DISH, ("parts", 0)),
        (DISH, ("learnt",)),
        (b"a: >\n  folded\n  text\n", ("a",)),
        (b"a:\n", ("a",)),
        (b"- a\n", ("a",)),
        (b"a: [\n", ("a",)),
    ],
)
def test_what_can_not_be_done_is_not_done(data: bytes, path: tuple[str | int, ...]) -> None:
    """A place that there is not, a whole list, a text over several lines or a broken file gives nothing."""
    assert with_value(data, path, "120 g") is None


def test_a_key_that_is_there_is_not_written_twice() -> None:
    """Nor does a list take an entry where no list stands."""
    assert with_key(DISH, "name", "Broth") is None
    assert with_first(DISH, "name", LESSON) is None


words = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "S", "Zs")), min_size=1, max_size=20)
comments = st.sampled_from(["", "  # why not", "   # {a: b}, [c]", "\t# - x", " #"])
gaps = st.sampled_from(["", "\n", "# between\n", "\n  # - {date: 9}\n\n"])
amounts = st.sampled_from(["60 g", "'60 g'", '"60 g"', "1/2 cup", "worth 150 g fresh", "75 g each"])
entries = st.sampled_from(["{date: 1, change: x}", "date: 1\n    change: x", "{date: 1,\n     change: x}"])


@st.composite
def dishes(draw: st.DrawFn) -> tuple[str, int]:
    """Write a dish with comments, quotes and blank lines here and there; give it, and which part is to change."""
    count = draw(st.integers(1, 4))
    lines = [f"name: Soup{draw(comments)}\n", draw(gaps), f"parts:{draw(comments)}\n"]
    for index in range(count):
        name, amount, comment = f"part {index}", draw(amounts), draw(comments)
        part = draw(st.sampled_from([f"{name}: {amount}", f"{{{name}: {amount}}}", f'"{name}":   {amount}']))
        lines += [draw(gaps), f"  - {part}{comment}\n"]
    kept = draw(st.integers(0, 2))
    if kept:
        lines += [draw(gaps), f"learnt:{draw(comments)}\n"]
        lines += [f"{draw(gaps)}  - {draw(entries)}{draw(comments)}\n" for _ in range(kept)]
    lines += [draw(gaps), f"tried: at home{draw(comments)}\n", draw(gaps)]
    text = "".join(lines)
    return text.replace("\n", draw(st.sampled_from(["\n", "\r\n"]))), draw(st.integers(0, count - 1))


@given(dishes(), st.sampled_from(["120 g", "1 1/2 cups", "worth 9 g fresh"]), words)
def test_splices_leave_all_else_byte_for_byte(dish: tuple[str, int], amount: str, why: str) -> None:
    """Whatever comments and styles stand around: one line changes for an amount, and lines are only added for a lesson.

    What was written is read as it was meant, whatever signs are in it.
    """
    text, index = dish
    before = text.encode()
    path = ("parts", index, f"part {index}")
    spliced = with_value(before, path, amount)
    assert spliced is not None
    told = changes(before, spliced)
    assert [line[0] for line in told] in ([], ["-", "+"])
    lesson = {"date": "2027-05-02", "change": "x -> y", "why": why.strip() or "why"}
    whole = with_first(spliced, "learnt", lesson)
    assert whole is not None
    assert {line[0] for line in changes(spliced, whole)} == {"+"}
    found = read_yaml("a.yaml", whole).value
    assert found is not None
    assert isinstance(found["learnt"], list)
    assert found["learnt"][0] == lesson
    parts = found["parts"]
    assert isinstance(parts, list)
    assert parts[index] == {f"part {index}": amount}


@given(words)
def test_any_text_is_read_as_it_was_written(text: str) -> None:
    """Quotes are set where they are needed, on a line of its own and in brackets."""
    text = text.strip() or "x"
    assert read(f"a: {as_written(text)}\nb: [{as_written(text)}, c]\n".encode()) == {"a": text, "b": [text, "c"]}
