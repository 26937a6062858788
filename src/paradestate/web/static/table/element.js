/* What the page is made of, and how it says things: elements, buttons, names, numbers. */

/* An element; what is typed in files and on phones goes in as text alone. */
export function element(tag, said = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(said)) {
    if (name === "tap") made.addEventListener("click", value);
    else if (name === "typed") made.addEventListener("input", (event) => value(event.target.value));
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== null) made.setAttribute(name, value);
  }
  made.append(...children.flat(Infinity).filter((each) => each !== null && each !== ""));
  return made;
}

/* A button that says whether what it tells stands; `key` keeps the focus on it. */
export function tapped(words, {key, is = null, tap, more = ""}) {
  const pressed = is === null ? {} : {"aria-pressed": String(is)};
  return element("button", {type: "button", class: `tap ${more}`, "data-key": key, tap, ...pressed},
    words);
}

export function plain(name) {
  return name.replaceAll(" / ", ", ");
}

export function several(number, one, more) {
  return `${number} ${number === 1 ? one : more}`;
}

export function capital(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
