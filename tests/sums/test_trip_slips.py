"""What is wrong in a trip is told once, where it stands, with a way out; nothing is lost in silence."""

from textwrap import dedent

import pytest
from tests.sums.book_of import Told
from tests.sums.journey_of import DISHES, faults_in, journey_of, keys_of, menu_of
from tests.sums.trip_of import trips_of

from packlarder.faults import Severity

CAMP = "- place: camp\n  day: 1\n"


def only(faults: tuple[Told, ...]) -> Told:
    """Give the one thing that is wrong."""
    (fault,) = faults
    return fault


@pytest.mark.parametrize(
    ("meals", "keys", "code", "marked", "said", "help"),
    [
        pytest.param(
            "[supper: noodels]",
            {},
            "unknown-dish",
            "noodels",
            'no dish is called "noodels"',
            'did you mean "noodles"? dishes live in dishes/',
            id="a dish misspelt",
        ),
        pytest.param(
            "[supper: {dish: rice, for: [Ada, Boo]}]",
            {},
            "unknown-person",
            "Boo",
            'nobody on this trip is called "Boo"',
            'did you mean "Bo"? along are: Ada, Bo',
            id="a person misspelt",
        ),
        pytest.param(
            "[supper: {dish: rice, stove: brner}]",
            {},
            "unknown-stove",
            "brner",
            'no stove is called "brner"',
            'did you mean "burner"? book.yaml knows: burner, spirit',
            id="a line's stove misspelt",
        ),
        pytest.param(
            "[supper: {dish: rice, stove: spirit}]",
            {"stoves": "[burner]"},
            "stove-at-home",
            "spirit",
            'Rice wants the stove "spirit", which does not come along',
            "add it to `stoves`, or name another with `stove:` in this line; along are: burner",
            id="a line's stove at home",
        ),
        pytest.param(
            "[supper: {dish: noodles, pot: pam}]",
            {"pots": "[pan]"},
            "unknown-pot",
            "pam",
            'no pot is called "pam"',
            'did you mean "pan"? book.yaml knows: pot, little pot, pan',
            id="a line's pot misspelt",
        ),
        pytest.param(
            "[supper: {dish: noodles, pot: little pot}]",
            {},
            "pot-at-home",
            "little pot",
            'Noodles wants the pot "little pot", which does not come along',
            "add it to `pots`, or name another with `pot:` in this line; along are: pot, pan",
            id="a line's pot at home",
        ),
        pytest.param(
            "[supper: fried beef]",
            {"pots": "[pot]"},
            "pot-at-home",
            "fried beef",
            'Fried beef wants the pot "pan", which does not come along',
            "add it to `pots`, or name another with `pot:` in this line; along are: pot",
            id="a dish's pot at home",
        ),
        pytest.param(
            "[]",
            {"stoves": "[burnr]"},
            "unknown-stove",
            "burnr",
            'no stove is called "burnr"',
            'did you mean "burner"? book.yaml knows: burner, spirit',
            id="a stove misspelt",
        ),
        pytest.param(
            "[]",
            {"pots": "[pot, frying pan]"},
            "unknown-pot",
            "frying pan",
            'no pot is called "frying pan"',
            "book.yaml knows: pot, little pot, pan",
            id="a pot that there is not",
        ),
        pytest.param(
            "[]",
            {"drinks": "[mlk]"},
            "unknown-dish",
            "mlk",
            'no dish is called "mlk"',
            'did you mean "milk"? dishes live in dishes/',
            id="a drink misspelt",
        ),
        pytest.param(
            "[]",
            {"on_the_move": "[raisin: 20 g each]"},
            "unknown-component",
            "raisin",
            'no component is called "raisin"',
            'did you mean "raisins"? components live in components/',
            id="food on the move misspelt",
        ),
        pytest.param(
            "[]",
            {"on_the_move": "[raisins: 2 tbsp each]"},
            "not-convertible",
            "2 tbsp each",
            "is not known",
            "weigh",
            id="food on the move that nobody weighed",
        ),
        pytest.param(
            "[]",
            {"on_the_move": "[pasta: 20 g each]"},
            "not-ready",
            "pasta",
            "Pasta must be cooked, and is eaten from the bag here",
            "take something that is ready to eat, or make it a meal at a stop",
            id="uncooked food on the move",
        ),
        pytest.param(
            "[]",
            {"spare_day": "[supper: stewe]"},
            "unknown-dish",
            "stewe",
            'no dish is called "stewe"',
            "dishes live in dishes/",
            id="a dish in reserve misspelt",
        ),
    ],
)
def test_a_slip_is_told_where_it_stands(
    meals: str, keys: dict[str, str], code: str, marked: str, said: str, help: str
) -> None:
    """The author's word is marked, the message says what is wrong, and the help what to write; it stops a build."""
    fault = only(faults_in(f"{CAMP}  meals: {meals}\n", **keys))
    assert (fault.code, fault.file) == (code, "trips/trip.yaml")
    assert marked in fault.marked
    assert said in fault.message
    assert help in fault.help
    assert fault.severity is Severity.ERROR


