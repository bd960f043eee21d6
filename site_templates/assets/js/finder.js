"use strict";
/* Finds the cases that a description fits. Texts in, hits out: nothing here knows of a page.

   A case is read as lines of four sorts: its title, its traits (terms of the trade), its facts and
   its passages. For each word, as a stem, the index knows in which lines it stands. A word of the
   question adds to a case, for each sort of line, weight · rarity · n / (n + K · length), where n
   is in how many lines of the sort it stands: BM25, with the rarity that is never below nought
   (S. Robertson and H. Zaragoza, "The Probabilistic Relevance Framework: BM25 and Beyond", 2009;
   formula and K and B from memory). The sorts are added up, not mixed as in BM25F, so that no
   number of mentions in prose outweighs a term. Two words that stand together count as one more. */
(() => {
  const [TITLE, TRAIT, FACT, PASSAGE] = [0, 1, 2, 3];
  const WEIGHTS = [4, 3, 1.5, 1]; // of the four sorts: a judgement of the project, no source
  const K = 1.2;
  const B = 0.75;
  const WHOLE = 1.5; // what a word counts, where it is all of a term's name or words together are
  const BEGUN = 0.5; // what the beginning of a word counts
  const SLIPPED = 0.6; // what a word counts that is spelt a little otherwise
  const LITTLE = 0.2; // the share of what was asked that is not worth quoting
  const MOST_WORDS = 24;
  const MOST_TRAITS = 6;
  const AT_ONCE = 64; // cases read in a step
  const WORD = /[\p{L}\p{M}\p{N}]+/gu;
  const PASSED_BY = new Set(("a about all an and any are as at be been but by can did do does for from had has have "
    + "how i if in into is it its like me my no not of on one or our out s so some than that the their them then "
    + "there these they this to up was we were what when where which while who with you").split(" "));

  const PLAIN = /[a-z0-9]+/g;
  const isPlain = (text) => !/[^\0-\x7f]/.test(text);
  const fold = (text) => (isPlain(text) ? text : text.normalize("NFD").replace(/\p{M}/gu, "")).toLowerCase();
  const split = (text) => {
    const folded = fold(text);
    return folded.match(isPlain(folded) ? PLAIN : WORD) || [];
  };

  /* Plurals, endings of verbs, British and American spellings fall together; figures stay exact. */
  const stem = (word) => {
    if (/\d/.test(word)) return word.replace(/^(\d{3,4})s$/, "$1");
    if (word.length < 4) return word;
    return word
      .replace(/(..)our/, "$1or").replace(/^moul/, "mol").replace("grey", "gray").replace(/ogues?$/, "og")
      .replace(/([ae]l|ea|i)ves$/, "$1f").replace(/ie[sd]$/, "y")
      .replace(/([sxz]|ch|sh)es$/, "$1").replace(/([^s])s$/, "$1")
      .replace(/^(?!.*eed$)(?=.{3,}(?:ing|ed)$)(.*[aeiouy].*)(?:ing|ed)$/, "$1")
      .replace(/([bt])re$/, "$1er").replace(/([iy])se?$/, "$1z").replace(/wn$/, "w")
      .replace(/e$/, "").replace(/([^aeiou])\1$/, "$1");
  };

  /* The index. A root is a stem with the numbers of its lines, and with the labels of terms that it is
     another word for; `written` leads from each word to its root, `names` from a whole name to labels.
     It is made in steps, between which a page can answer to its reader. */
  const build = function* (entries, { also, ways }) {
    const index = {
      cases: [], lines: [], labelled: new Map(), names: new Map(), roots: new Map(), written: new Map(),
      ways: waysByName(ways), also,
    };
    for (const [n, entry] of entries.entries()) {
      if (n % AT_ONCE === AT_ONCE - 1) yield;
      readCase(index, entry);
    }
    for (const label of index.labelled.keys()) {
      listed(index.names, keyOf(label), label);
      for (const name of also[label] || []) readName(index, label, name);
    }
    index.mean = WEIGHTS.map((_, sort) =>
      index.cases.reduce((sum, one) => sum + one.words[sort], 0) / (index.cases.length || 1));
    return index;
  };

  const rootOf = (index, word) => {
    const known = index.written.get(word);
    if (known) return known;
    const name = stem(word);
    const root = index.roots.get(name) || { name, lines: [], labels: new Map() };
    index.roots.set(name, root);
    index.written.set(word, root);
    return root;
  };
  const rootsIn = (index, text) => split(text).map((word) => rootOf(index, word));

  const listed = (map, key, value) => {
    if (map.has(key)) map.get(key).push(value);
    else map.set(key, [value]);
  };

  const readLine = (index, of, sort, text, labels = []) => {
    const at = index.lines.length;
    const roots = rootsIn(index, text);
    index.lines.push({ of, sort, text, labels, roots });
    index.cases[of].words[sort] += roots.length;
    for (const { lines } of roots) if (lines[lines.length - 1] !== at) lines.push(at);
    for (const label of labels) listed(index.labelled, label, at);
  };

  const readCase = (index, entry) => {
    const of = index.cases.length;
    const one = { entry, first: index.lines.length, words: [0, 0, 0, 0] };
    index.cases.push(one);
    readLine(index, of, TITLE, entry.title);
    for (const trait of entry.traits) {
      if (typeof trait === "string") readLine(index, of, TRAIT, trait, [trait]);
      else readLine(index, of, TRAIT, trait[0], trait.slice(1));
    }
    for (const text of entry.facts) readLine(index, of, FACT, text);
    for (const text of entry.passages) readLine(index, of, PASSAGE, text);
    one.end = index.lines.length;
  };

  /* Another name for a term is known by its one word, half by each of two, and else only as a whole. */
  const readName = (index, label, name) => {
    const roots = rootsIn(index, name);
    listed(index.names, keyOf(name), label);
    if (roots.length > 2) return;
    for (const { labels } of roots) labels.set(label, Math.max(labels.get(label) || 0, 1 / roots.length));
  };

  const waysByName = (ways) => {
    const found = new Map();
    for (const [said, address, count, ...names] of ways) {
      for (const key of new Set(names.map(keyOf))) found.set(key, [...(found.get(key) || []), { said, address, count }]);
    }
    return found;
  };

  /* The words of a question: what stands between them is passed by, but keeps them apart. */
  const wordsOf = (text) => split(text)
    .map((word, at) => ({ word, at }))
    .filter(({ word }) => !PASSED_BY.has(word));
  const keyOf = (text) => wordsOf(text).map(({ word }) => stem(word)).join(" ");

  /* Whether two words differ by one letter more, less or other, or by two that changed places. */
  const oneSlip = (a, b) => {
    if (Math.abs(a.length - b.length) > 1) return false;
    let from = 0;
    while (from < a.length && a[from] === b[from]) from += 1;
    let [toA, toB] = [a.length, b.length];
    while (toA > from && toB > from && a[toA - 1] === b[toB - 1]) { toA -= 1; toB -= 1; }
    const [left, right] = [a.slice(from, toA), b.slice(from, toB)];
    return (left.length <= 1 && right.length <= 1)
      || (left.length === 2 && left[0] === right[1] && left[1] === right[0] && right.length === 2);
  };

  const figure = (word) => /\d/.test(word);
  const writtenWhere = (index, fits) => [...index.written].filter(([word, root]) => fits(word, root)).map(([word]) => word);
  const begun = (index, word) => (word.length < 2 || figure(word)
    ? [] : writtenWhere(index, (one) => one.startsWith(word)));
  const slipped = (index, word) => {
    if (word.length < 4 || figure(word)) return [];
    const root = stem(word);
    const close = (one, { name }) => oneSlip(word, one) || (root.length > 4 && oneSlip(root, name));
    return writtenWhere(index, (one, known) => !figure(one) && close(one, known));
  };

  /* A word that nobody wrote may be two: "tightback". */
  const halved = (index, { word, at }) => {
    if (index.roots.has(stem(word)) || begun(index, word).length) return [{ word, at }];
    for (let cut = 3; cut <= word.length - 3; cut += 1) {
      const halves = [word.slice(0, cut), word.slice(cut)];
      if (halves.every((one) => index.written.has(one))) return halves.map((half) => ({ word: half, at }));
    }
    return [{ word, at }];
  };

  /* The roots that a word stands for, each with how much it counts. */
  const look = (index, { word, at }, last) => {
    const term = { word, at, roots: new Map(), labels: [], instead: [] };
    const take = (root, strength) => root && !term.roots.has(root) && term.roots.set(root, strength);
    take(index.roots.get(stem(word)), 1);
    if (last || !term.roots.size) for (const one of begun(index, word)) take(index.written.get(one), BEGUN);
    if (!term.roots.size) term.instead = slipped(index, word);
    for (const one of term.instead) take(index.written.get(one), SLIPPED);
    return term;
  };

  /* Words that are, alone or together, the whole name of a term: "linen", "linen backed map". */
  const name = (index, terms) => {
    for (let from = 0; from < terms.length; from += 1) {
      for (let to = from + 1; to <= terms.length; to += 1) {
        const run = terms.slice(from, to);
        const labels = index.names.get(run.map((one) => stem(one.word)).join(" ")) || [];
        for (const one of run) one.labels.push(...labels);
      }
    }
  };

  /* In which lines a term stands, and how strongly in each. */
  const spread = (index, term) => {
    term.lines = [];
    term.strength = new Float32Array(index.lines.length);
    const take = (lines, strength) => {
      for (const at of lines || []) {
        if (!term.strength[at]) term.lines.push(at);
        if (term.strength[at] < strength) term.strength[at] = strength;
      }
    };
    for (const [root, strength] of term.roots) {
      take(root.lines, strength);
      for (const [label, share] of root.labels) take(index.labelled.get(label), strength * share);
    }
    for (const label of term.labels) take(index.labelled.get(label), WHOLE);
  };

  /* Two words belong together within a title or trait, or where no more than a word is between. */
  const near = ({ sort, roots }, one, other) => sort <= TRAIT || roots.some((root, at) =>
    one.roots.has(root) && [-2, -1, 1, 2].some((step) => other.roots.has(roots[at + step])));

  const together = (index, one, other) => {
    const pair = { of: [one, other], lines: [], strength: new Float32Array(index.lines.length) };
    for (const at of one.lines) {
      const both = Math.min(one.strength[at], other.strength[at]);
      if (!both || !near(index.lines[at], one, other)) continue;
      pair.lines.push(at);
      pair.strength[at] = both;
    }
    return pair;
  };

  /* Figures that are asked for together, such as "2025-031", are one number wherever they stand so. */
  const narrow = ({ of, lines, strength }) => {
    if (lines.length) for (const one of of) Object.assign(one, { lines, strength });
  };

  /* What the lines of a term, or of a pair, are worth to each case: a list of case and worth. */
  const weigh = (index, term) => {
    const sums = new Float32Array(index.cases.length * WEIGHTS.length);
    const met = new Set();
    for (const at of term.lines) {
      const { of, sort } = index.lines[at];
      sums[of * WEIGHTS.length + sort] += term.strength[at];
      met.add(of);
    }
    term.rarity = Math.log(1 + (index.cases.length - met.size + 0.5) / (met.size + 0.5));
    const worth = (of) => WEIGHTS.reduce((sum, weight, sort) => {
      const n = sums[of * WEIGHTS.length + sort];
      const length = index.cases[of].words[sort] / index.mean[sort];
      return n ? sum + weight * n / (n + K * (1 - B + B * length)) : sum;
    }, 0);
    term.worth = [...met].map((of) => [of, term.rarity * worth(of)]);
  };

  const understood = (index, question) => {
    const asked = wordsOf(question).flatMap((one) => halved(index, one));
    const words = [...new Map(asked.map((one) => [one.word, one])).values()].slice(0, MOST_WORDS);
    const terms = words.map((one, n) => look(index, one, n === words.length - 1));
    const joints = terms.map((one, n) => [terms[n - 1], one]).filter(([one, next]) => one && next.at - one.at <= 1);
    for (const both of joints) {
      const joined = index.roots.get(stem(both[0].word + both[1].word));
      if (joined) for (const one of both) one.roots.set(joined, 1);
    }
    name(index, terms);
    for (const one of terms) spread(index, one);
    const pairs = joints.map(([one, next]) => together(index, one, next));
    for (const pair of pairs) if (pair.of.every((one) => figure(one.word))) narrow(pair);
    return { terms, pairs };
  };

  /* The cases that answer a question: those with all its words first, then those with most of it. */
  const find = (index, question) => {
    const { terms, pairs } = understood(index, question);
    for (const one of [...terms, ...pairs]) weigh(index, one);
    const hits = new Map();
    for (const term of terms) {
      for (const [of, worth] of term.worth) {
        const hit = hits.get(of) || { of, score: 0, words: 0, cover: 0 };
        hits.set(of, hit);
        hit.score += worth;
        hit.words += 1;
        hit.cover += term.rarity;
      }
    }
    for (const pair of pairs) for (const [of, worth] of pair.worth) hits.get(of).score += worth;
    const id = ({ of }) => index.cases[of].entry.id;
    const enough = Math.max(0, ...[...hits.values()].map((hit) => hit.cover)) / 2;
    const sorted = [...hits.values()]
      .filter((hit) => hit.cover >= enough)
      .sort((a, b) => b.score - a.score || (id(a) < id(b) ? 1 : -1));
    return {
      terms,
      pairs,
      marks: new Set(terms.flatMap((term) => [...term.roots.keys()].map((root) => root.name))),
      all: sorted.filter((hit) => hit.words === terms.length),
      some: sorted.filter((hit) => hit.words < terms.length),
    };
  };

  /* How much a line tells of the words that are still to be told. */
  const tells = ({ terms, pairs }, at, left) => {
    const sum = (many) => many.reduce((total, one) => total + one.rarity * one.strength[at], 0);
    const words = sum(terms.filter((one) => left.has(one)));
    return words && words + sum(pairs.filter((pair) => pair.of.some((one) => left.has(one))));
  };

  const best = (index, found, of, sorts, left) => {
    let [most, chosen] = [0, null];
    for (let at = index.cases[of].first; at < index.cases[of].end; at += 1) {
      const told = sorts.includes(index.lines[at].sort) ? tells(found, at, left) : 0;
      if (told > most) [most, chosen] = [told, at];
    }
    return chosen;
  };

  /* The traits for which a case was found: as few as tell of all the words that any tells of. */
  const reasons = (index, found, { of }) => {
    const left = new Set(found.terms);
    const told = [];
    while (told.length < MOST_TRAITS) {
      const at = best(index, found, of, [TRAIT], left);
      if (at === null) break;
      told.push(index.lines[at]);
      for (const term of found.terms) if (term.strength[at]) left.delete(term);
    }
    return told;
  };

  /* The passage or fact that tells most of what was asked; if that is little, what the object is about. */
  const quoted = (index, found, { of }) => {
    const all = new Set(found.terms);
    const at = best(index, found, of, [FACT, PASSAGE], all);
    const asked = found.terms.reduce((sum, term) => sum + (term.lines.length ? term.rarity : 0), 0);
    const enough = at !== null && tells(found, at, all) >= asked * LITTLE;
    return enough ? index.lines[at].text : index.cases[of].entry.passages[0] || "";
  };

  /* Words of the index that look most like one that nobody wrote, by the pairs of letters they share. */
  const nearest = (index, word, most = 4) => {
    const pairsOf = (text) => new Set([...` ${text} `].map((letter, n, all) => letter + (all[n + 1] || "")));
    const own = pairsOf(word);
    const alike = (other) => {
      const theirs = pairsOf(other);
      return [...theirs].filter((pair) => own.has(pair)).length * 2 / (own.size + theirs.size);
    };
    return writtenWhere(index, (one) => one.length > 3 && !figure(one))
      .map((one) => [one, alike(one)])
      .filter(([, much]) => much > 0.5)
      .sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
      .slice(0, most)
      .map(([one]) => one);
  };

  const othersOf = (index, line) => line.labels.flatMap((label) => index.also[label] || []);
  const isMarked = (found, word) => found.marks.has(stem(fold(word)));
  const waysTo = (index, question) => (keyOf(question) && index.ways.get(keyOf(question))) || [];
  const entryOf = (index, { of }) => index.cases[of].entry;

  window.casebookFinder = { WORD, build, find, entryOf, reasons, quoted, nearest, othersOf, isMarked, waysTo };
})();
