/* What opens under a platoon that is tapped: who it is in large, and everything told of it. */
import {element, plain, tapped} from "./element.js";
import {isTold} from "./tally.js";

const AMMUNITION = ["full", "low", "none"];
const TURNS = ["1", "2", "3", "4", "5", "6", "7", "8"];

export function leaf(unit, seen, act) {
  const standing = (aspect) => seen.state.standing(aspect, unit.name);
  const is = (aspect, value) => standing(aspect).values.includes(value);
  const switched = (aspect, value = "yes") => tapped(aspect, {
    key: `${aspect} ${unit.name}`, is: isTold(standing(aspect)),
    tap: () => act.tell(aspect, unit.name, isTold(standing(aspect)) ? "" : value),
  });
  const chosen = (aspect, values) => element("fieldset", {},
    element("legend", {}, aspect),
    element("div", {class: "row"}, values.map((value) => tapped(value, {
      key: `${aspect} ${value} ${unit.name}`, is: is(aspect, value), more: "small",
      tap: () => act.tell(aspect, unit.name, is(aspect, value) ? "" : value),
    }))));
  const turn = seen.state.standing("turn", "").values[0] || "1";
  return element("div", {class: "leaf"},
    element("p", {class: "answer"}, plain(unit.words)),
    element("div", {class: "row"},
      seen.force.states.map((name) => switched(name)),
      switched("leader hit"), switched("observer in contact"), switched("reserve"),
      switched("arrived", turn)),
    chosen("ammunition", AMMUNITION),
    chosen("due", TURNS),
    repairs(unit, seen, act),
    ...["attached to", "loaded on"].filter((aspect) => isTold(standing(aspect)))
      .map((aspect) => element("p", {}, `${aspect} ${standing(aspect).values.map(plain).join(" or ")}`)));
}

/* What is broken on the models themselves, for the bench after the game: the word first, then the stand. */
function repairs(unit, seen, act) {
  return element("fieldset", {},
    element("legend", {}, "to repair"),
    element("label", {}, "What is broken; then tap its stand",
      element("input", {"data-key": `broken ${unit.name}`, value: seen.broken, maxlength: 200, typed: act.broken,
        autocomplete: "off"})),
    element("div", {class: "row"}, unit.stands.map((stand) => {
      const standing = seen.state.standing("to repair", stand.name);
      const words = stand.words || plain(stand.name);
      return tapped(isTold(standing) ? `${words}: ${standing.values.join(" or ")}` : words, {
        key: `to repair ${stand.name}`, is: isTold(standing), more: "small", tap: () => act.repair(stand.name)});
    })));
}
