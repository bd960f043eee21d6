"use strict";
/* The search page: what is asked goes into the address, what was found onto the page. No request is
   made, from the web or from a disk: scripts beside this one fill `casebookIndex` and `casebookWords`. */
(() => {
  const SHOWN = 20;
  const LONG = 240;
  const ROOT = "../";
  const { WORD, build, find, entryOf, reasons, quoted, nearest, othersOf, isMarked, waysTo } = window.casebookFinder;
  const field = document.getElementById("q");
  const told = document.getElementById("found");
  const results = document.getElementById("results");
  const page = results.parentElement;
  let index = null;

  const element = (name, style, ...inside) => {
    const made = document.createElement(name);
    if (style) made.className = style;
    made.append(...inside);
    return made;
  };
  const link = (address, ...inside) => {
    const made = element("a", "", ...inside);
    made.href = address;
    return made;
  };

  /* A text with the words that were asked for marked, as nodes. */
  const hits = (found, text) => [...text.matchAll(WORD)].filter((one) => isMarked(found, one[0]));
  const marked = (found, text) => {
    const pieces = [];
    let from = 0;
    for (const hit of hits(found, text)) {
      pieces.push(text.slice(from, hit.index), element("mark", "", hit[0]));
      from = hit.index + hit[0].length;
    }
    return [...pieces, text.slice(from)];
  };

  /* A stretch of a passage that holds as many of its hits as can be, cut between words. */
  const cut = (found, text) => {
    if (text.length <= LONG) return text;
    const places = hits(found, text).map((one) => one.index);
    const within = (start) => places.filter((one) => one >= start && one < start + LONG - 80).length;
    const start = places.reduce((best, one) => (within(one) > within(best) ? one : best), places[0] || 0);
    const from = start < 60 ? 0 : text.indexOf(" ", start - 60) + 1;
    const to = from + LONG >= text.length ? text.length : text.lastIndexOf(" ", from + LONG);
    return (from ? "… " : "") + text.slice(from, to) + (to < text.length ? " …" : "");
  };

  /* A trait, with the other word for it where that is what was asked for: "endband (headband)". */
  const trait = (found, line) => {
    const { text } = line;
    const fits = (one) => hits(found, one).length;
    const other = fits(text) ? "" : othersOf(index, line).sort((a, b) => fits(b) - fits(a))[0] || "";
    return element("li", "", ...marked(found, text), ...(other ? [" (", ...marked(found, other), ")"] : []));
  };

  const pictures = (entry) => {
    const made = link(ROOT + "cases/" + entry.id + "/index.html");
    made.className = "result-pictures";
    made.tabIndex = -1;
    made.setAttribute("aria-hidden", "true");
    for (const [name, width, height] of entry.thumbs) {
      const image = element("img");
      Object.assign(image, { loading: "lazy", decoding: "async", alt: "", width, height, src: ROOT + name });
      made.append(image);
    }
    return made;
  };

  const row = (found, hit) => {
    const entry = entryOf(index, hit);
    const title = link(ROOT + "cases/" + entry.id + "/index.html", ...marked(found, entry.title));
    const words = element("div", "result-words", element("h2", "result-title", title));
    if (entry.about) words.append(element("p", "result-about", entry.about));
    const why = reasons(index, found, hit).map((one) => trait(found, one));
    if (why.length) words.append(element("ul", "result-why", ...why));
    const passage = quoted(index, found, hit);
    if (passage) words.append(element("p", "result-passage", ...marked(found, cut(found, passage))));
    return element("li", "result", ...(entry.thumbs.length ? [pictures(entry)] : []), words);
  };

  const list = (found, cases, upTo = SHOWN) => {
    const made = element("ol", "results", ...cases.slice(0, upTo).map((hit) => row(found, hit)));
    if (cases.length <= upTo) return made;
    const more = element("button", "", "Show the other " + (cases.length - upTo));
    more.type = "button";
    more.addEventListener("click", () => {
      const whole = list(found, cases, cases.length);
      made.replaceWith(whole);
      whole.children[upTo].querySelector("h2 a").focus();
    });
    made.append(element("li", "", more));
    return made;
  };

  const counted = (count) => (count === 1 ? "1 case" : count + " cases");
  const way = ({ said, address, count }) => element("p", "result-way",
    link(ROOT + address, count === 1 ? "The one case " + said : "All " + count + " cases " + said));

  /* How many cases were found, in a sentence; what was read otherwise than it was written. */
  const have = (count) => counted(count) + (count === 1 ? " has " : " have ");
  const sayCount = ({ all, some, terms }) => {
    if (!some.length) return counted(all.length) + " found.";
    const whole = terms.length === 2 ? "both words" : "all the words";
    return (all.length ? have(all.length) : "No case has ") + whole + "; " + have(some.length) + "some.";
  };
  const sayInstead = ({ terms }) => terms
    .filter((term) => term.instead.length)
    .map((term) => " “" + term.word + "” stands nowhere; read as “" + term.instead.slice(0, 3).join("” or “") + "”.")
    .join("");

  const lost = ({ terms }) => {
    const close = [...new Set(terms.flatMap((term) => nearest(index, term.word)))].slice(0, 6);
    const asks = close.map((word) => link("#" + new URLSearchParams({ q: word }), word));
    const near = asks.length ? [" Words that look like it: ", ...asks.flatMap((one, n) => (n ? [", ", one] : [one])), "."] : [];
    return ["No case found.", ...near, " The ways in below lead to every case."];
  };

  const show = () => {
    const question = field.value.trim();
    if (!index) {
      told.textContent = question ? "The archive is being read …" : "";
      if (!question) page.classList.remove("waiting");
      return;
    }
    const found = find(index, question);
    const ways = waysTo(index, question);
    const none = !found.all.length && !found.some.length;
    told.replaceChildren(...(!question ? [] : none ? lost(found) : [sayCount(found) + sayInstead(found)]));
    results.replaceChildren(...ways.map(way));
    if (found.all.length) results.append(list(found, found.all));
    if (found.some.length) {
      if (found.all.length) results.append(element("h2", "results-some", "With some of the words"));
      results.append(list(found, found.some));
    }
    page.classList.remove("waiting");
  };

  /* On the web the question is `?q=`, which a reader may send on; from a disk `#q=`, which works there. */
  const asked = () => {
    const given = (text) => new URLSearchParams(text.slice(1)).get("q");
    return given(location.hash) ?? given(location.search) ?? "";
  };
  const address = () => {
    const query = new URLSearchParams({ q: field.value.trim() });
    return location.protocol === "file:" ? "#" + query : location.pathname + "?" + query;
  };

  /* A question that was there on arrival, or is settled with Enter, is a step of the back button. */
  let settled = true;
  const keep = () => {
    if (field.value.trim() === asked().trim()) return;
    history[settled ? "pushState" : "replaceState"](null, "", address());
    settled = false;
    show();
  };
  const ask = () => {
    field.value = asked();
    settled = true;
    show();
  };

  let timer = 0;
  field.addEventListener("input", () => {
    clearTimeout(timer);
    timer = setTimeout(keep, 120);
  });
  field.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    clearTimeout(timer);
    field.value = "";
    keep();
  });
  field.form.addEventListener("submit", (event) => {
    event.preventDefault();
    clearTimeout(timer);
    keep();
    settled = true;
  });
  window.addEventListener("popstate", () => {
    if (told.contains(document.activeElement)) field.focus();
    ask();
  });
  /* Safari empties the field of a page that it brings back. */
  window.addEventListener("pageshow", (event) => event.persisted && ask());
  ask();
  if (!field.value) field.focus();

  const steps = build(window.casebookIndex || [], window.casebookWords);
  const read = () => {
    const { done, value } = steps.next();
    if (!done) return setTimeout(read);
    index = value;
    return show();
  };
  read();
})();
