/* Taps become entries on the phone's disk, then are shown. Where they go from there isn't its matter:
   the table page brings them to its computer, a carry file gives them back. */
import {struckOut} from "./board.js";
import {draw} from "./drawing.js";
import {plain} from "./element.js";
import {ended, newId, noted, opened, strike, told} from "./entry.js";
import {isUnsent, unsent} from "./store.js";
import {gameState, isTold, number} from "./tally.js";

const NOTHING_ASKED = {text: "", colour: null, bars: null, sign: null};

export class Tapping {
  #place;
  #after;
  #mine = null; // the entry that undo strikes out
  #queue = Promise.resolve();

  /* `after` is called when something was written, and when another game is looked at. */
  constructor(place, {store, after}) {
    this.store = store;
    this.#place = place;
    this.#after = after;
    this.act = this.#acts();
    this.seen = {
      force: null, listed: [], games: [], game: "", state: gameState([]), view: "board", leaf: null,
      asked: NOTHING_ASKED, device: "", waiting: 0, refused: [], is: "none", why: "", metAt: "",
      skew: "", doubts: [], isUnkept: false, isPassing: false, lost: "", isDark: false, draft: "", broken: "",
      last: null,
      log: [], words: () => "", panel: null, buttons: [], carry: "",
    };
  }

  /* What was kept when the page was open before. */
  async begin() {
    const {seen, store} = this;
    seen.game = (await store.about("game")) ?? "";
    seen.isDark = (await store.about("dark")) ?? false;
    seen.device = (await store.about("device")) ?? "";
    if (!seen.device) await this.named("phone").then(() => store.keep("named", ""));
  }

  /* One after the other, so that each tap sees what the one before it wrote. */
  inTurn(work) {
    this.#queue = this.#queue.then(work).catch((error) => {
      this.seen.lost = `That wasn't kept: ${error?.message ?? error}. Write it on paper.`;
      this.redraw();
    });
    return this.#queue;
  }

  /* The name under which this phone tells: its own, with four digits that no other has. */
  async named(words) {
    const digits = (await this.store.about("digits")) ?? newId().slice(0, 4);
    await this.store.keep("digits", digits);
    await this.store.keep("named", words);
    this.seen.device = `${words} ${digits}`;
    await this.store.keep("device", this.seen.device);
  }

  redraw() {
    if (this.seen.isDark) document.documentElement.dataset.theme = "dark";
    else delete document.documentElement.dataset.theme;
    draw(this.#place, this.seen, this.act);
  }

  /* Everything that is shown, anew from what the disk holds. */
  async refreshed() {
    const {seen} = this;
    const every = await this.store.entries();
    const mentions = new Set(every.filter(({says}) => says.played?.game === seen.game).map(({id}) => id));
    const here = every.filter((each) => mentions.has(each.id) || mentions.has(each.says["struck out"]));
    seen.state = gameState(here);
    seen.games = gamesKnown(seen.listed, every);
    const waiting = unsent(every);
    seen.waiting = waiting.length;
    seen.refused = waiting.filter(({why}) => why);
    seen.words = (id) => wordsOf(every.find((each) => each.id === id));
    seen.log = logOf(here, seen.state.struck);
    const last = here.filter((each) => each.isOwn && isTakenBack(each.says.played) && !seen.state.struck.has(each.id))
      .sort((one, other) => other.order - one.order)[0];
    this.#mine = last?.id ?? null;
    seen.last = last ? wordsOf(last, shortly) : null;
    this.redraw();
  }

  async #write(made) {
    const {seen} = this;
    const teller = (counter) => ({game: seen.game, device: seen.device, counter, now: new Date()});
    await this.store.write((counter) => made(teller(counter)));
    seen.lost = "";
    await this.refreshed();
    await this.#after();
  }

  #acts() {
    const inTurn = (work) => this.inTurn(work);
    const write = (made) => this.#write(made);
    const tell = (aspect, name, value) => {
      const turn = number(this.seen.state.standing("turn", "")) || null;
      const over = this.seen.state.standing(aspect, name).over;
      return write((teller) => told(teller, {subject: [aspect, name], value, over, turn}));
    };
    return {
      tell: (aspect, name, value) => inTurn(() => tell(aspect, name, value)),
      broken: (text) => { this.seen.broken = text; },
      repair: (name) => inTurn(async () => {
        const isThere = isTold(this.seen.state.standing("to repair", name));
        await tell("to repair", name, isThere ? "" : this.seen.broken.trim() || "broken");
        if (!isThere) this.seen.broken = "";
        this.redraw();
      }),
      undo: () => inTurn(async () => {
        const struck = this.#mine;
        if (struck) await write((teller) => strike(teller, {struck, reason: "tapped by mistake"}));
      }),
      begin: (kind) => inTurn(async () => {
        this.seen.game = newId();
        await this.store.keep("game", this.seen.game);
        await write((teller) => opened(teller, kind));
      }),
      draft: (text) => { this.seen.draft = text; },
      note: () => inTurn(async () => {
        const text = this.seen.draft.trim();
        if (!text) return;
        await write((teller) => noted(teller, text));
        this.seen.draft = "";
        this.redraw();
      }),
      end: () => inTurn(() => write((teller) => ended(teller))),
      choose: (game) => inTurn(async () => {
        this.seen.game = game;
        await this.store.keep("game", game);
        await this.refreshed();
        await this.#after();
      }),
      rename: (name) => inTurn(async () => {
        this.seen.device = name.trim() || this.seen.device;
        await this.store.keep("device", this.seen.device);
        await this.refreshed();
      }),
      dark: () => inTurn(async () => {
        this.seen.isDark = !this.seen.isDark;
        await this.store.keep("dark", this.seen.isDark);
        this.redraw();
      }),
      show: (view) => { this.seen.view = view; this.redraw(); scrollTo(0, 0); },
      open: (name) => { this.seen.leaf = name; this.redraw(); },
      look: (part) => { this.seen.asked = {...this.seen.asked, ...part}; this.redraw(); },
    };
  }
}

