/* Entries as the journal keeps them: {id, says}, in the words of core/journal_text.py.
   `teller` is who tells: {game, device, counter, now}, the last a Date. */

export function told(teller, {subject, value, over = [], turn = null}) {
  const event = {subject, value, over, ...(turn === null ? {} : {turn})};
  return played(teller, {told: event});
}

export function opened(teller, game) {
  return played(teller, {opened: {game}});
}

export function noted(teller, text) {
  return played(teller, {noted: {text}});
}

export function ended(teller) {
  return played(teller, {ended: {}});
}

/* A strike bears no game: it is one of the journal's own, with its reason. */
export function strike({now}, {struck, reason}) {
  return entry(now, {kind: "struck-out", "struck out": struck, note: reason});
}

function played({game, device, counter, now}, event) {
  return entry(now, {kind: "played", played: {game, device, counter, ...event}});
}

function entry(now, says) {
  const two = (each) => String(each).padStart(2, "0");
  const on = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  const written = `${now.toISOString().slice(0, 19)}Z`;
  return {id: newId(), says: {...says, on, written}};
}

/* A UUID, RFC 9562, of the fourth sort: 122 bits of chance. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const digits = [...bytes].map((each) => each.toString(16).padStart(2, "0")).join("");
  return digits.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
