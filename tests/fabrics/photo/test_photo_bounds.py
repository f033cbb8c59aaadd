"""A stranger's file costs little: it is read or refused within bounds, whatever is in it."""

from __future__ import annotations

import contextlib
import io
import struct
import subprocess
import sys
import zlib
from functools import cache

import coloraide
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageCms, ImageOps, PngImagePlugin

from sewalong.fabrics.colours import Colour
from sewalong.fabrics.photo.bounds import MOST_BYTES, MOST_DECODED, MOST_SCANS
from sewalong.fabrics.photo.picture import LONG_SIDE, read_picture
from sewalong.fabrics.photo.read import read_photo
from sewalong.fabrics.photo.refused import PhotoRefused
from sewalong.fabrics.photo.result import ReadPhoto
from sewalong.fabrics.photo.tones import parts
from sewalong.fabrics.sight import difference
from tests.fabrics.photo.made_photos import Scene, file_of, laid


@cache
def picture() -> Image.Image:
    return Scene(squares=laid(2, 3), size=(260, 190)).image()


@cache
def jpeg() -> bytes:
    return file_of(picture(), "JPEG", quality=90)


def read(file: bytes) -> ReadPhoto:
    return read_photo(file, 2, 3).photo


def refusal(file: bytes) -> str:
    with pytest.raises(PhotoRefused) as refused:
        read(file)
    return str(refused.value)


def test_bytes_and_an_open_file_are_read_alike() -> None:
    assert read_photo(io.BytesIO(jpeg()), 2, 3) == read_photo(jpeg(), 2, 3)


@pytest.mark.parametrize("mode", ["RGB", "RGBA", "P", "CMYK", "L", "LA", "1"])
def test_pictures_of_every_mode_are_read(mode: str) -> None:
    format = "JPEG" if mode == "CMYK" else "PNG"
    file = file_of(picture().convert(mode), format)
    seen = parts(read_picture(file).light).astype(int)
    expected = np.asarray(Image.open(io.BytesIO(file)).convert("RGB")).astype(int)
    assert np.abs(seen - expected).max() <= 1


@pytest.mark.parametrize(
    "file",
    [b"", b"hello", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"GIF89a" + bytes(50), b"RIFF1234WEBP"],
)
def test_what_is_no_picture_is_refused(file: bytes) -> None:
    assert refusal(file).startswith(("This is no picture", "The picture is damaged"))


@pytest.mark.parametrize("format", ["GIF", "BMP", "TIFF", "PPM", "ICO"])
def test_other_kinds_of_pictures_are_refused(format: str) -> None:
    assert refusal(file_of(picture(), format)).startswith("This is no picture that can be read")


