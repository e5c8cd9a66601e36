/* A small site of one page a kind, made from the views in tests/site/views with one of the themes,
 * the default where none is named: what the tests of the pages run on, whatever the demo holds. */
"use strict";
const fs = require("node:fs");
const path = require("node:path");
const { execFileSync } = require("node:child_process");

const top = path.join(__dirname, "../..");
const views = path.join(top, "tests/site/views");
const themes = ["plain", "paper"];
const themeFolder = (theme) => path.join(top, "themes", theme);
const fill = path.resolve(top, process.env.OUT || "build", "tests/tools/fill");
const readJson = (file) => JSON.parse(fs.readFileSync(file, "utf8"));

const templates = ["home", "recipe", "notes", "swapped", "list", "ingredient", "ingredients", "chart",
  "search", "plain", "missing", "cupboard", "bake", "water"];

/* The whole view of a page: what all share, the theme's words, its own; the page of notes has the
 * swaps of the recipe. */
function viewOf(template, theme = "plain") {
  return { ...readJson(path.join(views, "common.json")),
    words: readJson(path.join(themeFolder(theme), "words-en.json")),
    ...(template === "notes" && { swaps: readJson(path.join(views, "recipe.json")).swaps }),
    ...readJson(path.join(views, `${template}.json`)) };
}

/* One template filled by our own program from `view`. */
function filled(template, view, scratch, theme = "plain") {
  const file = path.join(scratch, "view.json");
  fs.writeFileSync(file, JSON.stringify(view));
  return execFileSync(fill, [themeFolder(theme), template, file],
    { encoding: "utf8", maxBuffer: 64 * 1024 * 1024 });
}

function write(folder, name, bytes) {
  const file = path.join(folder, name);
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(file, bytes);
}

const drawn = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 800 600">' +
  '<path fill="#d9cdbb" d="M0 0h800v600H0z"/><circle cx="400" cy="320" r="180" fill="#b9895a"/></svg>';

/* Pictures the views name: the demo's where it has them. */
function writePictures(folder, text) {
  for (const [name] of text.matchAll(/pictures\/[a-z-]+\.svg/g)) {
    const demo = path.join(top, "content", name);
    write(folder, name, fs.existsSync(demo) ? fs.readFileSync(demo) : drawn);
  }
}

/* What the picker of a recipe page fetches: here a recipe without swaps. */
const document = { claims: [], swaps: [], picking: { figures: [], portion: [], portion_g: 0,
  lines: [], foods: {}, contains: {}, diets: [] } };

/* Writes the site into `folder`; returns [template, path of its page] pairs. */
function writeMock(folder, theme = "plain") {
  const look = themeFolder(theme);
  for (const name of fs.readdirSync(look))
    if (!/\.(mustache|json|md)$/.test(name))
      write(folder, `theme/${name}`, fs.readFileSync(path.join(look, name)));
  const index = fs.readFileSync(path.join(views, "index.json"), "utf8");
  write(folder, "search/index.json", index);
  writePictures(folder, index);
  return templates.map((template) => {
    const view = viewOf(template, theme);
    const page = view.page.path.endsWith("/") || view.page.path === ""
      ? `${view.page.path}index.html` : view.page.path;
    write(folder, page, filled(template, view, folder, theme));
    if (template === "recipe")
      write(folder, path.join(view.page.path, "recipe.json"), JSON.stringify(document));
    writePictures(folder, JSON.stringify(view));
    return [template, `/${view.page.path}`];
  });
}

module.exports = { writeMock, viewOf, filled, templates, themes, themeFolder, top };

if (require.main === module) console.log(writeMock(process.argv[2]));
