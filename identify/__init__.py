"""Tells which variant of a model train a collector is holding, and when it was made."""
