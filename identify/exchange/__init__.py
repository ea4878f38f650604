"""Spreadsheets in and out; see README.md."""
