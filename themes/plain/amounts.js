/* Amounts as a kitchen writes them, in the page's language: the nearest spoons, grams, and a
 * written amount times a number. The program chooses likewise. */

const CUP_STEPS = [[0, 0], [1 / 4, 1], [1 / 3, 1], [1 / 2, 1], [2 / 3, 1], [3 / 4, 1]];
const TSP_STEPS = [[0, 0], [1 / 8, 1], [1 / 4, 1], [1 / 2, 1], [3 / 4, 2]];
const FRACTIONS = [[1 / 8, "1/8", "⅛"], [1 / 4, "1/4", "¼"], [1 / 3, "1/3", "⅓"],
  [1 / 2, "1/2", "½"], [2 / 3, "2/3", "⅔"], [3 / 4, "3/4", "¾"]];

/* "1.5", or "1,5": up to so many decimals, in the digits that the program writes. */
export const numberText = (value, places) => value.toLocaleString(document.documentElement.lang,
  { maximumFractionDigits: places, useGrouping: false, numberingSystem: "latn" });

/* 1.5 as "1 1/2"; what is no kitchen fraction to one decimal. */
export function amountText(value) {
  const whole = Math.floor(value + 0.001), part = value - whole;
  if (part < 0.02) return numberText(whole, 0);
  const near = FRACTIONS.find(([size]) => Math.abs(size - part) < 0.02);
  if (!near) return numberText(value, 1);
  return whole ? `${whole} ${near[1]}` : near[1];
}

export function gramsText(grams) {
  if (Math.round(grams) >= 1000) return `${numberText(grams / 1000, 2)} kg`;
  return `${numberText(grams, grams < 0.995 ? 2 : grams < 9.95 ? 1 : 0)} g`;
}

/* Every filling of cups, tablespoons and teaspoons near `grams`: {counts, grams, scoops}. */
function fillings(grams, cup) {
  const tbsp = cup / 16, tsp = cup / 48, found = [];
  const add = (cups, scoops, spoons, bits, bitScoops) => found.push({
    counts: [cups, spoons, bits],
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

/* The fewest scoops among those within 3 %, else the nearest. `words`: what the page calls a `cup`,
 * more than one (`cups`), `tbsp`, `tsp`, and less than can be measured (`pinch`). */
export function kitchenText(grams, cup, words) {
  const tsp = cup / 48, allowed = Math.max(0.03 * grams, tsp / 32);
  if (grams < tsp / 8 - allowed) return words.pinch;
  const cost = (way) => {
    const off = Math.abs(way.grams - grams);
    return off > allowed ? 1e6 + off : way.scoops + off / 1e6;
  };
  const { counts } = fillings(grams, cup).sort((a, b) => cost(a) - cost(b))[0];
  const names = [counts[0] > 1 ? words.cups : words.cup, words.tbsp, words.tsp];
  return counts.flatMap((count, i) => count ? `${amountText(count)} ${names[i]}` : []).join(" + ");
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

/* How many pieces it would be, where that is more than a tenth of one off; else nothing. */
export function unevenCount(written, times) {
  const match = COUNTED.exec(written), exact = match && number(match[1]) * times;
  return match && Math.abs(inHalves(exact) - exact) > 0.1 ? numberText(exact, 2) : "";
}
