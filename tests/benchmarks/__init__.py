"""How fast and how light, as ratios to a floor measured in turn in the same run.

``python -m tests.benchmarks`` prints the table.
"""
