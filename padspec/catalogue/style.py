"""How the catalogue looks: light and dark, narrow and wide; on paper only its line sheet shows."""

STYLE = """\
:root {
  color-scheme: light;
  --page: #f7f4ee; --raised: #fffdf9; --ink: #2b2824; --quiet: #655f57; --line: #ddd6ca; --lead: #7b3d58;
  --stop: #a3211a; --look: #7a4a00; --ready: #35603f;
  --shade: 0 1px 2px rgb(60 48 36 / .16), 0 8px 20px rgb(60 48 36 / .12);
}
:root[data-scheme="dark"] {
  color-scheme: dark;
  --page: #1c1a18; --raised: #272421; --ink: #efeae2; --quiet: #b0a89e; --line: #433d37; --lead: #e5adc2;
  --stop: #ff9d92; --look: #f1c071; --ready: #9fd3a9;
  --shade: 0 1px 2px rgb(0 0 0 / .5), 0 10px 24px rgb(0 0 0 / .45);
}
@media (prefers-color-scheme: dark) {
  :root:not([data-scheme="light"]) {
    color-scheme: dark;
    --page: #1c1a18; --raised: #272421; --ink: #efeae2; --quiet: #b0a89e; --line: #433d37; --lead: #e5adc2;
    --stop: #ff9d92; --look: #f1c071; --ready: #9fd3a9;
    --shade: 0 1px 2px rgb(0 0 0 / .5), 0 10px 24px rgb(0 0 0 / .45);
  }
}
*, ::before { box-sizing: border-box; }
html { background: var(--page); color: var(--ink); scroll-padding-top: 4rem; }
body { margin: 0; font: 400 15px/1.5 "Nunito", "Segoe UI", system-ui, sans-serif; }
h1, h2 { font-family: "Lora", "Iowan Old Style", "Palatino Linotype", Georgia, serif; font-weight: 500; }
h1, h2 { margin: 0; }
h1, h2, h3 { overflow-wrap: anywhere; }
h1 { font-size: clamp(1.9rem, 5vw, 3rem); line-height: 1.12; letter-spacing: -.012em; text-wrap: balance; }
h2 { font-size: 1.45rem; line-height: 1.25; }
h3 { margin: 0; font-size: 1rem; font-weight: 650; line-height: 1.3; }
p { margin: 0; }
a { color: inherit; text-underline-offset: .18em; text-decoration-thickness: .06em; }
a:hover { color: var(--lead); }
:focus-visible { outline: 2px solid var(--lead); outline-offset: 2px; border-radius: 3px; }
[hidden] { display: none !important; }
.unseen {
  position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%);
  white-space: nowrap;
}
.skip { position: absolute; left: 1rem; top: -4rem; z-index: 5; padding: .5rem .9rem; background: var(--raised); }
.skip:focus { top: .6rem; }
.wrap { max-width: 1420px; margin-inline: auto; padding-inline: clamp(1rem, 4vw, 3rem); }
.head { padding-block: clamp(1.6rem, 5vw, 3.6rem) 1.6rem; }
.head p { max-width: 62ch; margin-top: .5rem; color: var(--quiet); }
.head .studio { margin: 0 0 .5rem; color: var(--lead); font-size: .82rem; letter-spacing: .13em; }
.head .studio { text-transform: uppercase; }
.bar { border-block: 1px solid var(--line); }
@media (min-width: 60rem) and (min-height: 40rem) {
  .bar { position: sticky; top: 0; z-index: 3; background: var(--page); }
}
.bar form { display: flex; flex-wrap: wrap; gap: .7rem 1rem; align-items: end; padding-block: .9rem; }
.field { display: grid; gap: .15rem; min-width: 0; }
.field > label, legend { color: var(--quiet); font-size: .8rem; }
input, select, button {
  font: inherit; color: var(--ink); background: var(--raised); border: 1px solid var(--line); border-radius: 6px;
  min-height: 2.25rem; padding: .25rem .65rem; max-width: 100%;
}
input[type="search"] { width: 15rem; }
button { cursor: pointer; }
button:hover { border-color: var(--lead); }
fieldset { border: 0; margin: 0; padding: 0; min-width: 0; }
legend { padding: 0; margin-bottom: .15rem; }
.hues { display: flex; flex-wrap: wrap; gap: .35rem; }
.hues button { display: inline-flex; align-items: center; gap: .4rem; padding-inline: .6rem; }
.hues button::before {
  content: ""; width: .8rem; height: .8rem; border-radius: 50%; background: var(--c);
  border: 1px solid rgb(0 0 0 / .25);
}
.hues button[aria-pressed="true"] { border-color: var(--lead); box-shadow: inset 0 0 0 1px var(--lead); }
.told { display: flex; flex-wrap: wrap; gap: .4rem 1rem; align-items: baseline; padding-block: 1rem 0; }
.told output { color: var(--quiet); font-variant-numeric: tabular-nums; }
.told button { min-height: 1.9rem; padding-block: .1rem; }
section { padding-block: 2rem .4rem; }
section > p { color: var(--quiet); max-width: 62ch; margin-top: .2rem; }
.cards {
  list-style: none; margin: 1.4rem 0 1.6rem; padding: 0; display: flex; flex-wrap: wrap; gap: 2.2rem 2rem;
  align-items: flex-start;
}
.card { width: max(calc(var(--w) * 1px), 11rem); max-width: 100%; }
.face { display: block; width: calc(var(--w) * 1px); max-width: 100%; background: var(--g); }
.face { box-shadow: var(--shade); }
.face img { display: block; width: 100%; height: auto; }
.face.none { aspect-ratio: var(--w) / var(--h); display: grid; place-items: center; padding: .5rem; }
.face.none span { padding: .2rem .5rem; background: #fff; color: #2b2824; font-size: .8rem; border-radius: 3px; }
.card h3 { margin-top: .9rem; }
.of { display: none; font-weight: 400; }
#in-order .of { display: block; }
.sku { color: var(--quiet); font: 400 .72rem/1.5 ui-monospace, "DejaVu Sans Mono", monospace; }
.sku { overflow-wrap: anywhere; letter-spacing: -.02em; }
.facts { margin: .3rem 0 0; display: flex; flex-wrap: wrap; gap: 0 .8rem; color: var(--quiet); font-size: .87rem; }
.facts div { display: flex; gap: .3rem; }
.facts dt { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.facts dd { margin: 0; font-variant-numeric: tabular-nums; }
.facts .price { color: var(--ink); font-weight: 650; }
.swatches { list-style: none; display: flex; gap: 0; margin: .55rem 0 0; padding: 0; }
.swatches li { width: 1.5rem; height: 1.5rem; background: var(--c); border: 1px solid rgb(128 120 110 / .45); }
.swatches li + li { margin-left: -1px; }
.swatches li:first-child { border-radius: 4px 0 0 4px; }
.swatches li:last-child { border-radius: 0 4px 4px 0; }
.state { display: inline-flex; align-items: center; gap: .4rem; margin-top: .55rem; }
.state { font-size: .87rem; font-weight: 600; }
.state.ready { color: var(--ready); }
.state.look { color: var(--look); }
.state.stop { color: var(--stop); }
details { font-size: .85rem; color: var(--quiet); }
summary { cursor: pointer; min-height: 1.5rem; }
details ul { margin: .2rem 0 .4rem; padding-left: 1.1rem; }
.links { list-style: none; display: flex; flex-wrap: wrap; gap: 0 .9rem; margin: .3rem 0 0; padding: 0; }
.links { font-size: .85rem; }
.links a { display: inline-block; min-height: 1.5rem; line-height: 1.5rem; }
.flat { display: block; margin-top: .7rem; }
.flat img { display: block; width: 100%; height: auto; border-radius: 3px; }
.empty { padding-block: 3rem; color: var(--quiet); }
footer { padding-block: 2rem 3rem; color: var(--quiet); font-size: .85rem; border-top: 1px solid var(--line); }
.paper { display: none; }
@media (prefers-reduced-motion: no-preference) { html { scroll-behavior: smooth; } }
@media (forced-colors: active) { .swatches li, .hues button::before { forced-color-adjust: none; } }
@page {
  margin: 14mm 12mm 15mm;
  @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; }
}
@media print {
  html, body { background: #fff; color: #000; }
  body { font-size: 9pt; line-height: 1.35; }
  .screen { display: none !important; }
  .paper { display: block; }
  .paper h1 { font-size: 20pt; }
  .paper header { display: flex; justify-content: space-between; gap: 8mm; align-items: end; margin-bottom: 5mm; }
  .paper header p { max-width: 95mm; color: #444; }
  .order { min-width: 62mm; }
  .order span { display: block; border-bottom: .3pt solid #000; padding-top: 5mm; color: #444; font-size: 8pt; }
  table { border-collapse: collapse; width: 100%; }
  thead { display: table-header-group; }
  tr { break-inside: avoid; }
  tr.never { display: none; }
  th, td { text-align: left; vertical-align: middle; padding: 1.6mm 2mm 1.6mm 0; border-bottom: .3pt solid #999; }
  th { font-size: 8pt; font-weight: 600; color: #444; border-bottom: .8pt solid #000; }
  td.number, th.number { text-align: right; font-variant-numeric: tabular-nums; }
  td img { display: block; height: 17mm; width: auto; }
  td small { display: block; color: #444; font-size: 8pt; }
  td.box { width: 22mm; }
  td.box::before { content: ""; display: block; height: 8mm; border: .5pt solid #000; }
}
"""
