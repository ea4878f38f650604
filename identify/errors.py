"""Errors that are meant for the person at the keyboard."""


class UserError(Exception):
    """What went wrong, in a sentence that says what would be right. The command line prints it."""
