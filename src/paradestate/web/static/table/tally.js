/* What a board comes to for a force: stands out, turn, fire missions, who is due.
   Nothing here knows of page or phone. */
import {AT_START, board, struckOut, subjectKey, tellings} from "./board.js";

/* How one game stands: `standing(aspect, name)`, what was asked for, and whether it has ended. */
export function gameState(entries) {
  const found = board(tellings(entries));
  const struck = struckOut(entries);
  const counted = entries.filter(({id}) => !struck.has(id));
  const event = (word) => counted.filter(({says}) => says.played?.[word]);
  return {
    struck,
    standing: (aspect, name) => found.get(subjectKey(aspect, name)) ?? AT_START,
    opened: event("opened").map(({says}) => says.played.opened)[0] ?? null,
    ended: event("ended").map(({says}) => says.played.ended)[0] ?? null,
    asked: event("asked").map(({says}) => says.played.asked),
    disputes: [...found].filter(([, each]) => each.isDisputed)
      .map(([key, each]) => ({subject: JSON.parse(key), standing: each})),
  };
}

/* A number that is told; where two are told the largest, and nought where none is. */
export function number(standing) {
  return Math.max(0, ...standing.values.map(Number).filter(Number.isFinite));
}

export function isTold(standing) {
  return standing.values.some((value) => value !== "");
}

/* Stands of a unit that are out, and how many it has. */
export function losses(unit, state) {
  const out = unit.stands.filter(({name}) => isTold(state.standing("out", name))).length;
  return {out, of: unit.stands.length};
}

/* Supporting troops with fire missions: how many there are and how many were used. */
export function missions(troop, state) {
  const own = state.standing("missions taken", troop.name);
  const {taken} = bought(troop.name, state);
  const there = isTold(own) ? number(own) : taken;
  return {there, used: number(state.standing("missions used", troop.name))};
}

/* How many of an entry were taken, and in how many purchases. */
export function bought(name, {asked}) {
  const mine = asked.filter(({entry, taken}) => entry === name && taken);
  return {taken: mine.reduce((sum, {taken}) => sum + taken, 0), purchases: mine.length};
}

/* So many stands of one sort that an entry brings, each in words: `1 truck`. Its name has that of the
   entry before it, as in core/play/brought.py. */
export function numbered(stand, many) {
  return Array.from({length: many}, (_, at) => `${at + 1} ${stand}`);
}

/* Supporting troops that were taken, as a company of units with a stand for each that they put down,
   and for each that is granted once a purchase. */
export function takenCompany(force, state) {
  const units = force.troops.flatMap((troop) => {
    const {taken, purchases} = bought(troop.name, state);
    const brought = new Map();
    const bring = (stands, times) => Object.entries(stands).forEach(([stand, each]) =>
      brought.set(stand, (brought.get(stand) ?? 0) + each * times));
    bring(troop.each, taken);
    bring(troop.grants ?? {}, purchases);
    const stands = [...brought].flatMap(([stand, many]) => numbered(stand, many));
    return stands.length ? [{
      name: troop.name, words: troop.name, within: troop.name, mark: null,
      stands: stands.map((words) => ({name: `${troop.name} / ${words}`, words})),
    }] : [];
  });
  return units.length ? [{name: "Supporting troops", units}] : [];
}

/* Names of bodies that are due by this turn and haven't arrived. */
export function dueNow(names, state) {
  const turn = number(state.standing("turn", ""));
  return names.filter((name) => {
    const due = state.standing("due", name);
    return isTold(due) && number(due) <= turn && !isTold(state.standing("arrived", name));
  });
}
