"""The ceiling of ../../wire.md, section 4: the formula in whole numbers, and the current with plain arithmetic."""

from fractions import Fraction

WHOLE = 65536


def load(setup, strip, duties, supply):
    """In 1/65535 uA, without the dark pixels."""
    total = sum(duty * dimmer.full_mA * 1000 for duty, dimmer in zip(duties, setup.dimmers) if dimmer.supply == supply)
    if setup.supply == supply:
        channels = len(setup.order)
        total += sum(sum(strip[i::channels]) * uA * 257 for i, uA in enumerate(setup.channel_uA))
    return total


def factor(setup, strip, duties, supply):
    """The k of the formula; WHOLE if the supply is not over."""
    idle = setup.pixels * setup.dark_uA * 65535 if setup.supply == supply else 0
    limit = setup.ceilings_mA[supply] * 1000 * 65535
    asked = load(setup, strip, duties, supply)
    if idle + asked <= limit:
        return WHOLE
    return max(0, limit - idle) * WHOLE // asked if asked else 0


def dim(setup, strip, duties):
    """What a frame must look like when shown: (strip, duties, whether anything was over)."""
    factors = [factor(setup, strip, duties, supply) for supply in range(len(setup.ceilings_mA))]
    shown = bytes(byte * factors[setup.supply] // WHOLE for byte in strip)
    dimmed = tuple(duty * factors[dimmer.supply] // WHOLE for duty, dimmer in zip(duties, setup.dimmers))
    return shown, dimmed, min(factors) < WHOLE


def current_mA(setup, strip, shares, supply):
    """What a supply delivers for strip bytes and for dimmers that are on for these shares of the time; a Fraction."""
    total = sum(Fraction(share) * dimmer.full_mA for share, dimmer in zip(shares, setup.dimmers) if dimmer.supply == supply)
    if setup.supply == supply:
        total += Fraction(setup.pixels * setup.dark_uA, 1000)
        for i, uA in enumerate(setup.channel_uA):
            total += Fraction(sum(strip[i::len(setup.order)]) * uA, 255 * 1000)
    return total