@pytest.mark.parametrize(
    ("keys", "code", "lacks"),
    [
        ({"stoves": "[]", "pots": "[]"}, "no-stove", "stove"),
        ({"stoves": "[]"}, "no-stove", "stove"),
        ({"pots": "[]"}, "no-pot", "pot"),
    ],
)
def test_each_meal_that_wants_heat_is_told_where_nothing_comes_along(
    keys: dict[str, str], code: str, lacks: str
) -> None:
    """Rice wants hot water and is eaten twice, noodles want a flame; cold rice and milk want neither."""
    faults = faults_in(f"{CAMP}  meals: [lunch: cold rice, supper: rice, supper: rice, supper: noodles]\n", **keys)
    assert [(fault.code, fault.marked) for fault in faults] == [(code, "rice"), (code, "rice"), (code, "noodles")]
    assert faults[0].message == (f"nothing to cook it on: Rice wants a flame or hot water, and no {lacks} comes along")
    assert faults[0].help == f"name one of yours under `{lacks}s:`, or take a dish that wants neither"


@pytest.mark.parametrize("kit", ["", "stoves: []\npots: []\n"])
def test_a_trip_may_go_without_stove_and_pots(kit: str) -> None:
    """Left out or empty: what is cold is planned, water of the tap is carried, and nothing is wrong."""
    trip = (
        f"starts: 2027-06-26\npeople: [Ada, Bo]\n{kit}drinks: [milk]\nspare day: [lunch: cold rice]\n"
        "stops:\n- {place: camp, day: 1, fills: tap, meals: [lunch: cold rice]}\n"
    )
    cold = {name: f"serves: 1\n{dedent(DISHES[name])}" for name in ("cold rice", "milk")}
    found = trips_of({"trip": trip}, dishes={name.replace(" ", "-"): text for name, text in cold.items()})
    assert [meal.dish for meal in found.trips["trip"].meals] == ["cold-rice", "milk", "cold-rice", "milk"]


@pytest.mark.parametrize(
    ("fills", "marked", "said"),
    [
        ("fills: snow", "snow", "snow is melted at camp, and no stove comes along"),
        ("fills: to be treated, treated by: boiling", "boiling", "water is boiled at camp, and no stove comes along"),
    ],
)
def test_water_that_wants_a_flame_is_told_too(fills: str, marked: str, said: str) -> None:
    """Snow and water that is boiled want a stove, whatever is eaten."""
    fault = only(faults_in(f"- {{place: camp, day: 1, {fills}, meals: [lunch: cold rice]}}\n", stoves="[]"))
    assert (fault.code, fault.marked, fault.message) == ("no-stove", marked, said)


@pytest.mark.parametrize(
    ("meal", "keys", "code"),
    [
        ("{dish: rice, stove: burner}", {"stoves": "[burnr]"}, "unknown-stove"),
        ("{dish: rice, stove: spirit}", {"stoves": "[burner, sprit]"}, "unknown-stove"),
        ("{dish: noodles, pot: pot}", {"pots": "[pan, pott]"}, "unknown-pot"),
        ("fried beef", {"pots": "[pot, pen]"}, "unknown-pot"),
    ],
)
def test_a_slip_in_what_comes_along_is_told_once(meal: str, keys: dict[str, str], code: str) -> None:
    """Nothing is said to stay at home while it may be the one that is misspelt in the list."""
    assert only(faults_in(f"{CAMP}  meals: [supper: {meal}]\n", **keys)).code == code


def test_a_shop_that_sells_what_nobody_knows() -> None:
    """What is to be bought is one of the household's components."""
    fault = only(faults_in("- {place: shop, day: 1, to buy: [raisns]}\n"))
    assert (fault.code, fault.marked) == ("unknown-component", "to buy")


