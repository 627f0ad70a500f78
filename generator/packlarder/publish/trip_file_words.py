"""The words in the tables and the calendar of a trip."""

PACKING_HEAD = ("day", "date", "pack", "inside", "bearer", "component", "RAW", "grams", "meal", "stop")
PLAN_HEAD = ("date", "time", "end", "what", "components", "grams", "load", "foods")
RAW = "RAW"
MEAL = "{meal}: {dish}"
RAW_NAME = "{name} (RAW)"

PROGRAM = "-//Packlarder//Plan of a trip//EN"
TASK = "{what}: {names}"
TASK_OF_LOAD = "{what}, load {load}: {names}"
GRAMS = "{grams:g} g"
OF_ONE = "{name} {grams}"
MADE_OF = "{told} ({foods})"
FOR_TRIP = "For {trip}, from {starts}."
PEOPLE = "With {names}."
