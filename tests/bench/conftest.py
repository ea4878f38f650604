"""What tests of the bench share."""

import pytest

from identify import phone
from tests.kept_site import kept_site


@pytest.fixture(autouse=True)
def _made_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The app's files are made once for all tests; the bench itself makes them each time."""
    monkeypatch.setattr(phone, "site", kept_site)
