"""Bytes in and out: what is read of a book's folder, and that an output is whole or untouched."""

import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from packlarder.disk.marker import MARKER, MARKER_SAYS, foreign, marker_of
from packlarder.disk.reading import PHOTO_CAP, TEXT_CAP, read_folder
from packlarder.disk.writing import NotWritten, create_file, refusal, whole_or_nothing, write_changed


def write(folder: Path, files: dict[str, bytes]) -> Path:
    """Write files into a folder."""
    for name, content in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content)
    return folder


def codes(folder: Path) -> list[tuple[str, str]]:
    """Read a folder; give the file and code of each fault."""
    return [(fault.place.file, fault.code) for fault in read_folder(folder).faults]


def held(folder: Path) -> dict[str, bytes]:
    """Give every file of a folder, hidden ones too."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_only_what_belongs_to_a_book_is_read(tmp_path: Path) -> None:
    """Texts and photos of a book are read in order; hidden files, editors' copies and other folders are passed over."""
    book = write(
        tmp_path,
        {
            "book.yaml": b"1",
            "foods.yaml": b"2",
            "components/b.yaml": b"3",
            "components/a.yaml": b"4",
            "dishes/c.yml": b"5",
            "pages/d.md": b"6",
            "photos/e.jpg": b"7",
            ".git/config": b"no",
            ".schema/dish.json": b"no",
            "components/.a.yaml.swp": b"no",
            "components/a.yaml~": b"no",
            "notes.txt": b"no",
            "README.md": b"no",
            "LICENSE": b"no",
            "attic/old.txt": b"no",
            "batches/2027-01.yaml": b"8",
            "draws/2027-02.yaml": b"9",
            "trips/islands.yaml": b"10",
            "other-book/book.yaml": b"no",
            "other-book/more.yaml": b"no",
            "dishes/README.md": b"no",
            "dishes/c.yml.bak": b"no",
            "photos/drawing.svg": b"no",
        },
    )
    read = read_folder(book)
    assert list(read.texts.items()) == [
        ("book.yaml", b"1"),
        ("foods.yaml", b"2"),
        ("components/a.yaml", b"4"),
        ("components/b.yaml", b"3"),
        ("dishes/c.yml", b"5"),
        ("batches/2027-01.yaml", b"8"),
        ("draws/2027-02.yaml", b"9"),
        ("trips/islands.yaml", b"10"),
        ("pages/d.md", b"6"),
    ]
    assert read.photos == {"e.jpg": b"7"}
    assert read.faults == ()


def test_a_large_text_is_read_so_far_that_it_is_seen_to_be_too_large(tmp_path: Path) -> None:
    """Of a file of 10 MB no more than 1 MiB and a byte is taken into memory."""
    write(tmp_path, {"dishes/big.yaml": b"#" * 10_000_000})
    assert len(read_folder(tmp_path).texts["dishes/big.yaml"]) == TEXT_CAP == 1_048_577


def test_a_photo_too_large_is_a_fault(tmp_path: Path) -> None:
    """A photo may have 8 MiB and no byte more."""
    write(tmp_path, {"photos/fits.jpg": b"x" * PHOTO_CAP, "photos/not.jpg": b"x" * (PHOTO_CAP + 1)})
    read = read_folder(tmp_path)
    assert list(read.photos) == ["fits.jpg"]
    assert codes(tmp_path) == [("photos/not.jpg", "photo-too-large")]


@pytest.mark.parametrize("name", ["at the lake.jpg", "a#b.png", "50%.jpg", "ø.jpg"])
def test_a_photo_is_named_so_that_an_address_can_name_it(tmp_path: Path, name: str) -> None:
    """A name that would need quoting in an address is a fault."""
    write(tmp_path, {f"photos/{name}": b"x"})
    assert codes(tmp_path) == [(f"photos/{name}", "file-name")]
    assert read_folder(tmp_path).photos == {}


def test_links_may_lead_about_in_the_book_and_not_out_of_it(tmp_path: Path) -> None:
    """A link inside the book is followed; one that leads out, in a ring or nowhere, is a fault and is not read."""
    outside = write(tmp_path / "outside", {"secret.yaml": b"secret"})
    book = write(tmp_path / "book", {"dishes/a.yaml": b"a"})
    (book / "dishes" / "inside.yaml").symlink_to("a.yaml")
    (book / "dishes" / "out.yaml").symlink_to(outside / "secret.yaml")
    (book / "dishes" / "ring.yaml").symlink_to("ring.yaml")
    (book / "dishes" / "gone.yaml").symlink_to("nowhere.yaml")
    (book / "pages").symlink_to(outside)
    read = read_folder(book)
    assert read.texts == {"dishes/a.yaml": b"a", "dishes/inside.yaml": b"a"}
    assert codes(book) == [
        ("dishes/gone.yaml", "unreadable"),
        ("dishes/out.yaml", "leads-out"),
        ("dishes/ring.yaml", "leads-out"),
        ("pages", "leads-out"),
    ]


