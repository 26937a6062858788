// The text of a file: checked as one types, words put in, findings that lead to their line.
// The page works without this: "Check" does the same.
(() => {
  const text = document.getElementById("text"), form = document.getElementById("file");
  const beside = document.getElementById("beside"), gutter = document.querySelector(".gutter");
  if (!text || !form || !beside) return;
  const PAUSE = 300, saved = text.value;
  let waiting = 0, asked = 0, from = 0, sending = false;
  document.documentElement.classList.add("js");

  const before = () => text.value.slice(0, text.selectionStart);
  const spot = () => {
    const lines = before().split("\n");
    return { line: lines.length, column: lines.at(-1).length + 1 };
  };

  function number() {
    const lines = text.value.split("\n").length;
    text.rows = lines + 1;
    if (!gutter) return;
    const marks = {};
    for (const item of beside.querySelectorAll("[data-mark]")) {
      const [line, level] = item.dataset.mark.split(" ");
      marks[line] ??= level;
    }
    gutter.replaceChildren(...Array.from({ length: lines }, (_, n) => {
      const span = document.createElement("span");
      span.className = marks[n + 1] ?? "";
      span.textContent = n + 1;
      return [span, "\n"];
    }).flat());
  }

  async function check() {
    const mine = ++asked, data = new FormData(form), at = spot();
    data.set("fragment", "yes");
    data.set("line", at.line);
    data.set("column", at.column);
    try {
      const answer = await fetch(text.dataset.check, { method: "POST", body: data });
      if (mine !== asked || !answer.ok) return;
      const scrolled = beside.scrollTop, open = !!beside.querySelector("details.means[open]");
      beside.innerHTML = await answer.text();
      const means = beside.querySelector("details.means");
      if (means) means.open = open;
      beside.scrollTop = scrolled;
      number();
    } catch { /* not reached just now: the next letter asks again */ }
  }

  function soon() {
    clearTimeout(waiting);
    waiting = setTimeout(check, PAUSE);
  }

  function go(line, column) {
    const lines = text.value.split("\n");
    const start = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0);
    const at = start + Math.min(column - 1, (lines[line - 1] ?? "").length);
    text.focus({ preventScroll: true });
    text.setSelectionRange(at, at);
    const paper = text.closest(".sheet"), height = 24 * (line - 1);
    paper.scrollTop = Math.max(0, height - paper.clientHeight / 2);
    const top = text.getBoundingClientRect().top + height;
    if (top < 0 || top > innerHeight - 40) scrollBy(0, top - innerHeight / 3);
    soon();
  }

  function put(word) {
    // What stands before the cursor of the same word gives way to it.
    const begun = before().match(/[^\s:,{}[\]"'#-][^:,{}[\]"'#\n]*$/)?.[0] ?? "";
    const kept = word.toLowerCase().includes(begun.trimEnd().toLowerCase()) ? begun.length : 0;
    text.focus();
    text.setRangeText(word, text.selectionStart - kept, text.selectionEnd, "end");
    number();
    check();
  }

  const isUnsaved = () => text.value !== saved && !sending;
  text.addEventListener("input", () => { number(); soon(); });
  text.addEventListener("keydown", (event) => {
    if (event.key !== " " || !event.ctrlKey) return;
    event.preventDefault();
    beside.querySelector(".word")?.focus();
  });
  for (const kind of ["keyup", "click"]) {
    text.addEventListener(kind, () => {
      if (from !== text.selectionStart) soon();
      from = text.selectionStart;
    });
  }
  beside.addEventListener("click", (event) => {
    const to = event.target.closest("[data-line]"), word = event.target.closest(".word");
    if (to) { event.preventDefault(); go(Number(to.dataset.line), Number(to.dataset.column)); }
    if (word) put(word.dataset.word);
  });
  beside.addEventListener("keydown", (event) => {
    const words = [...beside.querySelectorAll(".word")], at = words.indexOf(event.target);
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (at < 0) return;
    if (step) { event.preventDefault(); words[at + step]?.focus(); }
    if (event.key === "Escape") text.focus();
  });
  form.addEventListener("submit", () => { sending = true; });
  const leaving = (event) => {
    if (!text.isConnected) removeEventListener("beforeunload", leaving);
    else if (isUnsaved()) event.preventDefault();
  };
  addEventListener("beforeunload", leaving);
  number();
})();
