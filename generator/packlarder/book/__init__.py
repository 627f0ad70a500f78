"""The book's files as typed, frozen models: strict YAML with places, bytes to models. Opens nothing."""
