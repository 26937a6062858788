/* How many losses a body has, which effects are in force and what comes next, in words. The same as
   core/play/loss_count.py and core/sentence/loss_limit.py, and held to the same cases.
   Nothing here knows of page or phone. */
import {bought, numbered} from "./tally.js";

/* The limits that hold in a game: a kind of game may be played with other numbers. */
export function limitsOf(force, {opened}) {
  return force["limits of games"]?.[opened?.game] ?? force.limits ?? [];
}

/* Whether the force is another than the one that is counted here: of another day, or by numbers
   that were said as the game was opened. */
export function isOtherForce({opened}) {
  return Boolean(opened?.date) || Object.keys(opened?.numbers ?? {}).length > 0;
}

/* `limit` is as journeys/table.py makes it; a member that two tell of differently may be lost. */
export function lossCount(limit, state) {
  const told = [...limit.members, ...takenMembers(limit, state)]
    .map(([name, counts]) => ({counts, ...state.standing(limit.aspect, name)}));
  const sum = (lost) => lost.reduce((total, {counts}) => total + counts, 0);
  const of = sum(told);
  const least = sum(told.filter(({values}) => values.every(Boolean)));
  const most = sum(told.filter(({values}) => values.some(Boolean)));
  const steps = stepsOf(limit.at, of);
  const effects = (above, upTo) => steps.filter(({needs}) => above < needs && needs <= upTo)
    .map(({effect}) => effect);
  const next = steps.find(({needs}) => needs > most)?.needs ?? null;
  return {
    of,
    least,
    most,
    inForce: effects(0, least),
    inDoubt: effects(least, most),
    next,
    then: steps.filter(({needs}) => needs === next).map(({effect}) => effect),
  };
}

/* The stands of supporting troops that were taken, by the names that the board gives them. */
function takenMembers({troops = []}, state) {
  return troops.flatMap(([name, each]) => {
    const {taken, purchases} = bought(name, state);
    return each.flatMap(([stand, number, granted, counts]) =>
      numbered(stand, number * taken + granted * purchases).map((words) => [`${name} / ${words}`, counts]));
  });
}

/* What happens at how many of so many, rising; exactly, so in whole numbers. */
function stepsOf(at, of) {
  return at.map(([upper, lower, isShare, isMore, effect]) => {
    const [whole, part] = [BigInt(upper) * BigInt(isShare ? of : 1), BigInt(lower)];
    const reached = isMore ? whole / part + 1n : (whole + part - 1n) / part;
    return {needs: Number(reached), effect};
  }).filter(({needs}) => 0 < needs && needs <= of).sort((one, other) => one.needs - other.needs);
}

/* Such as: 4 of 10 out, at 5 shaken. */
export function lossWords({word}, {of, least, most, inForce, inDoubt, next, then}) {
  const isTold = least === most;
  const holds = [...inForce, ...inDoubt.map((effect) => `${effect} or not`)];
  return [
    `${isTold ? least : `${least} or ${most}`} of ${of} ${word}`,
    isTold ? "" : ", two tell differently",
    holds.length ? `: ${listed(holds)}` : "",
    next ? `, at ${next} ${listed(then)}` : "",
  ].join("");
}

function listed(words) {
  const last = words.at(-1);
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${last}`;
}
