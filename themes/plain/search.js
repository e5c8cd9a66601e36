/* Search over index.json: words with prefixes and one slip of the finger, what is in the cupboard
 * (swaps included), kind, diet, allergens, protein, minutes. The state is in the address, so a
 * result can be shared. Every word comes from the page. */
import { VERDICTS, all, element, one, readIndex, resultOf, ways } from "./found.js";

const form = one(".search-form");
const status = one('[role="status"]'), list = one("#found"), more = one("#more");
const chips = one(".chips", form), own = one("#own", form);
const SHOWN_AT_ONCE = 30;
const DEFAULT_VERDICTS = ["works", "adjust"];

const fold = (words) => words.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
const wordsOf = (text) => fold(text || "").split(/[^\p{L}\p{N}]+/u).filter(Boolean);

/* -- the index, prepared once ------------------------------------------------------------------ */

let recipes = [], vocabulary = [], postings = new Map(), shelf = [];

function post(words, row, weight) {
  for (const word of words) {
    const held = postings.get(word) || postings.set(word, new Map()).get(word);
    held.set(row, Math.max(held.get(row) || 0, weight));
  }
}

/* The index names each ingredient once; recipes and swaps speak of its number. */
function prepare(index) {
  recipes = index.recipes;
  shelf = index.ingredients.map((entry) => {
    const names = [entry.name, ...entry.also].map(fold);
    return { name: entry.name, slug: entry.slug, names: new Set(names), words: wordsOf(names.join(" ")) };
  });
  recipes.forEach((recipe, row) => {
    post(wordsOf(recipe.title), row, 8);
    post([recipe.kind, ...recipe.tags].flatMap(wordsOf), row, 5);
    for (const number of recipe.ingredients) post(shelf[number].words, row, 4);
    post(wordsOf(recipe.summary), row, 1);
  });
  vocabulary = [...postings.keys()];
}

/* -- words ------------------------------------------------------------------------------------- */

/* `word` begins with `asked` but for one letter wrong, missing, too many or swapped with the
 * next. */
function nearPrefix(asked, word) {
  let i = 0;
  while (i < asked.length && asked[i] === word[i]) i++;
  if (i === asked.length) return true;
  const goesOn = (from, at) => word.startsWith(asked.slice(from), at);
  return goesOn(i + 1, i + 1) || goesOn(i + 1, i) || goesOn(i, i + 1) ||
    (asked[i] === word[i + 1] && asked[i + 1] === word[i] && goesOn(i + 2, i + 2));
}

function nearness(asked, word) {
  if (word === asked) return 1;
  if (word.startsWith(asked)) return 0.8;
  return asked.length > 3 && nearPrefix(asked, word) ? 0.3 : 0;
}

/* Rows that hold every word asked for, with their scores; null when nothing is asked. */
function scores(text) {
  let found = null;
  for (const asked of wordsOf(text)) {
    const hits = new Map();
    for (const word of vocabulary) {
      const near = nearness(asked, word);
      if (near === 0) continue;
      for (const [row, weight] of postings.get(word))
        hits.set(row, Math.max(hits.get(row) || 0, weight * near));
    }
    found = found
      ? new Map([...hits].filter(([row]) => found.has(row))
        .map(([row, score]) => [row, score + found.get(row)]))
      : hits;
  }
  return found;
}

/* -- the cupboard ------------------------------------------------------------------------------ */

/* Numbers of what a reader typed: that very ingredient, or all whose words begin so. */
function numbersFor(typed) {
  const whole = fold(typed), asked = wordsOf(typed), all_ = [...shelf.keys()];
  const exact = all_.filter((number) => shelf[number].names.has(whole));
  if (exact.length || !asked.length) return exact;
  return all_.filter((number) => asked.every((word) =>
    shelf[number].words.some((its) => its.startsWith(word))));
}

/* -- state ------------------------------------------------------------------------------------- */

const chosen = (name) => all(`[data-choice="${name}"]:checked`, form).map((box) => box.value);
const owned = () => all("[data-own]", chips).map((chip) => chip.dataset.own);

function state() {
  return {
    q: form.elements.q.value.trim(), own: owned(), kind: form.elements.kind.value,
    protein: Number(form.elements.protein.value), minutes: Number(form.elements.minutes.value),
    diet: chosen("diet"), without: chosen("without"), verdict: chosen("verdict"),
  };
}

function toAddress(now) {
  const query = new URLSearchParams();
  for (const key of ["q", "kind", "protein", "minutes"]) if (now[key]) query.set(key, now[key]);
  for (const key of ["own", "diet", "without"])
    for (const value of now[key]) query.append(key, value);
  if (now.verdict.join() !== DEFAULT_VERDICTS.join())
    query.set("verdict", now.verdict.join(" "));
  const text = query.toString();
  history.replaceState(null, "", text ? `?${text}` : location.pathname);
}

function fromAddress() {
  const query = new URLSearchParams(location.search);
  for (const key of ["q", "kind", "protein", "minutes"])
    form.elements[key].value = query.get(key) || "";
  for (const key of ["diet", "without"])
    for (const box of all(`[data-choice="${key}"]`, form)) box.checked = query.getAll(key).includes(box.value);
  const verdicts = query.has("verdict") ? query.get("verdict").split(" ") : DEFAULT_VERDICTS;
  for (const box of all('[data-choice="verdict"]', form)) box.checked = verdicts.includes(box.value);
  chips.replaceChildren();
  query.getAll("own").forEach(addChip);
}

