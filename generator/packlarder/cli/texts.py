"""What the command line says: help and sentences, in one catalogue."""

import sys
from collections.abc import Iterable
from typing import NamedTuple

PROGRAM = "python3 generator" if sys.argv[:1] == ["-c"] else "packlarder"
"""How the one who reads this started us: from a checkout, whose start hands over by `-c`, or installed."""


class Command(NamedTuple):
    """A command's help: a line for the list, a paragraph, and what stands below its options."""

    short: str
    long: str
    more: str = ""


ABOUT = """Packlarder checks a recipe book of home-dried food, does its sums, and turns it
into a site, a printable booklet and files to hand on."""
MORE = f"""A book is a folder of YAML files. `{PROGRAM} start DIR` makes one.
It ends with 0 when all is well, 1 when something in the book is wrong, and 2
when the command line can not be followed. Warnings alone are no failure."""

COMMANDS: dict[str, Command] = {
    "build": Command(
        "write site, booklets and files",
        "Write everything that comes of a book into one folder.",
        """The folder holds the site (index.html), the booklets (print/), the whole book
in one file (pocket.html), an e-book (book.epub), tables and calendars of trips
(trips/) and data for other programs (data/). It is replaced as a whole, and
only when the book has no errors. Files of your own in it stop the build.""",
    ),
    "check": Command(
        "say what is wrong",
        "Say everything that is wrong in a book, with the place and a way out.",
    ),
    "show": Command(
        "print a dish, a trip, a batch or the larder",
        """Print one dish, worked out for a number of servings; or one trip, with its
menu, water, fuel and what is still to dry; or one drying run with its batches;
or what stands in the larder, first to be eaten first.""",
        f"""Examples: {PROGRAM} show dish beef-and-leek-noodles --servings 4
          {PROGRAM} show trip skerries
          {PROGRAM} show batch 2027-04-10-eggs
          {PROGRAM} show larder""",
    ),
    "serve": Command(
        "live preview while you write",
        "Show the site in a browser on this machine, and keep it up to date while\nyou write.",
        "Stop it with Ctrl-C.",
    ),
    "start": Command(
        "make a new book",
        "Make a new book with a commented example of each kind of file.",
    ),
    "new": Command(
        "add a component, dish, batch or trip",
        """Add a file for a new component or dish, for a drying run, for a trip or for a
stocktake, with what is known filled in.""",
        f"""Examples: {PROGRAM} new component Leek rings
          {PROGRAM} new batch Leek rings, peas
          {PROGRAM} new trip Over the ridge
          {PROGRAM} new stocktake cellar shelf

The file of a batch says how its components were dried last time, and what to
expect. The file of a stocktake lists what stands, for those who go along the
shelf; it changes nothing until you take a # away.""",
    ),
    "draw": Command(
        "note what was taken or counted",
        """Note what was taken from a jar or pouch, given away, thrown out, opened or
counted: as a new file in draws/, and only if it can be true.""",
        f"""Examples: {PROGRAM} draw 2027-04-10-eggs/a1 took 60 g --for "hut walk"
          {PROGRAM} draw 2027-04-10-eggs/a2 opened
          {PROGRAM} draw 2027-04-10-eggs/a3 threw out all --why stale
          {PROGRAM} draw 2027-04-10-eggs/a1 counted 8 g

What was wrong is undone by taking the file away.""",
    ),
    "home": Command(
        "book what a trip took and taught",
        """Book what a trip took out of the larder, what came home of it, and what was
learnt as a change to a dish, and mark the trip gone. Without --write it only
shows what it would do.""",
        f"""Examples: {PROGRAM} home weekend-at-the-lake
          {PROGRAM} home weekend-at-the-lake
                 --not-taken 2026-09-12-carrots/a2
                 --left "black beans: 40 g, too much for two"
                 --learnt "beans and rice: black beans: 80 g -> 60 g, too much"
                 --write

What is drawn is what the packing list took on the day of departure. What lay
open in a trip pack is not put back into a jar.""",
    ),
    "labels": Command(
        "print labels for jars, lids and packs",
        """Print the labels of a drying run, of what stands of a component, of all that was
filled since a day, of the whole larder, or of the packs of a dish or a trip, as
PDF.""",
        f"""Examples: {PROGRAM} labels batch 2027-04-10-eggs
          {PROGRAM} labels component peas --sheets a4-10 a4-round-24
          {PROGRAM} labels since 2027-04-01 --first 5
          {PROGRAM} labels dish pan-bread --servings 4
          {PROGRAM} labels trip six-days-among-the-skerries

Sheets: a4-8, a4-10, letter-6, letter-10; round for lids: a4-round-12,
a4-round-24, letter-round-12, letter-round-20; plain paper to cut: a4-cut,
letter-cut, a4-cut-round, letter-cut-round; single: one-62x100, one-100x60,
one-4x6. Print at full size, and lay the first page on a sheet before you go on.""",
    ),
    "test": Command(
        "run the project's own checks",
        "Check style, types and behaviour of Packlarder itself, from a checkout.\nOptions are passed on to pytest.",
        f"Example: {PROGRAM} test -k clock",
    ),
    "bench": Command(
        "time a large book",
        "Make a large book in a folder of its own, and time what is done with it.",
    ),
}

