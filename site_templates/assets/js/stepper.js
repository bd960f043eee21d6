"use strict";
/* A drawing shown state by state. It expects, and works without a script as the final state:

   <div class="stepper" data-stepper>
     <figure class="drawn"> <svg> … <g data-in="0-3 7"> … </svg> </figure>
     <ol class="states"> <li>As found: …</li> <li>After sitting 1, step 4: …</li> … </ol>
   </div>

   A group with `data-in` is seen in the states that its runs name, counted from 0; a group without
   one always. The list has one item for each state. Previous and next are buttons; the arrow keys,
   Home and End work while one has the focus; on a touch screen the drawing can be swiped. */
for (const stepper of document.querySelectorAll("[data-stepper]")) {
  const figure = stepper.querySelector(".drawn");
  const states = [...stepper.querySelectorAll(".states > li")];
  const groups = [...stepper.querySelectorAll("[data-in]")].map((group) => ({
    group,
    runs: group.dataset.in.split(" ").map((run) => run.split("-").map(Number)),
  }));
  if (!figure || states.length < 2) continue;

  const bar = document.createElement("div");
  bar.className = "stepper-bar";
  bar.setAttribute("role", "group");
  bar.setAttribute("aria-label", "The drawing, state by state");
  const before = document.createElement("button");
  const after = document.createElement("button");
  const said = document.createElement("output");
  before.type = after.type = "button";
  before.textContent = "‹";
  after.textContent = "›";
  before.setAttribute("aria-label", "Previous state");
  after.setAttribute("aria-label", "Next state");
  bar.append(before, said, after);
  figure.before(bar);

  let now = states.length - 1;
  const show = (wanted) => {
    const to = Math.max(0, Math.min(states.length - 1, wanted));
    for (const { group, runs } of groups) {
      const seen = runs.some(([first, last = first]) => first <= to && to <= last);
      const hidden = group.getAttribute("display") === "none";
      if (seen === hidden) {
        seen ? group.removeAttribute("display") : group.setAttribute("display", "none");
        group.classList.toggle("d-new", seen);
      }
    }
    states.forEach((state, n) => n === to ? state.setAttribute("aria-current", "step") : state.removeAttribute("aria-current"));
    before.setAttribute("aria-disabled", String(to === 0));
    after.setAttribute("aria-disabled", String(to === states.length - 1));
    now = to;
    said.textContent = `State ${to + 1} of ${states.length}. ${states[to].textContent.trim()}`;
  };

  before.addEventListener("click", () => show(now - 1));
  after.addEventListener("click", () => show(now + 1));
  const keys = { ArrowLeft: () => now - 1, ArrowRight: () => now + 1, Home: () => 0, End: () => states.length - 1 };
  bar.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || !(event.key in keys)) return;
    event.preventDefault();
    show(keys[event.key]());
  });
  let start = null;
  figure.addEventListener("pointerdown", (event) => { start = event.pointerType === "touch" ? event : null; });
  figure.addEventListener("pointerup", (event) => {
    if (!start) return;
    const across = event.clientX - start.clientX, down = event.clientY - start.clientY;
    start = null;
    if (Math.abs(across) > 40 && Math.abs(across) > 2 * Math.abs(down)) show(now + (across < 0 ? 1 : -1));
  });
  show(now);
}
