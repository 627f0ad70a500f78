"""The dishes of the demo book as sheets, worked out once for all tests of sheets."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.safety import Finding
from packlarder.safety.whole import CheckedBook, check_book
from packlarder.sheets.book import dish_series
from packlarder.sheets.data import dish_data
from packlarder.sheets.data_records import DishData
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.field import field_opening
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.printed import System

RECIPES = Path(__file__).parents[2] / "recipes"
FOLDERS = ("", "components/", "dishes/", "batches/", "draws/")


@dataclass(frozen=True, slots=True, kw_only=True)
class Demo:
    """A dish of the demo book, worked out for 1 to 12 servings."""

    series: DishSeries
    sheet: DishSheet
    findings: tuple[Finding, ...]

    def opening(self, system: System) -> FieldOpening:
        """Set its opening in the booklet."""
        return field_opening(self.series, self.sheet, self.findings, system)

    def data(self, at: int) -> DishData:
        """Give what `show dish --json` prints at one place in its servings."""
        return dish_data(self.series, self.sheet, at=at, edition="0", day="2027-06-01")


@cache
def checked() -> CheckedBook:
    """Read and check the demo book."""
    paths = [path for folder in FOLDERS for path in RECIPES.glob(f"{folder}*.yaml")]
    files = {path.relative_to(RECIPES).as_posix(): path.read_bytes() for path in paths}
    read = read_book(files)
    assert read.book is not None
    assert not has_errors(read.faults), read.faults
    assert read.book.household.on is not None
    return check_book(read.book, read.book.household.on)


@cache
def demo(id: str) -> Demo:
    """Work out one dish."""
    book = checked()
    series = dish_series(book, id)
    findings = book.dishes[id].findings
    return Demo(series=series, sheet=dish_sheet(series, findings), findings=findings)


def dish_ids() -> list[str]:
    """Name all dishes by their files, without working them out."""
    return sorted(path.stem for path in RECIPES.glob("dishes/*.yaml"))
