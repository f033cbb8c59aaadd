"""How the sheets look on paper, A4 or Letter, and on a screen (CSS).

No size of paper is named: what stands side by side is a share of the width, and nothing is higher
than what both papers hold. What matters is in words, lines and borders, which every printer prints;
grounds it may leave out. Nothing is paler than black but drawings of cloth.
"""

from __future__ import annotations

STYLE = """
@page { margin: 12mm }
* { box-sizing: border-box }
html { font: 11pt/1.35 sans-serif; color: #000; background: #fff }
body { max-width: 186mm; margin: 0 auto; overflow-wrap: anywhere }
h1 { font-size: 22pt; line-height: 1.15; margin: 0 }
h2 { font-size: 16pt; margin: 0 0 2mm; break-after: avoid }
h3 { font-size: 12pt; margin: 0; break-after: avoid }
code { white-space: nowrap }
p, ul, dl { margin: 0 0 1mm }
ul { padding-left: 5mm }
header { border-bottom: 1.5pt solid #000; margin-bottom: 4mm }
section + section { break-before: page }
dl { columns: 2; column-gap: 6mm; margin-bottom: 2mm }
dl div { break-inside: avoid }
dt { display: inline; font-weight: bold }
dt::after { content: ": " }
dd { display: inline; margin: 0 }
figure { margin: 2mm 0 0; break-inside: avoid }
.legend { columns: 3; column-gap: 4mm; list-style: none; padding: 0; margin-top: 2mm; font-size: 10pt }
.legend li { break-inside: avoid }
.legend svg { width: 4mm; height: 4mm; vertical-align: -0.5mm }
.top svg { display: block; width: 100%; height: auto; max-height: 165mm }
.strip { margin: 1mm 0 }
.strip svg { display: block; width: 100%; height: auto; max-height: 20mm }
.ends { display: flex; justify-content: space-between; font-size: 9pt }
.laid { border-top: 1pt solid #000; padding: 2mm 0; break-inside: avoid }
.laid ol { columns: 2; column-gap: 6mm; font-size: 10pt; list-style: none; margin: 0; padding: 0 }
.laid li { break-inside: avoid }
.stage { border-top: 1pt solid #000; padding: 2mm 0; break-inside: avoid }
.caution { border: 1.5pt solid #000; border-left-width: 5pt; padding: 1mm 2mm; margin: 1mm 0 }
.caution, .caution ul { font-size: 9.5pt; line-height: 1.25 }
.caution p:last-child { margin: 0 }
.box { display: inline-block; width: 4mm; height: 4mm; border: 1pt solid #000; margin-right: 0.6mm; vertical-align: -0.5mm }
.boxes { margin: 1.5mm 0 0; line-height: 6.5mm }
.group { display: inline-block; white-space: nowrap; margin-right: 3mm }
.group b { display: inline-block; min-width: 6mm; font-size: 9pt }
.blank { display: inline-block; width: 45mm; height: 5mm; border-bottom: 1pt solid #000 }
table { border-collapse: collapse; table-layout: fixed; width: 100%; margin-bottom: 5mm; font-size: 10pt }
thead { display: table-header-group }
tr { break-inside: avoid }
th, td { border-bottom: 0.5pt solid #000; padding: 1mm 1.5mm; text-align: start; vertical-align: top }
thead th { border-bottom-width: 1.5pt }
.lines td:nth-child(4) { font-size: 9pt }
thead th:first-child { width: 13mm }
.sets th:nth-child(2) { width: 24mm }
.lines th:nth-child(2) { width: 24% }
.lines th:nth-child(3) { width: 33% }
.small { font-size: 9pt }
.cards { margin-right: -4mm; orphans: 1; widows: 1 }
.card p { margin-bottom: 0.5mm; line-height: 1.25 }
.both .blank { width: 22mm }
.card { display: inline-block; vertical-align: top; width: calc(50% - 4mm); margin: 0 4mm 2.5mm 0; border: 1pt dashed #000; padding: 0 3mm 1mm; break-inside: avoid }
.up { border-top: 3mm solid #000; margin: 0 -3mm 1mm; padding: 0.5mm 3mm; font-weight: bold }
.tag { font-size: 34pt; line-height: 1; border-bottom: 3pt solid #000; white-space: nowrap; flex: none }
.who { display: flex; align-items: center; gap: 4mm; margin-bottom: 2mm }
.down { border-top: 0.5pt solid #000; margin: 1mm -3mm -1mm; padding: 0.5mm 3mm }
.of { font-size: 22pt; font-weight: bold; line-height: 1.1 }
@media screen { body { padding: 6mm } section + section { border-top: 1.5pt solid #000; padding-top: 6mm } }
"""
"""The style sheet; it holds none of the signs that HTML escapes."""
