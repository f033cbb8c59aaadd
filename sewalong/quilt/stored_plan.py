"""A quilt's plan as it is stored: the tables of its JSON, and what may stand under each key.

    {"name": "Harbour lights", "method": "stacked-four-patch", "unit": "inch", "seam": "1/4",
     "starts": [{"pile": "square", "size": "5", "count": 168, "packs": 4, "length": null}],
     "target": {"rows": 9, "columns": 9},
     "borders": [{"cut": "5/2", "cloth": "cream linen"}],
     "finishing": ["layer", "quilt", "bind"], "notes": "",
     "fabrics": [{"letter": "A", "name": "indigo print", "colour": "#243b6b", "squares": 16,
                  "kind": "small print", "second": "#ffffff", "share": 30}],
     "choices": {"usable": "42", "spool_metres": 500},
     "trim": {"width": "25/4", "length": "25/4"},
     "setting": {"kind": "sashed", "cut": "2", "cloth": "slate", "frame": true,
                 "cornerstones": {"cloth": "coral"}},
     "joined": "web",
     "method_text": ["id = \\"stacked-four-patch\\"", ...]}

Lengths are fractions of an inch in lowest terms, as text. `method_text` is the method file as it was
when the quilt began, line by line: the text itself and not what was read from it, so that there is
one reader for it, which knows it as untrusted, and a person can read it in an archive. Every key is
there, null for None; only `fabrics` and all but letter and name in it, `choices` and all in it, `trim`, `setting`, `joined`, `lots`,
`method_text` and `colour` are left out where nothing was given, so that quilts kept before these were known read on as
they are.
"""

# Annotations are not postponed here: msgspec would compile each of them when it first reads.

from collections.abc import Callable
from fractions import Fraction

from msgspec import UNSET, Struct, UnsetType

from sewalong.lengths import LONGEST, Length, Unit
from sewalong.misfit import Path, dotted
from sewalong.piecing.method_files import LONGEST_METHOD
from sewalong.quilt import rules
from sewalong.quilt.web import ROWS, WEB

SASHED, ON_POINT = "sashed", "on point"
"""The kinds of setting that are stored: units set straight have none."""


class StoredLot(Struct, frozen=True, forbid_unknown_fields=True):
    """Squares of one size, of a pile that has several."""

    size: Length
    count: int
    packs: int | None


class StoredStart(Struct, frozen=True, forbid_unknown_fields=True):
    """One pile there is to begin with."""

    pile: str
    size: Length
    count: int
    packs: int | None
    length: Length | None
    lots: list[StoredLot] | UnsetType = UNSET


class StoredTarget(Struct, frozen=True, forbid_unknown_fields=True):
    """The layout wanted."""

    rows: int
    columns: int


class StoredBorder(Struct, frozen=True, forbid_unknown_fields=True):
    """One border."""

    cut: Length
    cloth: str
    colour: str | UnsetType = UNSET


class StoredFabric(Struct, frozen=True, forbid_unknown_fields=True):
    """A fabric of the units."""

    letter: str
    name: str
    colour: str | UnsetType = UNSET
    squares: int | UnsetType = UNSET
    kind: str | UnsetType = UNSET
    second: str | UnsetType = UNSET
    share: int | UnsetType = UNSET
    value: str | UnsetType = UNSET


class StoredChoices(Struct, frozen=True, forbid_unknown_fields=True):
    """What the owner chose otherwise than usual."""

    usable: Length | UnsetType = UNSET
    margin: Length | UnsetType = UNSET
    binding: Length | UnsetType = UNSET
    binding_ends: Length | UnsetType = UNSET
    joins: str | UnsetType = UNSET
    corners: str | UnsetType = UNSET
    spool_metres: int | UnsetType = UNSET
    bobbin_metres: int | UnsetType = UNSET
    own_seam: Length | UnsetType = UNSET


class StoredTrim(Struct, frozen=True, forbid_unknown_fields=True):
    """The size units are trimmed to, across and down."""

    width: Length
    length: Length


class StoredCornerstones(Struct, frozen=True, forbid_unknown_fields=True):
    """Squares where sashes meet."""

    cloth: str
    colour: str | UnsetType = UNSET


