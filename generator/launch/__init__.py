"""From a bare machine to a running Packlarder. Standard library only: nothing is installed yet."""
