"""Student's distribution: how wide an interval is where the scatter itself is estimated."""

from __future__ import annotations

from statistics import NormalDist

SURE = 0.9
"""The share of intervals that hold the true value: what every interval here is meant to be."""


def quantile(share: float, freedom: float) -> float:
    """Student's t below which a ``share`` lies, with so many degrees of freedom.

    Expanded about the normal distribution (Abramowitz and Stegun, Handbook of Mathematical
    Functions, 1964, 26.7.5); within 0.01 from 3 degrees on for shares up to 0.95.
    """
    z = NormalDist().inv_cdf(share)
    terms = (
        (z**3 + z) / 4,
        (5 * z**5 + 16 * z**3 + 3 * z) / 96,
        (3 * z**7 + 19 * z**5 + 17 * z**3 - 15 * z) / 384,
        (79 * z**9 + 776 * z**7 + 1482 * z**5 - 1920 * z**3 - 945 * z) / 92160,
    )
    return z + sum(term / freedom**power for power, term in enumerate(terms, start=1))


def reach(freedom: float) -> float:
    """How many standard errors an interval of `SURE` reaches to either side."""
    return quantile((1 + SURE) / 2, freedom)
