/* Search: words with prefixes and one slip of the finger, what is in the cupboard (swaps included),
 * kind, diet, allergens, protein, energy, minutes. The state is in the address, so a result can be
 * shared. Every word comes from the page. */
import { all, counted, element, one, resultOf, sorted, waysWith } from "./found.js";
import { fold, openStore, wordsOf } from "./store.js";

const form = one(".search-form");
const status = one('[role="status"]'), list = one("#found"), more = one("#more");
const chips = one(".chips", form), own = one("#own", form), narrow = one(".narrow").parentElement;
const SHOWN_AT_ONCE = 10, DEFAULT_VERDICTS = ["works", "adjust"];
let store, latest = 0;

/* -- words ----------------------------------------------------------------------------------------- */

/* Rows that hold every word asked for, with their scores; null when nothing is asked. */
async function scores(text) {
  let found = null;
  for (const near of await Promise.all(wordsOf(text).map((asked) => store.words(asked)))) {
    const hits = new Map();
    for (const [nearby, places] of near)
      for (const [weight, rows] of places)
        for (const row of rows) hits.set(row, Math.max(hits.get(row) || 0, weight * nearby));
    found = found
      ? new Map([...hits].filter(([row]) => found.has(row)).map(([row, score]) => [row, score + found.get(row)]))
      : hits;
  }
  return found;
}

/* -- the cupboard ---------------------------------------------------------------------------------- */

/* Numbers of what a reader typed: that very ingredient, by its name, else by another of its names,
 * else all that have a name whose words begin so. */
async function numbersFor(typed) {
  const whole = fold(typed), asked = wordsOf(typed), shelf = await store.shelf();
  const numbers = [...shelf.keys()];
  const exact = numbers.filter((number) => fold(shelf[number].name) === whole);
  if (exact.length || !asked.length) return exact;
  const also = await store.also();
  const byOther = numbers.filter((number) => also[number].some((name) => fold(name) === whole));
  if (byOther.length) return byOther;
  return numbers.filter((number) => {
    const words = wordsOf([shelf[number].name, ...also[number]].join(" "));
    return asked.every((word) => words.some((its) => its.startsWith(word)));
  });
}

async function waysFor(now) {
  if (!now.own.length) return null;
  const numbers = (await Promise.all(now.own.map(numbersFor))).flat();
  return waysWith(store, [...new Set(numbers)], new Set(now.verdict));
}

/* -- state ------------------------------------------------------------------------------------------- */

const NUMBERS = ["protein", "energy", "minutes"];
const chosen = (name) => all(`[data-choice="${name}"]:checked`, form).map((box) => box.value);
const owned = () => all("[data-own]", chips).map((chip) => chip.dataset.own);

function state() {
  return {
    q: form.elements.q.value.trim(), own: owned(), kind: form.elements.kind.value,
    ...Object.fromEntries(NUMBERS.map((key) => [key, Number(form.elements[key].value)])),
    diet: chosen("diet"), without: chosen("without"), verdict: chosen("verdict"),
  };
}

function toAddress(now) {
  const query = new URLSearchParams();
  for (const key of ["q", "kind", ...NUMBERS]) if (now[key]) query.set(key, now[key]);
  for (const key of ["own", "diet", "without"])
    for (const value of now[key]) query.append(key, value);
  if (now.verdict.join() !== DEFAULT_VERDICTS.join())
    query.set("verdict", now.verdict.join(" "));
  const text = query.toString();
  history.replaceState(null, "", text ? `?${text}` : location.pathname);
}

function fromAddress() {
  const query = new URLSearchParams(location.search);
  for (const key of ["q", "kind", ...NUMBERS]) form.elements[key].value = query.get(key) || "";
  for (const key of ["diet", "without"])
    for (const box of all(`[data-choice="${key}"]`, form)) box.checked = query.getAll(key).includes(box.value);
  const verdicts = query.has("verdict") ? query.get("verdict").split(" ") : DEFAULT_VERDICTS;
  for (const box of all('[data-choice="verdict"]', form)) box.checked = verdicts.includes(box.value);
  chips.replaceChildren();
  query.getAll("own").forEach(addChip);
  narrow.open = narrow.open || Boolean(narrows(state()));
}

const narrows = (now) => now.kind || now.protein || now.energy || now.minutes ||
  now.diet.length || now.without.length;

/* -- filters ----------------------------------------------------------------------------------------- */

const bitsOf = (names, wanted) => wanted.reduce((sum, name) => sum | (1 << names.indexOf(name)), 0);

/* Each filter: the column it looks at, whether it is set, and the test of a figure. */
const FILTERS = {
  kind: { column: "kind", set: (now) => now.kind, test: (now) => {
    const wanted = store.kinds.indexOf(now.kind) + 1;
    return (figure) => figure === wanted;
  } },
  protein: { column: "protein", set: (now) => now.protein, test: (now) => (figure) => figure >= now.protein },
  energy: { column: "energy", set: (now) => now.energy, test: (now) => (figure) => figure <= now.energy },
  minutes: { column: "minutes", set: (now) => now.minutes, test: (now) => (figure) => figure > 0 && figure <= now.minutes },
  diet: { column: "diets", set: (now) => now.diet.length, test: (now) => {
    const wanted = bitsOf(store.diets, now.diet);
    return (figure) => (figure & wanted) === wanted;
  } },
  without: { column: "allergens", set: (now) => now.without.length, test: (now) => {
    const unwanted = bitsOf(store.allergens, now.without);
    return (figure) => (figure & unwanted) === 0;
  } },
};

