"use strict";
/* Before and after laid over one another, with an edge between them that moves.

   Expects `.pair[data-compare]` with two figures, each with one image; `data-fit` on it may hold
   the six numbers of a matrix that lays the second image over the first: both equally wide, left
   upper corners together, the last two numbers in shares of that width. Without it the second
   covers the box of the first. Without the class `compared` they begin side by side, as they stand
   without scripts and in print. The style sheet lays them over one another before any script runs,
   so that nothing shifts; a browser that cannot be asked for scripts there keeps them so too. */

for (const pair of document.querySelectorAll(".pair[data-compare]")) {
  const [before, after] = pair.querySelectorAll("figure");
  const images = [before, after].map((figure) => figure && figure.querySelector("img"));
  if (images.every(Boolean) && matchMedia("(scripting: enabled)").matches) compare(pair, images);
}

function compare(pair, [under, over]) {
  const bar = document.createElement("div");
  bar.className = "compare-bar";
  const edge = document.createElement("input");
  Object.assign(edge, { type: "range", min: "0", max: "100", value: "50", step: "1" });
  edge.setAttribute("aria-label", "Edge between before and after");
  const toggle = document.createElement("button");
  toggle.type = "button";
  const left = word("Before");
  const right = word("After");
  bar.append(left, edge, right, toggle);
  pair.append(bar);
  lay(pair, over);

  const move = () => {
    const share = Number(edge.value);
    pair.style.setProperty("--edge-at", `${share}%`);
    edge.setAttribute("aria-valuetext", said(share));
  };
  const show = (together) => {
    pair.classList.toggle("compared", together);
    toggle.textContent = together ? "Side by side" : "Compare";
    for (const part of [left, edge, right]) part.hidden = !together;
    move();
  };
  edge.addEventListener("input", move);
  toggle.addEventListener("click", () => show(!pair.classList.contains("compared")));
  drag(pair, under, (share) => {
    edge.value = String(Math.round(share * 100));
    move();
  });
  show(pair.classList.contains("compared"));
}

/* A picture of another shape fills the box of the first; one that was fitted by points keeps its
   own shape, and is turned, scaled and moved. */
function lay(pair, over) {
  const fit = (pair.dataset.fit || "").split(" ").map(Number);
  if (fit.length !== 6 || fit.some(Number.isNaN)) return;
  const [a, b, c, d, x, y] = fit;
  const place = () => {
    const width = over.clientWidth;
    over.style.setProperty("--fit", `matrix(${a}, ${b}, ${c}, ${d}, ${x * width}, ${y * width})`);
  };
  over.classList.add("fitted");
  new ResizeObserver(place).observe(over);
}

/* A click or a drag on the picture moves the edge there; up and down still scrolls the page. Enter
   opens the picture: what no pointer pressed is no such click, whatever count a browser gives it. */
function drag(pair, under, moveTo) {
  const at = (event) => {
    const box = under.getBoundingClientRect();
    return Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
  };
  let held = false;
  let pressed = false;
  pair.addEventListener("keydown", () => { pressed = false; });
  pair.addEventListener("pointerdown", (event) => {
    if (!pair.classList.contains("compared") || event.button !== 0) return;
    if (!event.target.closest("figure > a")) return;
    held = pressed = true;
    moveTo(at(event));
  });
  window.addEventListener("pointermove", (event) => held && moveTo(at(event)));
  for (const end of ["pointerup", "pointercancel"]) {
    window.addEventListener(end, () => { held = false; });
  }
  for (const link of pair.querySelectorAll("figure > a")) {
    link.addEventListener("dragstart", (event) => event.preventDefault());
    link.addEventListener("click", (event) => {
      if (pair.classList.contains("compared") && pressed) {
        event.preventDefault();
        event.stopImmediatePropagation();
      }
    });
  }
}

function word(text) {
  const found = document.createElement("span");
  found.textContent = text;
  found.setAttribute("aria-hidden", "true");
  return found;
}

function said(share) {
  if (share === 0) return "only after treatment";
  if (share === 100) return "only before treatment";
  return `${share} per cent before, ${100 - share} per cent after treatment`;
}
