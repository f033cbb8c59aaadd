"""`fabrics --photo`: one pack read off a photograph, put right, and taken into the plan."""

from __future__ import annotations

import argparse
import re

from sewalong.cli.cloth.fabric_report import fabric_data, facts
from sewalong.cli.frame.context import Context
from sewalong.cli.frame.errors import CommandError
from sewalong.cli.frame.report import Report
from sewalong.cli.frame.selection import chosen_quilt
from sewalong.cli.sewing.outcome import aftermath
from sewalong.fabrics.photo.mending import merge, rename, split
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import Place, Reading, ReadPhoto
from sewalong.fabrics.photo.sheet_words import fabric_lines, place_lines
from sewalong.service.acting import do
from sewalong.service.fabric_changes import keep_photographed
from sewalong.service.photographs import photo_asked, read_photographed, write_sheet
from sewalong.store.pictures import refuse_picture


def photographed(args: argparse.Namespace, context: Context) -> Report:
    """`fabrics --photo FILE --grid 6x7 [--corners …] [--packs N] [--keep]`"""
    if (args.instead or args.beside) and not args.keep:
        raise CommandError("--instead and --beside go with --keep.")
    if args.grid is None:
        raise CommandError("Say how the squares lie, rows first: --grid 6x7")
    if args.sheet is not None:
        refuse_picture(args.sheet, replace=args.replace)
    asked = photo_asked(
        args.photo,
        " ".join(args.grid),
        str(1 if args.packs is None else args.packs),
        " ".join(args.corners or ()),
    )
    try:
        reading = read_photographed(asked)
        photo = _mended(reading.photo, args)
    except PhotoRefused as refused:
        raise CommandError(str(refused)) from refused
    lines = [*place_lines(photo), *fabric_lines(photo)]
    if args.sheet is not None:
        write_sheet(args.sheet, Reading(photo, reading.thumbs), replace=args.replace)
        lines.append(f"What was seen is in {args.sheet}")
    if args.keep:
        return _kept(photo, lines, args, context)
    lines.append("To take these fabrics into the plan: the same with --keep")
    return Report(tuple(lines), _data(photo, args), recorded=args.sheet is not None)


def _kept(photo: ReadPhoto, lines: list[str], args: argparse.Namespace, context: Context) -> Report:
    with chosen_quilt(args, context) as quilt:
        quilt.refresh()
        if args.instead and args.beside:
            raise CommandError("Take them in with --instead, or --beside; not both.")
        if quilt.state.quilt.counted_fabrics and not (args.instead or args.beside):
            raise CommandError(
                "The quilt has fabrics already. Add --beside to have these too, or --instead to "
                "have them in place of those."
            )
        outcome = do(quilt, keep_photographed(quilt, photo, instead=args.instead))
        more = {**_data(photo, args), **fabric_data(quilt)}
        return aftermath(quilt, outcome, first=facts(quilt), more=more)


def _mended(photo: ReadPhoto, args: argparse.Namespace) -> ReadPhoto:
    """What was read, put right: squares split off first, then fabrics merged, then named."""
    for place in args.split:
        photo = split(photo, *_place(place))
    for together in args.merge:
        kept, *gone = _letters(together)
        for letter in gone:
            photo = merge(photo, kept, letter)
    for named in args.rename:
        letter, _, name = named.strip().partition(" ")
        photo = rename(photo, letter.upper(), name)
    return photo


def _place(typed: str) -> tuple[int, int]:
    found = re.fullmatch(r"([0-9]{1,4})[·.]([0-9]{1,4})", typed.strip(), re.ASCII)
    if found is None:
        raise CommandError("--split takes a place, row and square in it, such as 2.5")
    return int(found[1]), int(found[2])


def _letters(typed: str) -> list[str]:
    letters = typed.upper().replace(",", " ").split()
    if len(letters) < 2:
        raise CommandError("--merge takes two letters or more, such as A,F")
    return letters


def _data(photo: ReadPhoto, args: argparse.Namespace) -> dict[str, object]:
    return {
        "rows": photo.rows,
        "columns": photo.columns,
        "packs": photo.packs,
        "places": [_place_data(place) for place in photo.places],
        "found": [
            {
                "letter": one.letter,
                "name": one.name or None,
                "squares": one.squares,
                "colour": str(one.colour),
                "kind": one.kind.value,
                "places": [place.address for place in one.places],
            }
            for one in photo.fabrics
        ],
        "notes": list(photo.notes),
        "sheet": args.sheet,
    }


def _place_data(place: Place) -> dict[str, object]:
    two = place.two
    return {
        "row": place.row,
        "place": place.column,
        "letter": place.letter,
        "colour": str(place.colour),
        "kind": place.kind.value,
        "ground": str(two.ground) if two else None,
        "second": str(two.second) if two else None,
        "share": round(100 * two.share) if two else None,
    }