function isTakenBack(played) {
  return Boolean(played?.told || played?.noted || played?.ended);
}

/* The games that the computer named, and those begun here of which it doesn't know yet. */
function gamesKnown(listed, entries) {
  const struck = struckOut(entries);
  const events = entries.filter(({id, says}) => says.played && !struck.has(id));
  const over = new Set(events.filter(({says}) => says.played.ended).map(({says}) => says.played.game));
  const named = new Set(listed.map(({game}) => game));
  const own = events.filter(({says}) => says.played.opened && !named.has(says.played.game))
    .map(({says: {on, played: {game, opened: {game: name}, device: by = ""}}}) =>
      ({game, name, on, by, ended: false}));
  return [...listed, ...own].map((each) => ({...each, ended: each.ended || over.has(each.game)}));
}

function logOf(entries, struck) {
  const strikes = new Map(entries.filter(({says}) => says.kind === "struck-out")
    .map(({says}) => [says["struck out"], says.note ?? ""]));
  return entries.filter(({says}) => says.played)
    .sort((one, other) => Number(other.says.written > one.says.written)
      - Number(other.says.written < one.says.written) || other.order - one.order)
    .map((each) => ({
      id: each.id, words: wordsOf(each), by: each.says.played.device ?? "",
      isStruck: struck.has(each.id), reason: strikes.get(each.id),
      isWaiting: isUnsent(each),
      turn: each.says.played.told?.turn ? `turn ${each.says.played.told.turn}` : "",
    }));
}

/* What an entry says, in the words of the log. */
export function wordsOf(entry, named = plain) {
  const said = entry?.says.played ?? {};
  if (said.told) {
    const {subject: [aspect, name], value} = said.told;
    if (aspect === "out") return `${named(name)} ${value || "back"}`;
    if (aspect === "to repair") return `${named(name)} ${value ? `to repair: ${value}` : "needs no repair"}`;
    return [aspect, named(name), value || "as at the start"].filter(Boolean).join(" ");
  }
  if (said.opened) return `${said.opened.game} begun`;
  if (said.noted) return [named(said.noted.about ?? ""), said.noted.text].filter(Boolean).join(": ");
  if (said.ended) return ["the game is over", said.ended.outcome].filter(Boolean).join(": ");
  return diceWords(said) || (entry?.says.kind ?? "");
}

/* The end of a name, which tells it from its neighbours, where there is room for no more. */
function shortly(name) {
  return plain(name.split(" / ").slice(-2).join(" / "));
}

/* What was rolled, asked for and bound where the evening is written down with forms. */
function diceWords({rolled, asked, committed, spoken, revealed}) {
  if (rolled) {
    const {number: many = 0, purpose, faces = [], total} = rolled;
    const shown = faces.length > 1 ? `${faces.join(", ")}, ${total} in all` : `${total}`;
    return `${many ? `${many} x ` : ""}${purpose}: rolled ${shown}`;
  }
  if (asked) {
    const {number: many, entry, allowed = null, taken = 0} = asked;
    if (allowed === null && !taken) return `${many} x ${entry}: to be asked for`;
    return `${entry}: ${taken || "none"} taken`;
  }
  if (committed) return `${committed.purpose}: the machine is bound`;
  if (spoken) return `the opponent’s word: ${spoken.word}`;
  return revealed ? "the machine’s secret told" : "";
}

/* The screen stays on, and the browser is asked once, at the first tap, to keep what it holds. */
export function stayOpen() {
  document.addEventListener("visibilitychange", stayAwake);
  document.addEventListener("click", () => { stayAwake(); navigator.storage?.persist?.(); }, {once: true});
}

/* Where the phone lets a page ask for it (W3C Screen Wake Lock). */
async function stayAwake() {
  if (document.visibilityState !== "visible" || !navigator.wakeLock) return;
  try {
    await navigator.wakeLock.request("screen");
  } catch {
    // a phone that saves its battery refuses; nothing depends on it
  }
}
