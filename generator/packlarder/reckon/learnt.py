"""What the household's own batches teach: how much a food gives, and what a measure of it weighs.

Only a batch that is dry by the household's own test counts for a yield. Of several the median is taken, so that one
slip of the scale does not move it.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from types import MappingProxyType

from packlarder.figures.allergens import Allergen
from packlarder.reckon.batch_records import BatchSums, RunSums
from packlarder.reckon.drying import Verdict
from packlarder.reckon.spread import Spread, spread_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Learnt:
    """What the batches of one component show.

    `grams_per` maps a measure's word (`mL`, or a noun) to dry grams; `traces` are allergens that lay beside it.
    """

    fresh_per_dry: Spread | None = None
    grams_per: Mapping[str, Spread] = field(default_factory=lambda: MappingProxyType({}))
    traces: frozenset[Allergen] = frozenset()


NOTHING_LEARNT = Learnt()


def learn(runs: Iterable[RunSums], on: date) -> Mapping[str, Learnt]:
    """Give what runs loaded by a day taught, by component; one without a batch that counts is missing."""
    batches: dict[str, list[BatchSums]] = defaultdict(list)
    for run in runs:
        for batch in run.kept if run.model.loaded.date() <= on else ():
            batches[batch.component.id].append(batch)
    learnt = {id: _of(own) for id, own in batches.items()}
    return MappingProxyType({id: one for id, one in learnt.items() if one != NOTHING_LEARNT})


def counts(batch: BatchSums) -> bool:
    """Tell whether a batch counts for the yield of its component."""
    return batch.verdict is Verdict.DRY and batch.fresh_per_dry is not None


def _of(batches: Sequence[BatchSums]) -> Learnt:
    weighed: dict[str, list[float]] = defaultdict(list)
    for batch in batches:
        if batch.verdict not in (Verdict.CAN_NOT_BE_RIGHT, Verdict.NOT_DRY_YET):
            for word, grams in batch.grams_per.items():
                weighed[word].append(grams)
    yields = [batch.fresh_per_dry for batch in batches if counts(batch)]
    return Learnt(
        fresh_per_dry=spread_of([ratio for ratio in yields if ratio is not None]),
        grams_per=MappingProxyType({word: spread for word, found in weighed.items() if (spread := spread_of(found))}),
        traces=frozenset().union(*(batch.traces for batch in batches)),
    )