def test_a_trip_that_nobody_can_plan_is_not_planned() -> None:
    """An error leaves no trip half worked out; all that is wrong is told at once, each once."""
    found = journey_of(
        f"{CAMP}  meals: [supper: noodels, lunch: {{dish: rice, for: Boo}}, supper: rice]\n",
        more="drinks: [mlk]",
        fails=True,
    )
    assert not found.trips
    assert sorted((fault.code, fault.marked) for fault in found.faults) == [
        ("unknown-dish", "mlk"),
        ("unknown-dish", "noodels"),
        ("unknown-person", "Boo"),
    ]


@pytest.mark.parametrize(
    ("spoilt", "stops", "keys"),
    [
        ({"dishes/rice.yaml": b"name: rice"}, "- {place: a, day: 1, meals: [supper: rice, supper: noodles]}\n", {}),
        ({"components/raisins.yaml": b"name: Raisins"}, CAMP, {"on_the_move": "[raisins: 20 g each]"}),
    ],
    ids=["a dish", "food on the move"],
)
def test_what_could_not_be_read_leaves_no_trip_and_no_second_fault(
    spoilt: dict[str, bytes], stops: str, keys: dict[str, str]
) -> None:
    """A trip without that meal would be short of food and water: none is given, and the spoilt file is to blame."""
    found = journey_of(stops, more=keys_of(**keys), instead=spoilt, fails=True)
    assert not found.trips
    assert {fault.file for fault in found.faults} == set(spoilt)


def test_a_drink_of_every_day_is_told_once() -> None:
    """A pot that stays at home is missed on each of four days, and one line is to be mended."""
    stops = "- {place: camp, day: 4, meals: []}\n"
    assert only(faults_in(stops, drinks="[fried beef]", pots="[pot]")).code == "pot-at-home"


def test_a_meal_that_nobody_eats_is_left_out_and_said() -> None:
    """The line is for an infant that eats nothing: a warning, and the rest of the trip is planned and numbered."""
    found = journey_of(
        f"{CAMP}  meals: [supper: {{dish: noodles, for: Ida}}, supper: rice]\n",
        more="people: [Ada, Ida: {age: 0, appetite: 0 %}]",
        fails=True,
    )
    fault = only(found.faults)
    assert (fault.code, fault.severity) == ("nobody-eats", Severity.WARNING)
    assert fault.message == "nobody who has any appetite eats this: it is left out"
    assert [(meal.number, meal.dish) for meal in found.trip.meals] == [(1, "rice")]


def test_a_meal_after_the_next_stop_is_reached() -> None:
    """The breakfast after the supper of day 2 is day 3's, and the next stop is reached on day 2."""
    fault = only(
        faults_in("""\
            - {place: camp, day: 2, meals: [supper: rice, breakfast: noodles]}
            - {place: the quay, day: 2}
        """)
    )
    assert (fault.code, fault.marked) == ("out-of-order", "noodles")
    assert fault.message == "this meal falls on day 3, and the quay is reached on day 2"
    assert fault.help.startswith("a breakfast after a supper is the next morning's")


def test_a_meal_before_that_of_the_stop_above() -> None:
    """Supper at the camp, and on the same day a lunch at the quay that comes after it: one of the days is wrong."""
    fault = only(
        faults_in("""\
            - {place: camp, day: 1, meals: [supper: rice]}
            - {place: the quay, day: 1, meals: [lunch: noodles]}
        """)
    )
    assert (fault.code, fault.marked) == ("out-of-order", "noodles")
    assert fault.message == "this lunch comes before the last meal at camp, which is on day 1"
    assert fault.help == "move this stop's `day`, or the meal to the stop where it is eaten"


def test_a_meal_shared_by_two_stops_is_no_slip() -> None:
    """Two suppers of one evening, in two places, as a party may split; and a stop without meals between."""
    trip = menu_of("""\
        - {place: camp, day: 1, meals: [supper: rice]}
        - {place: spring, day: 1}
        - {place: the quay, day: 1, meals: [supper: noodles]}
    """)
    assert [meal.day for meal in trip.meals] == [1, 1]


def test_a_dish_that_names_no_pot_takes_what_comes_along() -> None:
    """Noodles are boiled in the usual pot at home, and in the little one here."""
    planned = menu_of(f"{CAMP}  meals: [supper: noodles]\n", pots="[little pot]")
    assert [step.pot for step in planned.meals[0].plan.steps] == ["little pot"]


def test_one_pot_at_home_for_two_meals_at_like_stops_is_one_fault() -> None:
    """The list of pots is what is to be mended, not each line."""
    assert (
        only(faults_in(f"{CAMP}  meals: [supper: fried beef, supper: fried beef]\n", pots="[pot]")).code
        == "pot-at-home"
    )


