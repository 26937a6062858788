/* The panel of a carry file on which it gives back what it holds: as a file, as codes, as text. */
import {element, several, tapped} from "./element.js";
import {generate} from "./lean-qr.mjs";

const QUIET = 4; // modules of white around a code, as ISO/IEC 18004 asks
const SVG = "http://www.w3.org/2000/svg";

/* `given` is what is held: {number, name, text, codes, at, canShare, told}. */
export function handing(given, act) {
  if (given.codes.length) return shown(given, act);
  return [
    element("h2", {}, "Give back"),
    element("p", {class: "answer"}, given.number
      ? `${several(given.number, "entry", "entries")} to give back` : "Nothing to give back yet"),
    element("p", {role: "status"}, given.told),
    ...(given.number ? ways(given, act) : []),
    tapped("Back to the table", {key: "back", more: "whole", tap: act.back}),
    element("h3", {}, "Take in"),
    element("p", {}, "What another phone gave back, or this one before: from then on it stands on "
      + "this board too, and is given back with the rest. Nothing comes in twice."),
    element("label", {}, "Files that were given back",
      element("input", {type: "file", multiple: true, "data-key": "take", id: "take"})),
    tapped("Take these in", {key: "take-in", more: "whole",
      tap: () => act.takeIn(document.getElementById("take").files)}),
  ];
}

function ways(given, act) {
  return [
    tapped("Save as a file", {key: "save", more: "whole", tap: act.save}),
    given.canShare ? tapped("Send the file", {key: "send", more: "whole", tap: act.send}) : null,
    tapped("Show as QR codes", {key: "codes", more: "whole", tap: act.codes}),
    element("p", {}, "Then bring it to the computer: on its page, Carry file at the foot of each sheet; or "
      + "paradestate play FOLDER bring FILE. As often as you like: each entry arrives once."),
    element("details", {}, element("summary", {class: "tap small"}, "As text, to copy by hand"),
      element("textarea", {readonly: true, rows: 8, "data-key": "text",
        "aria-label": "What is given back, as text"}, given.text)),
  ].filter(Boolean);
}

function shown(given, act) {
  const {codes, at} = given;
  const words = `Code ${at + 1} of ${codes.length}`;
  return [
    element("h2", {"aria-live": "polite"}, words),
    drawn(codes[at], words),
    ...(codes.length > 1 ? [element("div", {class: "row codes"},
      tapped("The one before", {key: "before", tap: () => act.turnTo(at - 1)}),
      tapped("The next", {key: "next", tap: () => act.turnTo(at + 1)}))] : []),
    element("p", {}, "Read each with any reader of QR codes that keeps the text, in any order, and "
      + "paste all of it on the computer. Which of them are missing is told there."),
    tapped("Put the codes away", {key: "codes", more: "whole", tap: act.codes}),
  ];
}

/* A code as a drawing, dark on light in any scheme; one module is one unit. */
function drawn(text, words) {
  let code;
  try {
    code = generate(text, {minCorrectionLevel: 1, maxCorrectionLevel: 1});
  } catch {
    return element("p", {class: "red"}, "This entry is too long for a code: save the file instead.");
  }
  const side = code.size + 2 * QUIET;
  const runs = [];
  for (let down = 0; down < code.size; down += 1) {
    for (let across = 0; across < code.size; across += 1) {
      if (code.get(across, down)) runs.push(`M${across + QUIET} ${down + QUIET}h1v1h-1z`);
    }
  }
  const made = svg("svg", {viewBox: `0 0 ${side} ${side}`, role: "img", "aria-label": words, class: "qr",
    "shape-rendering": "crispEdges"});
  made.append(svg("rect", {width: side, height: side, fill: "#fff"}), svg("path", {d: runs.join(""), fill: "#000"}));
  return made;
}

function svg(tag, said) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(said)) made.setAttribute(name, value);
  return made;
}
