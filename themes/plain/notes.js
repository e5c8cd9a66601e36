/* The page of all notes of a recipe: it finds those for what a reader owns, and opens what a link
 * leads to. */
import { counted } from "./found.js";

const takes = [...document.querySelectorAll(".takes [id]")].map((take) => ({
  take, note: take.closest(".note"), fold: take.closest("details"),
  words: (take.dataset.to ?? take.querySelector("a").textContent).toLowerCase().split(/[\s-]+/),
}));

function setUpPick(pick) {
  const input = pick.querySelector("input"), said = pick.querySelector("output");
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
      ? counted(found.length, said.dataset) : said.dataset.none;
  });
}

/* A link to one note opens what it is folded in. */
function openTarget() {
  const id = decodeURIComponent(location.hash.slice(1));
  const target = id && document.getElementById(id), fold = target && target.closest("details");
  if (!fold || fold.open) return;
  fold.open = true;
  target.scrollIntoView();
}

setUpPick(document.querySelector(".pick"));
addEventListener("hashchange", openTarget);
openTarget();
