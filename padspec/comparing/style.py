"""How the page of a comparison looks: light and dark, narrow and wide, on screen and on paper."""

STYLE = """\
:root {
  color-scheme: light dark;
  --page: #f6f3ee; --raised: #fffdfa; --ink: #2d2a26; --quiet: #6a645c; --line: #ddd7cd; --lead: #8a4a63;
  --shadow: 0 1px 2px rgb(60 48 36 / .18), 0 6px 18px rgb(60 48 36 / .13);
  --error: #a8231b; --changed: #d6145c; --well: #ece7df;
}
@media (prefers-color-scheme: dark) {
  :root {
    --page: #1d1b19; --raised: #282522; --ink: #efeae3; --quiet: #aaa298; --line: #3d3833; --lead: #e0a5bb;
    --shadow: 0 1px 2px rgb(0 0 0 / .5), 0 8px 22px rgb(0 0 0 / .45);
    --error: #ff9b90; --changed: #f0588e; --well: #24211f;
  }
}
* { box-sizing: border-box; }
html { background: var(--page); color: var(--ink); }
body { margin: 0; font: 400 15px/1.5 ui-rounded, "Nunito", "Segoe UI", system-ui, sans-serif; }
h1, h2 { font-family: "Lora", "Iowan Old Style", "Palatino Linotype", Georgia, serif; font-weight: 500; }
h1, h2 { margin: 0; }
h1 { font-size: clamp(1.9rem, 5vw, 2.9rem); line-height: 1.15; letter-spacing: -.01em; }
h2 { font-size: 1.5rem; line-height: 1.25; }
h3 { font-size: .95rem; font-weight: 650; margin: 1.2rem 0 .2rem; }
p { margin: .3rem 0 0; color: var(--quiet); max-width: 66ch; }
a { color: inherit; text-decoration-color: var(--lead); text-underline-offset: .18em; }
code { font: .86em/1.4 ui-monospace, "Cascadia Mono", Menlo, Consolas, monospace; overflow-wrap: anywhere; }
.wrap { max-width: 1180px; margin: 0 auto; padding: 0 clamp(1rem, 4vw, 3rem); }
.head { padding-top: clamp(1.5rem, 5vw, 3.5rem); padding-bottom: 1.4rem; }
.head .sum { color: var(--ink); font-size: 1.08rem; margin-top: .6rem; }
.since { overflow-wrap: anywhere; }
nav ul, .shared ul, .same ul { margin: .3rem 0 0; padding: 0 0 0 1.1rem; }
nav ul { display: flex; flex-wrap: wrap; gap: .35rem 1.6rem; padding: 0; list-style: none; margin-top: 1.1rem; }
nav span { color: var(--quiet); font-size: .86rem; margin-left: .35rem; }
li { overflow-wrap: anywhere; }
section { padding-block: 2.2rem; border-top: 1px solid var(--line); }
.title { display: flex; flex-wrap: wrap; align-items: baseline; gap: .2rem .8rem; }
.sku { color: var(--quiet); font-size: .88rem; letter-spacing: .03em; overflow-wrap: anywhere; }
.state {
  font-size: .78rem; font-weight: 650; padding: .1rem .55rem; border-radius: 99px; border: 1px solid var(--line);
  color: var(--quiet);
}
.state.added { color: var(--lead); border-color: currentColor; }
.state.unreadable { color: var(--error); border-color: currentColor; }
.panes { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 1.2rem; margin: 1.3rem 0 .4rem; }
.panes { align-items: start; }
.panes.one { grid-template-columns: minmax(0, 22rem); }
figure { margin: 0; }
figure h3 { margin: 0 0 .5rem; }
.well {
  background: var(--well); border-radius: 10px; padding: clamp(.6rem, 2vw, 1.3rem);
  display: grid; place-items: center;
}
.well img { display: block; max-width: 100%; max-height: 30rem; width: auto; height: auto; }
.well img { filter: drop-shadow(0 1px 2px rgb(40 30 20 / .25)); }
.over { display: grid; }
.over img { grid-area: 1 / 1; }
figcaption { margin-top: .55rem; font-size: .86rem; color: var(--quiet); min-height: 2.6em; }
figcaption label { display: flex; align-items: center; gap: .6rem; }
input[type=range] { flex: 1; min-width: 2.5rem; width: 4rem; accent-color: var(--lead); }
.key { display: inline-block; width: .75em; height: .75em; border-radius: 3px; background: var(--changed); }
table { width: 100%; border-collapse: collapse; margin-top: 1rem; font-size: .93rem; table-layout: fixed; }
thead th { width: 26%; }
thead th:nth-child(2), thead th:nth-child(3) { width: 23%; }
thead th:nth-child(4) { width: 9%; }
thead th:nth-child(5) { width: 19%; }
caption { text-align: left; color: var(--quiet); font-size: .86rem; padding-bottom: .3rem; }
th, td { text-align: left; vertical-align: baseline; padding: .42rem .9rem .42rem 0; overflow-wrap: anywhere; }
tbody tr { border-top: 1px solid var(--line); }
thead th { color: var(--quiet); font-weight: 500; font-size: .84rem; }
tbody th { font-weight: 600; }
td.was { color: var(--quiet); }
td.by { font-variant-numeric: tabular-nums; white-space: nowrap; }
td.at { color: var(--quiet); }
td svg { width: .95em; height: .95em; margin-right: .4em; vertical-align: -.12em; }
td svg rect { stroke: var(--quiet); stroke-width: .6; }
.also { display: block; color: var(--quiet); font-size: .85rem; font-weight: 400; }
.bad { color: var(--error); }
:focus-visible { outline: 2px solid var(--lead); outline-offset: 3px; }
footer { padding-block: 1.6rem 3rem; color: var(--quiet); font-size: .86rem; border-top: 1px solid var(--line); }
[hidden] { display: none !important; }
@media (max-width: 620px) {
  .panes { gap: .6rem; }
  .well { padding: .4rem; border-radius: 6px; }
  figcaption label { gap: .3rem; font-size: .8rem; }
  table, caption, thead, tbody, tr, th, td { display: block; }
  thead { position: absolute; clip-path: inset(50%); height: 1px; overflow: hidden; }
  tbody tr { padding-block: .5rem; }
  tbody th, tbody td { padding: 0; }
  tbody td:nth-child(-n + 3) { display: inline; }
  td.was:not(:empty)::after { content: " →"; margin-right: .35em; }
}
@media print {
  :root { --page: #fff; --raised: #fff; --ink: #222; --quiet: #555; --line: #ddd; --well: #fff; }
  :root { --changed: #d6145c; }
  section { break-inside: avoid; }
  .well img { max-height: 11cm; filter: none; outline: .2mm solid #ccc; }
  input, figcaption label { display: none; }
}
"""
