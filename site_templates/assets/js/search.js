"use strict";
/* Searches the archive in the reader's own browser: no request, from the web or from a disk.
   Index parts fill `casebookIndex` with {u: address, t: title, k: kicker, w: words, r: rank}. */
(() => {
  const SHOWN = 50;
  const WORD = /[\p{L}\p{N}]+/gu;
  const ROOT = "../";
  const field = document.getElementById("q");
  const found = document.getElementById("found");
  const results = document.getElementById("results");
  if (!document.getElementById("search") || !field) return;

  const fold = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const words = (text) => fold(text).match(WORD) || [];
  const padded = (text) => " " + words(text).join(" ") + " ";

  let folded = null;
  const entries = () => {
    folded = folded || (window.casebookIndex || []).map((entry) => ({
      entry, title: padded(entry.t), kicker: padded(entry.k || ""), text: padded(entry.w || ""),
    }));
    return folded;
  };

  /* A hit in the title counts most, then the kicker; a whole word more than a beginning. */
  const weigh = (place, word, weight) =>
    place.includes(" " + word + " ") ? weight + 1 : place.includes(" " + word) ? weight : 0;
  const score = (one, query) => {
    let sum = 0;
    for (const word of query) {
      const best = weigh(one.title, word, 8) || weigh(one.kicker, word, 4) || weigh(one.text, word, 1);
      if (!best) return 0;
      sum += best;
    }
    return sum;
  };
  const search = (query) =>
    entries()
      .map((one) => ({ entry: one.entry, score: score(one, query) }))
      .filter((hit) => hit.score)
      .sort((a, b) => b.score - a.score || (a.entry.r || 0) - (b.entry.r || 0));

  const hits = (text, query) =>
    [...text.matchAll(WORD)].filter((one) => {
      const word = fold(one[0]);
      return query.some((beginning) => word.startsWith(beginning));
    });

  const element = (name, style, ...inside) => {
    const made = document.createElement(name);
    if (style) made.className = style;
    made.append(...inside);
    return made;
  };

  const marked = (text, query) => {
    const pieces = [];
    let from = 0;
    for (const hit of hits(text, query)) {
      pieces.push(text.slice(from, hit.index), element("mark", "", hit[0]));
      from = hit.index + hit[0].length;
    }
    return [...pieces, text.slice(from)];
  };

  const snippet = (text, query) => {
    const hit = hits(text, query)[0];
    const about = hit ? hit.index : 0;
    let from = about < 80 ? 0 : text.indexOf(" ", about - 80) + 1;
    if (from > about) from = about;
    let to = from + 220 >= text.length ? text.length : text.lastIndexOf(" ", from + 220);
    if (to <= about) to = Math.min(text.length, from + 220);
    return [from ? "… " : "", ...marked(text.slice(from, to), query), to < text.length ? " …" : ""];
  };

  const row = (entry, query) => {
    const link = element("a", "", ...marked(entry.t, query));
    link.href = ROOT + entry.u;
    const made = element("li", "", element("h2", "result-title", link));
    if (entry.k) made.append(element("p", "result-kicker", ...marked(entry.k, query)));
    if (entry.w) made.append(element("p", "snippet", ...snippet(entry.w, query)));
    return made;
  };

  const show = (list, query, upTo) => {
    results.replaceChildren(...list.slice(0, upTo).map((hit) => row(hit.entry, query)));
    if (list.length <= upTo) return;
    const more = element("button", "", "Show the other " + (list.length - upTo));
    more.type = "button";
    more.addEventListener("click", () => {
      show(list, query, list.length);
      results.children[upTo].querySelector("a").focus();
    });
    results.append(element("li", "", more));
  };

  const say = (count) =>
    count === 0
      ? "No case found. Try fewer words, or only the beginning of a word."
      : count === 1 ? "1 case found" : count + " cases found";

  const run = () => {
    const query = [...new Set(words(field.value))];
    const list = query.length ? search(query) : [];
    found.textContent = query.length ? say(list.length) : "";
    show(list, query, SHOWN);
  };

  const asked = () => {
    const given = (text) => new URLSearchParams(text.slice(1)).get("q");
    return given(location.hash) || given(location.search) || "";
  };

  const keep = () => {
    const query = new URLSearchParams({ q: field.value.trim() });
    history.replaceState(null, "", "#" + query);
    run();
  };

  let timer = 0;
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(keep, 150);
  };
  const start = () => {
    field.value = asked();
    run();
    if (!field.value) field.focus();
  };

  field.addEventListener("input", soon);
  field.form.addEventListener("submit", (event) => {
    event.preventDefault();
    clearTimeout(timer);
    keep();
  });
  window.addEventListener("hashchange", start);
  if (document.readyState === "complete") start();
  else document.addEventListener("DOMContentLoaded", start);
})();
