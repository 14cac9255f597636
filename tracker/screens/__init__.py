"""The screens of the terminal: one file a screen, one file a widget."""
