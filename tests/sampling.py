"""How much a heavy test tries: a sample each day, everything with `pytest --full`."""

full = False  # tests/conftest.py sets it before any test is read


def sample(everything: int, usual: int) -> int:
    """How many examples to try."""
    return everything if full else usual
