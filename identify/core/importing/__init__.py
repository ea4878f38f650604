"""A collector's list into the collection: what its columns are, what a row means, what it changes.

FILES is the order in which the build joins them, after those of the core; they become a module of
their own, which the phone loads when a list is brought in.
"""

FILES = (
    "text_parts",
    "text_table",
    "older_letters",
    "encodings",
    "column_headings",
    "cell_dates",
    "cell_values",
    "cell_boxes",
    "no_piece",
    "item_words",
    "matching",
    "wording",
    "own_tables",
    "guessing",
    "row_keys",
    "brought_before",
    "file_kinds",
    "list_rows",
    "rows_matched",
)
