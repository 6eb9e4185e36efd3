"""The angles of a clock's hands, exactly, at whole minutes and between them.

Angles are in degrees, clockwise from the 12. In an hour the minute hand turns 360 degrees and
the hour hand 30, so the one turns twelve times as fast as the other.
"""

from __future__ import annotations

from fractions import Fraction

from manipulatives.maths.time.day import DAY, HOUR

FULL_TURN = 360
HALF_TURN = FULL_TURN // 2
GEAR = 12


def hand_angles(minute: int | Fraction) -> tuple[Fraction, Fraction]:
    """Return the angles of the hour hand and the minute hand, in degrees clockwise from the 12.

    Args:
        minute: minutes since midnight, whole or not.

    Example:
        >>> hour, minute = hand_angles(275)
        >>> float(hour), float(minute)
        (137.5, 210.0)
    """
    turned = Fraction(minute) * FULL_TURN / HOUR
    return turned / GEAR % FULL_TURN, turned % FULL_TURN


def angle_between(minute: int | Fraction) -> Fraction:
    """Return the smaller angle between the hands, in degrees from 0 to 180.

    Args:
        minute: minutes since midnight, whole or not.

    Example:
        >>> float(angle_between(9 * 60 + 45))
        22.5
    """
    hour_hand, minute_hand = hand_angles(minute)
    apart = abs(hour_hand - minute_hand)
    return min(apart, FULL_TURN - apart)


def reading_of(hour_angle: Fraction, minute_angle: Fraction) -> Fraction:
    """Return the time of two hands in minutes, 0 to below 720: the inverse of `hand_angles`.

    Args:
        hour_angle: of the hour hand, in degrees clockwise from the 12.
        minute_angle: of the minute hand.

    Raises:
        ValueError: no clock could show both, since the minute hand turns twelve times as fast.

    Example:
        >>> reading_of(Fraction(275, 2), Fraction(210))
        Fraction(275, 1)
    """
    hour_hand = Fraction(hour_angle) % FULL_TURN
    belongs = GEAR * hour_hand % FULL_TURN
    if belongs != Fraction(minute_angle) % FULL_TURN:
        raise ValueError(
            f"No clock shows an hour hand at {hour_angle} degrees with a minute hand at "
            f"{minute_angle}; the minute hand belongs at {belongs}."
        )
    return hour_hand * GEAR * HOUR / FULL_TURN


def hours_with_angle(angle: int | Fraction) -> list[Fraction]:
    """Return when the hands stand at an angle to each other, in hours since midnight, for a day.

    The minute hand gains 330 degrees an hour on the hour hand, so once in 360/330 of an hour it
    is as far ahead as asked, and once as far behind.

    Args:
        angle: degrees between the hands; 0 they coincide, 180 they are opposite, 90 they make a
            right angle.

    Raises:
        ValueError: the angle is not between 0 and 180 degrees.

    Example:
        >>> [len(hours_with_angle(angle)) for angle in (0, 180, 90)]
        [22, 22, 44]
        >>> hours_with_angle(0)[1]
        Fraction(12, 11)
    """
    if not 0 <= angle <= HALF_TURN:
        raise ValueError(f"The angle between two hands is from 0 to 180 degrees, not {angle}.")
    gain = FULL_TURN - FULL_TURN // GEAR
    hours = DAY // HOUR
    laps = hours * gain // FULL_TURN
    instants = {
        Fraction(lap * FULL_TURN + lead) / gain
        for lap in range(laps + 1)
        for lead in (Fraction(angle), -Fraction(angle))
    }
    return sorted(instant for instant in instants if 0 <= instant < hours)
