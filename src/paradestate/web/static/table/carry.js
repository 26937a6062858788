/* A carry file: the table page of one evening as a single file, that works from the phone's own
   storage and meets no computer. What it holds it gives back. */
import {several} from "./element.js";
import {codeTexts, fileText, takenIn} from "./giving.js";
import {handing} from "./handing.js";
import {PassingStore} from "./passing.js";
import {openStore} from "./store.js";
import {Tapping, stayOpen} from "./tapping.js";

const KIND = "text/plain";
const carried = JSON.parse(document.getElementById("carried").textContent);
const about = {force: carried.name, title: carried.title, carry: carried.carry};
const given = {number: 0, name: "", text: "", codes: [], at: 0, canShare: false, told: ""};
let tapping;
let openings = 0;
let since = 0; // entries that were never given back, as far as this page knows

/* Everything that isn't in the file itself, whoever told it. */
async function held() {
  const there = new Set(carried.entries.map(({id}) => id));
  return (await tapping.store.entries()).filter(({id}) => !there.has(id));
}

function file() {
  return new File([given.text], given.name, {type: KIND});
}

/* What is said of the storage is what is known of it: that it kept something shows when it is opened again. */
async function noted() {
  const {seen, store} = tapping;
  const entries = await held();
  const last = (await store.about("given")) ?? {number: 0, at: ""};
  since = entries.length - last.number;
  const number = several(entries.length, "entry", "entries");
  const back = last.at ? `, ${since || "none"} of them since they were given back at ${last.at}` : "";
  const kept = entries.length ? `${number} kept on this phone${back}. ` : "";
  if (seen.isPassing) {
    seen.why = `This browser keeps nothing: ${entries.length ? `${number}${back} would be` : "all would be"} `
      + "lost once this page is closed. Leave it open, and give back before you close it, best after each turn.";
  } else if (openings < 2) {
    seen.why = `${kept}Opened here for the first time: close it and open it again before the game. If this `
      + "line stands here still, this browser keeps nothing: leave the page open, and give back before you close it.";
  } else {
    seen.why = kept || "Kept on this phone";
  }
  given.number = entries.length;
  given.text = fileText(about, entries);
  const day = new Date().toISOString().slice(0, 10);
  given.name = `${carried.name}-${day}-${seen.device}.txt`.replace(/[^\p{L}\p{N}.-]+/gu, "-");
  given.canShare = Boolean(navigator.canShare?.({files: [file()]}));
  given.codes = [];
  tapping.redraw();
}

/* Of a file alone: whether a code that was shown was read, nobody knows here. */
async function gaveBack(how) {
  const at = new Date().toTimeString().slice(0, 5);
  await tapping.store.keep("given", {number: given.number, at});
  await noted();
  given.told = how;
  tapping.redraw();
}

const act = {
  give: () => tapping.inTurn(async () => {
    given.told = "";
    await noted();
    tapping.seen.panel = () => handing(given, act);
    tapping.redraw();
    scrollTo(0, 0);
  }),
  back: () => {
    tapping.seen.panel = null;
    tapping.redraw();
  },
  save: () => tapping.inTurn(() => {
    const address = URL.createObjectURL(file());
    const link = Object.assign(document.createElement("a"), {href: address, download: given.name});
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
    return gaveBack(`Saved as ${given.name}: look for it among the phone's downloads.`);
  }),
  send: async () => {
    try {
      await navigator.share({files: [file()]});
    } catch (error) {
      given.told = `It wasn't sent: ${error?.message ?? error}. Save it as a file.`;
      tapping.redraw();
      return;
    }
    await tapping.inTurn(() => gaveBack("Sent."));
  },
  codes: () => tapping.inTurn(async () => {
    const isShown = given.codes.length > 0;
    given.codes = isShown ? [] : await codeTexts(about, await held());
    given.at = 0;
    tapping.redraw();
    scrollTo(0, 0);
  }),
  turnTo: (at) => {
    given.at = (at + given.codes.length) % given.codes.length;
    tapping.redraw();
  },
  takeIn: (files) => tapping.inTurn(async () => {
    const texts = await Promise.all([...files].map(async (each) => ({name: each.name, text: await each.text()})));
    const {entries, wrong} = takenIn(about, texts);
    const before = (await held()).length;
    await tapping.store.putTheirs(entries, {});
    await tapping.refreshed();
    await noted();
    const more = several((await held()).length - before, "new entry", "new entries");
    given.told = [texts.length ? `Taken in: ${more}.` : "No file was chosen.", ...wrong.slice(0, 5)].join(" ");
    tapping.redraw();
  }),
};

async function storeOrNone() {
  try {
    const store = await openStore(`carry ${carried.carry}`);
    openings = ((await store.about("openings")) ?? 0) + 1;
    await store.keep("openings", openings);
    return store;
  } catch {
    return new PassingStore();
  }
}

async function begun() {
  const store = await storeOrNone();
  tapping = new Tapping(document.getElementById("page"), {store, after: noted});
  const {seen} = tapping;
  seen.is = "carried";
  seen.isPassing = store instanceof PassingStore;
  seen.force = carried.force;
  seen.listed = carried.games;
  seen.buttons = [["Give back", "give", act.give]];
  await store.putTheirs(carried.entries, {});
  await tapping.begin();
  await tapping.refreshed();
  await noted();
  stayOpen();
  addEventListener("beforeunload", (event) => {
    if (seen.isPassing && since > 0) event.preventDefault();
  });
}

begun().catch((error) => {
  document.getElementById("page").textContent = `This browser can't show it: ${error}. Write on paper.`;
});
