/* The table page: taps become entries on the phone's disk, then are shown, then brought home. */
import {draw, plain} from "./drawing.js";
import {ended, newId, opened, strike, told} from "./entry.js";
import {isUnsent, meet, unsent} from "./meeting.js";
import {openStore} from "./store.js";
import {gameState, number} from "./tally.js";

const AGAIN_MS = 20000;
const WAITING_MS = 4000;
const SKEW_MINUTES = 3;
const NOTHING_ASKED = {text: "", colour: null, bars: null, sign: null};

const {base, force: forceName} = document.body.dataset;
const place = document.getElementById("page");
const seen = {
  force: null, games: [], game: "", state: gameState([]), view: "board", leaf: null,
  asked: NOTHING_ASKED, device: "", waiting: 0, refused: [], is: "none", why: "", metAt: "",
  skew: "", doubts: [], isUnkept: false, lost: "", isDark: false, last: null, log: [], words: () => "",
};
let store;
let mine = null; // the entry that undo strikes out
let queue = Promise.resolve();

/* One after the other, so that each tap sees what the one before it wrote. */
function inTurn(work) {
  queue = queue.then(work).catch((error) => {
    seen.lost = `That wasn't kept: ${error?.message ?? error}. Write it on paper.`;
    redraw();
  });
  return queue;
}

async function write(made) {
  const teller = (counter) => ({game: seen.game, device: seen.device, counter, now: new Date()});
  await store.write((counter) => made(teller(counter)));
  seen.lost = "";
  await refreshed();
  meetSoon();
}

const act = {
  tell: (aspect, name, value) => inTurn(() => {
    const turn = number(seen.state.standing("turn", "")) || null;
    const over = seen.state.standing(aspect, name).over;
    return write((teller) => told(teller, {subject: [aspect, name], value, over, turn}));
  }),
  undo: () => inTurn(async () => {
    const struck = mine;
    if (struck) await write((teller) => strike(teller, {struck, reason: "tapped by mistake"}));
  }),
  begin: (kind) => inTurn(async () => {
    seen.game = newId();
    await store.keep("game", seen.game);
    await write((teller) => opened(teller, kind));
  }),
  end: () => inTurn(() => write((teller) => ended(teller))),
  choose: (game) => inTurn(async () => {
    seen.game = game;
    await store.keep("game", game);
    await refreshed();
    meetSoon();
  }),
  rename: (name) => inTurn(async () => {
    seen.device = name.trim() || seen.device;
    await store.keep("device", seen.device);
    await refreshed();
  }),
  dark: () => inTurn(async () => {
    seen.isDark = !seen.isDark;
    await store.keep("dark", seen.isDark);
    redraw();
  }),
  show: (view) => { seen.view = view; redraw(); scrollTo(0, 0); },
  open: (name) => { seen.leaf = name; redraw(); },
  look: (part) => { seen.asked = {...seen.asked, ...part}; redraw(); },
};

function redraw() {
  if (seen.isDark) document.documentElement.dataset.theme = "dark";
  else delete document.documentElement.dataset.theme;
  draw(place, seen, act);
}

/* Everything that is shown, anew from what the disk holds. */
async function refreshed() {
  const every = await store.entries();
  const mentions = new Set(every.filter(({says}) => says.played?.game === seen.game).map(({id}) => id));
  const here = every.filter((each) => mentions.has(each.id) || mentions.has(each.says["struck out"]));
  seen.state = gameState(here);
  const waiting = unsent(every);
  seen.waiting = waiting.length;
  seen.refused = waiting.filter(({why}) => why);
  seen.words = (id) => wordsOf(every.find((each) => each.id === id));
  seen.log = logOf(here);
  const last = here.filter((each) => each.isOwn && each.says.played?.told && !seen.state.struck.has(each.id))
    .sort((one, other) => other.order - one.order)[0];
  mine = last?.id ?? null;
  seen.last = last ? wordsOf(last) : null;
  redraw();
}