SHOW_KINDS = ("dish", "trip", "batch", "larder")
NEW_KINDS = ("component", "dish", "batch", "trip", "stocktake")
NAMELESS_KINDS = ("larder", "stocktake", "all")
"""Kinds that need no name."""
LABEL_KINDS = ("batch", "component", "since", "all", "dish", "trip")
OPENED = "opened"
DEEDS = ("took", "gave away", "threw out", OPENED, "counted")
"""What can happen to a container, in the words of draws/."""

BOOK = "the book's folder (default: the folder recipes here if it holds a book, else the current folder)"
ON = "the day to work everything out for, as 2027-06-01 (default: the book's own day, or today)"
OUT = (
    "the folder to write: empty, new, or an output to which nothing was added"
    " (default: beside the book, book-out for a book in recipes, else as the book, like our-book-out)"
)
KIND_LABELS = "batch, component, since, all, dish or trip"
ID_LABELS = "the run, the component, the day, the dish or the trip; nothing for all"
SHEETS = "label sheets to print on, see below (default: the usual ones of the household's paper)"
FIRST = "the first label of the sheet that is still free (default: 1)"
LABELS_OUT = "the folder to write to (default: labels)"
CHECK_JSON = "give the faults as JSON"
SHOW_JSON = "give everything as JSON"
PORT = "the port to serve on (default: 8300, or the next free one)"
FOLDER = "the folder to make; it must be empty or new"
KIND_SHOW = "what to print: dish, trip, batch or larder"
KIND_NEW = "what to add: component, dish, batch, trip or stocktake"
ID = "a dish's or a trip's id or name; a batch's id, or the mark on a label; for the larder nothing"
NAME = (
    "what it is called; of a batch the components on its trays, with commas between them;"
    " of a stocktake nothing, or the one place to look at"
)
SERVINGS = "for how many, of a dish (default: as many as the household usually cooks for)"
MARK = "which container, as its label has it: the run, a stroke, its number"
DEED = "what happened: took, gave away, threw out, opened or counted"
AMOUNT = "how much: a weight such as 60 g, or all; of what was counted, what is still there"
WHAT_FOR = "what for; the file is named after it"
WHY = "why"
TRIP = "the trip's id or name"
NOT_TAKEN = "a container that stayed shut after all, by its mark; as often as needed"
LEFT = "what came home uneaten and why: COMPONENT: 40 g, why; as often as needed"
LEARNT = "a change to a dish: DISH: PART: 150 g -> 120 g, why; as often as needed"
WRITE = "do it; without it, it is only shown"
DISHES = "how many dishes the book has (default: 1000)"

SAID = "packlarder: {sentence}"
SEE_HELP = "`{program} --help` says what it takes."
NO_COMMAND = "say what to do: {commands}."
UNKNOWN = 'no {what} is called "{word}"; {hint}'
DID_YOU_MEAN = 'did you mean "{word}"?'
KNOWN = "known are: {words}."
UNRECOGNISED = '"{word}" is nothing that can stand there.'
REQUIRED = "{word} is missing."
NOT_WITH = "{word} does not go with {kind}."
NO_AMOUNT = "{deed} how much? Write a weight such as 60 g after it, or all."
NO_VALUE = "{word} needs a value after it."
NOT_A_DAY = '"{word}" is no day; write it like 2027-06-01.'
NO_SUCH_DAY = "there is no day {word} in the calendar."
NOT_A_NUMBER = '"{word}" is no whole number from {low} to {high}.'

SERVING = "{address} shows the book; stop with Ctrl-C."
SHOWN = "{counts}, up to date."
PORT_TAKEN = "port {port} is taken; name another, or none."
NO_PORT = "no port from {first} on is free; name one with --port."
PREVIEW_FAULTS = "Something in the book is wrong"
PREVIEW_SAYS = "This page goes away by itself once it is mended."
PREVIEW_FORMER = "See the page as it was before."
PREVIEW_NO_PAGE = "There is no such page"
PREVIEW_NO_PAGE_SAYS = "{path} is no page of this book, or no longer one."
PREVIEW_ONLY_BUILT = f"{{path}} comes with `{PROGRAM} build`: the preview shows the site alone."
PREVIEW_HOME = "To the front page"

