"""What the page of a comparison can do: lay now over before, and fade between them."""

SCRIPT = """\
for (const figure of document.querySelectorAll("figure.fades")) {
  const range = figure.querySelector("input");
  const [before, now] = figure.querySelectorAll(".over img");
  const show = () => {
    // Both fade, so that what is clear on one side goes as well.
    const share = range.valueAsNumber / 100;
    now.style.opacity = share;
    before.style.opacity = share === 1 ? 0 : 1;
    range.setAttribute("aria-valuetext", share === 0 ? "before" : share === 1 ? "now" : `${range.value} % now`);
  };
  before.hidden = false;
  range.closest("label").hidden = false;
  range.addEventListener("input", show);
  show();
}
"""
