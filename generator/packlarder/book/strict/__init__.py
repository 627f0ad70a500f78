"""What `nodes.read_yaml` stands on: the parser, what a book refuses of YAML, and why a text is none, in plain words."""
