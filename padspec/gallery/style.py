"""How the pattern book looks as a page for a browser: light and dark, narrow and wide, on screen and on paper."""

STYLE = """\
:root {
  color-scheme: light dark;
  --page: #f6f3ee; --raised: #fffdfa; --ink: #2d2a26; --quiet: #6d675f; --line: #ddd7cd; --lead: #8a4a63;
  --shadow: 0 1px 2px rgb(60 48 36 / .18), 0 6px 18px rgb(60 48 36 / .13);
  --error: #a8231b; --warning: #8a5200;
  --mm: 1.62px;
}
@media (prefers-color-scheme: dark) {
  :root {
    --page: #1d1b19; --raised: #282522; --ink: #efeae3; --quiet: #aaa298; --line: #3d3833; --lead: #e0a5bb;
    --shadow: 0 1px 2px rgb(0 0 0 / .5), 0 8px 22px rgb(0 0 0 / .45);
    --error: #ff9b90; --warning: #f0bd6b;
  }
}
* { box-sizing: border-box; }
html { background: var(--page); color: var(--ink); scroll-padding-top: 5.5rem; }
body { margin: 0; font: 400 15px/1.5 ui-rounded, "Nunito", "Segoe UI", system-ui, sans-serif; }
h1, h2 { font-family: "Lora", "Iowan Old Style", "Palatino Linotype", Georgia, serif; font-weight: 500; }
h1, h2 { margin: 0; }
h1 { font-size: clamp(1.9rem, 5vw, 2.9rem); line-height: 1.15; letter-spacing: -.01em; }
h2 { font-size: 1.5rem; line-height: 1.25; }
p { margin: .25rem 0 0; color: var(--quiet); max-width: 62ch; }
a { color: inherit; }
.wrap { max-width: 1360px; margin: 0 auto; padding: 0 clamp(1rem, 4vw, 3rem); }
.head { padding-top: clamp(1.5rem, 5vw, 3.5rem); padding-bottom: 1.25rem; }
.studio { margin: 0 0 .4rem; color: var(--lead); font-size: .82rem; letter-spacing: .12em; }
.studio { text-transform: uppercase; }
.bar {
  position: sticky; top: 0; z-index: 2; background: color-mix(in srgb, var(--page) 92%, transparent);
  border-block: 1px solid var(--line); backdrop-filter: blur(8px);
}
.bar form { display: flex; flex-wrap: wrap; gap: .5rem 1.1rem; align-items: center; padding-block: .65rem; }
.bar label { display: inline-flex; align-items: center; gap: .45rem; color: var(--quiet); font-size: .88rem; }
select, button {
  font: inherit; color: var(--ink); background: var(--raised); border: 1px solid var(--line); border-radius: 7px;
  padding: .3rem .6rem; max-width: 100%;
}
output { margin-left: auto; color: var(--quiet); font-size: .88rem; font-variant-numeric: tabular-nums; }
:focus-visible { outline: 2px solid var(--lead); outline-offset: 3px; }
section { padding-block: 2.4rem .6rem; border-bottom: 1px solid var(--line); }
section:last-of-type { border-bottom: 0; }
.faces { display: flex; flex-wrap: wrap; gap: 1.9rem 2.1rem; margin: 1.6rem 0 1.8rem; align-items: flex-end; }
figure { margin: 0; width: max(calc(var(--w) * var(--mm)), 8.2rem); max-width: 100%; }
figure a { display: block; width: calc(var(--w) * var(--mm)); max-width: 100%; box-shadow: var(--shadow); }
figure img { display: block; width: 100%; height: auto; background: #fff; }
figcaption { margin-top: .65rem; min-height: 2.9em; font-size: .84rem; line-height: 1.4; color: var(--quiet); }
figcaption strong { display: block; color: var(--ink); font-weight: 650; }
figcaption .error, figcaption .warning { display: block; font-weight: 600; }
.error { color: var(--error); }
.warning { color: var(--warning); }
[hidden] { display: none !important; }
.none { padding-block: 3rem; }
footer { padding-block: 2rem 3rem; color: var(--quiet); font-size: .84rem; }
dialog {
  border: 0; padding: 0; margin: auto; background: transparent; color: var(--ink);
  max-width: 96vw; max-height: 96vh; overflow: visible;
}
dialog::backdrop { background: rgb(24 20 17 / .78); }
dialog img { display: block; max-width: 92vw; max-height: 82vh; width: auto; height: 82vh; object-fit: contain; }
dialog .foot { display: flex; gap: .6rem; align-items: center; justify-content: center; padding-top: .8rem; }
dialog output { margin: 0; color: #f2ece4; min-width: 14ch; text-align: center; }
@media (max-width: 560px) {
  :root { --mm: 1.18px; }
  .faces { gap: 1.4rem 1.2rem; }
  .bar { position: static; }
  .bar form { display: grid; grid-template-columns: 1fr 1fr; }
  .bar label { display: grid; }
  .bar .check { display: flex; }
  output { text-align: right; }
}
@media print {
  :root { --page: #fff; --raised: #fff; --ink: #222; --quiet: #666; --line: #ddd; --shadow: 0 0 0 .5px #bbb;
    --mm: .3mm; }
  .bar, dialog { display: none; }
  section { border: 0; padding-top: 0; }
  section + section { break-before: page; }
  figure { break-inside: avoid; width: max(calc(var(--w) * var(--mm)), 2.6cm); }
  figure a { box-shadow: none; outline: .2mm solid #ccc; text-decoration: none; }
  .faces { gap: 6mm 7mm; }
}
@media (prefers-reduced-motion: no-preference) {
  figure a { transition: transform .15s ease; }
  figure a:hover { transform: translateY(-2px); }
}
"""
