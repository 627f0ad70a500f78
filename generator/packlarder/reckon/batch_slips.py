"""Slips in a drying run: what is unknown, and weights that can not be true, each with its arithmetic."""

from collections.abc import Iterable, Iterator

from packlarder.book.book import Book
from packlarder.book.household import Household
from packlarder.book.meant import did_you_mean
from packlarder.faults import Fault, Place, Severity, Spot
from packlarder.figures.margins import WEIGHED_FULL
from packlarder.measure import DOWN, as_weighed, in_ml, in_percent, rounded
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.drying import DRIED_AT_HOME, Dried, Verdict
from packlarder.reckon.measures import PER_ML

HEAPED = 1.10
"""A jar that is shaken down and heaped holds a little more than its measure says."""
OVERLOADED = 1.5
"""A tray that holds so many times what the household puts on one is no full tray but a slip."""
LITTLE_G, WEIGHED_TO_G = 10, 1.0
"""A batch is weighed to the gram, a little one to a tenth of it: what it must lose and what is left then add up."""


def slips_of_run(run: RunSums, household: Household) -> tuple[Fault, ...]:
    """Find the slips of a run and of its batches."""
    found = [*_of_the_dryer(run, household)]
    for batch in run.kept:
        found += [
            *_wrong_dryer(batch, run),
            *_overloaded(batch, run),
            *_uncounted(batch),
            *_grown(batch),
            *_not_dry(batch),
            *_too_much_in_jars(batch),
            *(slip for filled in batch.containers for slip in _filled_from(batch, filled)),
            *(slip for filled in batch.containers for slip in _container(batch, filled, household)),
        ]
    return tuple(found)


def unknown_component(book: Book, name: str, place: Place) -> Fault:
    """Make the fault of a key that names a component nobody knows."""
    meant = did_you_mean(name, [one.name.lower() for one in book.components.values()])
    return Fault(
        place=Place(file=place.file, path=place.path, spot=Spot.KEY),
        code="unknown-component",
        message=f'no component is called "{name}"',
        help=f"{meant}components live in components/",
    )


def _of_the_dryer(run: RunSums, household: Household) -> Iterator[Fault]:
    if run.dryer is None:
        if run.model.dryer:
            at = run.place.at("dryer")
            yield _unknown(at, "dryer", run.model.dryer, household.dryers, "dryers")
        return
    trays = sum(batch.model.detail.trays or 0 for batch in run.batches)
    shared = max(0, len(run.batches) - 1)
    if trays - shared > run.dryer.trays:
        yield Fault(
            place=run.place.at("on the trays", spot=Spot.KEY),
            code="too-many-trays",
            message=f"{trays} trays were loaded, and {run.model.dryer} takes {run.dryer.trays}",
            help="is it another dryer, or a second run?",
        )


def _unknown(place: Place, what: str, name: str, ours: Iterable[str], key: str) -> Fault:
    known = list(ours)
    rest = f"known are: {', '.join(known)}" if known else f"add it under `{key}` in book.yaml"
    message = f'no {what} is called "{name}"'
    return Fault(place=place, code=f"unknown-{what}", message=message, help=f"{did_you_mean(name, known)}{rest}")


def _wrong_dryer(batch: BatchSums, run: RunSums) -> Iterator[Fault]:
    """Find food that its component says is dried another way than this dryer dries."""
    says = batch.component.model.dried
    if not run.model.dryer and says is not None and says in DRIED_AT_HOME:
        yield Fault(
            place=run.place.at("loaded", spot=Spot.KEY),
            code="no-dryer",
            message=f"{batch.component.model.name} is {says.value}, and no dryer is named",
            help="write `dryer:` with one of your dryers",
        )
    if run.dryer is not None and says is not run.dryer.dries:
        is_said = "is said to need no drying" if says is None else f"is {says.value}"
        yield Fault(
            place=Place(file=batch.place.file, path=batch.place.path, spot=Spot.KEY),
            code="other-drying",
            message=f"{batch.component.model.name} {is_said}, and {run.model.dryer} gives food that is "
            f"{run.dryer.dries.value}",
            help="name the other dryer, or make a component of its own for this form",
            also=(Place(file=f"components/{batch.component.id}.yaml", path=("dried",)),),
        )


def _overloaded(batch: BatchSums, run: RunSums) -> Iterator[Fault]:
    """Find more on a tray than it can hold: most likely some trays were not counted."""
    if run.dryer is not None and batch.tray_g is not None and batch.tray_g > run.dryer.a_tray.base * OVERLOADED:
        yield Fault(
            place=batch.place.at("trays"),
            code="overloaded-tray",
            message=f"{as_weighed(batch.tray_g)} lay on each tray, and a tray of {run.model.dryer} takes "
            f"{as_weighed(run.dryer.a_tray.base)}",
            help="were there more trays? what lies too deep dries on the outside alone",
            severity=Severity.WARNING,
        )


