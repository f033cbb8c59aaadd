"""The number in front of a unit: `3`, `2.5`, `2,5`, `1/2`, `½`, `2 1/2`, `2-1/2`, `2½`."""

import re
from fractions import Fraction

from sewalong.lengths.fault import LengthFault
from sewalong.lengths.printing import mixed

_VULGAR = {
    "½": Fraction(1, 2),
    "⅓": Fraction(1, 3),
    "⅔": Fraction(2, 3),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅕": Fraction(1, 5),
    "⅖": Fraction(2, 5),
    "⅗": Fraction(3, 5),
    "⅘": Fraction(4, 5),
    "⅙": Fraction(1, 6),
    "⅚": Fraction(5, 6),
    "⅐": Fraction(1, 7),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
    "⅑": Fraction(1, 9),
    "⅒": Fraction(1, 10),
}
_ONE_CHARACTER = f"[{''.join(_VULGAR)}]"
_SLASH = "[/⁄∕]"
_TYPED = rf"(?P<over>[0-9]+) ?{_SLASH} ?(?P<under>[0-9]+)"

# Patterns are kept as text and compiled when first used: a command that reads no length should
# not pay for them when it starts.
_WHOLE = r"[0-9]+"
_DECIMAL = r"(?P<whole>[0-9]*)(?P<mark>[.,])(?P<part>[0-9]+)"
# A hyphen joins a whole number and a fraction only when nothing stands between them: with
# spaces around it, it may as well be a minus.
_TYPED_FRACTION = rf"(?:(?P<whole>[0-9]+)[ \-‐‑–])?{_TYPED}"
_VULGAR_FRACTION = rf"(?:(?P<whole>[0-9]+)[ \-‐‑–]?)?(?P<vulgar>{_ONE_CHARACTER})"


def read_number(text: str, said: str) -> Fraction:
    """The exact number `text` states; it may be zero. `said` is how a refusal quotes the length.

    Raises `LengthFault` when it is not one number, or may be either of two.
    """
    if re.fullmatch(_WHOLE, text):
        return Fraction(int(text))
    if found := re.fullmatch(_DECIMAL, text):
        return _decimal(found["whole"], found["mark"], found["part"], said)
    if found := re.fullmatch(_VULGAR_FRACTION, text):
        return Fraction(int(found["whole"] or 0)) + _VULGAR[found["vulgar"]]
    if found := re.fullmatch(_TYPED_FRACTION, text):
        return _fraction(found["whole"], found["over"], found["under"], said)
    raise _not_one_number(text, said)


def _decimal(whole: str, mark: str, part: str, said: str) -> Fraction:
    may_be_thousands = mark == "," and len(part) == 3 and 1 <= len(whole) <= 3 and int(whole) > 0
    if may_be_thousands:
        raise LengthFault(
            f"{said} may be {whole}{part} or {whole}.{part}. "
            "Write thousands without a comma, or decimals with a point."
        )
    return Fraction(f"{whole or 0}.{part}")


def _fraction(whole: str | None, over: str, under: str, said: str) -> Fraction:
    if int(under) == 0:
        raise LengthFault(f"{said} divides by zero. Write a fraction such as 1/2.")
    part = Fraction(int(over), int(under))
    if whole is None:
        _refuse_forgotten_space(over, under, said)
        return part
    if not 0 < part < 1:
        raise LengthFault(
            f"{said} was read as {whole} and {over}/{under}, and a fraction beside a whole number "
            f"lies between 0 and 1. If {mixed(int(whole) + part)} is meant, write that."
        )
    return int(whole) + part


def _refuse_forgotten_space(over: str, under: str, said: str) -> None:
    """Refuse `21/2`, which is 10 1/2 as it stands and 2 1/2 to whoever forgot the space."""
    if int(over) < int(under):
        return
    for split in range(1, len(over)):
        whole, rest = over[:split], over[split:]
        if not rest.startswith("0") and int(rest) < int(under):
            value = mixed(Fraction(int(over), int(under)))
            raise LengthFault(
                f"{said} may be {whole} {rest}/{under} or {value}. Write the one that is meant."
            )


def _not_one_number(text: str, said: str) -> LengthFault:
    """Why `text`, made of nothing but the characters of numbers, is not one number."""
    slashes = len(re.findall(_SLASH, text))
    pieces = re.findall(rf"[0-9.,/⁄∕]+|{_ONE_CHARACTER}", text)
    fractions = slashes + len(re.findall(_ONE_CHARACTER, text))
    if any(len(re.findall(_SLASH, piece)) > 1 for piece in re.split(r"[ \-‐‑–—−]", text)):
        return LengthFault(f"{said} has more than one slash in a fraction. Write one such as 1/2.")
    if fractions > 1:
        return LengthFault(f"{said} has more than one fraction. Write one number, such as 2 1/2.")
    if fractions == 1 and re.search(r"[0-9]?[.,][0-9]", text):
        return LengthFault(
            f"{said} mixes a decimal with a fraction. Write either, such as 2.5 or 2 1/2."
        )
    if re.search(r"[\-‐‑–—−]", text):
        return LengthFault(
            f"{said} may be two numbers or a subtraction. Write one number, such as 2 1/2 or 2-1/2."
        )
    if len(re.findall("[.,]", text)) > 1:
        return LengthFault(
            f"{said} has more than one point or comma in a number. Write one such as 2.5."
        )
    if len(pieces) > 1:
        return LengthFault(
            f"{said} has {len(pieces)} numbers in a row. Write one number, such as 2 1/2."
        )
    return LengthFault(
        f"{said} is not a whole number, a decimal or a fraction as it stands. "
        "Write it like 2, 2.5 or 2 1/2."
    )
