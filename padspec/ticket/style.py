"""How the ticket looks, on paper first: black on white, no colour that a grey printer would lose."""


def style(paper: str) -> str:
    """The style sheet for a page of this size, A4 or letter."""
    return _STYLE.replace("PAPER", paper)


_STYLE = """\
@page { size: PAPER; margin: 11mm 12mm 12mm; }
* { box-sizing: border-box; }
html { font: 9.2pt/1.36 "Nunito", "Avenir Next", "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif;
  color: #1f1e1d; }
body { margin: 0 auto; max-width: 186mm; background: #fff; }
h1, h2, h3, p, ol, ul, table, figure, dl, dd { margin: 0; padding: 0; }
h1 { font-size: 19pt; line-height: 1.1; font-weight: 700; }
h2 { font-size: 8pt; font-weight: 700; letter-spacing: .07em; text-transform: uppercase; color: #5d5953;
  margin: 4.6mm 0 1.6mm; break-after: avoid; }
h3 { font-size: 9.8pt; font-weight: 700; }
.top { display: flex; justify-content: space-between; gap: 8mm; align-items: flex-end;
  border-bottom: .5mm solid #1f1e1d; padding-bottom: 2.4mm; }
.top .kind { font-size: 8.4pt; letter-spacing: .07em; text-transform: uppercase; color: #5d5953; }
.blank { display: grid; grid-template-columns: auto 38mm; gap: 1.4mm 2mm; font-size: 8.4pt; color: #5d5953; }
.blank span { border-bottom: .2mm solid #8b867d; }
.sums { display: flex; flex-wrap: wrap; gap: 1mm 7mm; margin-top: 2.4mm; }
.sums b { font-size: 11.5pt; }
.pads { display: grid; grid-template-columns: repeat(auto-fill, minmax(58mm, 1fr)); gap: 3mm 4mm; list-style:
none; } .pads li { display: flex; gap: 2.8mm; break-inside: avoid; }
.pads img { height: 42mm; max-width: 30mm; object-fit: contain; object-position: top; flex: none;
  outline: .1mm solid #c9c4ba; }
.pads .wide { height: auto; width: 30mm; align-self: flex-start; }
.pads .number { font-size: 13pt; font-weight: 700; line-height: 1.15; }
.pads p { font-size: 8.2pt; line-height: 1.3; }
.sku { color: #5d5953; }
table { border-collapse: collapse; width: 100%; }
td { padding: .7mm 0; border-bottom: .15mm solid #d9d4ca; vertical-align: baseline; }
td.t { width: 1%; }
td.n { text-align: right; white-space: nowrap; font-weight: 700; padding-right: 1.2mm; width: 1%; }
td.u { white-space: nowrap; padding-right: 3mm; width: 1%; }
td.for { color: #5d5953; text-align: right; }
.box { display: inline-block; width: 3.1mm; height: 3.1mm; border: .28mm solid #1f1e1d; border-radius: .5mm;
  vertical-align: -.45mm; margin-right: 1.3mm; background: #fff; }
.lanes { width: 100%; display: block; }
.lanes text { font-family: inherit; font-size: 2.55px; fill: #1f1e1d; }
.lanes .bar { font-size: 2.3px; }
.lanes .hour { fill: #5d5953; font-size: 2.3px; }
.note { font-size: 8.2pt; color: #45423d; margin-top: 1mm; }
.warn { font-weight: 700; }
.steps { list-style: none; counter-reset: step; columns: 2; column-gap: 6mm; font-size: 8pt; line-height: 1.28; }
.steps > li { counter-increment: step; display: grid; grid-template-columns: 7.4mm 1fr; padding: 1.3mm 0 1.4mm;
  border-bottom: .15mm solid #d9d4ca; break-inside: avoid; }
.steps > li::before { content: counter(step); font-size: 13pt; font-weight: 700; line-height: 1; }
.steps .time { color: #5d5953; font-size: 7.6pt; }
.ticks { list-style: none; display: flex; flex-wrap: wrap; gap: .5mm 4mm; margin-top: .8mm; }
.cards { display: grid; grid-template-columns: 1fr 1fr; gap: 5mm 6mm; }
.card { break-inside: avoid; font-size: 7.9pt; line-height: 1.32; }
.drawn { display: grid; grid-template-columns: 42mm 1fr; gap: 2.5mm; margin: 1.2mm 0; }
.card svg { width: 42mm; height: auto; display: block; }
.card ol { list-style: none; font-size: 7.3pt; line-height: 1.26; }
.card ol li { display: grid; grid-template-columns: 4.6mm 1fr; padding: .25mm 0;
  border-bottom: .1mm solid #e5e1d8; }
.card ol .run { grid-template-columns: 8.6mm 1fr; }
.card ol b { color: #a2242f; }
.card i { color: #5d5953; font-style: normal; }
.new-page { break-before: page; }
.two { display: grid; grid-template-columns: 2fr 3fr; gap: 6mm; break-inside: avoid; }
.two h2 { margin-top: 3mm; }
dt { font-weight: 700; }
dl { font-size: 8pt; line-height: 1.3; }
dd { margin-bottom: .8mm; }
.caution { border: .35mm solid #1f1e1d; border-radius: 1.4mm; padding: 1.8mm 2.6mm .6mm; }
footer { font-size: 7.8pt; color: #5d5953; margin-top: 3mm; }
@media screen {
  html { background: #e9e5dc; }
  body { padding: 12mm; margin: 8mm auto; max-width: 210mm; box-shadow: 0 1mm 6mm rgb(0 0 0 / 18%); }
}
@media screen and (max-width: 640px) {
  body { padding: 5mm; margin: 0; }
  .two { grid-template-columns: 1fr; }
  .cards { grid-template-columns: 1fr; }
  .steps { columns: 1; }
  .top { display: block; }
}
"""
