"""Whoever names what stands in a file that could not be read is not blamed for it."""

from datetime import date

import pytest
from tests.books.cases import BASE, checked, files_in

from packlarder.book.read import read_book
from packlarder.faults import Fault
from packlarder.safety.whole import check_book

LEEK = "components/leek-rings.yaml"


def _codes(faults: tuple[Fault, ...]) -> list[str]:
    return [fault.code for fault in faults]


def test_a_file_that_could_not_be_opened_is_not_told_again_by_who_names_it() -> None:
    """The disk has told what is wrong with it: the core adds nothing."""
    files = files_in(BASE)
    del files[LEEK]
    found = read_book(files, lost=[LEEK])
    assert found.book is not None
    assert found.book.unread_components == {"leek rings": LEEK}
    assert (*found.faults, *check_book(found.book, date(2027, 6, 1)).faults) == ()
    assert _codes(checked(files)[1]) == ["unknown-component"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("name: Lauch\nform\n", {"leek rings", "lauch"}),
        ('name: "Lauch"   # ours\nform\n', {"leek rings", "lauch"}),
        ("nmae: Lauch\nformerly: [old-leek, poireau]\n", {"leek rings", "lauch", "old leek", "poireau"}),
        ("formerly: poireau\nform: rings\n", {"leek rings", "poireau"}),
        ("name: [Lauch, Porree]\n", {"leek rings", "lauch", "porree"}),
        ("", {"leek rings"}),
    ],
)
def test_an_unread_component_answers_to_whatever_its_file_tells(text: str, words: set[str]) -> None:
    """Its file's name always tells; its name and former ids do as far as they can be made out."""
    book = read_book({**files_in(BASE), LEEK: text.encode()}).book
    assert book is not None
    assert set(book.unread_components) == words
    assert set(book.unread_components.values()) == {LEEK}


def test_what_no_file_could_hold_is_told_beside_a_broken_file() -> None:
    """Only names of the broken file are passed over."""
    files = {**files_in(BASE), LEEK: b"form\n"}
    files["dishes/leek-noodles.yaml"] = files["dishes/leek-noodles.yaml"].replace(b"- noodles: 85", b"- boar: 85")
    assert sorted(_codes(checked(files)[1])) == ["no-keys", "unknown-component"]


def test_a_sound_book_has_nothing_unread() -> None:
    """No word of a sound component is passed over."""
    book = read_book(files_in(BASE)).book
    assert book is not None
    assert (dict(book.unread_components), book.unread) == ({}, frozenset())
