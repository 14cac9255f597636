"""An hour at the work table on a real terminal, as text frames.

``python -m tests.recording FILE`` works through it and writes the frames to a file; the test
beside it works through the same and looks at each.
"""
