/* The search index, whole or in pieces, behind one face. A small site's is one file, read at once; a
 * large site's comes in pieces, each fetched when something asks for it. Recipes are numbers, in the
 * order of their slugs; so are ingredients, by the index's list.
 *
 *     count, kinds, diets, allergens      how many recipes, and what there is
 *     shelf()     ingredients: {name, slug, family, staple, water};  also(): the other names of each
 *     words(w)    [nearness, [[weight, recipes], …]] of each word that begins like `w` or nearly
 *     column(c)   a figure of every recipe: kind, protein, energy, minutes, diets, allergens,
 *                 needs, staples
 *     own(n)      {uses: recipes, swaps: [[verdict, replaced, recipes], …]} of an ingredient
 *     rows(ids)   what is shown of these recipes
 */

export const fold = (words) => words.normalize("NFKD")
  .replace(/[\p{M}\p{Default_Ignorable_Code_Point}]/gu, "").toLowerCase()
  .replaceAll("ß", "ss").replaceAll("ς", "σ");
export const wordsOf = (text) => fold(text || "").split(/[^\p{L}\p{N}]+/u).filter(Boolean);

async function fetched(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  return answer.json();
}

/* `word` begins with `asked` but for one letter wrong, missing, too many or swapped with the
 * next. */
function nearPrefix(asked, word) {
  let i = 0;
  while (i < asked.length && asked[i] === word[i]) i++;
  if (i === asked.length) return true;
  const goesOn = (from, at) => word.startsWith(asked.slice(from), at);
  return goesOn(i + 1, i + 1) || goesOn(i + 1, i) || goesOn(i, i + 1) ||
    (asked[i] === word[i + 1] && asked[i + 1] === word[i] && goesOn(i + 2, i + 2));
}

function nearness(asked, word) {
  if (word === asked) return 1;
  if (word.startsWith(asked)) return 0.8;
  return asked.length > 3 && nearPrefix(asked, word) ? 0.3 : 0;
}

export const isStaple = ({ staple }) => staple;
export const isWater = ({ water }) => water;

/* -- one file ------------------------------------------------------------------------------------ */

class Whole {
  constructor(index) {
    this.recipes = index.recipes;
    this.ingredients = index.ingredients;
    this.count = this.recipes.length;
    const distinct = (key) => [...new Set(this.recipes.flatMap((recipe) => recipe[key] || []))].sort();
    [this.kinds, this.diets, this.allergens] = ["kind", "diets", "allergens"].map(distinct);
    this.postings = new Map();
    const named = this.ingredients.map((entry) => wordsOf([entry.name, ...entry.also].join(" ")));
    this.recipes.forEach((recipe, row) => {
      this.post(wordsOf(recipe.title), row, 8);
      this.post([recipe.kind, ...recipe.tags].flatMap(wordsOf), row, 5);
      for (const number of recipe.ingredients) this.post(named[number], row, 4);
      this.post(wordsOf(recipe.summary), row, 1);
    });
  }

  post(words, row, weight) {
    for (const word of words) {
      const held = this.postings.get(word) || this.postings.set(word, new Map()).get(word);
      if (!held.has(row)) held.set(row, weight);
    }
  }

  async shelf() { return this.ingredients; }

  async also() { return this.ingredients.map((entry) => entry.also); }

  async words(asked) {
    const near = [...this.postings].map(([word, held]) => [nearness(asked, word), held]);
    return near.filter(([nearby]) => nearby)
      .map(([nearby, held]) => [nearby, [...held].map(([row, weight]) => [weight, [row]])]);
  }

  async column(name) {
    const bits = (list, held) => held.reduce((sum, word) => sum | (1 << list.indexOf(word)), 0);
    const kept = (recipe, good) => recipe.ingredients.filter((n) => good(this.ingredients[n])).length;
    const figure = {
      kind: (recipe) => this.kinds.indexOf(recipe.kind) + 1,
      protein: (recipe) => Math.floor(recipe.protein_g),
      energy: (recipe) => recipe.energy_kcal,
      minutes: (recipe) => recipe.minutes,
      diets: (recipe) => bits(this.diets, recipe.diets),
      allergens: (recipe) => bits(this.allergens, recipe.allergens),
      needs: (recipe) => kept(recipe, (entry) => !isWater(entry)),
      staples: (recipe) => kept(recipe, isStaple),
    }[name];
    return (row) => figure(this.recipes[row]);
  }

