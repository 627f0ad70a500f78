"""Random trips: any people, stops, water, dishes, drinks, food on the move, shops, and a day in reserve."""

from hypothesis import strategies as st
from tests.sums.store_of import EGG, RICE, run_of
from tests.sums.trip_of import DISHES, Travelled, dish_text, trip_of

MORE_DISHES = {
    "heated": dish_text(
        "rice: 50 g each", steps="{moisten: rice, with: 200 mL cold water}; {warm: rice, on: ration heater}"
    ),
    "fried-beef": dish_text(
        "beef: 50 g each",
        "salt: {take: 1 g, fixed: yes}",
        "oil: 5 mL",
        steps="soak: beef; drain: away; {fry: [beef, salt, oil], for: 5 min, to: 74 °C}",
    ),
    "milk": dish_text("milk powder: 20 g each", steps="mix: milk powder", meal="drink"),
}
RUNS = run_of(EGG), run_of(RICE)
MEALS = ("breakfast", "lunch", "supper", "snack", "sweet", "drink")
FILLS = ("", "", "fills: tap", "fills: snow", "fills: to be treated, treated by: boiling")


def maybe(text: str) -> st.SearchStrategy[str]:
    """Give a text, or nothing."""
    return st.sampled_from(["", text])


@st.composite
def _people(draw: st.DrawFn) -> str:
    """Two to five people with any appetite and burden, the first of whom eats."""
    count = draw(st.integers(2, 5))
    told = []
    for number in range(count):
        appetite = draw(st.integers(10, 200) if number == 0 else st.sampled_from([0, 33, 55, 100, 140]))
        burden = draw(st.sampled_from(["", ", carries: 0 %", ", carries: 50 %"]))
        drinks = draw(st.sampled_from(["", "", ", drinks: 130 mL", ", drinks: 0 L"]))
        avoids = draw(maybe(", avoids: milk"))
        told.append(f"P{number}: {{appetite: {appetite} %{burden}{drinks}{avoids}}}")
    return f"[{', '.join(told)}]"


@st.composite
def _meals(draw: st.DrawFn, most: int) -> list[str]:
    """Some meals, some of them for one person alone, who may have no appetite."""
    dish = st.sampled_from([*DISHES, *MORE_DISHES])
    for_whom = st.sampled_from(["", "", ", for: P0", ", for: P1"])
    eaten = draw(st.lists(st.tuples(st.sampled_from(MEALS), dish, for_whom), max_size=most))
    return [f"{meal}: {{dish: {dish}{whom}}}" for meal, dish, whom in eaten]


@st.composite
def _stops(draw: st.DrawFn) -> str:
    """Up to five stops, so many days apart that what is eaten there, next mornings included, can be had there."""
    lines, day = [], draw(st.integers(1, 2))
    for _ in range(draw(st.integers(1, 5))):
        meals = draw(_meals(3))
        more = [
            draw(st.sampled_from(FILLS)),
            draw(st.sampled_from(["", "other water: lake"])),
            draw(st.sampled_from(["", "in heat: 2 h"])),
            draw(st.sampled_from(["", "height: 2500 m", "air: -5 °C", "water: 2 °C", "windy: yes"])),
            draw(st.sampled_from(["", "to buy: [pasta, salt, raisins]"])),
        ]
        keys = ", ".join(["place: somewhere", f"day: {day}", *filter(None, more), f"meals: [{', '.join(meals)}]"])
        lines.append(f"- {{{keys}}}\n")
        day += draw(st.integers(max(1, len(meals)), 4))
    return "".join(lines)


@st.composite
def random_trips(draw: st.DrawFn) -> Travelled:
    """Any trip, worked out with what the larder has."""
    spare = draw(_meals(2))
    more = [
        draw(maybe("drinks: [milk]")),
        draw(maybe("on the move: [milk powder: 30 g each, raisins: 20 g]")),
        f"spare day: [{', '.join(spare)}]" if spare else "",
        f"margins: {{water: {draw(st.integers(0, 40))} %, fuel: {draw(st.integers(0, 40))} %}}",
        f"drinking: {draw(st.sampled_from(['1 L', '2030 mL', '3 L']))}",
    ]
    found = trip_of(
        draw(_stops()),
        people=draw(_people()),
        more="\n".join(filter(None, more)),
        dishes=MORE_DISHES,
        runs=draw(st.sampled_from([(), RUNS])),
        fails=None,
    )
    assert found.trips, found.faults
    return found
