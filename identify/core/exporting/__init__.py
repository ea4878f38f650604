"""Records on their way out: as a table, as a workbook, and the wants as a page for a friend.

FILES is the order in which the build joins them, after those of the core and of importing; they
become a module of their own, which the phone loads when a file is made.
"""

FILES = ("naming", "own_tables", "workbook_parts", "records_out", "wants_page")
