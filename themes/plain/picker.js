/* Picking swaps on a recipe page: amounts, figures, allergens, diets and steps change in place.
 * Everything was worked out when the site was built; recipe.json has it, and here it is looked up
 * and added. Every word comes from the page. */
import { gramsText, kitchenText, numberText } from "./amounts.js";

const VERDICTS = ["works", "adjust", "different", "avoid"];

function element(name, text, attributes = {}) {
  const made = document.createElement(name);
  made.textContent = text;
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/* -- adding up ------------------------------------------------------------------------------------ */

/* What the picked swaps make of the recipe; null where they can't be added up. `picks`:
 * [{swap, to}] of recipe.json, `grams` of each line as written. */
function added(picks, grams, picking) {
  const now = { grams: [...grams], foods: [...picking.lines], gone: new Set(), water: 0,
    times: grams.map(() => 1), portion: [...picking.portion], portion_g: picking.portion_g };
  for (const { swap, to } of picks) {
    const [first, ...others] = swap.lines, { liquid_change_g: liquid = 0, liquid_line: line } = to;
    if (line !== undefined && picks.some((pick) => pick.swap.lines.includes(line))) return null;
    now.grams[first] = to.to_g;
    now.foods[first] = to.name;
    now.times[first] = to.to_g / swap.from_g;
    for (const other of others) {
      now.gone.add(other);
      now.times[other] = now.times[first];
    }
    if (line === undefined) now.water += liquid;
    else now.grams[line] += liquid;
    now.portion_g += to.changes[0];
    now.portion = now.portion.map((amount, i) =>
      amount === null || to.changes[i + 1] === null ? null : amount + to.changes[i + 1]);
  }
  if (now.grams.some((amount) => amount < 0)) return null;
  return now;
}

/* The foods that are left, water that was added too. */
function foodsOf(now, picking) {
  const names = now.foods.filter((name, i) => !now.gone.has(i));
  if (now.water > 0) names.push(picking.water);
  return names.map((name) => ({ name, ...(picking.foods[name] || { rules_out: picking.diets }) }));
}

/* Allergen to the foods that bring it, in the order of `names`. */
function causes(foods, key, names) {
  const found = Object.keys(names).map((what) => [what, [...new Set(foods
    .filter((food) => food[key]?.includes(what)).map((food) => food.name))]]);
  return new Map(found.filter(([, by]) => by.length));
}

/* -- showing -------------------------------------------------------------------------------------- */

/* `one` and `all` look inside the recipe, unless told where. */
export async function start({ recipe, one, all, picker, lines, showAmounts, keepInAddress }) {
  const words = picker.dataset, asked = one(".asked", picker);
  const said = one(".said"), notes = one(".notes.picked");
  const reset = one(".deeds", picker);
  const get = async (path) => {
    const got = await fetch(path);
    if (!got.ok) throw new Error(got.status);
    return got;
  };
  let answer, page;
  try {
    [answer, page] = await Promise.all([get("recipe.json").then((got) => got.json()),
      get("swaps/").then((got) => got.text())]);
  } catch {
    one(".failed", picker).hidden = false;
    return;
  }
  page = new DOMParser().parseFromString(page, "text/html");
  for (const link of all("a", page)) link.href = link.getAttribute("href").replace("../", "");
  const { picking } = answer, grams = lines.map((line) => line.written.grams);
  const choices = answer.swaps.filter(({ asked: asks, answers }) => asks &&
    answers.some(({ to }) => to.some(({ id }) => id)));

  const listed = (names) => names.length < 2 ? names.join("")
    : `${names.slice(0, -1).join(", ")} ${words.and} ${names.at(-1)}`;

  /* What a page part said before, to be put back. */
  const before = new Map();
  const put = (part, html) => {
    if (!part) return;
    if (!before.has(part)) before.set(part, part.innerHTML);
    part.replaceChildren(...[html].flat());
  };
  const hide = (part, hidden) => {
    if (part) part.hidden = hidden;
  };
  const hiddenBefore = new Map(all(".contains, .none-named, .may-contain, .diets, .as-written")
    .map((part) => [part, part.hidden]));

  function putBack() {
    for (const [part, html] of before) part.innerHTML = html;
    for (const [part, hidden] of hiddenBefore) part.hidden = hidden;
    before.clear();
    for (const line of lines) putLineBack(line);
    for (const extra of all(".lines > .poured, .unrounded-note, .claims.picked")) extra.remove();
    one("table.figures")?.classList.remove("unrounded");
  }

  /* -- lines -------------------------------------------------------------------------------------- */

  function putLineBack(line) {
    line.swap = null;
    line.hidden = false;
    one(".altered", line)?.remove();
    const name = one(".what > a", line);
    if (name && line.name) [name.textContent, name.href] = line.name;
    if (one(".prepared", line)) one(".prepared", line).hidden = false;
  }

  function alter(line, text) {
    const after = one(".what > input", line);
    one(".what", line).insertBefore(element("strong", text, { class: "altered" }), after);
  }

  const measured = (amount, cup) =>
    cup ? kitchenText(amount, cup, recipe.dataset) : "";

  function replaceLine(line, { swap, to }) {
    const note = page.getElementById(to.id), name = one(".what > a", line);
    const cup = picking.foods[to.name].cup_g || 0;
    line.swap = { grams: to.to_g, cup, measured: to.measure || "", weighed: gramsText(to.to_g),
      name: to.name, times: to.to_g / swap.from_g };
    alter(line, `${words.instead} ${gramsText(swap.from_g)} ${swap.from}`);
    if (one(".prepared", line)) one(".prepared", line).hidden = true;
    line.name ||= [name.textContent, name.getAttribute("href")];
    name.textContent = to.name;
    name.href = one("a", note).getAttribute("href");
  }

  function changeLine(line, amount) {
    const { grams: was, cup } = line.written;
    line.swap = { grams: amount, cup, measured: measured(amount, cup), weighed: gramsText(amount),
      times: amount / was };
    alter(line, `${words.not} ${line.written.weighed}`);
  }

  function pour(after, amount) {
    const line = element("li", "", { class: "poured" }), held = element("span", "", { class: "amount" });
    const what = element("span", `${picking.water} `, { class: "what" });
    held.append(element("span", measured(amount, picking.foods[picking.water].cup_g), { class: "measure" }),
      " ", element("span", gramsText(amount), { class: "weight" }));
    what.append(element("strong", words.added, { class: "altered" }));
    line.append(held, what);
    after.after(line);
  }

  function showLines(picks, now) {
    for (const pick of picks) {
      const [first, ...others] = pick.swap.lines;
      replaceLine(lines[first], pick);
      for (const other of others) {
        lines[other].hidden = true;
        lines[other].swap = { ...lines[first].swap, grams: 0 };
      }
    }
    now.grams.forEach((amount, i) => {
      if (Math.abs(amount - grams[i]) > 1e-6 && !lines[i].swap) changeLine(lines[i], amount);
    });
    if (now.water > 0) pour(lines[picks[0].swap.lines[0]], now.water);
  }

  /* -- steps -------------------------------------------------------------------------------------- */

  function showSteps(picks) {
    for (const { swap, to } of picks)
      for (const name of all(".method span[data-line]")) {
        if (!swap.lines.includes(Number(name.dataset.line))) continue;
        const was = name.textContent;
        if ("loose" in name.dataset)
          put(name, [`${was} `, element("span", `(${words.now} ${to.name})`, { class: "aside" })]);
        else
          put(name, [element("ins", to.name), " ",
            element("span", `(${words.was} ${was})`, { class: "aside" })]);
      }
  }

  /* -- figures ------------------------------------------------------------------------------------ */

  const inUnit = (amount, unit) => amount === null ? words.unknown
    : `${numberText(Math.max(amount, 0), amount < 9.95 ? 1 : 0)} ${unit}`;
  const unitOf = (text) => /\S+$/.exec(text.trim())[0];

  function showFigures(now) {
    const table = one("table.figures");
    const amount = new Map(picking.figures.map((key, i) => [key, now.portion[i]]));
    for (const row of all("[data-figure]")) {
      const [portion, hundred] = all("td", row), per = amount.get(row.dataset.figure);
      const unit = unitOf(portion.textContent), least = one(".quiet", portion);
      put(hundred, inUnit(per === null ? null : per * 100 / now.portion_g, unit));
      put(portion, per !== null && least ? [least.cloneNode(true), ` ${inUnit(per, unit)}`]
        : inUnit(per, unit));
    }
    for (const fact of all(".facts > li")) {
      const number = one("b", fact), key = /fact-(\S+)/.exec(fact.className)[1];
      const value = amount.get(key), unit = unitOf(number.textContent);
      if (value !== undefined)
        put(number, value === null ? words.unknown : `${numberText(value, 0)} ${unit}`);
    }
    table?.classList.add("unrounded");
    for (const part of all("[data-portion-weight]")) put(part, gramsText(now.portion_g));
    const batch = now.grams.reduce((sum, held, i) => sum + (now.gone.has(i) ? 0 : held), now.water);
    put(one("[data-batch]"), gramsText(batch));
    put(one("[data-baked]"), gramsText(now.portion_g * Number(recipe.dataset.portions)));
  }

  /* Of one swap it is known which claims hold; of several it is not. */
  function showClaims(picks) {
    const written = one(".as-written");
    const note = one("template.unrounded").content.firstElementChild.cloneNode(true);
    note.classList.add("unrounded-note");
    hide(written, true);
    written.before(note);
    if (picks.length > 1) return;
    const { claims_gained: gained = [], claims_lost: lost = [], claims_open: open = [] } = picks[0].to;
    const held = answer.claims.filter(({ holds }) => holds).map(({ claim }) => claim)
      .filter((claim) => !lost.includes(claim) && !open.includes(claim)).concat(gained);
    const list = element("ul", "", { class: "claims picked" });
    list.append(...held.map((claim) => {
      const item = element("li", "");
      item.append(element("b", claim));
      return item;
    }));
    if (held.length) note.after(list);
  }

  /* -- allergens and diets -------------------------------------------------------------------------- */

  function showFoods(picks, now) {
    const foods = foodsOf(now, picking), holds = causes(foods, "allergens", picking.contains);
    const law = (words) => [...words].map((word) => picking.contains[word]).filter(Boolean).join("; ");
    const contains = one(".contains"), may = one(".may-contain");
    const traces = [...causes(foods, "may_contain", picking.contains).keys()].filter((what) => !holds.has(what));
    put(one("strong", contains), law(holds.keys()));
    hide(contains, !law(holds.keys()));
    hide(one(".none-named"), holds.size > 0);
    put(one(".causes"), [...holds].map(([what, by]) =>
      element("li", `${what}: ${listed(by)}`)));
    put(one("span", may), law(traces));
    hide(may, !law(traces));
    const fits = picking.diets.filter((diet) =>
      foods.every(({ rules_out: out = [] }) => !out.includes(diet)));
    put(one(".diets .listed"), fits.map((diet) => element("li", diet)));
    hide(one(".diets"), fits.length === 0);
    const cautions = one(".cautions");
    const more = [...new Set(picks.flatMap(({ to }) => to.cautions || []))];
    put(cautions, [...all("li", cautions).map((item) => item.cloneNode(true)),
      ...more.map((sentence) => element("li", sentence))]);
  }

  /* -- the notes of what was picked ------------------------------------------------------------------ */

  /* From the page of notes: what is said of this one, its line of the table as a list. */
  function noteOf({ to }) {
    const take = page.getElementById(to.id), list = element("dl", "", { class: "takes" });
    const note = take.closest(".note"), group = take.closest(".group").cloneNode(true);
    const heads = all("thead th", take.parentNode.parentNode), title = element("h3", `${to.name} `);
    [...take.children].forEach((cell, i) => {
      if (!i || !cell.textContent) return;
      const told = element("dd", "");
      told.append(...cell.cloneNode(true).childNodes);
      list.append(element("dt", heads[i].textContent), told);
    });
    one(".scroll", group).replaceWith(list);
    const noticed = one(".noticed", group);
    if (noticed && noticed.dataset.with !== to.name) noticed.remove();
    title.append(element("span", one("h3", note).firstChild.textContent, { class: "verdict" }));
    group.prepend(title, ...all("th .warning", take).map((warning) => warning.cloneNode(true)));
    const copy = note.cloneNode(false);
    copy.append(one(".sign", note).cloneNode(true), group);
    return copy;
  }

  const verdictOf = ({ swap, to }) =>
    swap.answers.find(({ to: others }) => others.includes(to)).verdict;

  /* What changed, told when it does: what comes, how it goes, and any allergen that was not there. */
  function say(picks, now) {
    const written = foodsOf({ foods: picking.lines, gone: new Set(), water: 0 }, picking);
    const before = causes(written, "allergens", picking.contains);
    const brought = now ? [...causes(foodsOf(now, picking), "allergens", picking.contains).keys()]
      .filter((what) => !before.has(what)) : [];
    said.replaceChildren(!now && picks.length ? one(".clash", picker).textContent : picks.map((pick) =>
      `${pick.to.name} ${words.instead} ${pick.swap.from}: ${verdictWords(verdictOf(pick))}`).join("; "));
    if (brought.length)
      said.append(" ", element("strong", `${words.brings} ${listed(brought)}`, { class: "warning" }));
  }

  function picked() {
    return choices.flatMap((swap, i) => {
      const id = all("select", asked)[i].value;
      const to = id && swap.answers.flatMap((each) => each.to).find((other) => other.id === id);
      return to ? [{ swap, to }] : [];
    });
  }

  function show() {
    putBack();
    const picks = picked(), now = picks.length ? added(picks, grams, picking) : null;
    const clash = picks.length > 0 && !now;
    one(".clash", picker).hidden = !clash;
    one(".together", picker).hidden = picks.length < 2 || clash;
    reset.hidden = picks.length === 0;
    recipe.classList.toggle("is-picked", now !== null);
    notes.replaceChildren(...picks.map(noteOf));
    if (now) {
      showLines(picks, now);
      showSteps(picks);
      showFigures(now);
      showClaims(picks);
      showFoods(picks, now);
    }
    showAmounts();
    say(picks, now);
    keepInAddress("swap", picks.map(({ to }) => to.id.replace(/^swap-/, "")));
  }

  /* -- choosing -------------------------------------------------------------------------------------- */

  const verdictWords = (verdict) => one(`.legend .is-${verdict} span + span`).textContent;

  function optionsOf(swap, verdict) {
    const group = element("optgroup", "", { label: verdictWords(verdict) });
    for (const { to } of swap.answers.filter((each) => each.verdict === verdict))
      for (const { name, id } of to) {
        const option = element("option", name, { value: id || "" });
        option.disabled = !id;
        group.append(option);
      }
    return group.children.length ? [group] : [];
  }

  function choiceOf(swap, i) {
    const label = element("label", `${asked.dataset.instead} ${swap.from}`, { for: `own-${i}` });
    const select = element("select", "", { id: `own-${i}` });
    select.append(element("option", asked.dataset.asWritten, { value: "" }),
      ...VERDICTS.flatMap((verdict) => optionsOf(swap, verdict)));
    select.addEventListener("change", show);
    const row = element("p", "");
    row.append(label, select);
    return row;
  }

  asked.replaceChildren(...choices.map(choiceOf));
  one("button", reset).addEventListener("click", () => {
    for (const select of all("select", asked)) select.value = "";
    show();
    one("select", asked).focus();
  });
  for (const id of new URLSearchParams(location.search).getAll("swap"))
    for (const select of all("select", asked))
      if ([...select.options].some(({ value, disabled }) => value === `swap-${id}` && !disabled))
        select.value = `swap-${id}`;
  show();
}
