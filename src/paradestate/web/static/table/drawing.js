/* Draws the page from what is known: `seen` is everything shown, `act` everything that can be done. */
import {capital, element, plain, several, tapped} from "./element.js";
import {leaf} from "./leaf.js";
import {isOtherForce, limitsOf, lossCount, lossWords} from "./limits.js";
import {dueNow, isTold, losses, missions, number, takenCompany} from "./tally.js";
import {found, units} from "./who.js";

const LONG = 80; // letters beside which a button would leave too narrow a column
const VIEWS = {board: "Board", fire: "Fire", who: "Who is who", log: "Log"};

export function draw(place, seen, act) {
  const key = document.activeElement?.dataset?.key;
  const caret = document.activeElement?.selectionStart ?? null;
  const body = seen.panel?.(seen, act) ?? (seen.game ? game(seen, act) : beginning(seen, act));
  place.replaceChildren(notes(seen, act), ...body);
  const again = key && place.querySelector(`[data-key="${CSS.escape(key)}"]`);
  if (again) {
    again.focus({preventScroll: true});
    if (caret !== null && again.tagName === "INPUT") again.setSelectionRange(caret, caret);
  }
}

function game(seen, act) {
  const draws = {board: boardView, fire: fireView, who: whoView, log: logView};
  return [
    ...disputes(seen, act),
    element("section", {class: "view", "aria-label": VIEWS[seen.view]}, draws[seen.view](seen, act)),
    thumb(seen, act),
  ];
}

/* Where the entries are, in a line at the top. */
function notes(seen, act) {
  const waits = seen.waiting === 0 ? "" : `${several(seen.waiting, "entry", "entries")} kept here `
    + "until the computer is met";
  const said = {
    met: seen.waiting === 0 ? `All is with the computer, ${seen.metAt}` : waits,
    away: waits || "No signal: everything is kept here",
    unpaired: `This phone isn't let in any more: pair it again. ${waits}`,
    stopped: `The computer takes nothing now: ${seen.why} ${waits}`,
    none: waits || "Kept on this phone",
    carried: seen.why,
  };
  const isBad = seen.is === "unpaired" || seen.is === "stopped" || seen.isPassing;
  return element("header", {class: "notes"},
    element("p", {class: `${isBad ? "red" : ""}${said[seen.is].length > LONG ? " long" : ""}`, role: "status",
      id: "kept"}, said[seen.is]),
    seen.skew ? element("p", {}, seen.skew) : null,
    seen.isUnkept ? element("p", {class: "red"}, "Leave this page open: the browser keeps what is "
      + "tapped, but not the page itself, as long as it warns of this computer. ",
    element("a", {href: "/authority.crt"}, "Trust this computer")) : null,
    ...seen.doubts.map((words) => element("p", {class: "red"}, words)),
    ...twins(seen).map((each) => element("p", {}, `Open too: ${named(each)}. If it is this game, `
      + "agree on one of them: Log, Another game.")),
    seen.lost ? element("p", {class: "red", role: "alert"}, seen.lost) : null,
    ...seen.refused.map(({why, id}) => element("p", {class: "red"},
      `The computer refused ${seen.words(id)}: ${why} It is kept here, in the log.`)),
    element("div", {class: "row"},
      seen.game || seen.panel ? null
        : seen.buttons.map(([words, key, tap]) => tapped(words, {key, tap, more: "small"})),
      tapped("Dark hall", {key: "dark", is: seen.isDark, tap: act.dark, more: "small"})));
}

/* Other games of the same kind that are open: perhaps the same, begun on two phones. */
function twins(seen) {
  const own = seen.games.find(({game: id}) => id === seen.game);
  return own && !own.ended
    ? seen.games.filter((each) => each !== own && !each.ended && each.name === own.name) : [];
}

function named({name, on, by}) {
  return `${name || "Game"}, ${on}${by ? `, begun by ${by}` : ""}`;
}

function beginning(seen, act) {
  if (!seen.force) {
    return [element("p", {class: "answer"}, "Nothing is kept on this phone yet."),
      element("p", {}, "Open this page once where it reaches its computer; then it works without.")];
  }
  const open = seen.games.filter(({ended}) => !ended);
  const kinds = seen.force.games.length ? seen.force.games : ["game"];
  return [
    element("h2", {}, seen.force.title),
    open.length ? element("h3", {}, "Games that are open") : null,
    ...open.map((each) => tapped(named(each),
      {key: `open ${each.game}`, tap: () => act.choose(each.game), more: "whole"})),
    element("h3", {}, "Begin one"),
    ...kinds.map((kind) => tapped(kind, {key: `begin ${kind}`, tap: () => act.begin(kind), more: "whole"})),
    seen.carry ? element("a", {href: seen.carry, class: "tap whole"}, "Carry file") : null,
  ].filter(Boolean);
}

