// Shows how far a search is as it goes on; without it the page loads itself anew.
(() => {
  const box = document.querySelector("[data-progress]:not([data-heard])");
  if (!box) return;
  box.dataset.heard = "yes";
  const heard = new EventSource(box.dataset.progress);
  // Who is filling in a form isn't interrupted: the order is offered instead.
  let isBusy = false;
  for (const kind of ["input", "submit"]) {
    document.addEventListener(kind, () => { isBusy = true; }, { once: true });
  }
  const end = () => {
    heard.close();
    if (!box.isConnected) return;
    if (isBusy) box.querySelector("[data-found]").hidden = false;
    else location.replace(box.dataset.address);
  };
  heard.addEventListener("message", (event) => {
    if (!box.isConnected) {
      heard.close();
      return;
    }
    const told = JSON.parse(event.data);
    for (const place of box.querySelectorAll("[data-told]")) {
      const text = told[place.dataset.told];
      if (place.textContent !== text) place.textContent = text;
    }
  });
  heard.addEventListener("ended", end);
  heard.addEventListener("error", () => {
    if (heard.readyState === EventSource.CLOSED) end();
  });
})();
