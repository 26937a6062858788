// The trays: a stand is dragged onto another, or onto another tray; what forbids it is shown on the
// way. The page works without this: a stand is taken up by a touch, and put down by one.
(() => {
  const all = document.getElementById("trays");
  if (!all || all.dataset.heard) return;
  all.dataset.heard = "yes";
  document.documentElement.classList.add("js");
  const FAR = 6;  // pixels from which a press is a drag
  let held = null, rules = null, over = null, wasDragged = false;

  const told = () => document.getElementById("told");
  const address = (more) => {
    const url = new URL(all.dataset.address, location.href);
    for (const [name, text] of Object.entries(more)) url.searchParams.set(name, text);
    return url;
  };

  function goal(event) {
    const there = document.elementFromPoint(event.clientX, event.clientY);
    const stand = there?.closest("#trays [data-stand]"), tray = there?.closest("#trays [data-tray]");
    if (stand && stand.dataset.stand !== held.key) {
      const key = stand.dataset.stand;
      return { place: stand, move: `${held.key}-${key}`, rule: rules?.stands[key] };
    }
    if (stand || !tray || tray.dataset.tray === held.tray) return null;
    const key = tray.dataset.tray;
    return { place: tray, move: `${held.key}t${key}`, rule: rules?.trays[key] };
  }

  function say(found) {
    over?.place.classList.remove("over");
    over = found;
    const words = told();
    words.hidden = !found;
    words.classList.toggle("no", Boolean(found?.rule));
    if (!found) return;
    if (!found.rule) found.place.classList.add("over");
    const isTray = !found.place.dataset.stand;
    words.textContent = found.rule ? `Not there: ${found.rule}` : isTray ? "Into this tray" : "Change places";
  }

  all.addEventListener("pointerdown", (event) => {
    const stand = event.target.closest("[data-stand]");
    wasDragged = false;
    if (!stand || event.button !== 0 || event.pointerType !== "mouse") return;
    const tray = stand.closest("[data-tray]");
    held = { key: stand.dataset.stand, tray: tray.dataset.tray, x: event.clientX, y: event.clientY };
  });
  document.addEventListener("pointermove", (event) => {
    if (!held) return;
    if (!held.moving) {
      if (Math.hypot(event.clientX - held.x, event.clientY - held.y) < FAR) return;
      held.moving = true;
      rules = null;
      document.body.classList.add("dragging");
      const asked = held, url = address({ stand: held.key, of: all.dataset.of });
      url.pathname += "/rules.json";
      fetch(url).then((answer) => answer.json()).then((said) => { if (held === asked) rules = said; });
    }
    say(goal(event));
  });
  document.addEventListener("pointerup", (event) => {
    const was = held, found = was?.moving ? goal(event) : null;
    if (was?.moving) {
      wasDragged = true;
      say(null);
      document.body.classList.remove("dragging");
    }
    held = null;
    if (!found || found.rule) return;
    const moves = all.dataset.moves ? `${all.dataset.moves}.${found.move}` : found.move;
    const link = document.createElement("a");
    const to = address({ moves, of: all.dataset.of });
    link.href = to.pathname + to.search + "#trays";
    all.append(link);
    window.htmx?.process(link);
    wasDragged = false;
    link.click();
    link.remove();
  });
  // What is dragged isn't touched as well.
  all.addEventListener("click", (event) => {
    if (!wasDragged) return;
    wasDragged = false;
    event.preventDefault();
    event.stopPropagation();
  }, true);
  all.addEventListener("dragstart", (event) => event.preventDefault());
  all.addEventListener("keydown", (event) => {
    if (event.key === "Escape") document.getElementById("leave")?.click();
  });
})();
