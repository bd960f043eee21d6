"use strict";
/* Marks on photos can be hidden to see what lies under them; without scripts they are shown.

   Expects `.marked` with one `svg.marks` over a picture and one figure. */

for (const marked of document.querySelectorAll(".marked")) {
  const drawn = marked.querySelector("svg.marks");
  const figure = marked.querySelector("figure");
  if (!drawn || !figure) continue;
  const button = document.createElement("button");
  button.type = "button";
  button.className = "marks-toggle";
  const show = (seen) => {
    drawn.classList.toggle("off", !seen);
    button.textContent = seen ? "Hide the marks" : "Show the marks";
  };
  button.addEventListener("click", () => show(drawn.classList.contains("off")));
  show(true);
  figure.firstElementChild.after(button);
}
