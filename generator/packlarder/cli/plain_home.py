"""What the command `home` does, or would do, as plain text of 80 columns."""

from collections.abc import Iterator, Sequence

from packlarder.cli import texts
from packlarder.cli.home_files import Changed
from packlarder.cli.home_said import LearntSaid, LeftSaid
from packlarder.cli.plain import columns, listed, page, paragraph, section
from packlarder.cli.plain_store import named
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.home import NotInStore, StayedShut, TakenOut
from packlarder.reckon.trip.records import TripSums
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.printed import System
from packlarder.sheets.shelf import weight


class HomePage:
    """Sets what came of a trip, section by section."""

    def __init__(self, trip: TripSums, system: System) -> None:
        """Take the trip, and the units that the household reads."""
        self.trip = trip
        self.system = system

    def text(
        self,
        *,
        taken: Sequence[TakenOut],
        shut: Sequence[StayedShut],
        lacked: Sequence[NotInStore],
        left: Sequence[LeftSaid],
        learnt: Sequence[LearntSaid],
        changed: Changed,
        foot: str,
    ) -> str:
        """Set the whole."""
        lines = [
            *paragraph(texts.HOME_TITLE.format(name=self.trip.model.name, starts=printed_day(self.trip.model.starts))),
            *section(texts.HOME_TAKEN, self._taken(taken, shut, lacked)),
            *section(texts.HOME_LEFT, self._left(left)),
            *section(texts.HOME_LEARNT, listed(self._learnt(one) for one in learnt)),
            *section(texts.HOME_FILES, self._files(changed)),
        ]
        return page(lines, foot)

    def _taken(
        self, taken: Sequence[TakenOut], shut: Sequence[StayedShut], lacked: Sequence[NotInStore]
    ) -> Iterator[str]:
        yield from columns(
            [(_name(one.component), str(one.mark), self._weight(one.grams), _emptied(one)) for one in taken]
        )
        if not taken:
            yield from paragraph(texts.HOME_ALL_SHUT if shut else texts.HOME_NOTHING_TAKEN)
        if shut:
            each = (f"{self._weight(one.grams)} {_name(one.component)} ({one.mark})" for one in shut)
            yield from ("", *paragraph(texts.HOME_SHUT.format(what=texts.COMMA.join(each))))
        if lacked:
            named_each = texts.COMMA.join(f"{self._weight(one.grams)} {_name(one.component)}" for one in lacked)
            yield from ("", *paragraph(texts.HOME_LACKED.format(what=named_each)))

    def _left(self, left: Sequence[LeftSaid]) -> Iterator[str]:
        if left:
            yield from columns([(_name(one.component), self._weight(one.grams)) for one in left])
            yield from listed(f"{one.component.model.name}: {one.why}" for one in left if one.why)
            yield from ("", *paragraph(texts.HOME_NOT_BACK))

    @staticmethod
    def _learnt(one: LearntSaid) -> str:
        return f"{one.name}: {one.change}" + (f", {one.why}" if one.why else "")

    @staticmethod
    def _files(changed: Changed) -> Iterator[str]:
        yield from (texts.HOME_NEW_FILE.format(file=file) for file in changed.new)
        yield from changed.diff()

    def _weight(self, grams: float) -> str:
        fact = weight("", grams)
        return fact.us if self.system is System.US else fact.metric


def _name(component: ComponentSums) -> str:
    return named(component.model.name, raw=component.raw)


def _emptied(one: TakenOut) -> str:
    return texts.HOME_EMPTIED if one.emptied else ""
