"""The command line, from the words typed to the number it ends with."""

import io
import json
import resource
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from packlarder.cli import entry, main, texts, usage
from packlarder.cli.build import default_out
from packlarder.cli.console import painted, wants_colour
from packlarder.cli.downloads import downloads
from packlarder.cli.new_file import id_of
from packlarder.cli.options import Misuse, Options, parse
from packlarder.cli.stages import edition_of
from packlarder.cli.start import starter_files
from packlarder.disk.marker import MARKER, marker_of
from packlarder.disk.reading import BookFiles, read_folder


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """Give a book of one's own: what `start` makes."""
    folder = tmp_path / "book"
    for path, content in starter_files():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
    return folder


def edit(book: Path, name: str, old: str, new: str) -> None:
    """Change a file of a book."""
    text = (book / name).read_text("utf-8")
    assert old in text
    (book / name).write_text(text.replace(old, new), "utf-8")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("", "say what to do: build, check, show, serve, start, new, draw, home, labels, test, bench."),
        ("chekc", 'no command is called "chekc"; did you mean "check"?'),
        ("check --jsno", '"--jsno" is nothing that can stand there.'),
        ("check --js", '"--js" is nothing that can stand there.'),
        ("check more", '"more" is nothing that can stand there.'),
        ("check --book", "--book needs a value after it."),
        ("check --on 1.6.2027", '"1.6.2027" is no day; write it like 2027-06-01.'),
        ("check --on 2027-02-30", "there is no day 2027-02-30 in the calendar."),
        ("check --on 0001-01-01", '"0001-01-01" is no day; write it like 2027-06-01.'),
        ("show", "KIND is missing."),
        ("show dish", "ID is missing."),
        ("show dihs soup", 'no kind is called "dihs"; did you mean "dish"?'),
        ("show dish soup --servings none", '"none" is no whole number from 1 to 24.'),
        ("serve --port 70000", '"70000" is no whole number from 1 to 65,535.'),
        ("start", "DIR is missing."),
        ("new component", "NAME is missing."),
    ],
)
def test_what_can_not_be_understood_is_misuse(capsys: pytest.CaptureFixture[str], words: str, says: str) -> None:
    """It ends with 2, says on standard error what is wrong, and where the help is; nothing goes to standard output."""
    assert main(words.split()) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith(f"packlarder: {says} `{texts.PROGRAM} ")


@pytest.mark.parametrize("words", [["--help"], *([command, "--help"] for command in usage.COMMANDS)])
def test_help_is_no_wider_than_a_terminal(capsys: pytest.CaptureFixture[str], words: list[str]) -> None:
    """Every help ends with 0 and keeps to 80 columns."""
    assert main(words) == 0
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) > 4
    assert max(map(len, lines)) <= 80


def test_options_may_stand_before_the_command() -> None:
    """`--book` and `--on` hold wherever they stand, and what stands last counts."""
    assert parse(["--book", "a", "--on", "2027-06-01", "check"]).book == Path("a")
    assert parse(["--book", "a", "check", "--book", "b"]).book == Path("b")
    assert parse(["check", "--on", "2027-06-01"]).on == date(2027, 6, 1)


def test_options_of_test_are_passed_on() -> None:
    """What stands after `test` is pytest's."""
    assert parse(["test", "-k", "clock", "--book"]) == Options(command="test", passed_on=("-k", "clock", "--book"))


