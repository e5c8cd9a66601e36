/* Which pages the tests of the demo look at: one of each kind, the largest where there are many. */
"use strict";
const fs = require("node:fs");
const path = require("node:path");

const sizeOf = (file) => fs.existsSync(file) ? fs.statSync(file).size : 0;

/* The largest page right below `room` whose folder's name fits `named`, as a list of one or none. */
function largest(demo, room, named = /./) {
  const folder = path.join(demo, room);
  if (!fs.existsSync(folder)) return [];
  return fs.readdirSync(folder).filter((name) => named.test(name))
    .map((name) => [`/${room}/${name}/`, sizeOf(path.join(folder, name, "index.html"))])
    .filter(([, size]) => size).sort((a, b) => b[1] - a[1]).slice(0, 1).map(([page]) => page);
}

/* Addresses within the site that was built to the folder `demo`; none where there is none. */
function pageKinds(demo) {
  if (!fs.existsSync(path.join(demo, "index.html"))) return [];
  const recipe = largest(demo, "recipes"), inside = (named) => recipe.flatMap((page) =>
    largest(demo, page.slice(1, -1), named));
  return ["/", "/recipes/", "/swaps/", "/search/", "/ingredients/", "/bake-with/", "/balance/",
    ...recipe, ...inside(/^swaps$/), ...inside(/^with-/),
    ...["ingredients", "bake-with", "kinds", "tags", "pages"].flatMap((room) => largest(demo, room))];
}

module.exports = { pageKinds };
