"""Sizes and seams: problems of people who piece, each answered by one command.

Each source tells of the problem; the right answers were worked out anew, from plane geometry or
by counting. Where no page is named the problem is common practice.
"""

from __future__ import annotations

from tests.cli.reckoning.conftest import Ask, Case, each_of, gives

CASES: list[Case] = [
    (
        "http://www.andiejohnsonsews.com/2011/01/making-lemonade.html",
        "five strips came out half an inch short",
        "reckon row --pieces 5 --cut 2 1/2 --measured 10",
        ["sewn: 10 1/2 in", "1/2 in short", "Likeliest: seams of 5/16 in, each 1/16 in too wide."],
    ),
    (
        "https://www.quilted-connections.com/blogs/news/what-is-a-scant-1-4-seam",
        "an eighth lost in each of four seams",
        "reckon row --pieces 5 --cut 2 1/2 --loss 1/8 --across 8",
        ["each such row loses: 1/2 in", "8 of them side by side lose: 4 in"],
    ),
    (
        "http://howdyblogs.blogspot.com/2009/01/quarter-ain-quarter-all-time.html",
        "three strips gave 3 1/4 in",
        "reckon row --pieces 3 --cut 1 1/2 --measured 3 1/4",
        ["sewn: 3 1/2 in", "1/16 in too wide"],
    ),
    (
        "http://onforwardmotion.blogspot.com/2013/09/doesnt-measure-up-tuesday.html",
        "nine-patch at a seam of 9/32 in",
        "reckon row --pieces 3 --cut 3 1/2 --own-seam 9/32",
        ["sewn: 9 1/2 in", "9/32 in: 9 3/8 in"],
    ),
    (
        "http://onforwardmotion.blogspot.com/2013/09/doesnt-measure-up-tuesday.html",
        "an eighth on 9 1/2 in is eased",
        "reckon ease --edge 9 1/2 --to 9 3/8",
        ["1/8 in over", "ease it in"],
    ),
    (
        "http://onforwardmotion.blogspot.com/2013/09/doesnt-measure-up-tuesday.html",
        "a quarter is not",
        "reckon ease --edge 9 1/2 --to 9 1/4",
        ["1/4 in over", "too much to ease"],
    ),
    (
        "common practice",
        "8 in unfinished, sewn all round",
        "size --method paired-squares --unfinished 8 --step 1/2",
        ["cut squares at: 12 in (rounded up from 11.814 in)"],
    ),
    (
        "common practice",
        "8 in finished, sewn all round",
        "size --method paired-squares --finishes 8 --step 1/4",
        ["cut squares at: 12 3/4 in (rounded up from 12.521 in)"],
    ),
    (
        "https://www.quiltingboard.com/2622724-post64.html",
        "4 1/4 in squares trimmed to 2 1/2 in",
        "size --method paired-squares --square 4 1/4 --trim-to 2 1/2",
        ["2.652", "0.152 in across", "unit's outer edges: all four on the bias"],
    ),
    (
        "http://robotmomsews.blogspot.com/2011/12/pinwheel-tutorial.html",
        "8 in squares sewn all round and cut twice",
        "size --method paired-squares --square 8",
        ["5.303", "trim units to: 5 1/4 in"],
    ),
    (
        "http://robotmomsews.blogspot.com/2011/12/pinwheel-tutorial.html",
        "four of them joined to a pinwheel",
        "reckon row --pieces 2 --cut 5 1/4",
        ["finishes at: 9 1/2 in"],
    ),
    (
        "https://tamarinis.typepad.com/tamarinis/2020/10/exploring-the-basics-the-disappearing-four-patch.html",
        "two cuts each way through 8 1/2 in",
        "reckon row --cuts 3, 2 1/2, 3",
        ["laid edge to edge: 8 1/2 in", "sewn: 7 1/2 in"],
    ),
    (
        "http://alamosaquilter.blogspot.com/2011/07/disappearing-four-patch.html",
        "a four-patch of 5 in squares",
        "size --method four-patch --square 5",
        ["unit unfinished: 9 1/2 in"],
    ),
    (
        "http://alamosaquilter.blogspot.com/2011/07/disappearing-four-patch.html",
        "cut 1 in from the seam each side",
        "reckon row --cuts 3 3/4, 2, 3 3/4",
        ["sewn: 8 1/2 in", "finishes at: 8 in"],
    ),
    (
        "http://fiber-thoughts.blogspot.com/2013/03/disappearing-4-patch.html",
        "two 6 in squares",
        "reckon row --pieces 2 --cut 6",
        ["sewn: 11 1/2 in"],
    ),
    (
        "http://fiber-thoughts.blogspot.com/2013/03/disappearing-4-patch.html",
        "12 1/2 in needs 6 1/2 in squares",
        "size --method four-patch --unfinished 12 1/2",
        ["cut squares at: 6 1/2 in"],
    ),
    (
        "https://careyfamily.org/category/scott-and-sue-family/sue/page/89",
        "two 2 1/2 in squares",
        "reckon row --pieces 2 --cut 2 1/2",
        ["sewn: 4 1/2 in"],
    ),
    (
        "https://careyfamily.org/category/scott-and-sue-family/sue/page/89",
        "5 1/2 in needs 3 in squares",
        "size --method four-patch --unfinished 5 1/2",
        ["cut squares at: 3 in"],
    ),
    (
        "https://ragdollquilting.blogspot.com/2007/03/ghi-block.html?m=0",
        "pieces that do not add up",
        "reckon row --cuts 4 3/4, 3 1/2, 3 3/4",
        ["laid edge to edge: 12 in", "sewn: 11 in"],
    ),
    (
        "http://quiltedforyoucolorado.blogspot.com/2010/03/",
        "framed on point",
        "reckon framed --size 12 1/2",
        ["17.678 in"],
    ),
    (
        "http://quiltedforyoucolorado.blogspot.com/2010/03/",
        "trimming all to the smallest",
        "reckon shrunk --label 12 1/2 --measured 11 --method plain-squares",
        ["each unit loses: 1.500 in"],
    ),
    (
        "http://quiltedforyoucolorado.blogspot.com/2010/03/",
        "23 of them set five by five",
        "layouts --units 23 --finishes 18 --rows 5 --columns 5",
        ["now wanted: 90 in across × 90 in down", "now wanted: 2 short"],
    ),
    (
        "https://jobutterfield.blogspot.com/search/label/Hunters%20Star",
        "a row of four cut down to 11 1/2 in",
        "reckon shrunk --label 12 1/2 --measured 11 1/2 --method plain-squares --in-row 4",
        ["common size: 11 1/2 in", "a row of 4 loses: 4.000 in"],
    ),
    (
        "http://boutsdechiffons.logipatch.com/reference.htm",
        "when to make a unit again",
        "reckon ease --size 6.36in",
        ["0.191 in"],
    ),
    (
        "https://quiltyfolk.blogspot.com/2012/02/someday-it-will-be-beautiful-quilt-im.html",
        "half an inch off two sides",
        "size --method half-square-two --square 5 --trim-to 4.146447",
        ["0.500 in across", "half from each side", "0.354 in off its corner"],
    ),
    (
        "http://againmommy.blogspot.com/2010/06/why-arent-my-quilts-ever-right-size.html",
        "62 in 100 is no drift of a seam",
        "reckon row --pieces 12 --cut 8 --measured 56 1/2 --own-seam 5/16",
        ["34 in short, 62% of that", "1.375 in shorter", "No usual seam, count or cut does this"],
    ),
]