def test_a_pipe_does_not_stop_the_reading(tmp_path: Path) -> None:
    """What is called like a file and is none is a fault; it is not waited for."""
    write(tmp_path, {"dishes/a.yaml": b"a"})
    os.mkfifo(tmp_path / "dishes" / "pipe.yaml")
    assert codes(tmp_path) == [("dishes/pipe.yaml", "not-a-file")]


def test_a_folder_in_a_folder_is_pointed_out(tmp_path: Path) -> None:
    """What lies deeper is not read, and that is said."""
    write(tmp_path, {"dishes/soups/a.yaml": b"a"})
    assert codes(tmp_path) == [("dishes/soups", "stray-folder")]


FOLDERS = "a book has components/, dishes/, batches/, draws/, trips/, pages/"


@pytest.mark.parametrize(
    ("path", "told", "way_out"),
    [
        (
            "dish/soup.yaml",
            "dish",
            f"did you mean dishes/? {FOLDERS}",
        ),
        (
            "Dishes/soup.yaml",
            "Dishes",
            f"did you mean dishes/? {FOLDERS}",
        ),
        ("attic/soup.YML", "attic", FOLDERS),
        ("soup.yaml", "soup.yaml", "dishes live in dishes/, components in components/"),
        ("dishes/soup.txt", "dishes/soup.txt", "call it soup.yaml, or move it out of dishes/"),
        ("dishes/soup.yaml.txt", "dishes/soup.yaml.txt", "call it soup.yaml, or move it out of dishes/"),
        ("components/leek", "components/leek", "call it leek.yaml, or move it out of components/"),
        ("pages/drying.txt", "pages/drying.txt", "call it drying.md, or move it out of pages/"),
        ("dishes/soup.jpg", "dishes/soup.jpg", "photos live in photos/"),
    ],
)
def test_what_looks_meant_for_the_book_and_is_not_read_is_told(
    tmp_path: Path, path: str, told: str, way_out: str
) -> None:
    """A folder or file that the reader passes over does not vanish without a word; it is a warning, once."""
    book = write(tmp_path, {"book.yaml": b"1", path: b"name: soup"})
    [fault] = read_folder(book).faults
    assert (fault.place.file, fault.code, fault.severity, fault.help) == (told, "stray-file", "warning", way_out)
    assert set(read_folder(book).texts) == {"book.yaml"}


def test_a_name_that_can_not_be_shown_is_a_fault(tmp_path: Path) -> None:
    """A line break or an escape in a file's name reaches no terminal."""
    write(tmp_path, {"dishes/a\x1b[31m\n.yaml": b"a"})
    assert codes(tmp_path) == [("dishes/a?[31m?.yaml", "file-name")]


