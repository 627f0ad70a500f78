"""What may stand on the command line, and what is said of what may not."""

import argparse
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import NoReturn

from packlarder.cli import texts, usage
from packlarder.cli.hints import meant_or_known

FIRST_YEAR, LAST_YEAR = 1900, 2199
MOST_SERVINGS = 24
LAST_PORT = 65_535
MOST_CELLS = 100
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_WHOLE = re.compile(r"[0-9]{1,6}")


class Misuse(Exception):
    """The command line can not be understood or followed; the message is a sentence for the one who typed it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Options:
    """A command line that was understood. What a command does not take keeps its default."""

    command: str
    book: Path | None = None
    on: date | None = None
    json: bool = False
    out: Path | None = None
    kind: str = ""
    name: str = ""
    mark: str = ""
    deed: str = ""
    amount: str = ""
    what_for: str = ""
    why: str = ""
    not_taken: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    learnt: tuple[str, ...] = ()
    write: bool = False
    servings: int | None = None
    sheets: tuple[str, ...] = ()
    first: int = 1
    folder: Path = Path()
    port: int = 0
    dishes: int = 1000
    passed_on: tuple[str, ...] = ()


def parse(words: Sequence[str]) -> Options:
    """Understand a command line. Raises Misuse; SystemExit after `--help`."""
    if words[:1] == ["test"] and not {"-h", "--help"} & set(words):
        return Options(command="test", passed_on=tuple(words[1:]))
    first = next((word for word in words if not word.startswith("-")), None)
    if not words:
        raise Misuse(texts.NO_COMMAND.format(commands=", ".join(usage.COMMANDS)))
    parser = _parser()
    if first is not None and first == words[0] and first not in usage.COMMANDS:
        raise Misuse(_unknown("command", first, usage.COMMANDS))
    understood = parser.parse_args(words)
    for name, said in vars(understood).items():
        if isinstance(said, list):
            setattr(understood, name, tuple(said))
    return _sensible(Options(**vars(understood)))


def _sensible(options: Options) -> Options:
    """Give a command line back. Raises Misuse for what its kind lacks, or does not take."""
    if options.command == "draw":
        return _drawn(options)
    if options.command == "home" and not options.name:
        raise Misuse(texts.REQUIRED.format(word="TRIP"))
    if options.command not in ("show", "new", "labels"):
        return options
    if not options.name and options.kind not in usage.NAMELESS_KINDS:
        raise Misuse(texts.REQUIRED.format(word="NAME" if options.command == "new" else "ID"))
    if options.name and options.kind in ("larder", "all"):
        raise Misuse(texts.UNRECOGNISED.format(word=options.name))
    if options.servings is not None and options.kind != "dish":
        raise Misuse(texts.NOT_WITH.format(word="--servings", kind=options.kind))
    return options


def _drawn(options: Options) -> Options:
    """Tell a deed of two words from the amount after it. Raises Misuse for a deed that there is not, or half said."""
    said = " ".join((options.deed.replace("-", " "), options.amount)).strip()
    deed = next((one for one in usage.DEEDS if f"{said} ".lower().startswith(f"{one} ")), None)
    if deed is None:
        raise Misuse(_unknown("deed", options.deed, usage.DEEDS))
    amount = said[len(deed) :].strip()
    if deed == usage.OPENED and amount:
        raise Misuse(texts.UNRECOGNISED.format(word=amount))
    if deed != usage.OPENED and not amount:
        raise Misuse(texts.NO_AMOUNT.format(deed=deed))
    return replace(options, deed=deed, amount=amount)


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in our words."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong."""
        raise Misuse(_in_our_words(message))


def _formatter(prog: str) -> argparse.HelpFormatter:
    return argparse.RawDescriptionHelpFormatter(prog, width=80, max_help_position=24)


def _parser() -> _Parser:
    parser = _Parser(prog=texts.PROGRAM, description=usage.ABOUT, epilog=usage.MORE)
    _common(parser)
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands", required=True)
    made = {
        name: commands.add_parser(name, help=says.short, description=says.long, epilog=says.more)
        for name, says in usage.COMMANDS.items()
    }
    for name in ("build", "check", "show", "serve", "new", "draw", "home", "labels"):
        _common(made[name])
    for one in (parser, *made.values()):
        one.allow_abbrev = False
        one.formatter_class = _formatter
    made["build"].add_argument("--out", type=Path, metavar="DIR", default=None, help=usage.OUT)
    made["check"].add_argument("--json", action="store_true", help=usage.CHECK_JSON)
    _show(made["show"])
    made["serve"].add_argument("--port", type=_port, metavar="NUMBER", default=0, help=usage.PORT)
    made["start"].add_argument("folder", type=Path, metavar="DIR", help=usage.FOLDER)
    made["new"].add_argument("kind", type=_kind(usage.NEW_KINDS), metavar="KIND", help=usage.KIND_NEW)
    made["new"].add_argument("name", nargs="*", action=_Joined, default="", metavar="NAME", help=usage.NAME)
    _draw(made["draw"])
    _home(made["home"])
    _labels(made["labels"])
    made["bench"].add_argument("--dishes", type=_dishes, metavar="NUMBER", default=1000, help=usage.DISHES)
    return parser


