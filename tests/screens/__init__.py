"""The screens, tested through the real app on real pieces."""