def _uncounted(batch: BatchSums) -> Iterator[Fault]:
    for gap in batch.gaps:
        place = batch.place.at("fresh")
        yield Fault(place=place, code="can-not-weigh", message=f"{gap.what} is not known", help=gap.missing)


def _grown(batch: BatchSums) -> Iterator[Fault]:
    """Find a weight that is more than the one before it, where food can only have become less."""
    trimmed = batch.model.detail.trimmed
    if batch.bought_g is not None and trimmed is not None and trimmed.base > batch.bought_g:
        message = f"{as_weighed(trimmed.base)} were left of {as_weighed(batch.bought_g)} bought"
        yield _swapped(batch.place.at("trimmed"), message)
    if batch.fresh_g is not None and batch.dry_g is not None and batch.dry_g > batch.fresh_g:
        yield _swapped(
            batch.place.at("dry"), f"{as_weighed(batch.dry_g)} came out of {as_weighed(batch.fresh_g)} fresh"
        )


def _swapped(place: Place, message: str) -> Fault:
    return Fault(place=place, code="grown", message=message, help="are the two weights swapped?")


def _not_dry(batch: BatchSums) -> Iterator[Fault]:
    """Find a dry weight that is impossible, or that shows the food still wet."""
    held = batch.dried
    if held is None or held.dry_g > held.fresh_g:
        return
    place = batch.place.at("dry")
    told = (
        f"{as_weighed(held.fresh_g)} at {held.fresh_water * 100:.0f} % water hold {as_weighed(held.solids_g)} of "
        f"solids: {as_weighed(held.dry_g)} dry"
    )
    if held.verdict is Verdict.CAN_NOT_BE_RIGHT:
        help = "weigh again: was some left on the trays, or the tray weighed with the fresh food? "
        help += "if it was thrown away, say so in `thrown out:`"
        yield Fault(place=place, code="batch-can-not-be-right", message=f"{told} can not be right", help=help)
    elif held.verdict is Verdict.NOT_DRY_YET:
        yield _wet(batch, held, told)


def _wet(batch: BatchSums, held: Dried, told: str) -> Fault:
    water = f"{in_percent(held.moisture.low)} to {in_percent(held.moisture.high)}"
    goal_g = rounded(held.goal_g, WEIGHED_TO_G if held.dry_g >= LITTLE_G else WEIGHED_TO_G / 10, DOWN)
    return Fault(
        place=batch.place.at("dry"),
        code="not-dry-yet",
        message=f"{told} still hold {water} water, and at most {in_percent(held.limit)} is dry",
        help=f"dry it until it is {as_weighed(held.dry_g - goal_g)} lighter ({as_weighed(goal_g)}), then two hours "
        "more and weigh again",
        severity=Severity.ERROR if batch.containers else Severity.WARNING,
    )


def _too_much_in_jars(batch: BatchSums) -> Iterator[Fault]:
    held_g = sum(container.dry_g for container in batch.containers if container.filled.from_ is None)
    if batch.dry_g is not None and held_g > batch.dry_g * (1 + WEIGHED_FULL.value):
        yield Fault(
            place=batch.place.at("put in"),
            code="more-than-came-out",
            message=f"the containers hold {as_weighed(held_g)}, and {as_weighed(batch.dry_g)} came out of the dryer",
            help="weigh the jars again, or is one of them from another batch?",
        )


def _filled_from(batch: BatchSums, filled: FilledContainer) -> Iterator[Fault]:
    """Find a container that was filled from none of those before it."""
    before = [one.mark for one in batch.containers[: filled.nth - 1]]
    if filled.filled.from_ is not None and filled.filled.from_ not in before:
        named = f"before it stand {', '.join(map(str, before))}" if before else "it is the first one"
        yield Fault(
            place=filled.place.at("from"),
            code="filled-from-elsewhere",
            message=f"{filled.mark} can only be filled from a container of its batch that stands before it",
            help=f"{named}; food of another batch stays in jars of its own",
        )


def _container(batch: BatchSums, filled: FilledContainer, household: Household) -> Iterator[Fault]:
    if filled.size is None:
        yield _unknown(filled.place.at("in"), "container", filled.filled.in_, household.containers, "containers")
        return
    per_ml = batch.grams_per.get(PER_ML) or batch.component.grams_per.get(PER_ML)
    if per_ml is None:
        return
    volume_ml = filled.dry_g / per_ml
    if volume_ml > filled.size.holds.base * HEAPED:
        yield Fault(
            place=filled.place.at("holds"),
            code="does-not-fit",
            message=f"{as_weighed(filled.dry_g)} of it take {in_ml(volume_ml)}, and a {filled.filled.in_} holds "
            f"{in_ml(filled.size.holds.base)}",
            help="is the weight per cup right, or was it crushed?",
            severity=Severity.WARNING,
        )