/* -- filters ----------------------------------------------------------------------------------- */

const FACETS = {
  kind: (recipe, now) => !now.kind || recipe.kind === now.kind,
  protein: (recipe, now) => !now.protein || recipe.protein_g >= now.protein,
  minutes: (recipe, now) => !now.minutes || (recipe.minutes > 0 && recipe.minutes <= now.minutes),
  diet: (recipe, now) => now.diet.every((diet) => recipe.diets.includes(diet)),
  without: (recipe, now) => !now.without.some((what) => recipe.allergens.includes(what)),
};

function fits(recipe, now, leftOut) {
  return Object.entries(FACETS).every(([name, test]) => name === leftOut || test(recipe, now));
}

function search(now) {
  const scored = scores(now.q), accepted = new Set(now.verdict);
  const numbers = new Set(now.own.flatMap(numbersFor));
  const hits = [];
  recipes.forEach((recipe, row) => {
    if (scored && !scored.has(row)) return;
    const made = now.own.length ? ways(recipe, numbers, accepted) : null;
    if (made && made.used.length + made.swapped.length === 0) return;
    hits.push({ recipe, made, score: scored ? scored.get(row) : 0 });
  });
  return hits;
}

function inOrder(a, b) {
  const at = (hit) => hit.made ? hit.made.used.length + hit.made.swapped.length : 0;
  return at(b) - at(a) || b.score - a.score || a.recipe.title.localeCompare(b.recipe.title);
}

/* Beside each choice: how many recipes it would leave. */
function showCounts(hits, now) {
  for (const option of one("#kind").options)
    option.textContent = option.value
      ? `${option.value} (${hits.filter(({ recipe }) => recipe.kind === option.value && fits(recipe, now, "kind")).length})`
      : option.textContent;
  for (const name of ["diet", "without"])
    for (const box of all(`[data-choice="${name}"]`, form)) {
      const wish = { ...now, [name]: [...new Set([...now[name], box.value])] };
      one(".quiet", box.parentElement).textContent =
        hits.filter(({ recipe }) => fits(recipe, wish)).length;
    }
}

/* -- the page ---------------------------------------------------------------------------------- */

let shown = [], drawn = 0;

function drawMore() {
  const next = shown.slice(drawn, drawn + SHOWN_AT_ONCE);
  list.append(...next.map(({ recipe, made }) =>
    resultOf({ recipe, made, root: form.dataset.root, shelf })));
  drawn += next.length;
  more.hidden = drawn >= shown.length;
}

function update() {
  const now = state(), hits = search(now);
  toAddress(now);
  shown = hits.filter(({ recipe }) => fits(recipe, now)).sort(inOrder);
  const { one: single, many, none } = status.dataset;
  status.textContent = shown.length ? `${shown.length} ${shown.length === 1 ? single : many}` : none;
  list.replaceChildren();
  drawn = 0;
  drawMore();
  showCounts(hits, now);
}

function addChip(words) {
  const typed = words.trim();
  if (!typed || owned().includes(typed)) return;
  const chip = document.createElement("li");
  const button = element("button", `${typed} ×`);
  button.type = "button";
  button.setAttribute("aria-label", `${chips.dataset.takeOut}: ${typed}`);
  button.addEventListener("click", () => {
    chip.remove();
    own.focus();
    update();
  });
  chip.dataset.own = typed;
  chip.append(button);
  chips.append(chip);
}

function addOwn() {
  addChip(own.value);
  own.value = "";
  own.focus();
  update();
}

function addBoxes(name, values) {
  const set = one(`[data-boxes="${name}"]`, form);
  for (const value of values) {
    const label = document.createElement("label"), count = element("span", "");
    const box = Object.assign(document.createElement("input"), { type: "checkbox", value });
    box.dataset.choice = name;
    count.className = "quiet";
    label.append(box, ` ${value} `, count);
    set.append(label);
  }
  set.hidden = values.length === 0;
}

function setUp() {
  const distinct = (key) => [...new Set(recipes.flatMap((recipe) => recipe[key] || []))].sort();
  for (const kind of distinct("kind")) {
    const option = element("option", kind);
    option.value = kind;
    one("#kind").append(option);
  }
  for (const entry of shelf) {
    const option = document.createElement("option");
    option.value = entry.name;
    one("#shelf").append(option);
  }
  addBoxes("diet", distinct("diets"));
  addBoxes("without", distinct("allergens"));
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", (event) => { if (event.target !== own) update(); });
  form.addEventListener("reset", () => setTimeout(() => {
    chips.replaceChildren();
    update();
  }));
  own.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    addOwn();
  });
  one("[data-add]", form).addEventListener("click", addOwn);
  more.addEventListener("click", drawMore);
  addEventListener("popstate", () => { fromAddress(); update(); });
}

async function start() {
  prepare(await readIndex(form.dataset.index));
  setUp();
  form.hidden = false;
  one(".without-script").hidden = true;
  fromAddress();
  update();
}

start().catch(() => { one(".without-script .lede").textContent = status.dataset.failed; });
