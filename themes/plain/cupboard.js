/* From the cupboard to the recipes: pick what is at hand, see what it makes, with which swaps, and
 * what is missing. The state is in the address, so a cupboard can be kept as a bookmark. */
import { VERDICTS, all, counted, element, one, resultOf, waysWith } from "./found.js";
import { isStaple, isWater, openStore } from "./store.js";

const form = one(".shelf-form"), status = one('[role="status"]');
const groups = one(".found-groups"), more = one("#more"), shelves = one(".shelves", form);
const root = form.dataset.root, SHOWN_AT_ONCE = 10;
/* Families that have pages of what can be baked with them: what readers ask for first. */
const askedFirst = all(".without-script h2").map((heading) => heading.textContent);
let store, shelf, shown = [], drawn = 0, latest = 0;

/* -- picking ------------------------------------------------------------------------------------- */

function pickOf(entry) {
  const label = element("label", "");
  const box = Object.assign(document.createElement("input"),
    { type: "checkbox", name: "have", value: entry.slug });
  label.append(box, ` ${entry.name}`);
  return label;
}

function shelfOf(family) {
  const fold = element("details", ""), set = element("div", "");
  set.setAttribute("role", "group");
  set.setAttribute("aria-label", family);
  set.append(...shelf.filter((entry) => entry.family === family).map(pickOf));
  fold.open = family === askedFirst[0] && matchMedia("(min-width: 60rem)").matches;
  fold.append(element("summary", family), set);
  return fold;
}

function stock() {
  const families = [...new Set(shelf.map((entry) => entry.family))];
  const others = families.filter((family) => !askedFirst.includes(family));
  shelves.append(...[...askedFirst, ...others].filter((family) => families.includes(family)).map(shelfOf));
}

/* -- state --------------------------------------------------------------------------------------- */

const picked = () => all('[name="have"]:checked', form).map((box) => box.value);

function toAddress() {
  const query = new URLSearchParams(picked().map((slug) => ["have", slug]));
  if (!form.elements.staples.checked) query.set("staples", "no");
  const text = query.toString();
  history.replaceState(null, "", text ? `?${text}` : location.pathname);
}

function fromAddress() {
  const query = new URLSearchParams(location.search), have = query.getAll("have");
  form.elements.staples.checked = query.get("staples") !== "no";
  for (const box of all('[name="have"]', form)) {
    box.checked = have.includes(box.value);
    if (box.checked) box.closest("details").open = true;
  }
}

/* -- what it makes ------------------------------------------------------------------------------- */

/* Tap water is always there; staples where the reader says so. */
const isGiven = (entry) => isWater(entry) || (form.elements.staples.checked && isStaple(entry));

const distance = ({ swapped }) =>
  [...swapped.values()].reduce((sum, { verdict }) => sum + 1 + VERDICTS.indexOf(verdict), 0);

/* {row, made, missing} of each recipe that something ticked goes into, the readiest first. */
async function plans() {
  const have = picked(), mine = [...shelf.keys()].filter((number) => have.includes(shelf[number].slug));
  const ways = await waysWith(store, mine, new Set(VERDICTS));
  const [needs, staples] = await Promise.all([store.column("needs"), store.column("staples")]);
  const found = [];
  for (const [row, made] of ways) {
    for (const from of [...made.swapped.keys()]) if (isGiven(shelf[from])) made.swapped.delete(from);
    if (!made.used.size && !made.swapped.size) continue;
    const met = [...made.used].filter((number) => !isGiven(shelf[number])).length + made.swapped.size;
    const given = form.elements.staples.checked ? staples(row) : 0;
    found.push({ row, made, missing: needs(row) - given - met });
  }
  return found.sort((a, b) => a.missing - b.missing || distance(a.made) - distance(b.made) || a.row - b.row);
}

/* -- the page ------------------------------------------------------------------------------------ */

function headingFor(missing) {
  return missing ? counted(missing, groups.dataset) : groups.dataset.nothing;
}

/* The list of the recipes that lack so many things; made when the first is drawn. */
function listFor(missing) {
  const last = groups.lastElementChild;
  if (last && last.dataset.missing === String(missing)) return one("ul", last);
  const group = element("section", ""), list = element("ul", "");
  group.dataset.missing = missing;
  list.className = "items";
  group.append(element("h2", headingFor(missing)), list);
  groups.append(group);
  return list;
}

async function drawMore() {
  const run = latest, next = shown.slice(drawn, drawn + SHOWN_AT_ONCE);
  drawn += next.length;
  more.hidden = drawn >= shown.length;
  const recipes = await store.rows(next.map(({ row }) => row));
  if (run !== latest) return;
  next.forEach(({ made, missing }, i) =>
    listFor(missing).append(resultOf({ recipe: recipes[i], made, root, shelf, given: isGiven })));
}

function say() {
  const { none, nothing, readyOne, ready, short } = status.dataset;
  const whole = shown.filter(({ missing }) => !missing).length;
  if (!picked().length) status.textContent = none;
  else if (!shown.length) status.textContent = nothing;
  else status.textContent =
    `${counted(whole, { one: readyOne, many: ready })}, ${shown.length - whole} ${short}`;
}

async function update() {
  const run = ++latest;
  toAddress();
  const found = picked().length ? await plans() : [];
  if (run !== latest) return;
  shown = found;
  drawn = 0;
  groups.replaceChildren();
  say();
  for (const needless of [".found-note", ".to-found"]) one(needless).hidden = !shown.length;
  await drawMore();
}

function failed() {
  one(".without-script").hidden = false;
  one(".without-script .lede").prepend(`${form.dataset.failed} `);
}

const refresh = () => update().catch(failed);

async function start() {
  store = await openStore(`${root}search/`);
  shelf = await store.shelf();
  stock();
  fromAddress();
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    location.hash = "found";
  });
  form.addEventListener("change", refresh);
  form.addEventListener("reset", () => setTimeout(refresh));
  more.addEventListener("click", drawMore);
  addEventListener("popstate", () => { fromAddress(); refresh(); });
  form.hidden = false;
  one(".without-script").hidden = true;
  await update();
}

start().catch(failed);
