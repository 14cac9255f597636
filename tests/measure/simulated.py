"""Pieces whose yarn and time are known, because they are made up here: invented numbers.

A hand loosens and tightens from round to round, and slowly; kinds of stitch compare in other
ways than the tables say; a sitting is quick or slow as a whole. None of it follows the
assumptions that the estimates are made with.
"""

from dataclasses import dataclass, field
from fractions import Fraction
from random import Random

from tracker.measure import pace, yarn

KINDS = ("sc", "hdc", "dc", "ch", "tr", "sl st")


@dataclass
class Hand:
    """A maker: what each kind truly takes, and how the hand wanders from round to round."""

    chance: Random
    ratios: dict
    true: dict
    wanders: float
    lasts: float
    now: float = field(default=0.0)

    def round(self, mood=1.0):
        """What one round has of each kind, and what it takes."""
        step = self.chance.gauss(0, self.wanders)
        self.now = self.lasts * self.now + (1 - self.lasts**2) ** 0.5 * step
        main = self.chance.choice(list(self.ratios))
        made = {
            kind: float(self.chance.randint(*((20, 80) if kind == main else (0, 10))))
            for kind in self.ratios
        }
        took = sum(self.true[kind] * many for kind, many in made.items())
        return made, took * mood * max(0.3, 1 + self.now)


def hand(chance, table, unit, wanders, lasts):
    """A maker whose kinds compare by the table only within its spread."""
    kinds = chance.sample(KINDS, chance.randint(1, 4))
    ratios = {kind: table[kind] for kind in kinds}
    true = {
        kind: unit * ratio.times * max(0.1, chance.gauss(1, ratio.spread))
        for kind, ratio in ratios.items()
    }
    return Hand(chance, ratios, true, wanders, lasts)


def total(rounds):
    """Rounds together: of each kind, and what they took."""
    every = {}
    for made, _ in rounds:
        for kind, many in made.items():
            every[kind] = every.get(kind, 0.0) + many
    return every, sum(took for _, took in rounds)


def yarn_ahead(seed, weighings=None):
    """The grams that a piece truly takes from the last weighing on, and the estimate of them."""
    chance = Random(seed)
    maker = hand(
        chance,
        yarn.RATIOS,
        unit=chance.uniform(0.03, 0.15),
        wanders=chance.uniform(0.02, 0.08),
        lasts=chance.uniform(0.3, 0.95),
    )
    step = chance.choice((Fraction(1), Fraction(1, 10)))
    left, rounds, kept = chance.uniform(300, 900), [], []
    for _ in range(weighings or chance.randint(2, 8)):
        shown = Fraction(round(left / float(step))) * step
        kept.append(yarn.Weighing(shown, step, total(rounds)[0]))
        new = [maker.round() for _ in range(chance.randint(2, 14))]
        rounds += new
        left -= total(new)[1]
    # What was worked after the last weighing lies ahead of it too.
    coming = new + [maker.round() for _ in range(chance.randint(1, 40))]
    made, took = total(coming)
    estimate = yarn.fit_yarn(kept, maker.ratios)
    return took, estimate and yarn.needed(estimate, made, maker.ratios)


def time_ahead(seed, sittings=None):
    """The seconds that a piece truly takes from here, and the estimate of them."""
    chance = Random(seed)
    maker = hand(
        chance,
        pace.RATIOS,
        unit=chance.uniform(3, 12),
        wanders=chance.uniform(0.1, 0.3),
        lasts=chance.uniform(0, 0.5),
    )
    moods = chance.uniform(0.03, 0.15)

    def sitting():
        mood = max(0.5, chance.gauss(1, moods))
        return [maker.round(mood) for _ in range(chance.randint(2, 15))]

    past = [sitting() for _ in range(sittings or chance.randint(1, 6))]
    made, took = total([one for _ in range(chance.randint(1, 5)) for one in sitting()])
    stretches = [[pace.Stretch(*one) for one in rounds] for rounds in past]
    estimate = pace.fit_pace(stretches, maker.ratios)
    usual = sum(total(rounds)[1] for rounds in past) / len(past)
    return took, estimate and pace.takes(estimate, made, maker.ratios, usual)