@each_of(CASES)
def test_a_command_answers_it(ask: Ask, case: Case) -> None:
    gives(ask, case)


def test_methods_from_strips_say_which_strip_they_take(ask: Ask) -> None:
    example = (
        "strips taken: 2 1/2 in wide, 40 in long\n"
        "why: an example\nwhy: give --strip and --strip-length"
    )
    assert example in ask("methods show rail-fence").out
    assert example in ask("reckon makes --method rail-fence --units 20").out
    assert "strips taken: 3 in wide, 42 in long\n" in (
        ask("size --method four-patch-strips --strip 3 --strip-length 42").out
    )


def test_another_strip_makes_another_count(ask: Ask) -> None:
    # 40 in hold 6 squares of 6 1/2 in, and 4 of 9 1/2 in; 20 units take 4 and 5 strips.
    assert ask("reckon makes --method rail-fence --units 20 --json").data["need"] == {
        "dark-strip": 4, "medium-strip": 4, "light-strip": 4
    }  # fmt: skip
    wider = ask("reckon makes --method rail-fence --units 20 --strip 3 1/2 --json").data
    assert wider["need"]["dark-strip"] == 5
    # 4 strips of 33 in hold 5 of 6 1/2 in each.
    shorter = "reckon makes --method rail-fence --strip-length 33 --json"
    have = "--have dark-strip=4 --have medium-strip=4 --have light-strip=4"
    assert ask(f"{shorter} {have}").data["units"] == 20


def test_a_method_from_squares_takes_no_strip(ask: Ask) -> None:
    answer = ask("reckon makes --method four-patch --have 20 --strip-length 33")
    assert answer.status == 2
    assert "Four-patch begins with squares. Leave --strip-length out." in answer.err