/* What two phones tell differently: both stand until somebody who sees both says which is right. */
function disputes(seen, act) {
  return seen.state.disputes.map(({subject: [aspect, name], standing}) => {
    const tellers = standing.tellings.map(({told, device}) =>
      `${device === seen.device ? "your phone" : device || "another"} says ${told.value || "nothing"}`);
    const of = name ? `, ${plain(name)}` : "";
    return element("section", {class: "slip stop dispute", role: "group"},
      element("p", {class: "answer"}, `${capital(aspect)}${of}: ${tellers.join(", ")}. Which is right?`),
      element("div", {class: "row"}, standing.values.map((value) => tapped(value || "nothing", {
        key: `settle ${aspect} ${name} ${value}`, tap: () => act.tell(aspect, name, value), more: "whole"}))));
  });
}

function boardView(seen, act) {
  const names = units(seen.force).map(({unit}) => unit.name)
    .concat(seen.force.troops.map(({name}) => name));
  const due = dueNow(names, seen.state);
  return [
    due.length ? element("p", {class: "answer due"}, `Due now: ${due.map(plain).join("; ")}`) : null,
    limitsOf(seen.force, seen.state).length && isOtherForce(seen.state)
      ? element("p", {class: "slip warn"}, "This game was opened with a date or numbers of its own; "
        + "losses are counted here for the force as it is written.") : null,
    ...limitLines(seen, ({unit, company}) => unit === null && company === null),
    ...[...seen.force.companies, ...takenCompany(seen.force, seen.state)].map((company) => element("section", {class: "company"},
      element("h2", {}, company.name),
      limitLines(seen, (limit) => limit.unit === null && limit.company === company.name),
      company.units.map((unit) => unitRow(unit, seen, act)))),
  ];
}

/* Losses of what has a limit to them; without the name of what they stand under. */
function limitLines(seen, fits, under = "") {
  return limitsOf(seen.force, seen.state).filter(fits).map((limit) => {
    const count = lossCount(limit, seen.state);
    if (!count.of) return null;
    const isHeld = count.inForce.length + count.inDoubt.length > 0;
    return element("p", {class: isHeld ? "limit held" : "limit"},
      `${limit.name === under ? "" : `${limit.name}: `}${lossWords(limit, count)}`);
  });
}

function unitRow(unit, seen, act) {
  const {out, of} = losses(unit, seen.state);
  const own = seen.force.states.filter((each) => isTold(seen.state.standing(each, unit.name)));
  const hit = isTold(seen.state.standing("leader hit", unit.name)) ? ["leader hit"] : [];
  const isOpen = seen.leaf === unit.name;
  return element("article", {class: "unit"},
    element("button", {type: "button", class: "head", "data-key": `head ${unit.name}`,
      "aria-expanded": String(isOpen), tap: () => act.open(isOpen ? null : unit.name)},
    plate(unit), element("b", {}, unit.within),
    element("span", {}, out ? `${out} of ${of} out` : `${of}`),
    [...own, ...hit].map((each) => element("span", {class: "pin"}, each))),
    limitLines(seen, (limit) => limit.unit === unit.name, unit.words),
    element("div", {class: "row"}, unit.stands.map((stand) => standBlock(stand, seen, act))),
    isOpen ? leaf(unit, seen, act) : null);
}

function standBlock(stand, seen, act) {
  const isOut = isTold(seen.state.standing("out", stand.name));
  return element("button", {type: "button", class: "block", "aria-pressed": String(isOut),
    "data-key": `out ${stand.name}`, "aria-label": `${stand.words || plain(stand.name)}, out`,
    tap: () => act.tell("out", stand.name, isOut ? "" : "out")},
  stand.words || plain(stand.name), isOut ? element("small", {}, "out") : null);
}

