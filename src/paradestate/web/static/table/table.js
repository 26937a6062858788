/* The table page: what is tapped is brought to its computer, whenever that is met. */
import {meet} from "./meeting.js";
import {openStore} from "./store.js";
import {Tapping, stayOpen} from "./tapping.js";

const AGAIN_MS = 20000;
const WAITING_MS = 4000;
const SKEW_MINUTES = 3;

const {base, carry, force: forceName} = document.body.dataset;
const place = document.getElementById("page");
let tapping;
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
    soon = setTimeout(meetNow, isAgain ? 0 : tapping.seen.waiting ? WAITING_MS : AGAIN_MS);
  });
}

async function met() {
  const {seen, store} = tapping;
  const answer = await meet(store, {base, game: seen.game});
  await tapping.inTurn(async () => {
    seen.is = answer.is;
    seen.why = answer.why ?? "";
    if (answer.is === "met") {
      seen.force = answer.force;
      seen.listed = answer.games;
      seen.doubts = answer.doubts;
      seen.metAt = new Date().toTimeString().slice(0, 5);
      const minutes = Math.round((new Date(answer.now) - new Date()) / 60000);
      seen.skew = Math.abs(minutes) < SKEW_MINUTES ? ""
        : `This phone's clock is ${Math.abs(minutes)} minutes ${minutes > 0 ? "behind" : "ahead of"} the computer's.`;
      if (!(await store.about("named")) && answer.device) await tapping.named(answer.device);
    }
    await tapping.refreshed();
  });
}

async function begun() {
  const store = await openStore(`table ${forceName}`);
  tapping = new Tapping(place, {store, after: meetSoon});
  const {seen} = tapping;
  seen.carry = carry;
  seen.force = (await store.about("force")) ?? null;
  seen.listed = (await store.about("games")) ?? [];
  await tapping.begin();
  await tapping.refreshed();
  meetNow();
  addEventListener("online", meetNow);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") meetNow();
  });
  stayOpen();
  if (navigator.serviceWorker) {
    navigator.serviceWorker.register(`${base}/worker.js`, {scope: base}).catch(() => {
      seen.isUnkept = true;
      tapping.redraw();
    });
  }
}

begun().catch((error) => {
  place.textContent = `This browser keeps nothing, so the page can't be used: ${error}. `
    + "Leave a private window, or write on paper.";
});
