"use strict";
/* Escape closes the explanation of a trade word; leaving the word makes it ready again. */
document.addEventListener("keydown", (event) => {
  if (event.key !== "Escape") return;
  for (const word of document.querySelectorAll(".gloss:hover, .gloss:focus")) word.classList.add("shut");
});
for (const left of ["focusout", "mouseout"]) {
  document.addEventListener(left, (event) => {
    const word = event.target.closest(".gloss");
    if (word && !word.contains(event.relatedTarget)) word.classList.remove("shut");
  });
}
