"""The file of preferences as it is written for her to edit: every key, each left out."""

from sewalong.owner.key_names import cap
from sewalong.owner.preferences import USUAL_KEYS


def _as_typed(key: str) -> str:
    """A sign as it stands on the key, every other key by its name."""
    return cap(key) if len(cap(key)) == 1 else key


_KEYS = "\n".join(f'# {name} = "{_as_typed(key)}"' for name, key in USUAL_KEYS.items())

TEMPLATE = f"""\
# What you prefer, for all your quilts. Take the # away in front of what you want otherwise.

# unit = "cm"               # to work in where no quilt says; else "inch"
# session = 90              # minutes of an evening of yours; else what yours have been
# ascii = true              # only plain signs, for a terminal that shows no others
# bell = true               # a sound when a chain or a stage is done

[wear]
# needle_hours = 8          # hours sewn until a new needle is due; 0 for never
# blade = "900 in"          # how far a blade cuts; else it is learned from your changes
# stop_minutes = 60         # until a stop is offered; 0 for never

[cautions]                  # words of your own, shown first: up to three lines each
# cutter = "thumb off the edge!"
# iron = ["cord behind the board", "cat"]
# needle = "glasses"
# pins = "count them"

# A key for each thing to do at the sewing screen, or a list of up to four. Digits type numbers.
# A foot pedal:   count = ["space", "f13"]
# A number pad:   count = "+" and undo = "-"
# One hand only:  choose letters that lie together.
[keys]
{_KEYS}
"""
