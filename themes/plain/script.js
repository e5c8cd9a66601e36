/* What a recipe page can do more with script: other portions, cups or grams, things ticked off,
 * the note for what a reader owns, a screen that stays on. Every word comes from the page. */
"use strict";
(() => {
  const recipe = document.querySelector(".recipe");
  if (!recipe) return;
  const all = (selector, inside = recipe) => [...inside.querySelectorAll(selector)];
  const one = (selector, inside = recipe) => inside.querySelector(selector);
  const slug = recipe.dataset.recipe;

  /* Kept for the visit only; a browser that refuses storage loses nothing else. */
  const kept = {
    read(key) {
      try { return JSON.parse(sessionStorage.getItem(key)); } catch { return null; }
    },
    write(key, value) {
      try { sessionStorage.setItem(key, JSON.stringify(value)); } catch { /* private mode */ }
    },
  };

  /* -- amounts ---------------------------------------------------------------------------------- */

  const CUP_STEPS = [[0, 0], [1 / 4, 1], [1 / 3, 1], [1 / 2, 1], [2 / 3, 1], [3 / 4, 1]];
  const TSP_STEPS = [[0, 0], [1 / 8, 1], [1 / 4, 1], [1 / 2, 1], [3 / 4, 2]];
  const FRACTIONS = [[1 / 8, "1/8"], [1 / 4, "1/4"], [1 / 3, "1/3"], [1 / 2, "1/2"],
    [2 / 3, "2/3"], [3 / 4, "3/4"]];
  const VULGAR = { "¼": 1 / 4, "½": 1 / 2, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 1 / 8 };

  /* 1.5 as "1 1/2"; what is no kitchen fraction to one decimal. */
  function amountText(value) {
    const whole = Math.floor(value + 0.001), part = value - whole;
    if (part < 0.02) return String(whole);
    const near = FRACTIONS.find(([size]) => Math.abs(size - part) < 0.02);
    if (!near) return String(Math.round(value * 10) / 10);
    return whole ? `${whole} ${near[1]}` : near[1];
  }

  function gramsText(grams) {
    if (Math.round(grams) >= 1000) return `${Math.round(grams / 10) / 100} kg`;
    const places = grams < 0.995 ? 100 : grams < 9.95 ? 10 : 1;
    return `${Math.round(grams * places) / places} g`;
  }

  /* Every filling of cups, tablespoons and teaspoons near `grams`: [text parts, grams, scoops]. */
  function fillings(grams, cup) {
    const tbsp = cup / 16, tsp = cup / 48, found = [];
    const add = (cups, scoops, spoons, bits, bitScoops) => found.push({
      parts: [[cups, "cup"], [spoons, "tbsp"], [bits, "tsp"]],
      grams: cups * cup + spoons * tbsp + bits * tsp,
      scoops: scoops + spoons + bitScoops,
    });
    const most = Math.floor(grams / cup) + 1;
    for (let whole = Math.max(0, most - 2); whole <= most; whole++)
      for (const [size, fills] of CUP_STEPS)
        for (let spoons = 0; spoons < 8; spoons++)
          for (let bits = 0; bits < 3; bits++)
            for (const [bit, bitFills] of TSP_STEPS)
              add(whole + size, whole + fills, spoons, bits + bit, bits + bitFills);
    return found.filter((way) => way.scoops > 0);
  }

  /* The fewest scoops among those within 3 %, else the nearest; the program chooses likewise. */
  function kitchenText(grams, cup) {
    const tsp = cup / 48, allowed = Math.max(0.03 * grams, tsp / 32);
    if (grams < tsp / 8 - allowed) return recipe.dataset.pinch;
    const off = (way) => Math.abs(way.grams - grams);
    const best = fillings(grams, cup).sort((a, b) => {
      const near = (off(b) <= allowed) - (off(a) <= allowed);
      if (near) return near;
      return off(a) <= allowed ? a.scoops - b.scoops || off(a) - off(b) : off(a) - off(b);
    })[0];
    return best.parts.filter(([count]) => count > 0)
      .map(([count, name]) => `${amountText(count)} ${name}`).join(" + ");
  }

  function number(words) {
    return words.trim().split(/\s+/).reduce((sum, word) => {
      const vulgar = VULGAR[word.slice(-1)];
      if (vulgar) return sum + Number(word.slice(0, -1) || 0) + vulgar;
      const [over, under] = word.split("/");
      return sum + Number(over.replace(",", ".")) / Number(under || 1);
    }, 0);
  }

  /* "2–3 large" times 1.5 as "3–4 1/2 large": pieces come in whole and in halves. */
  function countedText(written, times) {
    const match = /^([\d\s./,¼½¾⅓⅔⅛]+)(?:([–-])([\d\s./,¼½¾⅓⅔⅛]+))?(.*)$/.exec(written);
    if (!match) return written;
    const scaled = (words) => amountText(Math.max(Math.round(number(words) * times * 2) / 2, 0.5));
    const high = match[3] ? `${match[2]}${scaled(match[3])}` : "";
    return `${scaled(match[1])}${high} ${match[4].trim()}`.trim();
  }

  function measureText(line, times) {
    const { cup, grams } = line.dataset;
    if (cup && grams) return kitchenText(grams * times, Number(cup));
    return countedText(line.measured, times);
  }

  const lines = all(".lines > li").map((line) => {
    line.measure = one(".measure", line);
    line.weight = one(".weight", line);
    line.measured = line.measure?.textContent;
    line.weighed = line.weight?.textContent;
    return line;
  });

  function scale(times) {
    for (const line of lines) {
      const same = times === 1;
      if (line.weight)
        line.weight.textContent = same ? line.weighed : gramsText(line.dataset.grams * times);
      if (line.measure)
        line.measure.textContent = same ? line.measured : measureText(line, times);
    }
  }

  function setUpPortions(tools) {
    const written = Number(recipe.dataset.portions), shown = one("[data-shown]", tools);
    const writtenText = shown.textContent, reset = one('[data-step="0"]', tools);
    let portions = kept.read(`portions ${slug}`) || written;
    const show = () => {
      shown.textContent = portions === written ? writtenText : amountText(portions);
      reset.hidden = portions === written;
      one('[data-step="-1"]', tools).disabled = portions <= 1;
      scale(portions / written);
      kept.write(`portions ${slug}`, portions);
    };
    for (const button of all("[data-step]", tools))
      button.addEventListener("click", () => {
        const step = Number(button.dataset.step);
        if (step === 0) one('[data-step="1"]', tools).focus();
        portions = step ? Math.min(Math.max(portions + step, 1), written * 20) : written;
        show();
      });
    show();
  }

  function setUpAmounts(tools) {
    const choose = (value) => {
      recipe.dataset.amounts = value;
      kept.write("amounts", value);
    };
    const radios = all('[name="amounts"]', tools), before = kept.read("amounts");
    for (const radio of radios) {
      radio.checked = before ? radio.value === before : radio.checked;
      radio.addEventListener("change", () => choose(radio.value));
    }
    if (before) choose(before);
  }

  function setUpCopy(button) {
    const text = () => lines.map((line) => line.innerText.replace(/\s+/g, " ").trim()).join("\n");
    const words = button.textContent;
    button.addEventListener("click", async () => {
      await navigator.clipboard.writeText(text());
      button.textContent = button.dataset.done;
      setTimeout(() => { button.textContent = words; }, 2000);
    });
    button.hidden = !navigator.clipboard;
  }

  /* The browser lets go of the screen when the page is hidden: asked for anew when it is back. */
  function setUpAwake(button) {
    let lock = null;
    const wanted = () => button.getAttribute("aria-pressed") === "true";
    const hold = async () => {
      try { lock = await navigator.wakeLock.request("screen"); }
      catch { button.setAttribute("aria-pressed", "false"); }
    };
    button.hidden = !("wakeLock" in navigator);
    button.addEventListener("click", () => {
      button.setAttribute("aria-pressed", String(!wanted()));
      if (wanted()) hold();
      else lock?.release();
    });
    document.addEventListener("visibilitychange", () => {
      if (wanted() && document.visibilityState === "visible") hold();
    });
  }

  /* -- ticking off ------------------------------------------------------------------------------ */

  function setUpTicks(items, key, label) {
    const ticked = new Set(kept.read(key) || []);
    items.forEach(([holder, words], i) => {
      const box = document.createElement("input");
      box.type = "checkbox";
      box.checked = ticked.has(i);
      box.setAttribute("aria-label", label(words, i));
      box.addEventListener("change", () => {
        if (box.checked) ticked.add(i);
        else ticked.delete(i);
        kept.write(key, [...ticked]);
      });
      holder.append(box);
    });
  }

  /* -- swaps ------------------------------------------------------------------------------------ */

  const takes = all(".swaps .takes > li").map((take) => ({
    take, note: take.closest(".note"), fold: take.closest("details"),
    words: take.dataset.to.toLowerCase().split(/[\s-]+/),
  }));

  function setUpPick(pick) {
    const input = one("input", pick), said = one("output", pick);
    pick.hidden = takes.length === 0;
    input.addEventListener("input", () => {
      const asked = input.value.toLowerCase().split(/\s+/).filter(Boolean);
      const fits = ({ words }) => asked.every((word) => words.some((own) => own.startsWith(word)));
      const found = asked.length ? takes.filter(fits) : takes;
      const kept = new Set(found.flatMap(({ take, note, fold }) => [take, note, fold]));
      for (const { take, note, fold } of takes) {
        for (const part of [take, note, fold]) part.hidden = !kept.has(part);
        fold.open = asked.length > 0 && kept.has(fold);
      }
      said.textContent = !asked.length ? "" : found.length
        ? `${found.length} ${said.dataset.some}` : said.dataset.none;
    });
  }

  /* A link to one note opens what it is folded in. */
  function openTarget() {
    const id = decodeURIComponent(location.hash.slice(1));
    const target = id && document.getElementById(id);
    const fold = target && target.closest("details");
    if (!fold || fold.open) return;
    fold.open = true;
    target.scrollIntoView();
  }

  const tools = one(".tools");
  tools.hidden = false;
  setUpPortions(tools);
  setUpAmounts(tools);
  setUpCopy(one("[data-copy]"));
  setUpAwake(one("[data-awake]"));
  setUpTicks(lines.map((line) => [one(".what", line), one(".what", line).innerText]),
    `lines ${slug}`, (words) => words.trim());
  const method = one(".method .prose");
  setUpTicks(all(".method .prose > ol > li").map((step) => [step, ""]), `steps ${slug}`,
    (words, i) => `${method.dataset.wordDone} ${i + 1}`);
  const pick = one(".pick");
  if (pick) setUpPick(pick);
  addEventListener("hashchange", openTarget);
  openTarget();
})();
