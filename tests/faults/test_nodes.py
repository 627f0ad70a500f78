"""Strict YAML: what is read, that both parsers agree, and that no file takes long."""

import time

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from tests.faults.cases import CASES, Case, faults_of

from packlarder.book.nodes import NODE_CAP, Read, read_yaml
from packlarder.book.places import locate
from packlarder.book.strict import events
from packlarder.book.strict.source import SIZE_CAP, lines_of, readable
from packlarder.faults import Severity, has_errors

VALID = next(case for case in CASES if case.name == "traps/valid").path.read_bytes()

PARSERS_DIFFER = {"traps/tight-colon"}
"""What only the C parser refuses: the plain one reads `[milk:, egg]` as `[{milk: }, egg]`, which no model takes."""


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_the_plain_parser_finds_the_same_faults(case: Case, monkeypatch: pytest.MonkeyPatch) -> None:
    """On a machine without the C parser each file gives the same faults at the same places."""
    fast = faults_of("file.yaml", case.path.read_bytes())
    monkeypatch.setattr(events, "new_parser", events.PlainParser)
    plain = faults_of("file.yaml", case.path.read_bytes())
    if case.name in PARSERS_DIFFER:
        assert has_errors(fast)
        assert has_errors(plain)
    else:
        assert plain == fast


