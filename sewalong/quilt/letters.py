"""The letters fabrics go by: A to Z, then AA, AB and on."""

from __future__ import annotations


def letter(number: int) -> str:
    """The letter of fabric `number`, from 0. Raises ValueError below that."""
    if number < 0:
        raise ValueError("fabrics are numbered from 0")
    text = ""
    number += 1
    while number:
        number, last = divmod(number - 1, 26)
        text = chr(ord("A") + last) + text
    return text


def number_of(text: str) -> int:
    """The number, from 0, of the fabric with this letter. Raises ValueError if it is none."""
    if not text or not all("A" <= part <= "Z" for part in text):
        raise ValueError(f"{text!r} is not a letter of a fabric")
    number = 0
    for part in text:
        number = number * 26 + ord(part) - ord("A") + 1
    return number - 1
