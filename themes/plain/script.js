/* What a recipe page can do more with script: other portions, cups or grams, things ticked off,
 * times that count down, a screen that stays on. Every word comes from the page. */
import { amountText, countedText, gramsText, kitchenText, numberText, unevenCount } from "./amounts.js";

const recipe = document.querySelector(".recipe");
if (recipe) {
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

  /* What was changed stands in the address, so that it can be shared. */
  function keepInAddress(key, values) {
    const url = new URL(location);
    url.searchParams.delete(key);
    for (const value of values) url.searchParams.append(key, value);
    if (url.href !== location.href) history.replaceState(null, "", url);
  }

  /* -- amounts ---------------------------------------------------------------------------------- */

  /* What a line asks for; a picked swap puts something else in its place (`swap`). */
  const lines = all(".lines > li").map((line) => {
    line.measure = one(".measure", line);
    line.weight = one(".weight", line);
    line.counted = "counted" in line.dataset;
    line.written = { grams: Number(line.dataset.grams || 0),
      cup: line.counted ? 0 : Number(line.dataset.cup || 0), measured: line.measure?.textContent || "",
      weighed: line.weight?.textContent || "" };
    return line;
  });

  function measureText({ grams, cup, measured }, times) {
    if (times === 1 || !measured) return measured;
    return cup && grams ? kitchenText(grams * times, cup, recipe.dataset) : countedText(measured, times);
  }

  function showLine(line) {
    const asked = line.swap || line.written;
    if (line.measure) line.measure.textContent = measureText(asked, times);
    if (line.weight)
      line.weight.textContent = times === 1 && asked.weighed ? asked.weighed
        : gramsText(asked.grams * times);
  }

  /* Amounts in the steps: in the unit that the step has. */
  const amounts = all(".method data").map((amount) => ({ amount, words: amount.textContent }));

  function amountNow(words, grams, line, by) {
    if (/\d\s*(k?g(ramm?e?s?)?|oz|lbs?)\b/i.test(words)) return gramsText(grams * by);
    const cup = (line.swap || line.written).cup;
    if (cup && /\p{L}/u.test(words)) return kitchenText(grams * by, cup, recipe.dataset);
    return line.swap?.name ? gramsText(grams * by) : countedText(words, by);
  }

  let times = 1;

  function showUneven() {
    const said = one(".uneven"), found = lines.flatMap((line) => {
      const exact = times !== 1 && line.counted && !line.swap && unevenCount(line.written.measured, times);
      return exact ? `${one(".what > a, .what", line).textContent.trim()} ${exact}` : [];
    });
    said.textContent = found.length ? `${said.dataset.words} ${found.join("; ")}` : "";
  }

  function showAmounts() {
    lines.forEach(showLine);
    showUneven();
    for (const { amount, words } of amounts) {
      const line = lines[amount.dataset.line], by = times * (line.swap?.times ?? 1);
      amount.textContent = Math.abs(by - 1) < 1e-6 && !line.swap?.name ? words
        : amountNow(words, Number(amount.value), line, by);
    }
  }

  function setUpPortions(tools) {
    const written = Number(recipe.dataset.portions), shown = one("[data-shown]", tools);
    const writtenText = shown.textContent, reset = one('[data-step="0"]', tools);
    const shared = Number(new URLSearchParams(location.search).get("portions"));
    let portions;
    const show = (asked, byPan) => {
      portions = asked;
      shown.textContent = portions === written ? writtenText : amountText(portions);
      reset.hidden = portions === written;
      one('[data-step="-1"]', tools).disabled = portions <= 1;
      times = portions / written;
      showAmounts();
      kept.write(`portions ${slug}`, byPan ? null : portions);
      keepInAddress("portions", byPan || portions === written ? [] : [portions]);
    };
    for (const button of all("[data-step]", tools))
      button.addEventListener("click", () => {
        const step = Number(button.dataset.step), whole = step > 0 ? Math.floor : Math.ceil;
        if (step === 0) one('[data-step="1"]', tools).focus();
        show(step ? Math.min(Math.max(whole(portions + step), 1), written * 20) : written);
      });
    show(shared >= 1 && shared <= written * 20 ? shared : kept.read(`portions ${slug}`) || written);
    return (by) => show(written * by, true);
  }

  /* -- another pan ------------------------------------------------------------------------------ */

  function setUpPan(pan, tools, scale) {
    const fields = all("[name]", pan), [shape, length, width] = fields;
    const says = one("[role=status] p", pan), cm = (field) => Number(field.value.replace(",", "."));
    const depth = () => fields[3] ? cm(fields[3]) : 1;
    const area = () => shape.value === "round" ? Math.PI * cm(length) ** 2 / 4
      : cm(length) * cm(shape.value === "square" ? length : width);
    const fill = (values) => {
      fields.forEach((field, i) => { field.value = values[i] || ""; });
      pan.dataset.asked = shape.value;
    };
    const asWritten = () => fill(fields.map(({ name }) => {
      const was = pan.dataset[name];
      return was > 0 ? numberText(Number(was), 1) : was;
    }));
    asWritten();
    const floor = area(), wall = depth();

    function change() {
      pan.dataset.asked = shape.value;
      const deeper = depth() / wall, by = area() / floor * deeper;
      if (!by || fields.some((field) => !field.checkValidity())) return;
      says.className = Math.abs(deeper - 1) < 0.05 ? "is-same" : deeper > 1 ? "is-deeper" : "is-shallower";
      one("b", pan).textContent = `× ${numberText(by, 2)}`;
      says.hidden = Math.abs(by - 1) < 0.005;
      scale(by);
      keepInAddress("pan", says.hidden ? [] : [fields.map(({ value }) => value).join(" ")]);
    }

    const shared = new URLSearchParams(location.search).get("pan");
    if (shared) {
      fill(shared.split(" "));
      if (!shape.value) asWritten();
      pan.open = true;
      change();
    }
    for (const field of fields) field.addEventListener("input", change);
    for (const step of all("[data-step]", tools))
      step.addEventListener("click", () => {
        asWritten();
        says.hidden = true;
        keepInAddress("pan", []);
      });
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
    const said = button.nextElementSibling;
    button.addEventListener("click", async () => {
      await navigator.clipboard.writeText(text());
      said.textContent = button.dataset.done;
      setTimeout(() => { said.textContent = ""; }, 4000);
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

  /* -- timers ----------------------------------------------------------------------------------- */

  /* The words of the step from the last stop on: "Pour into the tin and bake 55 to 58 minutes". */
  function nameOf(time) {
    const range = document.createRange();
    range.setStart(time.closest("li"), 0);
    range.setEndAfter(time);
    return range.toString().split(/[.;:!?]\s+/).at(-1).trim();
  }

  /* "54:00", "01:30:00" */
  const clockText = (ms) => new Date(Math.ceil(ms / 1000) * 1000).toISOString().slice(11, 19)
    .replace(/^00:/, "");

  const left = ({ end, rest }) => end ? Math.max(end - Date.now(), 0) : rest;

  /* A page may sound only once somebody pressed something on it. */
  let audio;
  const readySound = () => { audio ||= window.AudioContext && new AudioContext(); };

  function tone() {
    for (let i = 0; audio && i < 3; i++) {
      const sound = audio.createOscillator(), at = audio.currentTime + i / 2;
      sound.frequency.value = 880;
      sound.connect(audio.destination);
      sound.start(at);
      sound.stop(at + 0.2);
    }
  }

  /* Times in the steps become buttons that count down at the foot of the screen; a page that is
   * loaded anew in the visit goes on counting. */
  function setUpTimers(panel) {
    const words = panel.dataset, [said, list, pattern] = panel.children;
    const timers = new Set(), { title } = document;
    let ticking;

    function show() {
      document.title = title;
      for (const timer of timers) {
        const { line, name } = timer;
        line.firstChild.textContent = clockText(left(timer));
        if (left(timer)) continue;
        document.title = `${words.over} ${name}`;
        if (line.className) continue;
        line.className = "over";
        line.children[2].hidden = true;
        said.textContent = document.title;
        tone();
      }
      panel.hidden = timers.size === 0;
      if (panel.hidden) ticking = clearInterval(ticking);
      else ticking ||= setInterval(show, 500);
    }

    function change() {
      show();
      kept.write(`timers ${location.pathname}`, [...timers]);
    }

    /* `timer`: {i, name, end or rest}, of the time number i. */
    function add(timer) {
      const line = timer.line = pattern.content.firstChild.cloneNode(true);
      const [, what, pause, out] = line.children;
      const mark = () => pause.setAttribute("aria-pressed", String(!timer.end));
      what.textContent = timer.name;
      for (const button of [pause, out])
        button.setAttribute("aria-label", `${button.textContent}: ${timer.name}`);
      pause.addEventListener("click", () => {
        timer.rest = left(timer);
        timer.end = timer.end ? 0 : Date.now() + timer.rest;
        mark();
        change();
      });
      out.addEventListener("click", () => {
        timers.delete(timer);
        line.remove();
        said.textContent = "";
        change();
        presses[timer.i]?.focus();
      });
      mark();
      list.append(line);
      timers.add(timer);
      change();
    }

    const presses = all(".method li time").map((time, i) => {
      const text = time.textContent, name = nameOf(time), press = document.createElement("button");
      const ms = time.dateTime.slice(2, -1) * 1000; // "PT300S"
      press.textContent = text;
      press.setAttribute("aria-label", `${words.start} ${text}`);
      press.addEventListener("click", () => {
        add({ i, name, end: Date.now() + ms });
        said.textContent = `${words.started} ${name}`;
      });
      time.replaceChildren(press);
      return press;
    });
    (kept.read(`timers ${location.pathname}`) || []).forEach(add);
    addEventListener("click", () => { if (timers.size) readySound(); });
  }

  /* -- swaps ------------------------------------------------------------------------------------ */

  /* Fetched once somebody wants it, or a shared address has swaps in it. */
  function setUpPicker(picker) {
    const start = async () => (await import("./picker.js")).start({
      recipe, one, all, picker, lines, showAmounts, keepInAddress });
    picker.hidden = false;
    picker.addEventListener("toggle", start, { once: true });
    if (new URLSearchParams(location.search).has("swap")) picker.open = true;
  }

  const tools = one(".tools");
  tools.hidden = false;
  const scale = setUpPortions(tools), pan = one(".pan", tools);
  if (pan) setUpPan(pan, tools, scale);
  setUpAmounts(tools);
  setUpCopy(one("[data-copy]"));
  setUpAwake(one("[data-awake]"));
  setUpTicks(lines.map((line) => [one(".what", line), one(".what", line).innerText]),
    `lines ${slug}`, (words) => words.trim());
  const method = one(".method .prose");
  setUpTicks(all(".method .prose > ol > li").map((step) => [step, ""]), `steps ${slug}`,
    (words, i) => `${method.dataset.wordDone} ${i + 1}`);
  setUpTimers(one(".timers"));
  const picker = one(".picker");
  if (picker) setUpPicker(picker);
  /* Addresses of notes, from when they stood on this page. */
  if (location.hash.startsWith("#swap-")) location.replace(`swaps/${location.hash}`);
}