NO_CHECKOUT = "this works only from a checkout of the project: what is tested and timed lies there."
NO_TOOLS = "the checks need {tools}; `python3 generator test` installs what is needed."

NO_DIRECTORY = "{folder} is no folder."
NOT_EMPTY = "{folder} holds files already; name an empty folder or a new one."
STARTED = """{folder} is a new book, with an example of each kind of file.
Look into its files, then: {program} build --book {folder}"""
NO_BOOK = "{folder} holds no book that can be read; `{program} check` says why."
NO_ID = 'no file name can be made of "{name}"; it needs some letters or figures, and not too many.'
TAKEN = '"{name}" is there already: {path}'
WAS = "the food as it was loaded, by its name in the food table or foods.yaml"
GUESSED = "a guess; or was it: {others}?"
NO_COMPONENT = 'no component is called "{name}"; {hint}'
NEW_COMPONENT = f"`{PROGRAM} new component` adds one."
UNSOUND = f'something is wrong with "{{name}}"; `{PROGRAM} check` says what.'
TWO_BATCHES = "{first} is {one} and {second} is {other}: that takes two batches."
NOT_DRIED = "not dried at home"
AND_MORE = "and-{count}-more"
NO_DRYER = "one of your dryers that gives food that is {drying}; book.yaml has none yet"
TOOK = "when it is out"
TOOK_USUALLY = "when it is out; usually {hours}"
TOOK_LAST = "when it is out; last time {hours}"
LOADED = "as loaded, all trays together: a weight, or a count such as 18 eggs"
LOADED_LAST = "as loaded, all trays together; last time {fresh} on {trays}"
AS_LAST_TIME = "as last time"
AS_USUAL = "as usual"
AS_USUAL_THERE = "as usual; left out, it holds"
SO_MANY_MORE = " and {more} more"
TREATMENTS = "blanched, acid dip, heated to 74 °C, frozen first"
DEPTH = "how deep it lay, such as 8 mm"
TRAYS = "on how many trays it lay"
TRAYS_OF = "on how many trays it lay; the {dryer} takes {trays}"
BEST_BEFORE = "the day on its pack"
RAW_ON_TRAYS = "[RAW] It must be cooked to be safe: load it below all else, and label it so."
RAW_IN_JARS = "[RAW] It must be cooked to be safe: label it so."
LAST_TIME = "Last time: {run}."
ANY_CONTAINER = "one of your jars"
STOCKTAKE = "stocktake"
STOCKTAKE_OF = "stocktake, {place}"
COUNT_LINE = "#- {{from: {mark}, counted: {left}}}"
NOTHING_STANDS = "nothing stands in the larder."
NO_PLACE = 'nothing stands at "{place}"; {hint}'
NO_PLACE_SAID = "wherever it stands"
LISTED = "{path}: lists what stands; write what you weigh over it, and take the # away."
LABELS_OF = "Labels: {what}"
LABELLED = "{labels} on {pages}: {path}; the next free label is {next}"
NO_SHEET = 'no label sheet for this is called "{name}"; {hint}'
NO_SUCH_LABEL = "{name} has {count} labels on a sheet, and no number {first}."
NOTHING_TO_LABEL = "nothing stands there that could be labelled."
NO_PACKS = "{name} has no packs to label."
DRAW = "draw"
NOTED = "noted in {path}"
TAKEN_PAST = "{mark} is past its use-by day: when in doubt throw it away untasted. Looks alone prove nothing."
TAKEN_WET = "{mark} is not known to be dry: do not eat it, and dry it further or throw it away."
MARK_GONE = "{mark} can not be found: {file} is wrong; `{program} check` says how."
REFUSED = "{reason} Nothing was written."
CLASHES = "{file} would be wrong after it: {reason}"
NOTHING_LEFT = "{mark} is empty."
NOT_PRINTABLE = '"{text}" holds characters that can not be shown.'
ADDED = "{path}: fill in what is missing; `{program} check` says what that is."

