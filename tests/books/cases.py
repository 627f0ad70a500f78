"""Whole small books, most with one slip, and what `check` says of each.

A case is a folder with the files that differ from those of `base/`, a small sound book; `gone.txt` names files of
`base/` that the case does without. What is expected lies beside them: `faults.txt`, as `check` prints it, in
`invalid/`; `read.txt`, what was read, in `valid/`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from packlarder.book.dish import Dish
from packlarder.book.draw import Draw
from packlarder.book.drying_run import DryingRun
from packlarder.book.read import read_book
from packlarder.book.show_faults import render
from packlarder.book.step import Sentence
from packlarder.cli.loose_ends import loose_ends
from packlarder.faults import Fault
from packlarder.reckon.trip.records import TripSums
from packlarder.safety.whole import CheckedBook, check_book

FOLDER = Path(__file__).parent
BASE = FOLDER / "base"
FAULTS, READ, GONE = "faults.txt", "read.txt", "gone.txt"
OURS = frozenset({FAULTS, READ, GONE})
"""Files at the top of a case that do not belong to its book."""


@dataclass(frozen=True, slots=True)
class Case:
    """One small book."""

    folder: Path

    @property
    def name(self) -> str:
        """Give its name, as shown by pytest."""
        return self.folder.name

    def files(self) -> dict[str, bytes]:
        """Give the files of the book: those of the base, and over them its own."""
        gone = self.folder / GONE
        without = gone.read_text("utf-8").split() if gone.exists() else ()
        return {name: data for name, data in {**files_in(BASE), **files_in(self.folder)}.items() if name not in without}


def files_in(folder: Path) -> dict[str, bytes]:
    """Give the files of a book's folder by their paths in it."""
    paths = (path for path in sorted(folder.rglob("*")) if path.is_file())
    found = {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}
    return {name: data for name, data in found.items() if name not in OURS}


def cases(kind: str) -> list[Case]:
    """Find the cases in `valid` or `invalid`."""
    return [Case(path) for path in sorted((FOLDER / kind).iterdir()) if path.is_dir()]


def checked(files: Mapping[str, bytes]) -> tuple[CheckedBook | None, tuple[Fault, ...]]:
    """Take a book through the stages of `check`; None without a sound book.yaml."""
    found = read_book(files)
    if found.book is None:
        return None, found.faults
    worked = check_book(found.book, found.book.household.on or date.max)
    return worked, (*found.faults, *worked.faults, *loose_ends(found.book, {}))


def shown(files: Mapping[str, bytes]) -> str:
    """Give what `check` prints of a book's faults."""
    return render(checked(files)[1], files, "recipes")


def as_read(worked: CheckedBook) -> str:
    """Give in short what was read of a book."""
    book = worked.book
    lines = [f"{book.household.title} ({book.household.units})"]
    lines += [f"food {id}: {food.name}" for id, food in book.foods.items()]
    lines += [f"component {id}: {' | '.join((one.name, *one.formerly))}" for id, one in book.components.items()]
    for id, dish in book.dishes.items():
        lines += [f"dish {id}: {' | '.join((dish.name, *dish.formerly))}", *_parts(worked, id), *_steps(dish)]
        lines += [f"  tried: {line}" for line in dish.tried]
        lines += [f"  note: {line}" for line in dish.notes]
    lines += [line for id, run in book.runs.items() for line in _run(id, run)]
    for id, draws in book.draws.items():
        lines += [f"draws {id}: {draws.date.isoformat()} {draws.for_}".rstrip()]
        lines += [f"  {one.from_}: {one.deed} {_share(one)}".rstrip() for one in draws.drawn]
    lines += [line for id, trip in worked.trips.items() for line in _trip(id, trip.sums)]
    return "\n".join(lines) + "\n"


def _trip(id: str, trip: TripSums) -> Iterator[str]:
    who = ", ".join(f"{one.name} {one.portion:g}" for one in trip.eaters)
    days = f"{trip.model.starts.isoformat()}, {trip.last_day} d"
    yield f"trip {id}: {trip.model.name}, {trip.model.stands}, {days}, {who}"
    for meal in trip.meals:
        where = "in reserve" if meal.stop is None else trip.stops[meal.stop].model.place
        eaters = f"{meal.portions:g} for {', '.join(meal.eaters)}"
        yield f"  {meal.eat_at.isoformat(' ', 'minutes')} {where}: {meal.meal}, {meal.dish}, {eaters}"
    home = trip.model.came_home
    yield from (f"  left: {one.name} {one.detail.weight.base:.1f} g" for one in (home.left if home else ()))


def _run(id: str, run: DryingRun) -> Iterator[str]:
    took = f", {run.took.base / 60:g} h" if run.took else ""
    yield f"run {id}: {run.loaded.isoformat(' ', 'minutes')}, {run.dryer or 'no dryer'}{took}"
    for batch in run.on_the_trays:
        told = batch.detail
        weights = [
            f"{key} {found.base:g}" for key in ("bought", "trimmed", "fresh", "dry") if (found := getattr(told, key))
        ]
        treated = [f"{one.treatment} {one.to.base:.0f} °C" if one.to else str(one.treatment) for one in told.treated]
        yield f"  {batch.name}: {', '.join([*weights, *treated, *told.tested])}"
        yield from (f"    {jar.in_}: {jar.holds.base:g} g {jar.stands}".rstrip() for jar in told.put_in)


def _share(draw: Draw) -> str:
    weight = draw.counted if draw.share is None else draw.share.weight
    return ("" if draw.share is None else "all") if weight is None else f"{weight.base:.1f} g"


def _parts(worked: CheckedBook, id: str) -> Iterator[str]:
    for part in worked.dishes[id].plan.parts:
        yield f"  part {part.called}: {part.component.id}, {part.dry_g:.1f} g"


def _steps(dish: Dish) -> Iterator[str]:
    for step in dish.steps:
        words = step.sentence if isinstance(step, Sentence) else f"{step.verb}: {', '.join(step.parts)}".rstrip(": ")
        yield f"  {words}"
