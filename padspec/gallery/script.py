"""What the browser page does when it is used: filters, arrow keys, and a face held up close."""

SCRIPT = """\
"use strict";
const form = document.querySelector(".bar form");
const figures = [...document.querySelectorAll("figure")];
const sections = [...document.querySelectorAll("section")];
const links = figures.map((figure) => figure.querySelector("a"));
const count = document.querySelector("#count");
const none = document.querySelector(".none");

function filter() {
  const { layout, ground, found } = form.elements;
  for (const figure of figures) {
    const data = figure.dataset;
    figure.hidden = (layout.value && data.layout !== layout.value)
      || (ground.value && data.ground !== ground.value)
      || (found.checked && data.found === "0");
  }
  for (const section of sections) section.hidden = !section.querySelector("figure:not([hidden])");
  const shown = figures.filter((figure) => !figure.hidden).length;
  count.value = shown === figures.length ? `${shown} faces` : `${shown} of ${figures.length} faces`;
  none.hidden = shown > 0;
}
form.addEventListener("input", filter);
form.addEventListener("reset", () => setTimeout(filter));
form.addEventListener("submit", (event) => event.preventDefault());

const shownLinks = () => links.filter((link) => !link.closest("figure").hidden);
const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

function goal(key, from) {
  const all = shownLinks();
  if (key === "Home") return all[0];
  if (key === "End") return all[all.length - 1];
  if (!(key in step)) return null;
  const here = all.indexOf(from);
  if (key === "ArrowRight" || key === "ArrowLeft") return all[here + step[key]];
  // Up and down: the nearest face of the next row that has one.
  const box = from.getBoundingClientRect();
  const beyond = all.map((link) => [link, link.getBoundingClientRect()])
    .filter(([, other]) => step[key] * (other.bottom - box.bottom) > 8);
  const edge = step[key] * Math.min(...beyond.map(([, other]) => step[key] * other.bottom));
  const row = beyond.filter(([, other]) => Math.abs(other.bottom - edge) < 8);
  row.sort(([, one], [, two]) => Math.abs(one.left - box.left) - Math.abs(two.left - box.left));
  return row[0]?.[0];
}
document.addEventListener("keydown", (event) => {
  if (dialog.open || !links.includes(document.activeElement)) return;
  const next = goal(event.key, document.activeElement);
  if (!next) return;
  event.preventDefault();
  next.focus();
});

const dialog = document.querySelector("dialog");
const large = dialog.querySelector("img");
const name = dialog.querySelector("output");
let held = null;

function hold(link) {
  held = link;
  large.src = link.href;
  large.alt = name.value = link.querySelector("img").alt;
}
function turn(by) {
  const all = shownLinks();
  hold(all[(all.indexOf(held) + by + all.length) % all.length]);
}
for (const link of links) {
  link.addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    hold(link);
    dialog.showModal();
  });
}
dialog.addEventListener("keydown", (event) => {
  if (!(event.key in step)) return;
  event.preventDefault();
  turn(step[event.key]);
});
dialog.addEventListener("click", (event) => {
  if (event.target === dialog || event.target === large) dialog.close();
});
dialog.querySelector(".back").addEventListener("click", () => turn(-1));
dialog.querySelector(".on").addEventListener("click", () => turn(1));
dialog.querySelector(".close").addEventListener("click", () => dialog.close());
dialog.addEventListener("close", () => held.focus());
form.hidden = false;
filter();
"""