def test_a_file_that_may_not_be_read_is_a_fault(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's refusal is told at the file; the others are read all the same."""
    write(tmp_path, {"dishes/a.yaml": b"a", "dishes/b.yaml": b"b"})
    real = os.fsdecode(tmp_path / "dishes" / "a.yaml")

    def refusing(path: str, *_rest: object, **_more: object) -> object:
        if path == real:
            raise PermissionError(13, "Permission denied")
        return Path(path).open("rb")

    monkeypatch.setattr("builtins.open", refusing)
    read = read_folder(tmp_path)
    assert read.texts == {"dishes/b.yaml": b"b"}
    [fault] = read.faults
    assert (fault.place.file, fault.message) == ("dishes/a.yaml", "this file can not be read: permission denied")


def test_two_thousand_files_are_read_as_fast_as_the_disk_gives_them(tmp_path: Path) -> None:
    """Looking what belongs to the book takes little beside the reading; time of the processor, the best of five.

    That is a fifth of a second on a machine at rest.
    """
    write(tmp_path, {f"dishes/{number}.yaml": b"name: soup\n" * 40 for number in range(2_000)})

    def spent(read: Callable[[], int]) -> float:
        took = []
        for _ in range(5):
            start = time.process_time()
            assert read() == 2_000
            took.append(time.process_time() - start)
        return min(took)

    bare = spent(lambda: sum(path.read_bytes() != b"" for path in (tmp_path / "dishes").iterdir()))
    assert spent(lambda: len(read_folder(tmp_path).texts)) < 4 * bare


def build(out: Path, files: dict[str, bytes], stop: BaseException | None = None) -> None:
    """Write an output, and at its end raise what stops it."""
    with whole_or_nothing(out) as fresh:
        write(fresh, files)
        if stop is not None:
            raise stop


def test_an_output_takes_the_place_of_the_former_as_a_whole(tmp_path: Path) -> None:
    """The new output has its marker and nothing of the former; no other folder is left beside it."""
    out = tmp_path / "deep" / "out"
    build(out, {"old.html": b"old"})
    build(out, {"new.html": b"new"})
    assert set(held(out)) == {"new.html", MARKER}
    assert [path.name for path in out.parent.iterdir()] == ["out"]


def test_an_output_that_fails_leaves_the_former_as_it_was(tmp_path: Path) -> None:
    """Whatever is raised on the way, the former output stays, byte for byte, and nothing is left beside it."""
    out = tmp_path / "out"
    build(out, {"old.html": b"old"})
    before = held(out)
    for stop in (ValueError("slip"), KeyboardInterrupt()):
        with pytest.raises(type(stop)):
            build(out, {"new.html": b"half"}, stop=stop)
        assert held(out) == before
        assert [path.name for path in tmp_path.iterdir()] == ["out"]


def test_a_full_disk_is_told_in_a_sentence(tmp_path: Path) -> None:
    """What the system says against writing is no traceback."""
    with pytest.raises(NotWritten, match="can not be written: no space left on device"):
        build(tmp_path / "out", {}, stop=OSError(28, "No space left on device"))


def test_leftovers_of_a_build_that_was_cut_off_are_cleared(tmp_path: Path) -> None:
    """A half-made folder beside the output is gone after the next build."""
    out = tmp_path / "out"
    write(tmp_path, {f".out.packlarder-new/{MARKER}": b"", ".out.packlarder-new/half/page.html": b"half"})
    build(out, {"new.html": b"new"})
    assert set(held(tmp_path)) == {f"out/{MARKER}", "out/new.html"}


@pytest.mark.parametrize("swapped", [False, True])
def test_a_swap_that_was_cut_off_is_mended(tmp_path: Path, swapped: bool) -> None:
    """Cut off between its two moves, the former output is brought back; after them, it is cleared away."""
    out = tmp_path / "out"
    write(tmp_path, {f".out.packlarder-former/{MARKER}": b"", ".out.packlarder-former/old.html": b"old"})
    if swapped:
        write(tmp_path, {f"out/{MARKER}": marker_of(["new.html"]), "out/new.html": b"new"})
    with pytest.raises(ValueError, match="slip"), whole_or_nothing(out):
        raise ValueError("slip")
    assert set(held(tmp_path)) == {f"out/{MARKER}", "out/new.html" if swapped else "out/old.html"}


def test_two_builds_do_not_write_the_same_output_at_once(tmp_path: Path) -> None:
    """The second is told to wait, and takes nothing from the first."""
    out = tmp_path / "out"
    with whole_or_nothing(out) as fresh:
        write(fresh, {"first.html": b"first"})
        with pytest.raises(NotWritten, match="another build"), whole_or_nothing(out):
            pass
    assert set(held(out)) == {"first.html", MARKER}


def test_a_swap_that_the_system_refuses_puts_the_former_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second move fails: the first is undone."""
    out = tmp_path / "out"
    build(out, {"old.html": b"old"})
    real = Path.rename

    def refusing(path: Path, target: Path) -> Path:
        if path.name.endswith("-new"):
            raise OSError(18, "Cross-device link")
        return real(path, target)

    monkeypatch.setattr(Path, "rename", refusing)
    with pytest.raises(NotWritten, match="cross-device link"):
        build(out, {"new.html": b"new"})
    assert set(held(tmp_path)) == {f"out/{MARKER}", "out/old.html"}


@pytest.mark.parametrize(
    ("out", "says"),
    [
        ("shelf/book", "lies in the book"),
        ("shelf/book/out", "lies in the book"),
        ("shelf", "the book lies in"),
        ("theirs", "holds files that Packlarder did not write"),
        ("theirs/thesis.txt", "is no folder"),
        ("/", "is not a folder to fill"),
        ("home", "is not a folder to fill"),
        ("home/..", "is not a folder to fill"),
        ("here", "step out of it first"),
        ("link-to-theirs", "holds files that Packlarder did not write"),
    ],
)
def test_a_build_writes_into_nobodys_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, out: str, says: str
) -> None:
    """A folder that is somebody's, the book's, or around the book is refused with a reason; nothing is touched."""
    write(
        tmp_path, {"shelf/book/book.yaml": b"", "theirs/thesis.txt": b"years", "here/under/x": b"", "home/letter": b""}
    )
    (tmp_path / "link-to-theirs").symlink_to("theirs")
    monkeypatch.chdir(tmp_path / "here" / "under")
    monkeypatch.setattr(Path, "home", lambda: tmp_path / "home")
    if out == "here":
        write(tmp_path, {f"here/{MARKER}": b""})
    before = held(tmp_path)
    assert says in refusal(tmp_path / out, tmp_path / "shelf" / "book")
    assert held(tmp_path) == before


@pytest.mark.parametrize("out", ["new", "deep/er/new", "empty", "ours"])
def test_a_build_writes_into_what_is_new_empty_or_its_own(tmp_path: Path, out: str) -> None:
    """These are not refused."""
    write(tmp_path, {"book/book.yaml": b"", f"ours/{MARKER}": marker_of(["old.html"]), "ours/old.html": b""})
    (tmp_path / "empty").mkdir()
    assert refusal(tmp_path / out, tmp_path / "book") == ""


def test_a_file_is_written_whole_and_only_if_it_changed(tmp_path: Path) -> None:
    """The same content is not written again; no draft is left beside it."""
    path = tmp_path / "deep" / "a.json"
    assert [write_changed(path, text) for text in (b"1", b"1", b"2")] == [True, False, True]
    assert held(tmp_path) == {"deep/a.json": b"2"}


def test_a_file_that_is_there_is_not_created(tmp_path: Path) -> None:
    """What somebody wrote is not overwritten."""
    write(tmp_path, {"a.yaml": b"theirs"})
    with pytest.raises(FileExistsError):
        create_file(tmp_path / "a.yaml", b"ours")
    assert held(tmp_path) == {"a.yaml": b"theirs"}


def test_the_marker_says_what_it_is_and_what_was_written(tmp_path: Path) -> None:
    """Someone who finds the file learns that the folder is replaced; the same files give the same marker."""
    build(tmp_path / "out", {"b/page.html": b"b", "a.html": b"a"})
    says, *names = (tmp_path / "out" / MARKER).read_text("utf-8").splitlines()
    assert f"{says}\n" == MARKER_SAYS
    assert "anew at every build" in says
    assert names == ["a.html", "b/page.html"]
    assert foreign(tmp_path / "out") == []


@pytest.mark.parametrize(
    ("theirs", "named"),
    [
        (["mine.txt"], "mine.txt, which no build wrote, and a build would take away; move it away"),
        (["deep/b.txt", "a.txt"], "a.txt, deep/b.txt, which no build wrote, and a build would take away; move them"),
        (["1", "2", "3", "4", "5"], "1, 2, 3 and 2 more, which no build wrote"),
        ([".git/config"], ".git/config, which no build wrote"),
    ],
)
def test_what_somebody_put_into_an_output_is_not_taken_away(tmp_path: Path, theirs: list[str], named: str) -> None:
    """A file that no build wrote stops the next, before it begins and at its end, and is named; nothing is touched."""
    out = tmp_path / "out"
    build(out, {"old.html": b"old"})
    write(out, dict.fromkeys(theirs, b"mine"))
    before = held(out)
    assert f"out holds {named}" in refusal(out, tmp_path / "book")
    with pytest.raises(NotWritten, match="which no build wrote"):
        build(out, {"new.html": b"new"})
    assert held(out) == before
    assert [path.name for path in tmp_path.iterdir()] == ["out"]


def test_a_changed_page_and_the_litter_of_desktops_stop_no_build(tmp_path: Path) -> None:
    """Pages are written anew whatever was done to them; files that desktops leave in every folder are no one's."""
    out = tmp_path / "out"
    build(out, {"old.html": b"old"})
    write(out, {"old.html": b"edited", ".DS_Store": b"", "print/Thumbs.db": b""})
    assert refusal(out, tmp_path / "book") == ""
    build(out, {"new.html": b"new"})
    assert set(held(out)) == {"new.html", MARKER}


def test_where_no_folder_can_be_made_is_told_in_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's own tree (`/proc`) says that there is no such file: whatever it says here, it is no slip of ours."""

    def refusing(*_of_any: object, **_kind: object) -> None:
        raise FileNotFoundError(2, "No such file or directory")

    monkeypatch.setattr(Path, "mkdir", refusing)
    with pytest.raises(NotWritten, match="can not be written: no such file"), whole_or_nothing(tmp_path / "out"):
        pass