class StoredSetting(Struct, frozen=True, forbid_unknown_fields=True):
    """How units are set, where not straight. `kind` is SASHED, with `cut` and `frame` always
    there, or ON_POINT, with `larger` where the squares are cut so much larger."""

    kind: str
    cloth: str
    cut: Length | UnsetType = UNSET
    frame: bool | UnsetType = UNSET
    larger: Length | UnsetType = UNSET
    colour: str | UnsetType = UNSET
    cornerstones: StoredCornerstones | UnsetType = UNSET


class StoredPlan(Struct, frozen=True, forbid_unknown_fields=True):
    """The whole plan."""

    name: str
    method: str
    unit: Unit
    seam: Length
    starts: list[StoredStart]
    target: StoredTarget
    borders: list[StoredBorder]
    finishing: list[str]
    notes: str
    fabrics: list[StoredFabric] | UnsetType = UNSET
    choices: StoredChoices | UnsetType = UNSET
    trim: StoredTrim | UnsetType = UNSET
    setting: StoredSetting | UnsetType = UNSET
    method_text: list[str] | UnsetType = UNSET
    joined: str | UnsetType = UNSET


def read_length(kind: type, value: object) -> Length:
    """The hook by which msgspec reads a length; "0" too, which most keys can't hold.

    Raises ValueError, its sentence without the key.
    """
    if value == "0":
        return Fraction(0)
    if not isinstance(value, str) or not _is_fraction(value):
        raise ValueError(_A_FRACTION)
    length = Fraction(value)
    if str(length) != value:
        raise ValueError(f'This must be in lowest terms: "{length}".')
    if length > LONGEST:
        raise ValueError(f"This is longer than {LONGEST} in.")
    return length


def _is_fraction(text: str) -> bool:
    """Whether it is one number over another, or one alone, each above 0 and of 200 digits at most."""
    numbers = text.split("/")
    return len(numbers) <= 2 and all(
        number.isdecimal() and number.isascii() and number[0] != "0" and len(number) <= 200
        for number in numbers
    )


def check_plan(plan: StoredPlan) -> None:
    """Raises ValueError, naming the key, for what its type allows and a quilt does not."""
    _check_rules(plan, ())
    if not plan.starts:
        raise ValueError("starts: a quilt begins with at least one pile.")
    if len({start.pile for start in plan.starts}) < len(plan.starts):
        raise ValueError("starts: a pile is listed twice.")
    for start in plan.starts:
        _check_lots(start)
    if len(plan.borders) > rules.MOST_BORDERS:
        raise ValueError(f"borders: a quilt has at most {rules.MOST_BORDERS}.")
    if plan.trim and min(plan.trim.width, plan.trim.length) <= 2 * plan.seam:
        raise ValueError("trim: nothing but seams would be left of a unit.")
    if plan.setting:
        _check_setting(plan, plan.setting)
    if plan.joined is not UNSET:
        _check_web(plan)
    letters = [fabric.letter for fabric in plan.fabrics or ()]
    if letters != sorted(set(letters), key=rules.by_letter):
        raise ValueError("fabrics: the letters must each be there once, in order.")
    for fabric in plan.fabrics or ():
        if (fabric.second is UNSET) != (fabric.share is UNSET):
            raise ValueError("fabrics: a second colour and its share go together.")


def _check_lots(start: StoredStart) -> None:
    if start.lots is UNSET:
        return
    sizes = [lot.size for lot in start.lots]
    if len(sizes) < 2 or sizes != sorted(set(sizes)) or start.length is not None:
        raise ValueError("lots: these are squares of several sizes, the smallest first.")
    packs = [lot.packs for lot in start.lots]
    together = None if None in packs else sum(n for n in packs if n)
    in_all = sum(lot.count for lot in start.lots)
    if (start.size, start.count, start.packs) != (sizes[0], in_all, together):
        raise ValueError("lots: the pile is not what its lots add up to.")


