"""Packs, cloth and metric: problems of people who piece, each answered by one command.

Each source tells of the problem; the right answers were worked out anew, from plane geometry or
by counting. Where no page is named the problem is common practice.
"""

from __future__ import annotations

from tests.cli.reckoning.conftest import Ask, Case, each_of, gives

CASES: list[Case] = [
    (
        "http://imperamagna.blogspot.com/2013/01/tricky-little-charm-packs.html",
        "packs that hold anything",
        "reckon packs --need 140 --in-a-pack 56 50 43 42 40 32 25 22",
        [
            "56 in a pack: 3 packs, 28 spare",
            "50 in a pack: 3 packs, 10 spare",
            "43 in a pack: 4 packs, 32 spare",
            "42 in a pack: 4 packs, 28 spare",
            "40 in a pack: 4 packs, 20 spare",
            "32 in a pack: 5 packs, 20 spare",
            "25 in a pack: 6 packs, 10 spare",
            "22 in a pack: 7 packs, 14 spare",
        ],
    ),
    (
        "https://mavanellstudio.com/lets-talk-charm-packs/",
        "squares for a stated size",
        "layouts --units 168 --finishes 4 1/2 --near 45 x 63",
        ["smallest that covers it: 14 rows of 10", "28 spare"],
    ),
    (
        "https://mavanellstudio.com/lets-talk-charm-packs/",
        "packs for them",
        "reckon packs --need 140 --in-a-pack 42 40",
        ["42 in a pack: 4 packs, 28 spare", "40 in a pack: 4 packs, 20 spare"],
    ),
    (
        "https://laurainstitches.typepad.com/in_stitches_of_williamsto/layer-cakes/",
        "40 squares sewn all round",
        "reckon makes --method paired-squares --have 40",
        ["units: 80", "2 × 40", "4 × 20", "5 × 16", "8 × 10"],
    ),
    (
        "https://laurainstitches.typepad.com/in_stitches_of_williamsto/layer-cakes/",
        "80 units of 6 in",
        "reckon straight --rows 10 --columns 8 --finishes 6",
        ["top finishes at: 48 in across × 60 in down"],
    ),
    (
        "https://laurainstitches.typepad.com/in_stitches_of_williamsto/layer-cakes/",
        "42 squares sewn all round",
        "reckon makes --method paired-squares --have 42",
        ["units: 84", "2 × 42", "3 × 28", "4 × 21", "6 × 14", "7 × 12"],
    ),
    (
        "https://laurainstitches.typepad.com/in_stitches_of_williamsto/layer-cakes/",
        "84 units as nine by nine",
        "layouts --units 84 --finishes 6 --rows 9 --columns 9",
        ["now wanted: 54 in across × 54 in down", "now wanted: 3 spare"],
    ),
    (
        "https://nationalquilterscircle.com/video/measuring-precuts-017226",
        "42 squares, stacked four-patches",
        "reckon makes --method stacked-four-patch --have 42",
        ["10 four-patches, 1 pair over", "stack: 5 stacks", "units: 20"],
    ),
    (
        "https://nationalquilterscircle.com/video/measuring-precuts-017226",
        "40 squares give as many",
        "reckon makes --method stacked-four-patch --have 40",
        ["units: 20"],
    ),
    (
        "https://nationalquilterscircle.com/video/measuring-precuts-017226",
        "two packs of 42",
        "reckon makes --method stacked-four-patch --have 84",
        ["21 four-patches", "10 stacks, 1 pressed four-patch over", "units: 40"],
    ),
    (
        "https://nationalquilterscircle.com/video/measuring-precuts-017226",
        "set four by five, trimmed to 6 1/4 in",
        "reckon straight --rows 5 --columns 4 --finishes 5 3/4",
        ["23 in across × 28 3/4 in down"],
    ),
    (
        "https://www.quiltingdaily.com/technique-tuesday-test-session-pinked-edges-on-pre-cuts/",
        "peak against valley of a pinked edge",
        "reckon shrunk --label 10 1/4 --measured 9 3/4 --method paired-squares",
        [
            "unit, unfinished: 6.541 in",
            "unit at the label: 6.894 in",
            "each unit loses: 0.354 in",
            "a row of 8 loses: 2.828 in",
        ],
    ),
    (
        "https://susies-scraps.com/2015/12/07/wash-your-pre-cuts",
        "washed squares",
        "reckon shrunk --label 5 --measured 4 7/8, 4 5/8 --method paired-squares",
        ["common size: 4 5/8 in", "2.917 in", "3.182 in"],
    ),
    (
        "https://pieceocakeblog.com/2018/01/page/2",
        "a square longer than wide",
        "reckon shrunk --label 10 --measured 10 x 9 3/8 --method paired-squares",
        ["common size: 9 3/8 in", "6.276 in", "6.718 in", "each unit loses: 0.442 in"],
    ),
    (
        "http://blondeusingrotarycutter.blogspot.com/2013/09/have-you-ever-had-to-make-up-quilt.html",
        "strips under size",
        "reckon row --pieces 3 --cut 2 3/8",
        ["sewn: 6 1/8 in"],
    ),
    (
        "http://blondeusingrotarycutter.blogspot.com/2013/09/have-you-ever-had-to-make-up-quilt.html",
        "150 squares to cut down",
        "reckon shrunk --label 6 1/2 --measured 6 --method plain-squares --pieces 150",
        ["300 cuts", "600 edges"],
    ),
    (
        "http://www.quilterscache.com/M/MathChartsPage.html",
        "squares of 7 in from a yard",
        "reckon squares --size 7 --cloth 36in --usable 42",
        ["pieces: 30 pieces"],
    ),
    (
        "http://www.quilterscache.com/M/MathChartsPage.html",
        "at 44 in",
        "reckon squares --size 7 --cloth 36in --usable 44",
        ["pieces: 30 pieces"],
    ),
    (
        "http://www.quilterscache.com/M/MathChartsPage.html",
        "at 40 in",
        "reckon squares --size 7 --cloth 36in --usable 40",
        ["pieces: 25 pieces"],
    ),
    (
        "https://www.alandacraft.com/2020/05/06/cut-10-layer-cake-squares-from-meterage/",
        "ten-inch squares from 1 m",
        "reckon squares --size 25.4cm --cloth 1m --usable 102cm",
        ["pieces: 12 pieces"],
    ),
    (
        "https://www.alandacraft.com/2020/05/06/cut-10-layer-cake-squares-from-meterage/",
        "ten-inch squares from 1.5 m",
        "reckon squares --size 25.4cm --cloth 1.5m --usable 102cm",
        ["pieces: 20 pieces"],
    ),
    (
        "https://www.alandacraft.com/2020/05/06/cut-10-layer-cake-squares-from-meterage/",
        "ten-inch squares from 2 m",
        "reckon squares --size 25.4cm --cloth 2m --usable 102cm",
        ["pieces: 28 pieces"],
    ),
    (
        "https://www.alandacraft.com/2020/05/06/cut-10-layer-cake-squares-from-meterage/",
        "ten-inch squares from 2.5 m",
        "reckon squares --size 25.4cm --cloth 2.5m --usable 102cm",
        ["pieces: 36 pieces"],
    ),
    (
        "https://www.alandacraft.com/2020/05/06/cut-10-layer-cake-squares-from-meterage/",
        "ten-inch squares from 3 m",
        "reckon squares --size 25.4cm --cloth 3m --usable 102cm",
        ["pieces: 44 pieces"],
    ),
    (
        "https://www.senttijatuuma.fi/how-to-cut-precuts-layer-cakes-10-squares/",
        "half a metre is just too short",
        "reckon squares --size 25.4cm --cloth 50cm --usable 102cm",
        ["left down: 24.6 cm", "short of one more row: 0.8 cm (at 50.8 cm of cloth)"],
    ),
    (
        "https://www.quiltingboard.com/main-f1/i-m-sorry-i-have-another-question-t131707.html",
        "several cuts from one yard",
        "reckon fit --cut 52 of 4 --cut 20 of 3 --cloth 1yd --usable 40 --widest 44",
        [
            "at 40 in usable: fits\nwhy: 30 in of 36 in",
            "6 in left",
            "at 44 in usable: fits\nwhy: 26 in of 36 in",
            "10 in left",
        ],
    ),
    (
        "common practice",
        "4 in on every side",
        "reckon backing --top 51 x 61",
        [
            "back: 59 in across × 69 in down",
            "seams across the width: 2 panels of 59 in, buy 3 3/8 yd",
            "seams along the length: 2 panels of 69 in, buy 3 7/8 yd",
        ],
    ),
    (
        "https://quiltsocial.com/5-quick-steps-to-calculate-yardage-for-quilt-backing-3-styles/amp/",
        "the seam across saves cloth",
        "reckon backing --top 48 x 72 --margin 0",
        [
            "seams across the width: 2 panels of 48 in",
            "96 in of cloth, 2.67 yd",
            "seams along the length: 2 panels of 72 in, buy 4 yd",
            "saves 48 in",
        ],
    ),
    (
        "http://anitaestes.blogspot.com/2010/03/why-is-backing-too-short.html",
        "a finisher who wants 8 in more both ways",
        "reckon backing --top 60 x 80 --margin 4",
        ["68 in across × 88 in down"],
    ),
    (
        "http://www.quiltmaker.com/blogs/quiltypleasures/2013/03/a-quilters-dilemma%E2%80%94or-not/comment-page-1/",
        "the way round and 10 in",
        "reckon binding --top 60 x 80 --allowance 10",
        ["binding: 290 in", "280 in around and 10 in allowance"],
    ),
    (
        "https://quilteuseforever.com/2012/09/10/les-formules-magiques-de-la-quilteuse-1/?like_comment=2406&_wpnonce=e388d967b1",
        "a square, 0.75 cm seams",
        "size --method plain-squares --finishes 10cm --seam 0.75cm",
        ["cut squares at: 11.5 cm"],
    ),
    (
        "https://quilteuseforever.com/2012/09/10/les-formules-magiques-de-la-quilteuse-1/?like_comment=2406&_wpnonce=e388d967b1",
        "a square of two triangles",
        "size --method half-square-two --finishes 10cm --seam 0.75cm",
        ["from 12.56 cm"],
    ),
    (
        "https://quilteuseforever.com/2012/09/10/les-formules-magiques-de-la-quilteuse-1/?like_comment=2406&_wpnonce=e388d967b1",
        "a square of four triangles",
        "size --method hourglass --finishes 10cm --seam 0.75cm",
        ["from 13.62 cm"],
    ),
    (
        "https://quilteuseforever.com/2012/09/10/les-formules-magiques-de-la-quilteuse-1/?like_comment=2406&_wpnonce=e388d967b1",
        "with seams of 0.7 cm",
        "size --method hourglass --finishes 10cm --seam 0.7cm",
        ["from 13.38 cm"],
    ),
    (
        "https://www.pandqmagazine.com/forums/postings.asp?th=13",
        "a 12 in unit remade at 30 cm",
        "size --method half-square-two --finishes 30cm --seam 0.75cm",
        ["from 32.56 cm", "unit finishes at: 30 cm"],
    ),
    (
        "https://thetialys.wordpress.com/2016/06/03/when-an-inch-makes-all-the-difference/",
        "a sheet printed at 96 in 100",
        "reckon scale --should-be 1 --measured 0.96 --size 12 1/2",
        ["printed at: 96.0 %", "12 in"],
    ),
]


@each_of(CASES)
def test_a_command_answers_it(ask: Ask, case: Case) -> None:
    gives(ask, case)


def test_strips_are_joined_on_the_slant_to_the_length_wanted(ask: Ask) -> None:
    # Each join on the slant takes the width: n strips give 40 n - 2 1/2 (n - 1), so 280 in takes 8.
    said = ask("reckon strips --length 280 --width 2 1/2").out
    assert "8 strips of 2 1/2 in" in said
    assert "joined they come to: 302 1/2 in" in said
    assert "7 strips" in ask("reckon strips --length 280 --width 2 1/2 --joins none").out
