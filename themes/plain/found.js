/* What the search and the cupboard share: the index, what can be made of a recipe with what is at
 * hand, and how a found recipe is shown. */
"use strict";

export const one = (selector, inside = document) => inside.querySelector(selector);
export const all = (selector, inside = document) => [...inside.querySelectorAll(selector)];

export async function readIndex(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(answer.status);
  return answer.json();
}

/* From the best verdict down: what is to be avoided is no swap. */
export const VERDICTS = ["works", "adjust", "different"];

/* How a recipe can be made from what is owned (numbers of ingredients): what is used as it is,
 * swaps of the best accepted verdict, and what is still needed. */
export function ways(recipe, owned, accepted) {
  const used = recipe.ingredients.filter((number) => owned.has(number));
  const swapped = new Map();
  for (const verdict of VERDICTS.filter((word) => accepted.has(word)))
    for (const [from, ...others] of recipe.swaps[verdict] || []) {
      const to = others.find((number) => owned.has(number));
      if (to !== undefined && recipe.ingredients.includes(from) && !owned.has(from) && !swapped.has(from))
        swapped.set(from, { from, to, verdict });
    }
  const needs = recipe.ingredients.filter((number) => !owned.has(number) && !swapped.has(number));
  return { used, swapped: [...swapped.values()], needs };
}

export function element(tag, words, href) {
  const made = document.createElement(tag);
  made.textContent = words;
  if (href) made.href = href;
  return made;
}

const time = (minutes) => [Math.floor(minutes / 60) && `${Math.floor(minutes / 60)} h`,
  minutes % 60 && `${minutes % 60} min`].filter(Boolean).join(" ");

function wayLine(words, verdict, href) {
  const line = href ? element("li", "") : element("li", words);
  if (href) line.append(element("a", words, href), ": ");
  if (!verdict) return line;
  const word = element("span", verdict);
  word.className = "verdict";
  line.className = `is-${verdict}`;
  line.append(word);
  return line;
}

function showWays(holder, { recipe, made, root, shelf }) {
  holder.hidden = !made;
  if (!made) return;
  const named = (numbers) => numbers.map((number) => shelf[number].name).join(", ");
  const { uses, for: insteadOf, needs } = holder.dataset;
  if (made.used.length) holder.append(wayLine(`${uses} ${named(made.used)}`));
  for (const { from, to, verdict } of made.swapped)
    holder.append(wayLine(`${named([to])} ${insteadOf} ${named([from])}`, verdict,
      `${root}recipes/${recipe.slug}/#swap-${shelf[from].slug}-${shelf[to].slug}`));
  if (!made.needs.length) return;
  const last = wayLine(`${needs} ${named(made.needs)}`);
  last.className = "quiet";
  holder.append(last);
}

/* The recipe as an item of a list, from the page's own template. `found`: {recipe, made (may be
 * null), root, shelf}. */
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