/* A test of a row by the filters that are set, but for the one called `leftOut`. */
async function filterOf(now, leftOut) {
  const tests = await Promise.all(Object.entries(FILTERS)
    .filter(([name, filter]) => name !== leftOut && filter.set(now))
    .map(async ([, filter]) => [await store.column(filter.column), filter.test(now)]));
  return (row) => tests.every(([figure, test]) => test(figure(row)));
}

/* -- searching --------------------------------------------------------------------------------------- */

/* Rows found before any filter, each with what it can be made of and its score. */
async function search(now) {
  const [scored, ways] = await Promise.all([scores(now.q), waysFor(now)]);
  const rows = scored ? [...scored.keys()] : ways ? [...ways.keys()] : Array(store.count).keys();
  const hits = [];
  for (const row of rows) {
    const made = ways ? ways.get(row) : null;
    if (made !== undefined) hits.push({ row, made, score: scored ? scored.get(row) : 0 });
  }
  return hits;
}

const matched = ({ made }) => made ? made.used.size + made.swapped.size : 0;
const inOrder = (a, b) => matched(b) - matched(a) || b.score - a.score || a.row - b.row;

/* Beside each choice: how many recipes it would leave. */
async function showCounts(hits, now) {
  const kindOf = await store.column("kind"), fits = await filterOf(now, "kind");
  const byKind = Array(store.kinds.length + 1).fill(0);
  for (const { row } of hits) if (fits(row)) byKind[kindOf(row)]++;
  for (const option of one("#kind").options)
    if (option.value)
      option.textContent = `${option.value} (${byKind[store.kinds.indexOf(option.value) + 1]})`;
  for (const name of ["diet", "without"])
    for (const box of all(`[data-choice="${name}"]`, form)) {
      const wish = await filterOf({ ...now, [name]: [...new Set([...now[name], box.value])] });
      one(".quiet", box.parentElement).textContent = hits.filter(({ row }) => wish(row)).length;
    }
}

/* -- the page ---------------------------------------------------------------------------------------- */

let shown = [], drawn = 0;

async function drawMore() {
  const run = latest, next = shown.slice(drawn, drawn + SHOWN_AT_ONCE);
  drawn += next.length;
  more.hidden = drawn >= shown.length;
  const recipes = await store.rows(next.map(({ row }) => row));
  const shelf = next.some(({ made }) => made) ? await store.shelf() : [];
  if (run !== latest) return;
  list.append(...next.map(({ made }, i) =>
    resultOf({ recipe: recipes[i], made, root: form.dataset.root, shelf })));
}

/* What is typed while an answer is being fetched makes that answer void. */
async function update() {
  const run = ++latest, now = state();
  toAddress(now);
  const hits = await search(now), fits = await filterOf(now);
  if (run !== latest) return;
  shown = hits.filter(({ row }) => fits(row)).sort(inOrder);
  status.textContent = shown.length ? counted(shown.length, status.dataset) : status.dataset.none;
  list.replaceChildren();
  drawn = 0;
  await drawMore();
  if (narrow.open && run === latest) await showCounts(hits, now);
}

const refresh = () => update().catch(failed);

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
    refresh();
  });
  chip.dataset.own = typed;
  chip.append(button);
  chips.append(chip);
}

function addOwn() {
  addChip(own.value);
  own.value = "";
  own.focus();
  refresh();
}

function addBoxes(name, values) {
  const set = one(`[data-boxes="${name}"]`, form);
  for (const value of sorted(values)) {
    const label = document.createElement("label"), count = element("span", "");
    const box = Object.assign(document.createElement("input"), { type: "checkbox", value });
    box.dataset.choice = name;
    count.className = "quiet";
    label.append(box, ` ${value} `, count);
    set.append(label);
  }
  set.hidden = values.length === 0;
}

/* The names to choose from, once somebody is about to choose. */
async function stockNames() {
  if (one("#shelf").children.length) return;
  for (const entry of await store.shelf()) {
    const option = document.createElement("option");
    option.value = entry.name;
    one("#shelf").append(option);
  }
}

function setUp() {
  for (const kind of sorted(store.kinds)) {
    const option = element("option", kind);
    option.value = kind;
    one("#kind").append(option);
  }
  addBoxes("diet", store.diets);
  addBoxes("without", store.allergens);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", (event) => { if (event.target !== own) refresh(); });
  form.addEventListener("reset", () => setTimeout(() => {
    chips.replaceChildren();
    refresh();
  }));
  own.addEventListener("focus", stockNames);
  own.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    addOwn();
  });
  narrow.addEventListener("toggle", () => { if (narrow.open) refresh(); });
  one("[data-add]", form).addEventListener("click", addOwn);
  more.addEventListener("click", drawMore);
  addEventListener("popstate", () => { fromAddress(); refresh(); });
}

function failed() {
  one(".without-script").hidden = false;
  one(".without-script .lede").textContent = status.dataset.failed;
}

async function start() {
  store = await openStore("./");
  setUp();
  form.hidden = false;
  one(".without-script").hidden = true;
  fromAddress();
  await update();
}

start().catch(failed);