def test_a_machine_without_the_c_parser_reads_on(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where PyYAML was built without its C part, the parser written in Python is taken."""
    monkeypatch.setitem(__import__("sys").modules, "yaml._yaml", None)
    assert isinstance(events.new_parser("a: b"), events.PlainParser)


def test_a_tab_after_a_colon_is_read_or_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """The C parser takes a tab after a colon for a space; the plain one can not, and says so."""
    assert read_yaml("file.yaml", b"name:\tx").value == {"name": "x"}
    monkeypatch.setattr(events, "new_parser", events.PlainParser)
    assert [fault.code for fault in read_yaml("file.yaml", b"name:\tx").faults] == ["tab"]


def test_what_stands_twice_counts_the_first_time() -> None:
    """A file with a key that stands twice is still read, so that its other faults can be told."""
    read = read_yaml("file.yaml", b"a: 1\nb: {c: 2, c: [3]}\na: {d: 4}\ne: 5")
    assert read.value == {"a": "1", "b": {"c": "2"}, "e": "5"}
    assert [fault.code for fault in read.faults] == ["key-twice", "key-twice"]


def test_a_bomb_of_references_is_refused_at_its_first_anchor() -> None:
    """A text that would grow to billions of values is refused before any of them is made."""
    bomb = "a: &a [x, x]\n" + "".join(
        f"{key}: &{key} [*{before}, *{before}]\n" for before, key in zip("abcdefgh", "bcdefghi", strict=True)
    )
    read = read_yaml("file.yaml", bomb.encode())
    assert read.value is None
    assert [(fault.code, fault.place.line, fault.place.column) for fault in read.faults] == [("needs-quotes", 1, 4)]


HOSTILE = {
    "ten megabytes": b"a: &a [x]\n" * (1 << 20),
    "deep brackets": b"a: " + b"[" * 100_000,
    "deep braces": b"{a: " * 100_000,
    "deep lists": b"- " * 200_000,
    "deep keys": b"".join(b" " * depth + b"a:\n" for depth in range(1_000)),
    "remarks": b"a: b #x" + b" #x" * 300_000,
    "lines of remarks": b"a: b\n" + b"k: v #x\n" * 100_000,
    "questions": b"a: " + b"? " * 400_000,
    "lines of questions": b"a: 'x\n" + b"  ? \n" * 150_000 + b"'\n",
    "hyphens": b"a: " + b"x - " * 200_000,
    "list of hyphens": b"a:\n" + b"  - x - x\n" * 15_000,
    "long lines of hyphens": b"a:\n" + b"  - x - x\n    y - y\n" * 9_000,
    "quotes": b"a: '" + b"''" * 400_000,
    "open quotes": b'a: "x\n' * 100_000,
    "colons": b"a" + b": " * 400_000,
    "blanks": b"a:" + b" " * 1_000_000 + b"b",
    "one long key": b"k" * 1_000_000 + b": v",
    "same key": b"a: b\n" * 9_000,
    "odd blanks": "a: x:\u00a0y\n".encode() * 9_000,
    "curly": "a: “x”\n".encode() * 9_000,
    "backslashes": b'a: "' + b"\\q" * 400_000,
    "comment lines": b"#\n" * 400_000,
    "percent lines": b"#\n" * 200_000 + b"%\n",
    "one line of hashes": b"#" * 1_000_000,
    "words without a colon": b"words\n" * 150_000 + b"a: b\n",
    "open quote far above": b'x: "y\n' + b"z\n" * 300_000 + b'k: "v"\n',
}


@pytest.mark.parametrize("name", HOSTILE)
def test_no_file_takes_long(name: str) -> None:
    """However a file is made, it is read or refused, and its faults are found, in seconds of the processor."""
    data = HOSTILE[name]
    began = time.process_time()
    read = read_yaml("file.yaml", data)
    for fault in read.faults[:3]:
        locate(data, fault.place)
    assert time.process_time() - began < 8  # a generous bound: each takes a fifth of a second or less
    assert (read.value is None) <= bool(read.faults)


def test_too_many_values_are_refused() -> None:
    """A file of more values than any part of a book could need is refused at the first one too many."""
    read = read_yaml("file.yaml", b"a: [" + b"x," * NODE_CAP + b"x]")
    assert [fault.code for fault in read.faults] == ["too-large"]
    # the mapping, its key, the list and NODE_CAP - 3 items; then one item more
    assert read_yaml("file.yaml", b"a: [" + b"x," * (NODE_CAP - 4) + b"x]").faults == ()
    assert read_yaml("file.yaml", b"a: [" + b"x," * (NODE_CAP - 3) + b"x]").value is None


def test_size_is_capped() -> None:
    """One byte more than the cap is refused, the cap itself is read."""
    data = b"a: b\n#" + b"x" * (SIZE_CAP - 6)
    assert read_yaml("file.yaml", data).faults == ()
    assert [fault.code for fault in read_yaml("file.yaml", data + b"x").faults] == ["too-large"]


def assert_sound(data: bytes, read: Read) -> None:
    """Check that there is a value or an error, and that each fault lies inside the file and is said in words."""
    assert read.value is not None or any(fault.severity is Severity.ERROR for fault in read.faults)
    lines = lines_of(readable(data))
    for fault in read.faults:
        position = locate(data, fault.place)
        assert 1 <= position.line <= len(lines)
        assert 1 <= position.column <= len(lines[position.line - 1]) + 1
        assert position.length >= 1
        assert fault.message
        assert fault.help
        for place in fault.also:
            locate(data, place)


SIGNS = st.sampled_from(
    [*"\t\n\r :-?[]{},&*!|>%@`#'\"\\~<x1é“”\u00a0", ": ", "- ", "\n  ", " #", "---", "...", "<<: ", "? "]
)


@given(st.binary(max_size=60))
@example(b"\xef\xbb\xbf")
@example(b'"\\UFFFFFFFF"')
@example(b"%YAML 99999999999999999999.1\n---\n")
def test_any_bytes_give_a_value_or_faults(data: bytes) -> None:
    """No bytes raise an error; each gives a value, or faults with places inside."""
    assert_sound(data, read_yaml("file.yaml", data))


@given(st.lists(SIGNS, max_size=30))
def test_any_signs_give_a_value_or_faults(signs: list[str]) -> None:
    """No mix of the signs that YAML keeps for itself raises an error."""
    data = "".join(signs).encode()
    assert_sound(data, read_yaml("file.yaml", data))


@st.composite
def mutations(draw: st.DrawFn) -> bytes:
    """Change a valid file in up to four places: letters put in, taken out, or lines moved."""
    text = VALID.decode()
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = start + draw(st.integers(0, 12))
        text = text[:start] + "".join(draw(st.lists(SIGNS, max_size=3))) + text[end:]
    return text.encode()


@given(mutations())
def test_a_changed_file_gives_a_value_or_faults(data: bytes) -> None:
    """A valid file that was changed by accident gives a value, or faults with places inside, up to the model."""
    assert_sound(data, read_yaml("file.yaml", data))
    for fault in faults_of("file.yaml", data):
        assert locate(data, fault.place).line >= 1


@given(mutations())
def test_the_plain_parser_never_fails_either(data: bytes) -> None:
    """The same holds for the parser written in Python."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(events, "new_parser", events.PlainParser)
        assert_sound(data, read_yaml("file.yaml", data))
