"""The chain from the shop to the jar: bought, trimmed, cooked, loaded, dry, each with its share of the one before."""

from collections.abc import Iterator
from dataclasses import dataclass

from packlarder.reckon.batch_records import BatchSums


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """A weight in the chain: its name, and its share of the stage before (`before` is "" for the first)."""

    name: str
    weight_g: float
    before: str
    share: float | None


def chain(batch: BatchSums) -> tuple[Stage, ...]:
    """Give the stages that were weighed, in their order."""
    stages: list[Stage] = []
    for name, weight_g in _weighed(batch):
        last = stages[-1] if stages else None
        stages.append(
            Stage(
                name=name,
                weight_g=weight_g,
                before=last.name if last else "",
                share=weight_g / last.weight_g if last else None,
            )
        )
    return tuple(stages)


def _weighed(batch: BatchSums) -> Iterator[tuple[str, float]]:
    detail = batch.model.detail
    trimmed = None if detail.trimmed is None else detail.trimmed.base
    cooked = None if detail.cooked is None else detail.cooked.base
    stages = (
        ("bought", batch.bought_g),
        ("trimmed", trimmed),
        ("cooked", cooked),
        ("fresh", batch.fresh_g),
        ("dry", batch.dry_g),
    )
    for name, weight_g in stages:
        if weight_g is not None:
            yield name, weight_g