function logOf(entries) {
  const strikes = new Map(entries.filter(({says}) => says.kind === "struck-out")
    .map(({says}) => [says["struck out"], says.note ?? ""]));
  return entries.filter(({says}) => says.played)
    .sort((one, other) => Number(other.says.written > one.says.written)
      - Number(other.says.written < one.says.written) || other.order - one.order)
    .map((each) => ({
      id: each.id, words: wordsOf(each), by: each.says.played.device ?? "",
      isStruck: seen.state.struck.has(each.id), reason: strikes.get(each.id),
      isWaiting: isUnsent(each),
      turn: each.says.played.told?.turn ? `turn ${each.says.played.told.turn}` : "",
    }));
}

function wordsOf(entry) {
  const said = entry?.says.played ?? {};
  if (said.told) {
    const {subject: [aspect, name], value} = said.told;
    if (aspect === "out") return `${plain(name)} ${value || "back"}`;
    return [aspect, plain(name), value || "as at the start"].filter(Boolean).join(" ");
  }
  if (said.opened) return `${said.opened.game} begun`;
  if (said.ended) return `ended ${said.ended.outcome ?? ""}`;
  return entry?.says.kind ?? "";
}

let meeting = null;
let soon = 0;
let isAgain = false;

function meetSoon() {
  clearTimeout(soon);
  soon = setTimeout(meetNow, 300);
}

/* At once; where a meeting is under way again after it, for what was written since. */
function meetNow() {
  clearTimeout(soon);
  if (meeting) {
    isAgain = true;
    return;
  }
  isAgain = false;
  meeting = met().finally(() => {
    meeting = null;
    soon = setTimeout(meetNow, isAgain ? 0 : seen.waiting ? WAITING_MS : AGAIN_MS);
  });
}

async function met() {
  const answer = await meet(store, {base, game: seen.game});
  await inTurn(async () => {
    seen.is = answer.is;
    seen.why = answer.why ?? "";
    if (answer.is === "met") {
      seen.force = answer.force;
      seen.games = answer.games;
      seen.doubts = answer.doubts;
      seen.metAt = new Date().toTimeString().slice(0, 5);
      const minutes = Math.round((new Date(answer.now) - new Date()) / 60000);
      seen.skew = Math.abs(minutes) < SKEW_MINUTES ? ""
        : `This phone's clock is ${Math.abs(minutes)} minutes ${minutes > 0 ? "behind" : "ahead of"} the computer's.`;
      if (!(await store.about("named")) && answer.device) await named(answer.device);
    }
    await refreshed();
  });
}

/* The name under which this phone tells: its own, with four digits that no other has. */
async function named(words) {
  const digits = (await store.about("digits")) ?? newId().slice(0, 4);
  await store.keep("digits", digits);
  await store.keep("named", words);
  seen.device = `${words} ${digits}`;
  await store.keep("device", seen.device);
}

/* The screen stays on, where the phone lets a page ask for it (W3C Screen Wake Lock). */
async function stayAwake() {
  if (document.visibilityState !== "visible" || !navigator.wakeLock) return;
  try {
    await navigator.wakeLock.request("screen");
  } catch {
    // a phone that saves its battery refuses; nothing depends on it
  }
}

async function begun() {
  store = await openStore(`table ${forceName}`);
  seen.force = (await store.about("force")) ?? null;
  seen.games = (await store.about("games")) ?? [];
  seen.game = (await store.about("game")) ?? "";
  seen.isDark = (await store.about("dark")) ?? false;
  seen.device = (await store.about("device")) ?? "";
  if (!seen.device) await named("phone").then(() => store.keep("named", ""));
  await refreshed();
  meetNow();
  addEventListener("online", meetNow);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") { meetNow(); stayAwake(); }
  });
  document.addEventListener("click", () => { stayAwake(); navigator.storage?.persist?.(); }, {once: true});
  if (navigator.serviceWorker) {
    navigator.serviceWorker.register(`${base}/worker.js`, {scope: base}).catch(() => {
      seen.isUnkept = true;
      redraw();
    });
  }
}

begun().catch((error) => {
  place.textContent = `This browser keeps nothing, so the page can't be used: ${error}. `
    + "Leave a private window, or write on paper.";
});
