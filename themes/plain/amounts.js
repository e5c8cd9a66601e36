/* Amounts as a kitchen writes them: the nearest spoons, grams, and a written amount times a
 * number. The program chooses likewise. */

const CUP_STEPS = [[0, 0], [1 / 4, 1], [1 / 3, 1], [1 / 2, 1], [2 / 3, 1], [3 / 4, 1]];
const TSP_STEPS = [[0, 0], [1 / 8, 1], [1 / 4, 1], [1 / 2, 1], [3 / 4, 2]];
const FRACTIONS = [[1 / 8, "1/8", "⅛"], [1 / 4, "1/4", "¼"], [1 / 3, "1/3", "⅓"],
  [1 / 2, "1/2", "½"], [2 / 3, "2/3", "⅔"], [3 / 4, "3/4", "¾"]];

/* 1.5 as "1 1/2"; what is no kitchen fraction to one decimal. */
export function amountText(value) {
  const whole = Math.floor(value + 0.001), part = value - whole;
  if (part < 0.02) return String(whole);
  const near = FRACTIONS.find(([size]) => Math.abs(size - part) < 0.02);
  if (!near) return String(Math.round(value * 10) / 10);
  return whole ? `${whole} ${near[1]}` : near[1];
}

export function gramsText(grams) {
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

/* The fewest scoops among those within 3 %, else the nearest. `pinch`: the word for less than can
 * be measured. */
export function kitchenText(grams, cup, pinch) {
  const tsp = cup / 48, allowed = Math.max(0.03 * grams, tsp / 32);
  if (grams < tsp / 8 - allowed) return pinch;
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
    const vulgar = FRACTIONS.find(([, , sign]) => word.endsWith(sign));
    if (vulgar) return sum + Number(word.slice(0, -1)) + vulgar[0];
    const [over, under] = word.split("/");
    return sum + Number(over.replace(",", ".")) / Number(under || 1);
  }, 0);
}

const COUNTED = /^([\d\s./,¼½¾⅓⅔⅛]+)(?:([–-])([\d\s./,¼½¾⅓⅔⅛]+))?(.*)$/;
const inHalves = (count) => Math.max(Math.round(count * 2) / 2, 0.5);

/* "2–3 large" times 1.5 as "3–4 1/2 large": pieces come in whole and in halves. */
export function countedText(written, times) {
  const match = COUNTED.exec(written);
  if (!match) return written;
  const scaled = (words) => amountText(inHalves(number(words) * times));
  const high = match[3] ? `${match[2]}${scaled(match[3])}` : "";
  return `${scaled(match[1])}${high} ${match[4].trim()}`.trim();
}

/* How many pieces it would be, where that is more than a tenth of one off; else 0. */
export function unevenCount(written, times) {
  const match = COUNTED.exec(written), exact = match && number(match[1]) * times;
  return match && Math.abs(inHalves(exact) - exact) > 0.1 ? Math.round(exact * 100) / 100 : 0;
}