def _check_setting(plan: StoredPlan, setting: StoredSetting) -> None:
    others = {SASHED: ("larger",), ON_POINT: ("cut", "frame", "cornerstones")}[setting.kind]
    for key in others:
        if getattr(setting, key) is not UNSET:
            raise ValueError(f"setting.{key}: units set {setting.kind} have none.")
    if setting.kind == ON_POINT:
        return
    if setting.cut is UNSET or setting.frame is UNSET:
        key = "cut" if setting.cut is UNSET else "frame"
        raise ValueError(f"setting.{key}: this is missing.")
    if setting.cut <= 2 * plan.seam:
        raise ValueError("setting.cut: nothing but seams would be left of a sash.")
    if setting.cornerstones and plan.target.columns == 1 and not setting.frame:
        raise ValueError("setting.cornerstones: in one column without a frame no sashes meet.")


def _check_web(plan: StoredPlan) -> None:
    """Units set straight, in rows and columns of two at least, and nothing said of rows."""
    if plan.joined != WEB:
        raise ValueError(f'joined: this is left out where it is "{ROWS}".')
    if plan.setting or min(plan.target.rows, plan.target.columns) < 2:
        raise ValueError("joined: these units are not put together as a web.")


def _check_rules(table: Struct, path: Path) -> None:
    """Every value of the table, and of the tables in it, put to the rule of its key."""
    for key in table.__struct_fields__:
        value, place = getattr(table, key), (*path, key)
        if value is UNSET:
            continue
        if isinstance(value, Struct):
            _check_rules(value, place)
        elif rule := _OF_FABRICS.get(key) if isinstance(table, StoredFabric) else RULES.get(key):
            try:
                rule(value)
            except ValueError as error:
                raise ValueError(f"{dotted(place)}: {error}") from None
        elif isinstance(value, list):
            for index, inner in enumerate(value):
                _check_rules(inner, (*place, index))
        elif value == 0 and key not in _MAY_BE_NOTHING:
            raise ValueError(f"{dotted(place)}: {_A_FRACTION}")


def _method_text(value: object) -> None:
    if not isinstance(value, list) or not value or not all(isinstance(line, str) for line in value):
        raise ValueError("This must be a list of texts, the lines of a method file.")
    if sum(map(len, value)) + len(value) > LONGEST_METHOD:
        raise ValueError(f"This has more than {LONGEST_METHOD:,} characters.")
    for line in value:
        # Asked first, since it is fast and true of nearly every line.
        if not line.isprintable():
            rules.a_text(line, LONGEST_METHOD, lines=True)
        if "\n" in line:
            raise ValueError("One of its lines has a line end in it.")


def _colour(value: object) -> None:
    colour = rules.colour(value)
    if colour != value:
        raise ValueError(f'This must be in small letters: "{colour}".')


def _pieces(value: object) -> None:
    rules.whole(value, rules.MOST_PIECES)


def _packs(value: object) -> None:
    if value is not None:
        _pieces(value)


def _rows(value: object) -> None:
    rules.whole(value, rules.MOST_ROWS)


def _kind(value: object) -> None:
    if value not in (SASHED, ON_POINT):
        raise ValueError(f'This must be "{SASHED}" or "{ON_POINT}".')


RULES: dict[str, Callable[[object], object]] = {
    "name": rules.a_stored_name,
    "method": rules.a_stored_name,
    "unit": rules.owner_unit,
    "pile": rules.a_stored_name,
    "count": _pieces,
    "packs": _packs,
    "rows": _rows,
    "columns": _rows,
    "cloth": rules.a_stored_name,
    "colour": _colour,
    "finishing": rules.finishing,
    "notes": rules.notes,
    "kind": _kind,
    "frame": rules.yes_or_no,
    "joins": rules.joins,
    "joined": rules.joined,
    "corners": rules.corners,
    "spool_metres": rules.metres,
    "bobbin_metres": rules.metres,
    "method_text": _method_text,
}
"""What may stand under each key, lengths aside; each raises ValueError with a sentence."""

_OF_FABRICS: dict[str, Callable[[object], object]] = {
    "letter": rules.letter,
    "name": rules.a_stored_name,
    "colour": _colour,
    "squares": _pieces,
    "kind": rules.fabric_kind,
    "second": _colour,
    "share": rules.share,
    "value": rules.value_word,
}
"""The same of the keys of a fabric: its kind is no setting's."""

_MAY_BE_NOTHING = ("margin", "binding_ends")

_A_FRACTION = 'This must be a fraction of an inch as text, such as "5/2".'
