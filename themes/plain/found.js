/* What the search and the cupboard share: how a found recipe is shown, and with what it can be
 * made. */

export const one = (selector, inside = document) => inside.querySelector(selector);
export const all = (selector, inside = document) => [...inside.querySelectorAll(selector)];

/* From the best verdict down: what is to be avoided is no swap. */
export const VERDICTS = ["works", "adjust", "different"];

/* For each recipe that `mine` (numbers of ingredients at hand, the one to use first first) goes
 * into: {used: a set of numbers, swapped: a map from what gives way to {to, verdict}}. */
export async function waysWith(store, mine, accepted) {
  const ways = new Map(), owned = new Set(mine);
  const at = (row) => ways.get(row) || ways.set(row, { used: new Set(), swapped: new Map() }).get(row);
  const rank = (verdict) => VERDICTS.indexOf(verdict);
  const pieces = await Promise.all(mine.map((number) => store.own(number)));
  pieces.forEach(({ uses, swaps }, i) => {
    for (const row of uses) at(row).used.add(mine[i]);
    for (const [verdict, from, rows] of swaps) {
      if (!accepted.has(verdict) || owned.has(from) || rank(verdict) < 0) continue;
      for (const row of rows) {
        const { swapped } = at(row), held = swapped.get(from);
        if (!held || rank(verdict) < rank(held.verdict)) swapped.set(from, { to: mine[i], verdict });
      }
    }
  });
  return ways;
}

/* Words in the order of the page's language. */
const { lang } = document.documentElement;
export const sorted = (words) => [...words].sort(new Intl.Collator(lang).compare);

/* "1 recipe", "3 recipes": `words` has `one` and `many`, and may have `few` and other forms that
 * Unicode's plural rules name. */
const plurals = new Intl.PluralRules(lang);
export const counted = (count, words) => `${count} ${words[plurals.select(count)] || words.many}`;

export function element(tag, words, href) {
  const made = document.createElement(tag);
  made.textContent = words;
  if (href) made.href = href;
  return made;
}

const time = (minutes) => [Math.floor(minutes / 60) && `${Math.floor(minutes / 60)} h`,
  minutes % 60 && `${minutes % 60} min`].filter(Boolean).join(" ");

/* `verdict`: a key, and the word for it. */
function wayLine(words, [verdict, said] = [], href) {
  const line = href ? element("li", "") : element("li", words);
  if (href) line.append(element("a", words, href), ": ");
  if (!verdict) return line;
  const word = element("span", said);
  word.className = "verdict";
  line.className = `is-${verdict}`;
  line.append(word);
  return line;
}

/* `given`: what is at hand without being named. */
function showWays(holder, { recipe, made, root, shelf, given }) {
  holder.hidden = !made;
  if (!made) return;
  const named = (numbers) => numbers.map((number) => shelf[number].name).join(", ");
  const { uses, for: insteadOf, needs } = holder.dataset;
  const used = recipe.ingredients.filter((number) => made.used.has(number));
  if (used.length) holder.append(wayLine(`${uses} ${named(used)}`));
  for (const verdict of VERDICTS)
    for (const [from, swap] of made.swapped)
      if (swap.verdict === verdict)
        holder.append(wayLine(`${named([swap.to])} ${insteadOf} ${named([from])}`, [verdict, holder.dataset[verdict]],
          `${root}recipes/${recipe.slug}/swaps/#swap-${shelf[from].slug}-${shelf[swap.to].slug}`));
  const missing = recipe.ingredients.filter((number) =>
    !made.used.has(number) && !made.swapped.has(number) && !(given && given(shelf[number])));
  if (!missing.length) return;
  const last = wayLine(`${needs} ${named(missing)}`);
  last.className = "quiet";
  holder.append(last);
}

/* The recipe as an item of a list, from the page's own template. `found`: {recipe, made (may be
 * null), root, shelf, given}. */
export function resultOf(found) {
  const { recipe, root } = found;
  const item = one("#result").content.cloneNode(true);
  const least = recipe.at_least ? "≥ " : "";
  one(".item-protein", item).textContent = `${least}${Math.round(recipe.protein_g)} g`;
  one(".item-energy", item).textContent = `${least}${recipe.energy_kcal} kcal`;
  one(".item-title", item).append(element("a", recipe.title, `${root}recipes/${recipe.slug}/`));
  one(".item-summary", item).textContent = recipe.summary || "";
  one(".item-words .quiet", item).textContent =
    [recipe.kind, recipe.portion, recipe.minutes > 0 && time(recipe.minutes)].filter(Boolean).join(" · ");
  showWays(one(".ways", item), found);
  if (recipe.picture)
    one("li", item).append(Object.assign(document.createElement("img"), {
      loading: "lazy", decoding: "async", alt: "", width: 160, height: 120,
      src: root + recipe.picture.src }));
  return item;
}
