/* What the phone keeps, in IndexedDB: every entry, and a few things about itself.
   What `write` answers for is on the disk: each transaction is strict (W3C Indexed Database 3.0),
   and is answered for when it is complete, never before. */

const ENTRIES = "entries";
const ABOUT = "about";
const STRICT = {durability: "strict"};

export async function openStore(name) {
  const asked = indexedDB.open(name, 1);
  asked.onupgradeneeded = () => {
    asked.result.createObjectStore(ENTRIES, {keyPath: "id"});
    asked.result.createObjectStore(ABOUT);
  };
  const database = await answered(asked);
  database.onversionchange = () => database.close();
  return new Store(database);
}

/* An entry as it is kept: {id, says, order, isOwn, isSent, why}. */
export function asOwn({id, says}, order) {
  return {id, says, order, isOwn: true, isSent: false, why: ""};
}

export function asTheirs({id, says}) {
  return {id, says, order: 0, isOwn: false, isSent: true, why: ""};
}

class Store {
  constructor(database) {
    this.database = database;
  }

  /* What is kept about the phone itself, and of the force. */
  async about(key) {
    return answered(this.database.transaction(ABOUT).objectStore(ABOUT).get(key));
  }

  async keep(key, value) {
    const change = this.database.transaction(ABOUT, "readwrite", STRICT);
    change.objectStore(ABOUT).put(value, key);
    await complete(change);
  }

  /* All entries that are kept. */
  async entries() {
    return answered(this.database.transaction(ENTRIES).objectStore(ENTRIES).getAll());
  }

  /* Writes an own entry: `made(counter)` makes it, with the next number of this phone. */
  async write(made) {
    const change = this.database.transaction([ENTRIES, ABOUT], "readwrite", STRICT);
    const about = change.objectStore(ABOUT);
    const done = complete(change);
    const counter = ((await answered(about.get("counter"))) ?? 0) + 1;
    const kept = asOwn(made(counter), counter);
    change.objectStore(ENTRIES).add(kept);
    about.put(counter, "counter");
    await done;
    return kept;
  }

  /* Keeps what others wrote, and how far they were read; an own one among them has arrived. */
  async putTheirs(entries, {cursorKey, cursor}) {
    const change = this.database.transaction([ENTRIES, ABOUT], "readwrite", STRICT);
    const kept = change.objectStore(ENTRIES);
    const done = complete(change);
    for (const each of entries) {
      const own = await answered(kept.get(each.id));
      kept.put(own?.isOwn ? {...own, isSent: true, why: ""} : asTheirs(each));
    }
    if (cursorKey) change.objectStore(ABOUT).put(cursor, cursorKey);
    await done;
  }

  /* Notes what the computer answered to own entries: {id, receipt, why}. */
  async noteAnswers(answers) {
    const change = this.database.transaction(ENTRIES, "readwrite", STRICT);
    const kept = change.objectStore(ENTRIES);
    const done = complete(change);
    for (const {id, receipt, why} of answers) {
      const own = await answered(kept.get(id));
      const isSent = receipt === "taken" || receipt === "there";
      if (own) kept.put({...own, isSent: own.isSent || isSent, why: isSent ? "" : why});
    }
    await done;
  }
}

/* Own entries that the computer hasn't got, in the order in which they were written. */
export function unsent(entries) {
  return entries.filter(isUnsent).sort((one, other) => one.order - other.order);
}

export function isUnsent(entry) {
  return entry.isOwn && !entry.isSent;
}

function answered(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function complete(change) {
  return new Promise((resolve, reject) => {
    change.oncomplete = () => resolve();
    change.onabort = () => reject(change.error ?? new Error("the phone kept nothing of it"));
    change.onerror = () => reject(change.error);
  });
}
