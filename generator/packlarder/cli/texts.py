"""What commands say, in one catalogue; what stands in their help is in `usage`."""

import sys
from collections.abc import Iterable

PROGRAM = "python3 generator" if sys.argv[:1] == ["-c"] else "packlarder"
"""How the one who reads this started us: from a checkout, whose start hands over by `-c`, or installed."""


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
NOT_FIT = "THIS PLAN HAS ERRORS: mend what was told about it before you go by it."
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
TRIP_PACKING = "packing list (CSV)"
TRIP_PLAN = "what to do before (CSV)"
TRIP_CALENDAR = "what to do before (iCalendar)"
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