# --- what the reader refuses -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stops", "keys", "code", "marked"),
    [
        ("- {place: a, day: 2}\n- {place: b, day: 1}\n", {}, "out-of-order", "1"),
        (CAMP, {"people": "[Ada, ada]"}, "called-alike", "ada"),
        (CAMP, {"people": "[]"}, "empty-value", "[]"),
        (CAMP, {"people": "[Ada: {avoids: nutz}]"}, "unknown-allergen", "nutz"),
        (CAMP, {"people": "[Ada: {age: eight}]"}, "not-a-whole-number", "eight"),
        (CAMP, {"people": "[Ada: {age: 130}]"}, "out-of-range", "130"),
        (CAMP, {"people": "[Ada: {appetite: 400 %}]"}, "out-of-range", "400 %"),
        (CAMP, {"mealtimes": "{supper: 7 pm}"}, "not-a-time", "7 pm"),
        ("- {place: a, day: 0}\n", {}, "out-of-range", "0"),
        ("- {place: a, day: 61}\n", {}, "out-of-range", "61"),
        ("- {place: a, day: first}\n", {}, "not-a-whole-number", "first"),
        (CAMP, {"burners": "0"}, "out-of-range", "0"),
        (CAMP, {"stoves": "[burner, burner]"}, "named-twice", "burner"),
        (CAMP, {"pots": "[pot, pan, pot]"}, "named-twice", "pot"),
        (CAMP, {"drinking": "300 mL"}, "out-of-range", "300 mL"),
        (CAMP, {"washing": "20 L"}, "out-of-range", "20 L"),
        ("- {place: a, day: 1, fills: to be treated}\n", {}, "not-treated", "to be treated"),
        ("- {place: a, day: 1, treated by: filter}\n", {}, "nothing-to-treat", "treated by"),
        ("- {place: a, day: 1, fills: tap, treated by: filter}\n", {}, "nothing-to-treat", "treated by"),
        ("- {place: a, day: 1, meals: [supper: [rice, noodles]]}\n", {}, "one-dish", "[rice, noodles]"),
        ('- {place: a, day: 1, meals: [supper: {dish: rice, at: "24:00"}]}\n', {}, "not-a-time", "24:00"),
    ],
)
def test_what_no_trip_can_say(stops: str, keys: dict[str, str], code: str, marked: str) -> None:
    """A value that can not be meant is told at its place with a way out, before anything is worked out."""
    fault = only(faults_in(stops, **keys))
    assert (fault.code, fault.severity) == (code, Severity.ERROR)
    assert marked in fault.marked
    assert fault.message
    assert fault.help or " fits here" in fault.message  # bounds are the way out


@pytest.mark.parametrize(
    ("stops", "keys", "help"),
    [
        (CAMP, {"people": "[Ida: {age: 6 months}]"}, "write whole years; 0 for an infant"),
        (CAMP, {"people": "[Ida: {age: 0.5}]"}, "write whole years; 0 for an infant"),
        (CAMP, {"burners": "0"}, "write how many pots can stand on the flame at once: `burners: 2`"),
        ("- {place: a, day: 0}\n", {}, "the first day is 1; a trip of more than 60 days is written as two"),
        ("- {place: a, day: 61}\n", {}, "the first day is 1; a trip of more than 60 days is written as two"),
    ],
)
def test_a_number_that_can_not_be_meant_has_a_way_out(stops: str, keys: dict[str, str], help: str) -> None:
    """The help speaks of what is counted: of years, of pots, of days."""
    assert only(faults_in(stops, **keys)).help.startswith(help)


def test_nothing_to_wash_in_is_an_answer() -> None:
    """No water for hands and pots, and an infant at the breast that drinks none: what is drunk is still counted."""
    planned = menu_of(CAMP, washing="0 L", people="[Ada, Ida: {age: 0, appetite: 0 %, drinks: 0 L}]")
    assert planned.model.washing.base == 0
    assert [eater.drinks_ml for eater in planned.eaters] == [3000, 0]


def test_an_avoided_word_offers_the_closest() -> None:
    """A slip of one letter names the word that was meant, and all words that there are."""
    fault = only(faults_in(CAMP, people="[Ada: {avoids: [almnd]}]"))
    assert fault.message == 'no allergen is called "almnd"'
    assert fault.help.startswith('did you mean "almond"? the words are: milk, egg')
