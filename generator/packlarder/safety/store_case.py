"""What a rule about drying and storing is shown: a run with its batches, or the larder on a day."""

from collections.abc import Iterator

from packlarder.book.household import Household
from packlarder.book.treatment import Treatment
from packlarder.faults import Place, Spot
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Group, WentIn
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.drying import Verdict, verdict_by_test
from packlarder.reckon.larder_records import LarderSums, Standing
from packlarder.safety.heat import groups_of
from packlarder.safety.hit import Hit


class RunCase:
    """A drying run that is held against the rules."""

    def __init__(self, run: RunSums, household: Household) -> None:
        self.run = run
        self.household = household

    @property
    def drying(self) -> Drying | None:
        """Give how its dryer dries, None for one that nobody knows."""
        return None if self.run.dryer is None else self.run.dryer.dries

    @property
    def raw(self) -> list[BatchSums]:
        """Give the batches that must be cooked to be safe."""
        return [batch for batch in self.run.batches if batch.component.raw]

    def filled(self) -> Iterator[tuple[BatchSums, FilledContainer]]:
        """Give every container with its batch."""
        for batch in self.run.kept:
            for container in batch.containers:
                yield batch, container

    def hit(self, batch: BatchSums, key: str = "", *also: Place, facts: tuple[str, ...] = (), **words: str) -> Hit:
        """Make a hit at a batch: at one of its keys, or at its name."""
        name = Place(file=batch.place.file, path=batch.place.path, spot=Spot.KEY)
        places = (batch.place.at(key) if key else name, *also)
        return Hit(places=places, words={"component": batch.component.model.name, **words}, facts=facts)


class LarderCase:
    """The larder that is held against the rules."""

    def __init__(self, larder: LarderSums, household: Household) -> None:
        self.larder = larder
        self.household = household

    def hit(self, standing: Standing, **words: str) -> Hit:
        """Make a hit at a container."""
        name = standing.batch.component.model.name
        return Hit(places=(standing.container.place,), words={"component": name, "mark": str(standing.mark), **words})


def groups(batch: BatchSums) -> frozenset[Group]:
    """Give the groups of the kinds in a batch."""
    return groups_of(batch.component.kinds)


def heated_to_c(batch: BatchSums) -> float | None:
    """Give how hot a batch was heated inside before or after drying, None where nobody says."""
    degrees = [one.to.base for one in batch.model.detail.treated if one.treatment is Treatment.HEATED and one.to]
    return max(degrees, default=None)


def known_dry(batch: BatchSums) -> bool:
    """Tell whether a batch is known to be dry: by the household's own test, or because a maker dried it.

    The weights of what was dried at home are counted too; a mix has none to count.
    """
    if batch.component.model.dried is Drying.BOUGHT_DRY:
        return True
    verdict = batch.verdict or verdict_by_test(batch.model.detail.tested)
    return verdict is Verdict.DRY


def water_left(batch: BatchSums) -> float | None:
    """Give the share of water in a batch by the food table and its weights, None where neither tells."""
    if batch.dried is not None:
        return batch.dried.moisture.by_the_table
    made = batch.component.yielded
    return None if made is None else made.dry_water


def went_in_cooked(batch: BatchSums) -> bool:
    """Tell whether a batch was cooked before it was dried."""
    return batch.component.model.went_in is WentIn.COOKED
