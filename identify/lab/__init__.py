"""How well a pack identifies: pieces drawn from it are identified, and the outcome is reported."""