/* The plate of a unit, drawn by the computer from our own shapes, and kept as text. */
export function plate(unit) {
  if (!unit.mark) return null;
  const text = unit.mark.plate.replace(/^<svg (?!xmlns)/, '<svg xmlns="http://www.w3.org/2000/svg" ');
  return document.importNode(
    new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
}

/* Fire missions as tear-offs: solid ready, struck through when fired. */
function fireView(seen, act) {
  const troops = seen.force.troops.filter((each) => each.missions);
  if (!troops.length) return element("p", {}, "Nothing in this force has fire missions.");
  return troops.map((troop) => {
    const {there, used} = missions(troop, seen.state);
    const tell = (aspect, value) => act.tell(aspect, troop.name, String(value));
    return element("section", {class: "unit"},
      element("h2", {}, plain(troop.name)),
      element("p", {class: "answer"}, there ? `${there - used} of ${there} missions left`
        : "No missions taken yet"),
      element("div", {class: "row"}, Array.from({length: Math.max(there, used)}, (_, at) =>
        element("button", {type: "button", class: "tear", "aria-pressed": String(at < used),
          "data-key": `fire ${troop.name} ${at}`, "aria-label": `Mission ${at + 1}, fired`,
          tap: () => tell("missions used", at < used ? at : at + 1)}, `${at + 1}`))),
      element("div", {class: "row"},
        tapped("One mission more", {key: `more ${troop.name}`, more: "small", tap: () => tell("missions taken", there + 1)}),
        there ? tapped("One fewer", {key: `fewer ${troop.name}`, more: "small", tap: () => tell("missions taken", there - 1)}) : null));
  });
}

/* Two letters, or the mark tapped together: the answer stands first and large. */
function whoView(seen, act) {
  const fits = found(seen.force, seen.asked);
  const marks = units(seen.force).map(({unit}) => unit.mark).filter(Boolean);
  const part = (name, words) => [...new Set(marks.map((mark) => mark[name]))]
    .filter((value) => value !== "")
    .map((value) => tapped(words(value), {key: `${name} ${value}`, is: seen.asked[name] === value,
      tap: () => act.look({[name]: seen.asked[name] === value ? null : value})}));
  return [
    element("div", {class: "found", role: "status"}, fits.length
      ? fits.slice(0, 12).map(({company, unit}) => element("p", {class: "who"}, plate(unit),
        element("b", {}, company.name), element("b", {}, unit.within), element("span", {}, unit.mark?.words ?? "no mark")))
      : element("p", {}, "Type two letters of it, or tap what you see of the mark.")),
    element("input", {type: "search", "data-key": "who", "aria-label": "Letters of the mark or the name",
      autocomplete: "off", autocapitalize: "none", value: seen.asked.text, typed: (text) => act.look({text})}),
    element("div", {class: "row"}, part("colour", (name) => name)),
    element("div", {class: "row"}, part("bars", (bars) => (bars ? several(bars, "bar", "bars") : "no bars"))),
    element("div", {class: "row"}, part("sign", (sign) => sign)),
  ];
}

function logView(seen, act) {
  return [
    element("ol", {class: "log"}, seen.log.map(({id, words, by, isStruck, reason, isWaiting, turn}) =>
      element("li", {}, isStruck ? element("s", {}, words) : words,
        element("small", {}, [turn, by, isStruck ? `struck out: ${reason}` : "", isWaiting ? "kept here" : ""]
          .filter(Boolean).join(" · "))))),
    element("label", {}, "To be remembered of this game",
      element("input", {"data-key": "note", value: seen.draft, maxlength: 1000, typed: act.draft})),
    element("div", {class: "row"},
      tapped("Keep the note", {key: "keep-note", more: "small", tap: act.note})),
    element("label", {}, "Name of this phone",
      element("input", {"data-key": "name", value: seen.device, maxlength: 40, id: "device"})),
    element("div", {class: "row"},
      tapped("Keep the name", {key: "keep-name", more: "small",
        tap: () => act.rename(document.getElementById("device").value)}),
      seen.state.ended ? element("p", {}, "This game is over.")
        : tapped("The game is over", {key: "over", more: "small", tap: act.end}),
      tapped("Another game", {key: "another", more: "small", tap: () => act.choose("")})),
  ];
}

/* What the thumb reaches: undo, the turn, the four views, and what else a page has at hand. */
function thumb(seen, act) {
  const turn = number(seen.state.standing("turn", ""));
  return element("footer", {class: "thumb"},
    element("div", {class: "row"},
      element("button", {type: "button", class: "undo", "data-key": "undo", tap: act.undo,
        disabled: seen.last === null}, element("span", {}, seen.last ? `Undo: ${seen.last}` : "Nothing to undo")),
      element("button", {type: "button", class: "turn", "data-key": "turn",
        tap: () => act.tell("turn", "", String(turn + 1))}, turn ? `Turn ${turn} +` : "Turn 1 begins")),
    element("nav", {class: "row", "aria-label": "Views"}, Object.entries(VIEWS).map(([name, words]) =>
      element("button", {type: "button", "data-key": `view ${name}`, tap: () => act.show(name),
        "aria-current": seen.view === name ? "page" : null}, words)),
    seen.buttons.map(([words, key, tap]) =>
      element("button", {type: "button", "data-key": key, tap}, words))));
}
