"""The pattern oracle of one-dimensional cutting: an unbounded knapsack, solved by length."""

from collections.abc import Callable, Sequence

from padspec.planning.cutting_stock import Prices


def cuts_of_a_roll(roll: int, widths: Sequence[int]) -> Callable[[Prices], tuple[int, ...]]:
    """The most valuable widths that a roll holds, at given prices."""

    def most_valuable(prices: Prices) -> tuple[int, ...]:
        worth = [0.0] * (roll + 1)
        last = [-1] * (roll + 1)
        for length in range(1, roll + 1):
            worth[length], last[length] = worth[length - 1], -1
            for item, width in enumerate(widths):
                if width <= length and worth[length - width] + prices[item] > worth[length] + 1e-9:
                    worth[length], last[length] = worth[length - width] + prices[item], item
        counts, length = [0] * len(widths), roll
        while length > 0:
            item = last[length]
            if item >= 0:
                counts[item] += 1
            length -= widths[item] if item >= 0 else 1
        return tuple(counts)

    return most_valuable
