/* How things stand in a game, from everything that was told, in whatever order it arrives.
   The same as core/play/board.py, and held to the same cases. Nothing here knows of page or phone. */

/* Entries of the journal, each {id, says}, of one game: what was told, and whether it was struck. */
export function tellings(entries) {
  const byId = new Map(entries.map((each) => [each.id, each]));
  const struck = struckOut([...byId.values()]);
  return [...byId.values()]
    .filter((each) => each.says.played?.told)
    .map((each) => ({
      id: each.id,
      told: each.says.played.told,
      device: each.says.played.device ?? "",
      isStruck: struck.has(each.id),
    }));
}

/* Ids of entries that no longer count; a strike that is struck out strikes nothing. */
export function struckOut(entries) {
  const strikes = new Map();
  for (const {id, says} of entries) {
    if (says.kind !== "struck-out") continue;
    strikes.set(says["struck out"], [...(strikes.get(says["struck out"]) ?? []), id]);
  }
  const isVoid = (id, above) =>
    (strikes.get(id) ?? []).some((by) => !above.has(by) && !isVoid(by, new Set([...above, by])));
  return new Set([...strikes.keys()].filter((id) => isVoid(id, new Set([id]))));
}

/* Each thing of which something was told, and how it stands; in the order of their names. */
export function board(told) {
  const bySubject = new Map();
  for (const each of told) {
    const key = subjectKey(...each.told.subject);
    if (!bySubject.has(key)) bySubject.set(key, new Map());
    bySubject.get(key).set(each.id, each);
  }
  return new Map(
    [...bySubject.keys()].sort(byLetters).map((key) => [key, standing(bySubject.get(key))]),
  );
}

export function subjectKey(aspect, name) {
  return JSON.stringify([aspect, name]);
}

/* How a thing stands of which nothing was told. */
export const AT_START = Object.freeze({tellings: [], values: [""], isDisputed: false, over: []});

function standing(byId) {
  const ids = [...byId.keys()].sort(byLetters);
  const seen = new Map(ids.map((id) => [id, seenBy(id, byId)]));
  const counted = ids.filter((id) => !byId.get(id).isStruck);
  // Of two that each name the other, which no honest teller writes, both stand.
  const standing = counted.filter(
    (id) => !counted.some((other) => seen.get(other).has(id) && !seen.get(id).has(other)),
  );
  const found = standing.map((id) => byId.get(id));
  const values = [...new Set(found.map((each) => each.told.value))];
  return {
    tellings: found,
    values: values.length ? values : [""],
    isDisputed: values.length > 1,
    over: standing,
  };
}

/* Ids of all that a telling replaces, and of what those replaced, struck out or not. */
function seenBy(id, byId) {
  const seen = new Set();
  const waiting = [...(byId.get(id).told.over ?? [])];
  while (waiting.length) {
    const name = waiting.pop();
    if (seen.has(name)) continue;
    seen.add(name);
    waiting.push(...(byId.get(name)?.told.over ?? []));
  }
  return seen;
}

function byLetters(one, other) {
  return one < other ? -1 : Number(one > other);
}
