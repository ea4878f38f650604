"""Spreadsheets in and out; DEVELOPERS.md, section 9."""
