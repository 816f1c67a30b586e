"""Long work is looked at on a real window: a screen that cannot be shown fails here as well."""

from tests.window.conftest import broken_screens

__all__ = ["broken_screens"]
