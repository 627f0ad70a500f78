"""The sums of a trip: meals, packs, what the larder gives and what is still to dry, water, fuel, clock, load."""
