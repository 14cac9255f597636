"""The main job held against the outside world: every wanted figure has its source beside it."""
