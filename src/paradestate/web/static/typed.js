// A list typed in: each row is read back when a field of it is left, and nothing typed is touched.
// The page works without this: "Read back" does the same.
(() => {
  const list = document.getElementById("typed"), form = list?.closest("form");
  if (!form) return;
  let asked = 0, typed = false, sending = false;

  async function readBack() {
    const mine = ++asked, data = new FormData(form);
    data.set("step", "look");
    try {
      const answer = await fetch(form.action, { method: "POST", body: data });
      if (mine !== asked || !answer.ok) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      for (const said of page.querySelectorAll(".says, main > .lead, .head .fill")) {
        const here = document.querySelector(said.id ? `#${said.id}` : `main .${said.className}`);
        if (here && here.innerHTML !== said.innerHTML) here.innerHTML = said.innerHTML;
      }
    } catch { /* not reached just now: the next field asks again */ }
  }

  form.addEventListener("change", () => { typed = true; readBack(); });
  form.addEventListener("submit", () => { sending = true; });
  const leaving = (event) => {
    if (!list.isConnected) removeEventListener("beforeunload", leaving);
    else if (typed && !sending) event.preventDefault();
  };
  addEventListener("beforeunload", leaving);
})();
