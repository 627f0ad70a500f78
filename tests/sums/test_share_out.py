"""Pieces that add up exactly to their total."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.reckon.kitchen import share_out

PARTS = st.lists(
    st.one_of(st.just(0.0), st.floats(min_value=0.01, max_value=1e5), st.integers(1, 5000).map(float)),
    min_size=1,
    max_size=12,
).filter(any)
STEPS = st.sampled_from([1, 5, 10, 50])


@pytest.mark.parametrize(
    ("total", "parts", "step", "pieces"),
    [
        (100, (1, 1, 1), 1, (34, 33, 33)),  # 33.3 each; one mL over, to the first of equals
        (100, (1, 1, 1), 10, (40, 30, 30)),
        (10, (3.3, 3.3, 3.4), 1, (3, 3, 4)),
        (246, (120.4, 80.3, 45.3), 10, (120, 80, 50)),  # 250: shares 122.4, 81.6, 46.0; 2.4, 1.6, 6.0 are cut off
        (250, (120, 0, 130), 10, (120, 0, 130)),
        (0, (0, 0), 10, (0, 0)),
        (0, (), 10, ()),
        (5, (7,), 1, (5,)),
        (25, (1, 1), 10, (20, 10)),  # 25 goes to 30
    ],
)
def test_largest_remainders_are_rounded_up(
    total: float, parts: tuple[float, ...], step: int, pieces: tuple[int, ...]
) -> None:
    """What is left after cutting every share down to a step goes to those that lost most."""
    assert share_out(total, parts, step) == pieces


@given(parts=PARTS, step=STEPS)
def test_pieces_add_up_exactly_to_the_rounded_total(parts: list[float], step: int) -> None:
    """The pieces are whole steps and their sum is the total rounded to a step, to the last millilitre."""
    total = math.fsum(parts)
    pieces = share_out(total, parts, step)
    assert all(piece % step == 0 for piece in pieces)
    assert sum(pieces) == math.floor(total / step + 0.5) * step


@given(parts=PARTS, step=STEPS, total=st.floats(min_value=0, max_value=1e6))
def test_no_piece_is_a_step_away_from_its_share(parts: list[float], step: int, total: float) -> None:
    """Each piece is less than a step from its exact share of the rounded total; nothing gets nothing."""
    pieces = share_out(total, parts, step)
    whole = sum(pieces)
    for piece, part in zip(pieces, parts, strict=True):
        share = whole * part / math.fsum(parts)
        assert abs(piece - share) < step * (1 + 1e-9)
        assert part or not piece


@given(parts=PARTS, step=STEPS)
def test_a_larger_part_never_gets_less(parts: list[float], step: int) -> None:
    """Order is kept: of two parts the larger has no smaller piece."""
    pieces = share_out(math.fsum(parts), parts, step)
    in_order = sorted(zip(parts, pieces, strict=True))
    for (smaller, its), (larger, theirs) in pairwise(in_order):
        assert smaller == larger or its <= theirs


@pytest.mark.parametrize(
    ("total", "parts"),
    [(10, (0, 0)), (10, ()), (10, (5, -1)), (10, (5, float("nan"))), (-5, (5,)), (10, (float("inf"),))],
)
def test_what_can_not_be_shared_is_a_bug(total: float, parts: tuple[float, ...]) -> None:
    """Something to share among nothing, and parts below zero, are refused."""
    with pytest.raises(ValueError, match="can not be shared out"):
        share_out(total, parts)
