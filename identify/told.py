"""Errors that are meant for the person at the keyboard."""


class Told(Exception):  # noqa: N818 - it is told, and names no fault of the program
    """What went wrong, in a sentence that says what would be right. The command line prints it."""
