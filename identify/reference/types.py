"""What a TOML file says before it is read."""

from typing import Any

TomlTable = dict[str, Any]  # what stands in a TOML file, by its keys: of any sort until it is read
