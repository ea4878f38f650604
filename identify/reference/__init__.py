"""Reference packs: read a folder, report its mistakes, compile it for the engine."""
