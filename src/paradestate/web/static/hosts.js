// The board: a section is dragged to a host; each place says what it would bring, or which rule
// forbids it. The page works without this: a section is taken up by a touch, and put down by one.
(() => {
  const board = document.getElementById("board");
  if (!board || board.dataset.heard) return;
  board.dataset.heard = "yes";
  document.documentElement.classList.add("js");
  const spots = () => [...board.querySelectorAll(".spot")];
  let dragged = null;

  function clear() {
    dragged = null;
    for (const spot of spots()) {
      if (!spot.querySelector(".way, .bar")) spot.classList.remove("may", "barred");
      spot.classList.remove("over");
      const told = spot.querySelector(".told");
      told.textContent = "";
      told.hidden = true;
    }
  }

  board.addEventListener("dragstart", (event) => {
    dragged = event.target.closest(".tag");
    if (!dragged) return;
    event.dataTransfer.effectAllowed = "move";
    event.dataTransfer.setData("text/plain", dragged.dataset.section);
    const brings = JSON.parse(dragged.dataset.told);
    // At once the browser would take the changed place for the picture of what is dragged.
    setTimeout(() => spots().forEach((spot, place) => {
      if (!dragged || !brings[place] || spot.querySelector(".way, .bar")) return;
      const [words, may] = brings[place], told = spot.querySelector(".told");
      spot.classList.add(may ? "may" : "barred");
      told.textContent = may ? words : `Not here: ${words}.`;
      told.hidden = false;
    }));
  });

  const goal = (event) => {
    const spot = event.target.closest?.(".spot");
    const place = spot ? spots().indexOf(spot) : -1;
    return dragged && place >= 0 && JSON.parse(dragged.dataset.told)[place]?.[1] ? spot : null;
  };
  board.addEventListener("dragover", (event) => {
    const spot = goal(event);
    if (spot) event.preventDefault();
    for (const each of spots()) each.classList.toggle("over", each === spot);
  });
  board.addEventListener("drop", (event) => {
    const spot = goal(event);
    if (!spot) return;
    event.preventDefault();
    // Where the tag itself leads, with the section moved: the server makes the address tidy again.
    const link = dragged, address = new URL(link.href);
    const section = link.dataset.section;
    address.searchParams.delete("section");
    address.searchParams.set(`at:${section}`, spot.dataset.place);
    address.searchParams.set("moved", section);
    clear();
    link.setAttribute("href", address.pathname + address.search + address.hash);
    link.click();
  });
  board.addEventListener("dragend", clear);
  board.addEventListener("keydown", (event) => {
    if (event.key === "Escape") board.querySelector("#leave")?.click();
  });
})();
