/* Added by the preview to pages as they are served: asks whether something is new, shows the
 * problems of the content on top of the page, and loads the page again when it changed. */
"use strict";
(() => {
  const { token } = document.currentScript.dataset;
  let notices = "";
  let shown = "";

  const make = (name, properties, ...children) => {
    const element = Object.assign(document.createElement(name), properties);
    element.append(...children);
    return element;
  };
  const count = (number, word) => `${number} ${word}${number === 1 ? "" : "s"}`;

  /* Hidden problems stay hidden on the next page, until they are others. */
  const hidden = {
    is(words) { try { return sessionStorage.getItem("preview-hidden") === words; } catch { return false; } },
    set(words) { try { sessionStorage.setItem("preview-hidden", words); } catch { /* private mode */ } },
  };

  const board = make("section", { className: "preview-board", hidden: true });
  board.setAttribute("aria-label", "Problems in the content");
  const status = make("div", { className: "preview-news" });
  status.setAttribute("aria-live", "polite");
  const close = make("button", { type: "button", textContent: "Hide" });
  board.append(status, close);
  close.addEventListener("click", () => {
    board.hidden = true;
    hidden.set(shown);
  });

  function problemItem({ file, line, column, level, message, hint }) {
    const where = line ? `${file}:${line}:${column}` : file;
    const item = make("li", {}, make("strong", { textContent: level }), " ",
      make("code", { textContent: where }), " ", message);
    if (hint) item.append(make("span", { className: "preview-hint", textContent: hint }));
    return item;
  }

  function show(found) {
    const { errors, warnings, problems } = found;
    const words = [errors && count(errors, "error"), warnings && count(warnings, "warning")];
    const more = errors + warnings - problems.length;
    shown = JSON.stringify(found);
    board.hidden = problems.length === 0 || hidden.is(shown);
    status.replaceChildren();
    if (!problems.length) return;
    const last = errors ? "; a page with errors shows its last good state" : "";
    const rows = [
      make("p", { className: "preview-sum",
        textContent: `${words.filter(Boolean).join(", ")} in the content${last}` }),
      make("ul", {}, ...problems.map(problemItem))];
    if (more) rows.push(make("p", { textContent: `and ${more} more` }));
    /* A moment later: what stands in a region before it is seen is not read out. */
    setTimeout(() => status.replaceChildren(...rows), 50);
  }

  function showEnded() {
    status.replaceChildren(make("p", { className: "preview-sum",
      textContent: "The preview has ended. This page loads again when it is back." }));
    board.hidden = false;
  }

  async function ask() {
    const about = new URLSearchParams({ page: location.pathname, token, notices });
    const answer = await fetch(`/.preview/changes?${about}`, { cache: "no-store" });
    if (!answer.ok) throw new Error(String(answer.status));
    const news = await answer.json();
    if (news.token !== token) {
      location.reload();
      return false;
    }
    if (String(news.notices) !== notices) show(news.found);
    notices = String(news.notices);
    return true;
  }

  async function listen() {
    let failures = 0;
    for (;;) {
      try {
        if (!await ask()) return;
        if (failures > 1) return void location.reload();
        failures = 0;
      } catch {
        if (++failures === 2) showEnded();
        await new Promise((resolve) => setTimeout(resolve, 1000));
      }
    }
  }

  document.body.prepend(board);
  listen();
})();
