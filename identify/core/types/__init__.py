"""The shapes of everything that the engine takes, gives and stores, one file a subject.

Types only: nothing here runs, and nothing of it goes to the phone. mypy holds the code against
them; the docstrings and the comments on the fields are where their meaning is told.
"""
