"""What every test gets: folders of its own, so that nobody's own pieces are touched."""

import pytest


@pytest.fixture(autouse=True)
def own_home(tmp_path, monkeypatch):
    """A fresh folder for pieces and settings."""
    home = tmp_path / "home"
    monkeypatch.setenv("HOOKSIDE_HOME", str(home))
    return home
