"""A piece in progress: its place, its history, its file."""
