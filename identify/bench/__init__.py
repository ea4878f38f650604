"""How fast it is: one command that measures, compares, and says what it measured with."""