def test_help_comes_at_once(checkout: Path) -> None:
    """A start with `--help` takes the processor no longer than ten starts of Python; the best of five counts.

    That is some 0.15 s on a machine at rest; beside Python itself it holds on a slow and busy one too.
    """

    def spent(*words: str) -> float:
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        environment = {"PYTHONPATH": str(checkout / "generator")}
        subprocess.run([sys.executable, "-P", *words], env=environment, capture_output=True, check=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime

    spent("-m", "packlarder", "--help")  # compiled now, whatever was edited
    ours = min(spent("-m", "packlarder", "--help") for _ in range(5))
    assert ours < 10 * min(spent("-c", "pass") for _ in range(5))


def test_help_brings_nothing_heavy(checkout: Path) -> None:
    """What takes long to load is loaded by the commands that need it."""
    asked = (
        "import sys; from packlarder.cli import main; main(['--help']);"
        "sys.exit(str({'pydantic', 'yaml', 'mkdocs', 'weasyprint', 'jinja2', 'tqdm', 'watchfiles'} & set(sys.modules)))"
    )
    ended = subprocess.run(
        [sys.executable, "-P", "-c", asked],
        env={"PYTHONPATH": str(checkout / "generator")},
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.stderr.strip() == "set()"


def test_a_sound_book_is_all_well(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A new book as `start` makes it has nothing wrong: 3 dishes, 9 components."""
    assert main(["check", "--book", str(book)]) == 0
    assert capsys.readouterr().out == "3 dishes, 9 components: nothing wrong.\n"


def test_warnings_alone_end_well(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A dish with a photo that is not there is pointed out, and ends with 0."""
    edit(book, "dishes/apple-porridge.yaml", "serves: 1", "serves: 1\nphoto: bowl.jpg")
    assert main(["check", "--book", str(book)]) == 0
    told = capsys.readouterr().out
    assert 'dishes/apple-porridge.yaml:5:8: warning[unknown-photo]: no photo is called "bowl.jpg"' in told
    assert told.endswith("1 warning in 1 file\n3 dishes, 9 components: no errors.\n")


def test_faults_of_all_files_are_told_in_one_run(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Slips in four files give four errors, sorted by place; what only follows from them is not told."""
    edit(book, "components/black-beans.yaml", "form: split", "from: split")
    edit(book, "dishes/apple-porridge.yaml", "porridge mix: 1 portion", "poridge mix: 1 portion")
    edit(book, "dishes/crackers-and-apple.yaml", "15 g", "15 min")
    edit(book, "book.yaml", "print: [a6]", "print: [a6, a9]")
    assert main(["check", "--book", str(book)]) == 1
    told = capsys.readouterr().out
    heads = [line.removeprefix(f"{book.as_posix()}/") for line in told.splitlines() if ": error[" in line]
    assert [head.split(": ")[:2] for head in heads] == [
        ["book.yaml:59:13", "error[unknown-print-size]"],
        ["components/black-beans.yaml:8:1", "error[unknown-key]"],
        ["dishes/apple-porridge.yaml:6:5", "error[unknown-component]"],
        ["dishes/crackers-and-apple.yaml:8:17", "error[unreadable-quantity]"],
    ]
    assert "4 errors in 4 files" in told


def test_check_gives_the_same_as_data(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`--json` gives every fault with its place, and the counts; nothing else stands on standard output."""
    edit(book, "components/black-beans.yaml", "form: split", "from: split")
    assert main(["check", "--json", "--book", str(book)]) == 1
    told = json.loads(capsys.readouterr().out)
    [fault] = told.pop("faults")
    assert told == {"dishes": 3, "components": 8, "errors": 1, "warnings": 0}
    assert (fault["file"], fault["line"], fault["column"]) == (f"{book}/components/black-beans.yaml", 8, 1)
    assert (fault["severity"], fault["code"], fault["help"]) == ("error", "unknown-key", "did you mean `form`?")


def test_the_book_is_the_folder_recipes_or_the_current_one(
    book: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Without `--book`, a folder `recipes` that holds a book comes first, then the current folder."""
    monkeypatch.chdir(book)
    assert main(["check"]) == 0
    (book.parent / "recipes").symlink_to(book)
    monkeypatch.chdir(book.parent)
    edit(book, "book.yaml", "units:", "unit:")
    assert main(["check"]) == 1
    assert "recipes/book.yaml:16:1: error[unknown-key]" in capsys.readouterr().out


def test_a_folder_that_is_no_book_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder without book.yaml is a fault; a folder that is not there is misuse."""
    assert main(["check", "--book", str(tmp_path)]) == 1
    assert "there is no book.yaml here" in capsys.readouterr().out
    assert main(["check", "--book", str(tmp_path / "gone")]) == 2
    assert capsys.readouterr().err == f"packlarder: there is no folder {tmp_path / 'gone'}.\n"


def test_show_prints_a_dish_within_80_columns(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The plain sheet has name, servings, water, parts, steps and edition, and no line is too wide."""
    assert main(["show", "dish", "Beans and rice", "--book", str(book), "--on", "2027-06-01"]) == 0
    told = capsys.readouterr().out
    assert told.startswith("Beans and rice\nsupper · boiled in a pot · for 2\n")
    assert max(map(len, told.splitlines())) <= 80
    for words in ("Water to carry  ", "\nPARTS\nBlack beans ", "\nSTEPS\n 0:00  soak ", "edition ", "1 June 2027"):
        assert words in told


def test_show_gives_data_that_adds_up(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Every drop of the water stands in one field, all in whole mL, and they add up to what is carried."""
    for servings in (1, 2, 5, 12):
        command = ["show", "dish", "beans-and-rice", "--servings", str(servings), "--json", "--book", str(book)]
        assert main(command) == 0
        told = json.loads(capsys.readouterr().out)
        water = told["water"]
        assert (told["dish"], told["servings"]) == ("beans-and-rice", servings)
        assert all(isinstance(piece, int) for piece in water.values())
        assert sum(water.values()) - water["carry_ml"] == water["carry_ml"] > 0
        beans = told["parts"][0]
        assert beans["dry_g"] == 40 * servings  # 80 g for 2
        assert beans["amount"]["metric"] == f"{40 * servings} g"
        given = beans["water"]
        assert abs(given["offered_ml"] - given["absorbed_ml"] - given["drained_ml"]) <= 10  # printed roundings


def test_the_day_and_the_files_make_the_edition(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The same files and day give the same edition; another day or another byte gives another."""

    def edition(*words: str) -> str:
        assert main(["show", "dish", "apple-porridge", "--json", "--book", str(book), *words]) == 0
        return str(json.loads(capsys.readouterr().out)["edition"])

    first = edition("--on", "2027-06-01")
    assert len(first) == 8
    assert edition("--on", "2027-06-01") == first
    assert edition("--on", "2027-06-02") != first
    (book / "photos").mkdir()
    (book / "photos" / "pot.jpg").write_bytes(b"x")
    assert edition("--on", "2027-06-01") != first


def test_an_edition_tells_names_from_contents() -> None:
    """Bytes that move from a file's content to another file's name make another edition."""
    day = date(2027, 6, 1)
    one = BookFiles(texts={"a": b"b", "c": b"d"}, photos={}, faults=())
    other = BookFiles(texts={"a": b"bc", "": b"d"}, photos={}, faults=())
    assert edition_of(one, day) != edition_of(other, day)


def test_the_books_own_day_gives_way_to_the_command_line(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`--on` goes before the book's `on`, which goes before today."""
    edit(book, "book.yaml", "# on: 2027-06-01", "on: 2027-06-01")
    days = []
    for words in ([], ["--on", "2028-02-29"]):
        assert main(["show", "dish", "apple-porridge", "--json", "--book", str(book), *words]) == 0
        days.append(json.loads(capsys.readouterr().out)["day"])
    assert days == ["2027-06-01", "2028-02-29"]


def test_show_names_what_was_meant(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An unknown dish is misuse, with the closest name."""
    assert main(["show", "dish", "apple-poridge", "--book", str(book)]) == 2
    assert capsys.readouterr().err == 'packlarder: no dish is called "apple-poridge"; did you mean "apple-porridge"?\n'


def test_show_keeps_to_the_dish(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A fault in the dish or its components stops it; one elsewhere is mentioned, and the dish is shown."""
    edit(book, "components/black-beans.yaml", "form: split", "from: split")
    assert main(["show", "dish", "beans-and-rice", "--json", "--book", str(book)]) == 1
    told = capsys.readouterr()
    assert told.out == ""
    assert "components/black-beans.yaml:8:1: error[unknown-key]" in told.err
    assert main(["show", "dish", "apple-porridge", "--json", "--book", str(book)]) == 0
    told = capsys.readouterr()
    assert json.loads(told.out)["dish"] == "apple-porridge"
    assert told.err == f"packlarder: elsewhere in the book something is wrong; `{texts.PROGRAM} check` says what.\n"


def test_start_makes_a_book_that_is_sound(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each kind of file is there, commented, with schemas beside them that git passes over; a check finds nothing."""
    folder = tmp_path / "our-book"
    assert main(["start", str(folder)]) == 0
    files = read_folder(folder)
    assert {"book.yaml", "foods.yaml", "pages/how-we-dry.md"} <= files.texts.keys()
    assert {path.parent.name for path in folder.rglob("*.yaml")} == {
        *("our-book", "components", "dishes"),
        *("batches", "draws", "trips"),
    }
    assert (folder / ".gitignore").read_text("utf-8").splitlines()[-1] == ".schema/"
    assert {path.name for path in (folder / ".schema").iterdir()} >= {"book.json", "component.json", "dish.json"}
    for name, content in files.texts.items():
        if name.endswith(".yaml"):
            schema = content.decode().splitlines()[0].removeprefix("# yaml-language-server: $schema=")
            assert (folder / name).parent.joinpath(schema).resolve().is_file(), name
    capsys.readouterr()
    assert main(["check", "--book", str(folder)]) == 0
    assert "nothing wrong" in capsys.readouterr().out


def test_start_leaves_alone_what_is_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A folder with files is refused and untouched; one that git has just made is welcome."""
    (tmp_path / "letter.txt").write_text("dear", "utf-8")
    assert main(["start", str(tmp_path)]) == 2
    assert capsys.readouterr().err.startswith(f"packlarder: {tmp_path} holds files already")
    assert [path.name for path in tmp_path.iterdir()] == ["letter.txt"]
    (tmp_path / "fresh" / ".git").mkdir(parents=True)
    assert main(["start", str(tmp_path / "fresh")]) == 0


def test_new_component_fills_in_what_is_known(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Id, food, state and form come from the name; what it holds must be looked at, so a check asks for it."""
    assert main(["new", "component", "Leek", "rings", "--book", str(book)]) == 0
    path = book / "components" / "leek-rings.yaml"
    assert capsys.readouterr().out.startswith(f"{path}: ")
    text = path.read_text("utf-8")
    assert "name: Leek rings\nwas: leek, raw  " in text
    assert "went in: raw  " in text
    assert "form: rings\n" in text
    assert main(["check", "--book", str(book)]) == 1
    assert f"{path.as_posix()}:5:1: error[empty-value]" in capsys.readouterr().out
    edit(book, "components/leek-rings.yaml", "contains:  ", "contains: []  ")
    assert main(["check", "--book", str(book)]) == 0


def test_new_never_takes_raw_food_for_safe(book: Path) -> None:
    """Of the foods that a name may mean, the raw one is filled in: egg powder is not taken for garlic powder."""
    assert main(["new", "component", "Egg powder", "--book", str(book)]) == 0
    text = (book / "components" / "egg-powder.yaml").read_text("utf-8")
    assert "was: egg, whole, raw" in text
    assert "contains: [egg]" in text


@pytest.mark.parametrize(("name", "dried"), [("Egg powder", "freeze-dried"), ("Leek rings", "air-dried")])
def test_new_proposes_no_drying_that_is_an_error(
    book: Path, capsys: pytest.CaptureFixture[str], name: str, dried: str
) -> None:
    """The household has a rack alone, and raw egg does not go into warm air; leek does."""
    main(["new", "component", name, "--book", str(book)])
    path = f"components/{name.lower().replace(' ', '-')}.yaml"
    assert f"\ndried: {dried}  " in (book / path).read_text("utf-8")
    if "contains:  " in (book / path).read_text("utf-8"):
        edit(book, path, "contains:  ", "contains: []  ")
    capsys.readouterr()
    assert main(["check", "--book", str(book)]) == 0
    assert "error[" not in capsys.readouterr().out


def test_new_dish_names_the_components_it_speaks_of(book: Path) -> None:
    """Parts and soaks are there for the components that the name holds; the servings are the household's."""
    assert main(["new", "dish", "Carrot and beans, again", "--book", str(book)]) == 0
    text = (book / "dishes" / "carrot-and-beans-again.yaml").read_text("utf-8")
    assert "\nserves: 2  " in text
    assert "\n  - black beans:\n  - carrot shreds:\n" in text
    assert "\n  - soak: black beans\n  - soak: carrot shreds\n" in text


@pytest.mark.parametrize("name", ["Black beans", "black-beans", "BLACK BEANS"])
def test_new_overwrites_nothing(book: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    """A name or id that is taken is refused, whatever its case, and the file stays."""
    path = book / "components" / "black-beans.yaml"
    before = path.read_bytes()
    assert main(["new", "component", name, "--book", str(book)]) == 2
    assert f"is there already: {path}" in capsys.readouterr().err
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    ("name", "id"),
    [("Leek rings", "leek-rings"), ("Crème brûlée", "creme-brulee"), ("Ann's 5-bean mix!", "anns-5-bean-mix")],
)
def test_ids_are_made_from_names(name: str, id: str) -> None:
    """Letters lose their accents; what is no letter and no figure becomes one hyphen."""
    assert id_of(name) == id


@pytest.mark.parametrize("name", ["", "!?", "豆", "a" * 81, "a\nb"])
def test_some_names_make_no_id(name: str) -> None:
    """A name without letters for an id, or with too many, or with a line break, is misuse."""
    with pytest.raises(Misuse):
        id_of(name)


def test_a_slip_of_ours_is_told_in_a_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """It ends with 1, says what it was and where to report it; the traceback is for those who ask."""

    def slips(_options: Options) -> int:
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr(entry, "_run", slips)
    monkeypatch.delenv("PACKLARDER_DEBUG", raising=False)
    assert main(["check"]) == 1
    told = capsys.readouterr().err
    assert "this is a fault of Packlarder, not of your book: ZeroDivisionError: division by zero." in told
    assert "Traceback" not in told
    monkeypatch.setenv("PACKLARDER_DEBUG", "1")
    assert main(["check"]) == 1
    assert "Traceback" in capsys.readouterr().err


@pytest.mark.parametrize(("stop", "code"), [(KeyboardInterrupt, 130), (BrokenPipeError, 141)])
def test_who_stops_us_hears_nothing(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], stop: type[BaseException], code: int
) -> None:
    """Ctrl-C and a reader that goes away end quietly."""

    def stopped(_options: Options) -> int:
        raise stop

    monkeypatch.setattr(entry, "_run", stopped)
    monkeypatch.setattr(entry, "_drop_output", lambda: None)
    assert main(["check"]) == code
    assert capsys.readouterr().err == ""


def test_a_reader_that_goes_away_is_no_traceback(book: Path, checkout: Path) -> None:
    """`packlarder show ... | head -1` leaves nothing on standard error."""
    command = f"{sys.executable} -P -m packlarder show dish apple-porridge --book {book} | head -1"
    environment = {"PYTHONPATH": str(checkout / "generator"), "PATH": "/usr/bin:/bin"}
    ended = subprocess.run(["sh", "-c", command], env=environment, capture_output=True, text=True, check=False)
    assert (ended.stdout, ended.stderr) == ("Apple porridge\n", "")


class _Terminal(io.StringIO):
    """Says that it is a terminal."""

    def isatty(self) -> bool:
        """Be one."""
        return True


def test_colour_is_for_terminals_that_want_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """No colour goes into a pipe, to a terminal that can not, or where NO_COLOR asks for none."""
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    assert wants_colour(_Terminal())
    assert not wants_colour(io.StringIO())
    monkeypatch.setenv("TERM", "dumb")
    assert not wants_colour(_Terminal())
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("NO_COLOR", "1")
    assert not wants_colour(_Terminal())


def test_colour_changes_no_word() -> None:
    """What is painted reads the same once the colours are taken out, and source lines are not painted."""
    text = "a.yaml:1:2: error[x-y]: bad: error[z]: worse\n  1 | b.yaml:1: error[x]: no\n    | ^^^\n"
    shown = painted(text)
    assert shown.count("\x1b[31m") == 1
    for colour in ("\x1b[31m", "\x1b[1m", "\x1b[0m"):
        shown = shown.replace(colour, "")
    assert shown == text


def test_build_is_refused_somebodys_folder(book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`--out` into a folder that we did not write ends with 2, says so, and touches nothing."""
    theirs = tmp_path / "theirs"
    theirs.mkdir()
    (theirs / "thesis.txt").write_text("years", "utf-8")
    assert main(["build", "--book", str(book), "--out", str(theirs)]) == 2
    assert "holds files that Packlarder did not write" in capsys.readouterr().err
    assert main(["build", "--book", str(book), "--out", str(book / "out")]) == 2
    assert [path.name for path in theirs.iterdir()] == ["thesis.txt"]
    assert not (book / "out").exists()


def test_a_file_of_ones_own_in_the_output_stops_the_build(
    book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What somebody put into the output of a build before is named, with a way out, and stays where it is."""
    out = tmp_path / "book-out"
    out.mkdir()
    (out / MARKER).write_bytes(marker_of(["index.html"]))
    (out / "index.html").write_text("old", "utf-8")
    (out / "mine.txt").write_text("years", "utf-8")
    assert main(["build", "--book", str(book)]) == 2
    assert capsys.readouterr().err == (
        f"packlarder: {out} holds mine.txt, which no build wrote, and a build would take away; "
        "move it away, or build elsewhere.\n"
    )
    assert (out / "mine.txt").read_text("utf-8") == "years"
    assert (out / "index.html").read_text("utf-8") == "old"


@pytest.mark.parametrize(
    ("book", "out"),
    [("/a/recipes", "/a/book-out"), ("/a/our-book", "/a/our-book-out"), ("/a/b/c", "/a/b/c-out")],
)
def test_books_side_by_side_have_outputs_of_their_own(book: str, out: str) -> None:
    """An output lies beside its book and bears its name; that of `recipes` is book-out."""
    assert default_out(Path(book)) == Path(out)


def test_downloads_name_what_a_build_writes() -> None:
    """Each size twice, to fold and plain, in the order of the book; then pocket file, e-book, data."""
    [whole] = downloads(("a6", "half-letter", "no-such-size"))
    assert [(one.label, one.address) for one in whole.files] == [
        ("Field booklet, A6, to print on A4 and fold", "print/field-a6-imposed-a4.pdf"),
        ("Field booklet, A6", "print/field-a6.pdf"),
        ("Field booklet, half Letter, to print on Letter and fold", "print/field-half-letter-imposed-letter.pdf"),
        ("Field booklet, half Letter", "print/field-half-letter.pdf"),
        ("The whole book in one file, for a phone", "pocket.html"),
        ("E-book", "book.epub"),
        ("Data for other programs", "data/book.json"),
    ]


def test_the_checks_are_one_run_of_pytest(monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> None:
    """`test` starts pytest on every core, passes options on, ends as it ends, and says nothing after it."""
    started: list[list[str]] = []

    def ended(command: list[str], **_where: object) -> subprocess.CompletedProcess[str]:
        started.append(command)
        print("7 passed in 0.1s", flush=True)
        return subprocess.CompletedProcess(command, returncode=5)

    monkeypatch.setattr(subprocess, "run", ended)
    assert main(["test", "-k", "clock"]) == 1
    assert [command[1:] for command in started] == [["-P", "-m", "pytest", "-n", "auto", "-k", "clock"]]
    assert capfd.readouterr().out.splitlines()[-1] == "7 passed in 0.1s"


def test_build_writes_everything(book: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """One command gives site, booklet, pocket file, e-book and data, beside the book, and is quiet on the way."""
    assert main(["build", "--book", str(book)]) == 0
    out = tmp_path / "book-out"
    for name in (
        "index.html",
        "dishes/beans-and-rice.html",
        "print/field-a6.pdf",
        "print/field-a6-imposed-a4.pdf",
        "pocket.html",
        "book.epub",
        "data/recipes/beans-and-rice.jsonld",
        "data/dishes/beans-and-rice.json",
        MARKER,
        *(one.address for group in downloads(("a6",)) for one in group.files),
    ):
        assert (out / name).stat().st_size > 0, name
    told = capsys.readouterr()
    assert told.out == f"3 dishes, 9 components: written to {out}\n"
    assert told.err == ""
