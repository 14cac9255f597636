"""What every test gets: folders of its own, so that nobody's own pieces are touched."""

import pytest
from hypothesis import Phase, settings

# Making a long random work smaller takes minutes; this shows what was found at once.
settings.register_profile("as-found", phases=[Phase.explicit, Phase.reuse, Phase.generate])


@pytest.fixture(autouse=True)
def own_home(tmp_path, monkeypatch):
    """A fresh folder for pieces and settings."""
    home = tmp_path / "home"
    monkeypatch.setenv("HOOKSIDE_HOME", str(home))
    return home
