/* Keeps entries for as long as the page is open, where the browser lets a page keep nothing.
   It is asked as the store is, and whoever uses it says on the page that it is no store. */
import {asOwn, asTheirs} from "./store.js";

export class PassingStore {
  #about = new Map();
  #entries = new Map();

  async about(key) {
    return this.#about.get(key);
  }

  async keep(key, value) {
    this.#about.set(key, value);
  }

  async entries() {
    return [...this.#entries.values()];
  }

  async write(made) {
    const counter = (this.#about.get("counter") ?? 0) + 1;
    const kept = asOwn(made(counter), counter);
    this.#entries.set(kept.id, kept);
    this.#about.set("counter", counter);
    return kept;
  }

  async putTheirs(entries) {
    for (const each of entries) {
      if (!this.#entries.get(each.id)?.isOwn) this.#entries.set(each.id, asTheirs(each));
    }
  }
}