@pytest.mark.parametrize("format", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("share", [0.1, 0.5, 0.9])
def test_a_file_that_breaks_off_is_refused(format: str, share: float) -> None:
    file = file_of(picture(), format)
    said = refusal(file[: int(len(file) * share)])
    assert said.startswith(("The picture is damaged or not complete", "This is no picture"))


@settings(max_examples=40)
@given(st.data(), st.sampled_from(["JPEG", "PNG", "WEBP"]))
def test_damaged_bytes_are_read_or_refused_and_nothing_else(
    data: st.DataObject, format: str
) -> None:
    file = bytearray(_file(format))
    for _ in range(data.draw(st.integers(1, 6))):
        file[data.draw(st.integers(0, len(file) - 1))] = data.draw(st.integers(0, 255))
    with contextlib.suppress(PhotoRefused):
        read_picture(bytes(file))


@cache
def _file(format: str) -> bytes:
    exif = Image.Exif()
    exif[0x0112] = 6
    return file_of(picture().resize((90, 70)), format, exif=exif.tobytes())


@pytest.mark.parametrize("orientation", [*range(10), 65535])
def test_the_picture_is_held_upright_as_the_camera_says(orientation: int) -> None:
    exif = Image.Exif()
    exif[0x0112] = orientation
    file = file_of(picture(), "PNG", exif=exif)
    upright = ImageOps.exif_transpose(Image.open(io.BytesIO(file)))
    assert np.array_equal(parts(read_picture(file).light), np.asarray(upright))


def test_pixels_are_averaged_as_light_mixes() -> None:
    # Half white and half black is a light of a half, which sRGB shows as 188.
    rows, columns = np.indices((300, 2 * LONG_SIDE))
    board = Image.fromarray(((rows + columns) % 2 * 255).astype(np.uint8))
    seen = read_picture(file_of(board))
    assert seen.light.shape == (150, LONG_SIDE, 3)
    assert seen.scale == 2
    assert set(parts(seen.light).ravel()) == {188}


def test_a_wider_profile_is_understood() -> None:
    # The primaries of Display P3 from a library, put into a profile in place of those of sRGB.
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    for tag, parts_of in ((b"rXYZ", (1, 0, 0)), (b"gXYZ", (0, 1, 0)), (b"bXYZ", (0, 0, 1))):
        at = struct.unpack(">I", profile[(here := profile.index(tag) + 4) : here + 4])[0]
        xyz = coloraide.Color("display-p3", parts_of).convert("xyz-d50").coords()
        profile[at + 8 : at + 20] = struct.pack(">3i", *(round(part * 65536) for part in xyz))
    stored = (180, 120, 90)
    plain = Image.new("RGB", (80, 80), stored)
    seen = parts(read_picture(file_of(plain, icc_profile=bytes(profile))).light)[0, 0]
    meant = coloraide.Color("display-p3", [part / 255 for part in stored]).convert("srgb").coords()
    assert seen.tolist() == pytest.approx([part * 255 for part in meant], abs=1)
    unread = parts(read_picture(file_of(plain, icc_profile=b"nonsense")).light)[0, 0]
    assert tuple(unread.tolist()) == stored


def test_nothing_of_the_metadata_is_kept() -> None:
    exif = Image.Exif()
    exif[0x010E] = "a secret place"
    reading = read_photo(file_of(picture(), "JPEG", exif=exif), 2, 3)
    assert b"secret" not in repr(reading).encode()


def test_a_large_jpeg_is_decoded_smaller_and_read_alike() -> None:
    wide = int((MOST_DECODED / 4) ** 0.5) + 600
    wide -= wide % 32
    large = picture().resize((wide, wide * 190 // 260), Image.Resampling.NEAREST).convert("RGB")
    larger = Image.new("RGB", (wide, wide), "#c9c4ba")
    larger.paste(large)
    file = file_of(larger, "JPEG", quality=80)
    seen = read_picture(file)
    assert max(seen.light.shape) <= LONG_SIDE
    assert seen.wide == pytest.approx(wide, rel=0.01)
    first = seen.at(np.array([wide * 0.2]), np.array([wide * 0.2]))[0]
    there = picture().getpixel((int(260 * 0.2), int(260 * 0.2)))
    assert isinstance(there, tuple)
    assert difference(Colour(*there), Colour(*parts(first).tolist())) < 2


def test_what_a_telephone_hangs_on_behind_the_picture_does_not_count() -> None:
    film = jpeg() + b"\xff\xda" * 200
    assert read(film) == read(jpeg())
    two = io.BytesIO()
    picture().save(
        two, "MPO", quality=90, save_all=True, append_images=[Image.new("RGB", (90, 90))]
    )
    assert read(two.getvalue()) == read(jpeg())


def test_too_many_pixels_and_bytes_and_scans_are_refused_before_decoding() -> None:
    assert "too many to decode" in refusal(_png_of_nothing(8000, 8000))
    assert "far too many pixels" in refusal(_png_of_nothing(60_000, 60_000))
    assert "larger than 50 MB" in refusal(bytes(MOST_BYTES + 1))
    start = jpeg().index(b"\xff\xda")
    scan = b"\xff\xda\x00\x02"
    assert "scans" in refusal(jpeg()[:start] + scan * (MOST_SCANS + 1) + jpeg()[start:])
    assert "strip" in refusal(_png_of_nothing(64, 9000, whole=True))


def _png_of_nothing(wide: int, high: int, whole: bool = False) -> bytes:
    """A PNG that says it is so large and holds next to nothing, or grey all over."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    header = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)
    rows = high if whole else 1
    pixels = zlib.compress((b"\0" + b"\x80" * (3 * wide)) * rows)
    return (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", pixels) + chunk(b"IEND", b"")
    )


def test_text_that_unpacks_without_end_is_not_unpacked() -> None:
    text = PngImagePlugin.PngInfo()
    text.add_text("Comment", "a" * 200_000_000, zip=True)
    file = file_of(picture(), pnginfo=text)
    assert len(file) < 1_000_000
    assert refusal(file).startswith("The picture is damaged")


_BOUNDED = """
import resource, sys
from sewalong.fabrics.photo.read import read_photo
resource.setrlimit(resource.RLIMIT_CPU, (60, 60))
print(len(read_photo(sys.stdin.buffer.read(), 2, 3).photo.places))
print(next(line.split()[1] for line in open("/proc/self/status") if line.startswith("VmHWM")))
"""
"""The highest of this process alone: what rusage has is at least what its parent held."""


@pytest.mark.skipif(sys.platform != "linux", reason="memory is read from /proc")
@pytest.mark.parametrize(
    ("format", "side", "how"),
    [
        ("JPEG", 3464, {}),
        pytest.param("PNG", 6400, {"compress_level": 1}, marks=pytest.mark.long),
        pytest.param("WEBP", 3200, {"quality": 60}, marks=pytest.mark.long),
        pytest.param("JPEG", 5000, {"progressive": True, "subsampling": 0}, marks=pytest.mark.long),
    ],
    ids=["12 megapixels", "the largest PNG", "the largest WebP", "the largest progressive JPEG"],
)
def test_a_large_file_is_read_within_300_megabytes(
    format: str, side: int, how: dict[str, int]
) -> None:
    large = picture().resize((side, side), Image.Resampling.NEAREST)
    file = file_of(large, format, **how)
    run = subprocess.run([sys.executable, "-c", _BOUNDED], input=file, capture_output=True)
    assert run.returncode == 0, run.stderr.decode()
    places, peak = map(int, run.stdout.split())
    assert places == 6
    assert peak < 300 * 1024
