/* Times in the steps become buttons that count down at the foot of the screen. */
const panel = document.querySelector(".timers"), words = panel.dataset, title = document.title;
const [said, list, pattern] = panel.children, timers = new Set();
let audio, ticking;

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

function tone() {
  for (let i = 0; audio && i < 3; i++) {
    const sound = audio.createOscillator(), at = audio.currentTime + i / 2;
    sound.frequency.value = 880;
    sound.connect(audio.destination);
    sound.start(at);
    sound.stop(at + 0.2);
  }
}

const left = ({ end, rest }) => end ? Math.max(end - Date.now(), 0) : rest;

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

function start(name, seconds, from) {
  const line = pattern.content.firstChild.cloneNode(true), [, what, pause, out] = line.children;
  const timer = { name, line, end: Date.now() + seconds * 1000 };
  what.textContent = name;
  for (const button of [pause, out])
    button.setAttribute("aria-label", `${button.textContent}: ${name}`);
  pause.addEventListener("click", () => {
    timer.rest = left(timer);
    timer.end = timer.end ? 0 : Date.now() + timer.rest;
    pause.setAttribute("aria-pressed", String(!timer.end));
  });
  out.addEventListener("click", () => {
    timers.delete(timer);
    line.remove();
    said.textContent = "";
    show();
    from.focus();
  });
  list.append(line);
  timers.add(timer);
  /* A page may sound only once somebody pressed something on it. */
  audio ||= window.AudioContext && new AudioContext();
  show();
  said.textContent = `${words.started} ${name}`;
}

for (const time of document.querySelectorAll(".method li time")) {
  const text = time.textContent, name = nameOf(time), press = document.createElement("button");
  const seconds = Number(time.dateTime.slice(2, -1)); // "PT300S"
  press.textContent = text;
  press.setAttribute("aria-label", `${words.start} ${text}`);
  press.addEventListener("click", () => start(name, seconds, press));
  time.replaceChildren(press);
}
