"""What the builders of a sheet share: the sums of a dish, turned into rows over its servings."""

from tests.sheets.demo import demo

from packlarder.reckon.records import PartSums, StepSums, WaterSums
from packlarder.sheets.columns import PartColumns, StepColumns, WaterColumns


def test_columns_have_the_fields_of_the_sums() -> None:
    """They are filled by place, so the order must be the same."""
    assert PartColumns._fields == PartSums._fields
    assert StepColumns._fields == StepSums._fields
    assert WaterColumns._fields == WaterSums._fields


def test_a_row_holds_the_sums_of_all_servings() -> None:
    """The second part and the first step of a dish for 1 to 12, as each of its sums has them."""
    dish = demo("pasta-with-ragu").series
    assert dish.parts[1].dry_g == tuple(sums.parts[1].dry_g for sums in dish.sums)
    assert dish.steps[0].rounds == tuple(sums.steps[0].rounds for sums in dish.sums)
    assert len(set(dish.parts[1].dry_g)) == 12, "or the order of servings would not be seen"
