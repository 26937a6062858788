/* What a carry file gives back: a text of one line for each entry, or texts short enough for QR codes.
   Each code holds whole entries, so that what came counts even where others are missing.
   Nothing here knows of page or phone; `text/given_back.py` reads it. */

/* Bytes of a code once packed: 944 letters, which version 20 with correction M holds (ISO/IEC 18004). */
const MOST_BYTES = 590;
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/* Says whose entries follow: {force, title, carry}. */
function head(about, more = {}) {
  return JSON.stringify({"given back": 1, ...about, ...more});
}

function line({id, says}) {
  return JSON.stringify({id, says});
}

/* The entries in the order in which they are to be read: as they were written, strikes last. */
export function inOrder(entries) {
  const isStrike = ({says}) => Number(says.kind === "struck-out");
  const at = ({says}) => says.written ?? "";
  return [...entries].sort((one, other) => isStrike(one) - isStrike(other)
    || Number(at(one) > at(other)) - Number(at(one) < at(other)) || one.order - other.order);
}

/* All of it as one file; its head says how many entries there are, so that a cut shows. */
export function fileText(about, entries) {
  return [head(about, {entries: entries.length}), ...inOrder(entries).map(line)]
    .map((each) => `${each}\n`).join("");
}

/* The texts of the codes, `PS1/SET/NUMBER/OF/DATA`, each of at most some 590 bytes where it can be. */
export async function codeTexts(about, entries) {
  const packed = [];
  let lines = [head(about)];
  let bytes = null;
  for (const each of inOrder(entries).map(line)) {
    const more = await zlib([...lines, each].join("\n"));
    if (bytes !== null && more.length > MOST_BYTES) {
      packed.push(bytes);
      lines = [head(about), each];
      bytes = await zlib(lines.join("\n"));
    } else {
      lines.push(each);
      bytes = more;
    }
  }
  if (bytes !== null) packed.push(bytes);
  const set = adler32(new TextEncoder().encode(fileText(about, entries)));
  const name = set.toString(16).toUpperCase().padStart(8, "0");
  return packed.map((each, at) => `PS1/${name}/${at + 1}/${packed.length}/${base32(each)}`);
}

/* Packed as RFC 1950 says, with its check at the end; unpacked within it where the browser can't. */
async function zlib(text) {
  const bytes = new TextEncoder().encode(text);
  if (!globalThis.CompressionStream) return stored(bytes);
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream("deflate"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/* RFC 1951, blocks that are stored: each with its length and the complement of that. */
export function stored(bytes) {
  const said = [0x78, 0x01];
  const most = 65535;
  for (let start = 0; start === 0 || start < bytes.length; start += most) {
    const block = bytes.subarray(start, start + most);
    const length = block.length;
    const rest = length ^ 0xffff;
    said.push(Number(start + most >= bytes.length), length & 255, length >> 8, rest & 255, rest >> 8);
    for (const each of block) said.push(each);
  }
  const check = adler32(bytes);
  return new Uint8Array([...said, check >>> 24, (check >>> 16) & 255, (check >>> 8) & 255, check & 255]);
}

/* The check of RFC 1950. */
export function adler32(bytes) {
  let one = 1;
  let two = 0;
  for (const each of bytes) {
    one = (one + each) % 65521;
    two = (two + one) % 65521;
  }
  return ((two << 16) | one) >>> 0;
}

/* RFC 4648, without the signs that fill up: letters and digits that a QR code packs densely. */
export function base32(bytes) {
  let said = "";
  let bits = 0;
  let held = 0;
  for (const each of bytes) {
    held = (held << 8) | each;
    for (bits += 8; bits >= 5; bits -= 5) said += LETTERS[(held >>> (bits - 5)) & 31];
    held &= (1 << bits) - 1;
  }
  return bits ? said + LETTERS[(held << (5 - bits)) & 31] : said;
}

/* Entries of texts that a phone gave back, for another one to take in; {entries, wrong}. */
export function takenIn(about, texts) {
  const entries = [];
  const wrong = [];
  for (const {name, text} of texts) {
    for (const [at, each] of text.split("\n").entries()) {
      if (!each.trim()) continue;
      const said = parsed(each);
      if (said?.["given back"] && said.force !== about.force && said.title !== about.title) {
        wrong.push(`${name} is of ${said.title}, another force: nothing of it was taken.`);
        break;
      }
      if (isEntry(said)) entries.push(said);
      else if (!said?.["given back"]) wrong.push(`${name}, line ${at + 1} isn't an entry: it was left out.`);
    }
  }
  return {entries, wrong};
}

/* Whether it is something that this page can show; the computer looks closer. */
function isEntry(said) {
  const {id, says} = said ?? {};
  if (typeof id !== "string" || !says || typeof says.written !== "string") return false;
  if (says.kind === "struck-out") return typeof says["struck out"] === "string";
  const {game, told, opened, noted, ended} = says.played ?? {};
  if (typeof game !== "string") return false;
  if (noted) return [noted.text, noted.about ?? ""].every((each) => typeof each === "string");
  if (!told) return typeof opened?.game === "string" || typeof ended === "object";
  const {subject, value, over = []} = told;
  return [subject, over].every(Array.isArray) && subject.length === 2
    && [...subject, ...over, value].every((each) => typeof each === "string");
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
