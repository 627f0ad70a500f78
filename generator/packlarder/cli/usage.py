"""The help of the command line: commands, what may stand behind them, and examples, in one catalogue."""

from typing import NamedTuple

from packlarder.cli.texts import PROGRAM


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
