"use strict";
/* Every photo of the page in a dialog: large, to be moved and brought nearer, one after the other.

   Expects `figure > a[href]` round a picture, with a figcaption beside it; marks drawn over the
   picture, an `svg.marks` in the link, come with it. Without scripts the link leads to the large
   picture itself. */

const links = [...document.querySelectorAll("figure > a[href]")].filter((link) => link.querySelector("img"));
const sequence = links.filter((link, n) => links.findIndex((one) => one.href === link.href) === n);
const NEAREST = 8;

if (sequence.length && typeof HTMLDialogElement === "function") {
  const viewer = new Viewer(sequence);
  for (const link of links) {
    link.addEventListener("click", (event) => {
      if (event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      viewer.open(sequence.findIndex((one) => one.href === link.href), link);
    });
  }
}

function Viewer(photos) {
  const dialog = document.createElement("dialog");
  dialog.className = "viewer";
  dialog.setAttribute("aria-label", "Photographs");
  const stage = document.createElement("div");
  stage.className = "viewer-stage";
  const image = document.createElement("img");
  image.alt = "";
  image.draggable = false;
  stage.append(image);
  const words = document.createElement("p");
  words.className = "viewer-words";
  words.setAttribute("role", "status");
  const bar = document.createElement("div");
  bar.className = "viewer-bar";
  const previous = button("Previous", "←", () => go(-1));
  const next = button("Next", "→", () => go(1));
  const marks = button("Marks", "①", () => mark(marks.getAttribute("aria-pressed") !== "true"));
  bar.append(previous, next, marks, button("Smaller", "−", () => near(1 / 1.5)), button("Larger", "+", () => near(1.5)),
    button("Whole picture", "▢", whole), button("Close", "×", () => dialog.close()));
  dialog.append(stage, words, bar);
  document.body.append(dialog);

  let at = 0;
  let drawn = null;
  let opener = null;
  let scale = 1;
  let x = 0;
  let y = 0;
  const fingers = new Map();

  this.open = (number, from) => {
    opener = from;
    show(number);
    dialog.showModal();
  };
  dialog.addEventListener("close", () => {
    fingers.clear();
    if (opener) opener.focus();
  });
  dialog.addEventListener("click", (event) => { if (event.target === dialog) dialog.close(); });

  function show(number) {
    at = (number + photos.length) % photos.length;
    const link = photos[at];
    const seen = link.querySelector("img");
    load(link, seen);
    image.alt = seen.alt;
    const caption = link.parentElement.querySelector("figcaption");
    const parts = caption ? [...caption.children].map((one) => one.textContent.trim().replace(/\.$/, "")) : [];
    const text = parts.filter(Boolean).join(". ");
    words.textContent = `Photograph ${at + 1} of ${photos.length}${text ? `: ${text}` : ""}`;
    previous.hidden = next.hidden = photos.length < 2;
    draw(links.find((one) => one.href === link.href && one.querySelector("svg.marks")));
    whole();
  }
  /* The picture of the page stands there until the large one has come, so that it is never another. */
  function load(link, seen) {
    const large = new Image();
    large.addEventListener("load", () => { if (photos[at] === link) image.src = large.src; });
    image.src = seen.currentSrc || seen.src;
    large.src = link.href;
  }
  function draw(link) {
    if (drawn) drawn.remove();
    drawn = link ? link.querySelector("svg.marks").cloneNode(true) : null;
    marks.hidden = !drawn;
    if (drawn) stage.append(drawn);
    mark(true);
  }
  function mark(seen) {
    marks.setAttribute("aria-pressed", String(seen));
    if (drawn) drawn.classList.toggle("off", !seen);
  }
  function go(by) { show(at + by); }
  function whole() { scale = 1; x = y = 0; place(); }

  /* Nearer or farther round a point of the stage; the middle where none is given. */
  function near(by, px = stage.clientWidth / 2, py = stage.clientHeight / 2) {
    const before = scale;
    scale = Math.min(NEAREST, Math.max(1, scale * by));
    const change = scale / before;
    const [mx, my] = [px - stage.clientWidth / 2, py - stage.clientHeight / 2];
    x = mx - (mx - x) * change;
    y = my - (my - y) * change;
    place();
  }
  function pan(dx, dy) { x += dx; y += dy; place(); }
  function place() {
    const [wide, high] = [stage.clientWidth * (scale - 1) / 2, stage.clientHeight * (scale - 1) / 2];
    x = Math.min(wide, Math.max(-wide, x));
    y = Math.min(high, Math.max(-high, y));
    for (const part of [image, drawn]) {
      if (part) part.style.transform = `translate(${x}px, ${y}px) scale(${scale})`;
    }
    stage.classList.toggle("near", scale > 1);
  }

  dialog.addEventListener("keydown", (event) => {
    const step = 60;
    const moves = { ArrowLeft: [step, 0], ArrowRight: [-step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] };
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (scale > 1 && moves[event.key]) pan(...moves[event.key]);
    else if (event.key === "ArrowLeft" || event.key === "PageUp") go(-1);
    else if (event.key === "ArrowRight" || event.key === "PageDown") go(1);
    else if (event.key === "+" || event.key === "=") near(1.5);
    else if (event.key === "-") near(1 / 1.5);
    else if (event.key === "0") whole();
    else return;
    event.preventDefault();
  });
  stage.addEventListener("wheel", (event) => {
    event.preventDefault();
    near(Math.exp(-event.deltaY / 400), event.offsetX, event.offsetY);
  }, { passive: false });
  stage.addEventListener("dblclick", (event) => {
    if (scale > 1) whole();
    else near(3, event.offsetX, event.offsetY);
  });

  /* One finger moves a picture that is near, else leads to the next; two bring it nearer. */
  let start = null;
  stage.addEventListener("pointerdown", (event) => {
    fingers.set(event.pointerId, event);
    stage.setPointerCapture(event.pointerId);
    start = fingers.size === 1 ? event : null;
  });
  stage.addEventListener("pointermove", (event) => {
    const last = fingers.get(event.pointerId);
    if (!last) return;
    const other = [...fingers.values()].find((one) => one.pointerId !== event.pointerId);
    if (other) pinch(last, event, other);
    else if (scale > 1) pan(event.clientX - last.clientX, event.clientY - last.clientY);
    fingers.set(event.pointerId, event);
  });
  function pinch(last, now, other) {
    const before = Math.hypot(last.clientX - other.clientX, last.clientY - other.clientY);
    const after = Math.hypot(now.clientX - other.clientX, now.clientY - other.clientY);
    const box = stage.getBoundingClientRect();
    if (before > 0) {
      near(after / before, (now.clientX + other.clientX) / 2 - box.left, (now.clientY + other.clientY) / 2 - box.top);
    }
  }
  for (const end of ["pointerup", "pointercancel"]) {
    stage.addEventListener(end, (event) => {
      fingers.delete(event.pointerId);
      if (!start || end === "pointercancel" || scale > 1 || event.pointerType === "mouse") return;
      const [dx, dy] = [event.clientX - start.clientX, event.clientY - start.clientY];
      start = null;
      if (Math.abs(dx) > 50 && Math.abs(dx) > 2 * Math.abs(dy)) go(dx < 0 ? 1 : -1);
    });
  }

  function button(name, sign, act) {
    const found = document.createElement("button");
    found.type = "button";
    found.setAttribute("aria-label", name);
    found.title = name;
    found.textContent = sign;
    found.addEventListener("click", act);
    return found;
  }
}