NO_FOLDER = "there is no folder {folder}."
UNREADABLE_FOLDER = "the folder {folder} can not be read: {why}."
NO_DISH = 'no dish is called "{name}"; {hint}'
NO_DISHES = "the book has no dish yet."
NO_TRIP = 'no trip is called "{name}"; {hint}'
NO_TRIPS = "the book has no trip yet."
HOME_SINCE = "{name} came home on {day} already; nothing was changed."
HOME_ALREADY = "{name} is gone already; nothing was changed."
NOT_BEGUN = "{name} starts on {starts}, and this is {day}; name the day with --on."
HOME_REFUSED = "the book would be wrong after it; nothing was written:"
HOME_TITLE = "{name}, from {starts}"
HOME_TAKEN = "Taken out of the larder"
HOME_NOTHING_TAKEN = "Nothing: the larder had nothing of what the trip took."
HOME_ALL_SHUT = "Nothing: every jar stayed shut."
HOME_SHUT = "Stayed shut, and so not booked: {what}."
HOME_LACKED = "Not out of the larder, and so not booked: {what}."
COMMA = ", "
HOME_EMPTIED = "emptied"
HOME_LEFT = "Came home uneaten"
HOME_NOT_BACK = (
    "It lay open in a trip pack, so it is not put back into a jar: it keeps for days, not for months. Eat it soon, or"
    " throw it away."
)
HOME_LEARNT = "Learnt"
HOME_FILES = "Files"
HOME_NEW_FILE = "new: {file}"
HOME_NOT_YET = "Nothing was written yet; say the same again with --write."
HOME_WRITTEN = "Written. The trip is gone."
HOME_NOTED_BEFORE = "{file} notes something for this trip too: is anything counted twice? Then take that file away."
LEFT_LIKE = '"{said}" can not be understood; write it like "leek rings: 40 g, too much".'
LEFT_TOO_MUCH = "{left} of {name} came home, and only {most} came along."
LEARNT_LIKE = '"{said}" can not be understood; write it like "leek soup: leek rings: 150 g -> 120 g, too much".'
NOT_ALONG = 'nothing on this trip is called "{name}"; {hint}'
NOT_TO_TAKE = "nothing was to be taken from {mark}."
NO_PART = 'the dish has no part that is called "{name}"; {hint}'
WHICH_PART = 'several parts can be meant by "{name}"; say which: {parts}.'
OTHER_AMOUNT = 'in this dish {part} is {now}, not {former}; write it like "{dish}: {part}: {now} -> {new}".'
BY_HAND = "{file} can not be changed without touching more than that; change it by hand. Nothing was written."
TOOK_NOTHING = f"what earlier trips take from the larder is not taken off: {{trips}}; `{PROGRAM} check` says why."
NO_RUN = 'no batch is called "{name}"; {hint}'
LAST_RUNS = "the last were: {runs}."
MEANT_RUNS = "did you mean: {runs}?"
NO_RUNS = "the book has no batch yet."
OTHER_FAULTS = f"elsewhere in the book something is wrong; `{PROGRAM} check` says what."

FOOT = "{title} · edition {edition} · {day}"

NO_PHOTO = 'no photo is called "{name}"'
PHOTOS_LIVE = "photos live in {folder}/, as .jpg, .png or .webp"

JOB_SITE = "site"
JOB_BOOKLET = "booklet {size}"
JOB_TRIP_BOOKLET = "trip {id}, booklet {size}"
JOB_TRIP_LABELS = "trip {id}, labels"
JOB_POCKET = "pocket file"
JOB_EBOOK = "e-book"
JOB_DATA = "data"
JOB_TRIPS = "trips"
BOOKLET = "Field booklet, {page}"
BOOKLET_TO_FOLD = "Field booklet, {page}, to print on {sheet} and fold"
POCKET = "The whole book in one file, for a phone"
EBOOK = "E-book"
DATA = "Data for other programs"
TRIP_BOOKLET = "booklet, {page}"
TRIP_BOOKLET_TO_FOLD = "booklet, {page}, to print on {sheet} and fold"
TRIP_LABELS = "labels of the packs"
TRIP_PACKING = "packing list as a table (CSV)"
TRIP_PLAN = "what to do before, as a table (CSV)"
TRIP_CALENDAR = "what to do before, for a calendar (iCalendar)"
WRITTEN = "{counts}: written to {out}"

ALL_WELL = "{counts}: nothing wrong."
NO_ERRORS = "{counts}: no errors."
NOTHING_WRITTEN = "Nothing was written."
OLD_STAYS = "Nothing was written; {out} is as it was."

OUR_FAULT = "this is a fault of Packlarder, not of your book: {error}."
REPORT = "Please report it where you got Packlarder; PACKLARDER_DEBUG=1 shows where it arose."


def counted(number: int, noun: str) -> str:
    """Say a number of things: 1 dish, 31 components."""
    plural = f"{noun}es" if noun.endswith("sh") else f"{noun}s"
    return f"{number:,} {noun if number == 1 else plural}"


def counts(dishes: int, components: int) -> str:
    """Say how large a book is."""
    return f"{counted(dishes, 'dish')}, {counted(components, 'component')}"


MOST_WORDS = 12
"""Words told of a longer list."""


def some_of(known: Iterable[str]) -> str:
    """Name what there is, as far as anybody would read it."""
    words = list(known)
    more = len(words) - MOST_WORDS
    return KNOWN.format(words=", ".join(words[:MOST_WORDS]) + (f" and {more:,} more" if more > 0 else ""))
