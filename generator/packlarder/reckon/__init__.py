"""The sums: pure functions from a book's models to typed results. Opens nothing, prints nothing."""
