"""A component's batches: its yields as points of a plot, and the drying card for next time."""

from collections.abc import Iterator, Sequence

from packlarder.measure import in_grams, in_ml, in_ounces
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.card import DryingCard
from packlarder.reckon.kitchen import spoons
from packlarder.reckon.learnt import Learnt, counts
from packlarder.reckon.spread import Spread
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.dish import day
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Line, Printed
from packlarder.sheets.run import hours, length, treatments
from packlarder.sheets.shelf import weight
from packlarder.sheets.store_sheet import History, YieldPoint

KILO_G = 1000


def history(batches: Sequence[BatchSums], learnt: Learnt, card: DryingCard | None) -> History | None:
    """Build the history of a component from its batches, oldest first; None for what was never dried here."""
    if not batches and card is None:
        return None
    spread = learnt.fresh_per_dry
    return History(
        points=tuple(_points(batches)),
        median=None if spread is None else KILO_G / spread.median,
        says=_says(spread) if batches else (),
        card=() if card is None else tuple(_card(card)),
        card_notes=() if card is None else card.notes,
    )


def _points(batches: Sequence[BatchSums]) -> Iterator[YieldPoint]:
    for batch in batches:
        ratio, verdict = batch.fresh_per_dry, batch.verdict
        if ratio is not None and verdict is not None:
            dry_per_kg = KILO_G / ratio
            yield YieldPoint(
                run=Link(kind="run", id=batch.run, name=day(batch.loaded.date())),
                day=batch.loaded.toordinal(),
                day_text=day(batch.loaded.date()),
                dry_per_kg=dry_per_kg,
                gave=Fact(label="", metric=in_grams(dry_per_kg), us=in_ounces(dry_per_kg)),
                verdict=verdict.value,
                counted=counts(batch),
            )


def _says(spread: Spread | None) -> Line:
    if spread is None:
        return (words.HISTORY["none"],)
    phrase = words.HISTORY["one" if spread.count == 1 else "several"]
    return common.set_line(
        phrase.replace("{count}", str(spread.count)),
        {"dry": _gives(spread.median), "least": _gives(spread.most), "most": _gives(spread.least)},
    )


def _gives(fresh_per_dry: float) -> Printed:
    dry_g = KILO_G / fresh_per_dry
    return Printed((in_grams(dry_g),), (in_ounces(dry_g),))


def _card(card: DryingCard) -> Iterator[Fact]:
    names = words.CARD
    yield _same(names["dryer"], card.dryer)
    if card.treated:
        yield treatments(names["treated"], card.treated)
    yield weight(names["tray"], card.tray_g)
    if card.deep_m is not None:
        yield length(names["deep"], card.deep_m)
    if card.last_hours is not None:
        yield _same(names["last_hours"], hours(card.last_hours))
    elif card.usual_hours is not None:
        yield _same(names["usual_hours"], hours(card.usual_hours))
    if card.hours is not None and card.hours.count > 1:
        spread = card.hours
        text = words.SPREAD.format(median=hours(spread.median), least=hours(spread.least), most=hours(spread.most))
        yield _same(names["hours"], text)
    if card.dry_per_tray_g is not None:
        yield weight(names["dry_per_tray"], card.dry_per_tray_g)
    yield from _full_load(card)


def _full_load(card: DryingCard) -> Iterator[Fact]:
    full, names = card.full, words.CARD
    if full is None:
        return
    yield weight(names["full_fresh"].format(trays=full.trays), full.fresh_g)
    yield weight(names["full_dry"], full.dry_g)
    if full.bulk_ml is not None:
        yield Fact(label=names["bulk"], metric=in_ml(full.bulk_ml), us=spoons(full.bulk_ml))
    if full.fills:
        text = words.OR.join(words.FILLS.format(count=one.count, size=one.size) for one in full.fills)
        yield _same(names["fills"], text)


def _same(label: str, text: str) -> Fact:
    return Fact(label=label, metric=text, us=text)
