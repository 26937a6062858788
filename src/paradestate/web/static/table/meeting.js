/* The phone meets its computer: it brings what it wrote, and fetches what it lacks.
   However often and in whatever order it happens, each entry arrives once: its UUID is its own. */
import {unsent} from "./store.js";

const MOST_AT_ONCE = 200;
const PATIENCE_MS = 10000;

/* What came of it: {is: "met" | "away" | "unpaired" | "stopped", ...}. Never throws. */
export async function meet(store, {base, game}) {
  try {
    return await met(store, {base, game});
  } catch (error) {
    if (error instanceof Unpaired) return {is: "unpaired"};
    if (error instanceof Stopped) return {is: "stopped", why: error.message};
    return {is: "away"};
  }
}

class Unpaired extends Error {}
class Stopped extends Error {}

async function met(store, {base, game}) {
  const cursorKey = `cursor ${game}`;
  const after = (await store.about(cursorKey)) ?? "";
  const query = new URLSearchParams({game, after});
  const said = await asked(`${base}/entries.json?${query}`);
  await store.putTheirs(said.entries, {cursorKey, cursor: said.cursor});
  const waiting = unsent(await store.entries());
  for (let start = 0; start < waiting.length; start += MOST_AT_ONCE) {
    const sent = waiting.slice(start, start + MOST_AT_ONCE).map(({id, says}) => ({id, says}));
    const body = new URLSearchParams({token: said.token, entries: JSON.stringify(sent)});
    const {answers} = await asked(`${base}/take`, {method: "POST", body});
    await store.noteAnswers(answers);
  }
  const force = await asked(`${base}/force.json`);
  await store.keep("force", force);
  await store.keep("games", said.games);
  return {is: "met", device: said.device, now: said.now, games: said.games, doubts: said.doubts, force};
}

async function asked(address, options = {}) {
  const answer = await fetch(address, {
    ...options, cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS),
  });
  const isJson = (answer.headers.get("content-type") ?? "").startsWith("application/json");
  if (answer.redirected || answer.status === 403) throw new Unpaired();
  if (!isJson) throw new Stopped(`The computer answered ${answer.status}.`);
  const said = await answer.json();
  if (said.stops) throw new Stopped(said.stops.join(" "));
  return said;
}
