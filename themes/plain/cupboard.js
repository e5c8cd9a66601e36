/* From the cupboard to the recipes: pick what is at hand, see what it makes, with which swaps, and
 * what is missing. The state is in the address, so a cupboard can be kept as a bookmark. */
import { VERDICTS, all, element, one, readIndex, resultOf, ways } from "./found.js";

const form = one(".shelf-form"), status = one('[role="status"]');
const groups = one(".found-groups"), more = one("#more"), shelves = one(".shelves", form);
const root = form.dataset.root, SHOWN_AT_ONCE = 30;
const ASKED_FIRST = ["protein powder", "flour", "meal", "nut butter"];
const STAPLES = ["salt", "leavener", "flavour"];
let index, shown = [], drawn = 0;

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
  set.append(...index.ingredients.filter((entry) => entry.family === family).map(pickOf));
  fold.open = family === ASKED_FIRST[0] && matchMedia("(min-width: 60rem)").matches;
  fold.append(element("summary", family), set);
  return fold;
}

function stock() {
  const families = [...new Set(index.ingredients.map((entry) => entry.family))];
  const others = families.filter((family) => !ASKED_FIRST.includes(family));
  shelves.append(...[...ASKED_FIRST, ...others].filter((family) => families.includes(family)).map(shelfOf));
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
function owned() {
  const have = new Set(picked()), staples = form.elements.staples.checked;
  const mine = [...index.ingredients.keys()].filter((number) => have.has(index.ingredients[number].slug));
  const given = [...index.ingredients.keys()].filter((number) => {
    const { slug, family } = index.ingredients[number];
    return slug === "water" || (staples && STAPLES.includes(family));
  });
  return { mine: new Set(mine), given: new Set(given) };
}

const distance = ({ swapped }) =>
  swapped.reduce((sum, { verdict }) => sum + 1 + VERDICTS.indexOf(verdict), 0);

function plansOf({ mine, given }) {
  const accepted = new Set(VERDICTS), plans = [];
  for (const recipe of index.recipes) {
    const made = ways(recipe, mine, accepted);
    made.needs = made.needs.filter((number) => !given.has(number));
    made.swapped = made.swapped.filter(({ from }) => !given.has(from));
    if (made.used.length + made.swapped.length) plans.push({ recipe, made, root, shelf: index.ingredients });
  }
  return plans.sort((a, b) => a.made.needs.length - b.made.needs.length ||
    distance(a.made) - distance(b.made) || a.recipe.title.localeCompare(b.recipe.title));
}

/* -- the page ------------------------------------------------------------------------------------ */

function headingFor(missing) {
  const { nothing, one: single, many } = groups.dataset;
  if (!missing) return nothing;
  return missing === 1 ? `1 ${single}` : `${missing} ${many}`;
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

function drawMore() {
  for (const plan of shown.slice(drawn, drawn + SHOWN_AT_ONCE))
    listFor(plan.made.needs.length).append(resultOf(plan));
  drawn += SHOWN_AT_ONCE;
  more.hidden = drawn >= shown.length;
}

function say() {
  const { none, nothing, readyOne, ready, short } = status.dataset;
  const whole = shown.filter(({ made }) => !made.needs.length).length;
  if (!picked().length) status.textContent = none;
  else if (!shown.length) status.textContent = nothing;
  else status.textContent =
    `${whole} ${whole === 1 ? readyOne : ready}, ${shown.length - whole} ${short}`;
}

function update() {
  toAddress();
  shown = picked().length ? plansOf(owned()) : [];
  drawn = 0;
  groups.replaceChildren();
  drawMore();
  say();
  for (const needless of [".found-note", ".to-found"]) one(needless).hidden = !shown.length;
}

async function start() {
  index = await readIndex(form.dataset.index);
  stock();
  fromAddress();
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    location.hash = "found";
  });
  form.addEventListener("change", update);
  form.addEventListener("reset", () => setTimeout(update));
  more.addEventListener("click", drawMore);
  addEventListener("popstate", () => { fromAddress(); update(); });
  form.hidden = false;
  one(".without-script").hidden = true;
  update();
}

start().catch(() => { one(".without-script .lede").prepend(`${form.dataset.failed} `); });