  async own(number) {
    const uses = [], swaps = [];
    this.recipes.forEach((recipe, row) => {
      if (recipe.ingredients.includes(number)) uses.push(row);
      for (const [verdict, runs] of Object.entries(recipe.swaps))
        for (const [from, ...others] of runs)
          if (others.includes(number) && recipe.ingredients.includes(from)) swaps.push([verdict, from, [row]]);
    });
    return { uses, swaps };
  }

  async rows(ids) { return ids.map((id) => this.recipes[id]); }
}

/* -- pieces -------------------------------------------------------------------------------------- */

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const VALUES = new Map([...DIGITS].map((digit, value) => [digit, value]));

/* The numbers of a list of steps, or of a text of bits. */
function numbersIn(posting) {
  const out = [];
  if (typeof posting !== "string") {
    let at = 0;
    for (const step of posting) out.push(at += step);
    return out;
  }
  for (let i = 0; i < posting.length; i++)
    for (let bits = VALUES.get(posting[i]), bit = 0; bits; bits >>= 1, bit++)
      if (bits & 1) out.push(i * 6 + bit);
  return out;
}

/* As the name of a file: letters and digits as they are, others by their bytes. */
const plain = (word) => [...word].map((letter) => /[a-z0-9]/.test(letter) ? letter
  : "_" + [...new TextEncoder().encode(letter)].map((byte) => byte.toString(16).padStart(2, "0")).join("")).join("");

class Pieces {
  constructor(folder, head) {
    this.folder = folder;
    this.count = head.shards.recipes;
    this.each = head.shards.rows_each;
    this.held = new Map();
    for (const list of ["kinds", "diets", "allergens"]) this[list] = head[list];
  }

  /* Each piece is fetched once. One that is not there has nothing in it. */
  piece(path, otherwise) {
    if (!this.held.has(path))
      this.held.set(path, fetched(`${this.folder}${path}.json`).catch((fault) => {
        if (otherwise === undefined) throw fault;
        return otherwise;
      }));
    return this.held.get(path);
  }

  async shelf() { return (await this.piece("shelf")).ingredients; }

  async also() { return (await this.piece("also")).also; }

  async placesOf(key, word, places) {
    const all = places === 1 ? await this.piece(`words/${key}-${plain(word)}`) : places;
    return all.map(([weight, posting]) => [weight, numbersIn(posting)]);
  }

  /* [nearness, key, word, places] of the words of one piece that are like `asked`. */
  async near(asked, letters) {
    const key = plain(letters.join(""));
    return Object.entries(await this.piece(`words/${key}`, {}))
      .map(([word, places]) => [nearness(asked, word), key, word, places]).filter(([nearby]) => nearby);
  }

  /* Slips of the finger are looked for only where nothing begins as asked; one among the first two
   * letters where a letter was added or two were swapped, since other pieces can't be guessed. */
  async words(asked) {
    const [first, second, third] = asked;
    if (!second) return [];
    const near = await this.near(asked, [first, second]);
    let best = near.filter(([nearby]) => nearby > 0.5);
    if (!best.length) best = near;
    if (!best.length && third)
      best = (await Promise.all([[first, third], [second, first], [second, third]]
        .map((letters) => this.near(asked, letters)))).flat();
    return Promise.all(best.map(async ([nearby, key, word, places]) =>
      [nearby, await this.placesOf(key, word, places)]));
  }

  async column(name) {
    const { width, of } = await this.piece(`columns/${name}`);
    return (row) => {
      let value = 0;
      for (let i = width; i-- > 0;) value = value * 64 + VALUES.get(of[row * width + i]);
      return value;
    };
  }

  async own(number) {
    const { slug } = (await this.shelf())[number];
    const { uses, swaps } = await this.piece(`own/${slug}`, { uses: [], swaps: [] });
    return { uses: numbersIn(uses),
      swaps: swaps.map(([verdict, from, posting]) => [verdict, from, numbersIn(posting)]) };
  }

  async rows(ids) {
    return Promise.all(ids.map(async (id) =>
      (await this.piece(`rows/${Math.floor(id / this.each)}`)).rows[id % this.each]));
  }
}

/* The index in `folder` (its address, ending in a slash). */
export async function openStore(folder) {
  const head = await fetched(`${folder}index.json`);
  return head.shards ? new Pieces(folder, head) : new Whole(head);
}