def _common(parser: argparse.ArgumentParser) -> None:
    # A default would overwrite what was said before the command.
    parser.add_argument("--book", type=Path, metavar="DIR", default=argparse.SUPPRESS, help=usage.BOOK)
    parser.add_argument("--on", type=_day, metavar="DATE", default=argparse.SUPPRESS, help=usage.ON)


def _show(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", type=_kind(usage.SHOW_KINDS), metavar="KIND", help=usage.KIND_SHOW)
    parser.add_argument("name", nargs="?", metavar="ID", default="", help=usage.ID)
    parser.add_argument("--servings", type=_servings, metavar="NUMBER", default=None, help=usage.SERVINGS)
    parser.add_argument("--json", action="store_true", help=usage.SHOW_JSON)


def _labels(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("kind", type=_kind(usage.LABEL_KINDS), metavar="KIND", help=usage.KIND_LABELS)
    parser.add_argument("name", nargs="*", action=_Joined, default="", metavar="ID", help=usage.ID_LABELS)
    parser.add_argument("--sheets", nargs="+", metavar="SHEET", default=[], help=usage.SHEETS)
    parser.add_argument("--first", type=_first, metavar="NUMBER", default=1, help=usage.FIRST)
    parser.add_argument("--servings", type=_servings, metavar="NUMBER", default=None, help=usage.SERVINGS)
    parser.add_argument("--out", type=Path, metavar="DIR", default=None, help=usage.LABELS_OUT)


def _draw(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("mark", metavar="MARK", help=usage.MARK)
    parser.add_argument("deed", metavar="DEED", help=usage.DEED)
    parser.add_argument("amount", nargs="*", action=_Joined, default="", metavar="AMOUNT", help=usage.AMOUNT)
    parser.add_argument("--for", dest="what_for", metavar="TEXT", default="", help=usage.WHAT_FOR)
    parser.add_argument("--why", metavar="TEXT", default="", help=usage.WHY)


def _home(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", nargs="*", action=_Joined, default="", metavar="TRIP", help=usage.TRIP)
    parser.add_argument("--not-taken", action="append", metavar="MARK", default=[], help=usage.NOT_TAKEN)
    parser.add_argument("--left", action="append", metavar="TEXT", default=[], help=usage.LEFT)
    parser.add_argument("--learnt", action="append", metavar="TEXT", default=[], help=usage.LEARNT)
    parser.add_argument("--write", action="store_true", help=usage.WRITE)


class _Joined(argparse.Action):
    """Takes several words for one name."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,  # noqa: ARG002 - as argparse calls it
        namespace: argparse.Namespace,
        values: str | Sequence[object] | None,
        option_string: str | None = None,  # noqa: ARG002 - as argparse calls it
    ) -> None:
        """Keep the name."""
        setattr(namespace, self.dest, " ".join(map(str, values or ())))


class _kind:  # noqa: N801 - used like the functions beside it
    """Reads one of a few words."""

    def __init__(self, known: tuple[str, ...]) -> None:
        self.known = known

    def __call__(self, word: str) -> str:
        if word in self.known:
            return word
        raise argparse.ArgumentTypeError(_unknown("kind", word, self.known))


def _day(word: str) -> date:
    try:
        day = date.fromisoformat(word) if _DAY.fullmatch(word) else None
    except ValueError:
        raise argparse.ArgumentTypeError(texts.NO_SUCH_DAY.format(word=word)) from None
    if day is None or not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise argparse.ArgumentTypeError(texts.NOT_A_DAY.format(word=word))
    return day


def as_day(word: str) -> date:
    """Read a day that stands where a name does. Raises Misuse for what is none."""
    try:
        return _day(word)
    except argparse.ArgumentTypeError as error:
        raise Misuse(str(error)) from None


def _first(word: str) -> int:
    return _whole(word, 1, MOST_CELLS)


def _servings(word: str) -> int:
    return _whole(word, 1, MOST_SERVINGS)


def _port(word: str) -> int:
    return _whole(word, 1, LAST_PORT)


def _dishes(word: str) -> int:
    return _whole(word, 1, 10_000)


def _whole(word: str, low: int, high: int) -> int:
    if not _WHOLE.fullmatch(word) or not low <= int(word) <= high:
        raise argparse.ArgumentTypeError(texts.NOT_A_NUMBER.format(word=word, low=low, high=f"{high:,}"))
    return int(word)


def _unknown(what: str, word: str, known: "tuple[str, ...] | dict[str, usage.Command]") -> str:
    return texts.UNKNOWN.format(what=what, word=word, hint=meant_or_known(word, known))


_OUR_WORDS = (
    (re.compile(r"argument .*?: (?P<said>.*)", re.DOTALL), "{said}"),
    (re.compile(r"unrecognized arguments: (?P<word>\S+).*", re.DOTALL), texts.UNRECOGNISED),
    (re.compile(r"the following arguments are required: (?P<word>.*)"), texts.REQUIRED),
)
"""What argparse says, and what we say instead; messages of ours come through it under the name of their argument."""


def _in_our_words(message: str) -> str:
    wanted = re.fullmatch(r"argument (?P<word>\S+): expected one argument", message)
    if wanted:
        return texts.NO_VALUE.format(word=wanted["word"])
    for theirs, ours in _OUR_WORDS:
        found = theirs.fullmatch(message)
        if found:
            return ours.format(**found.groupdict())
    return message
