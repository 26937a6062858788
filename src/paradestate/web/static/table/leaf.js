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
    ...["attached to", "loaded on"].filter((aspect) => isTold(standing(aspect)))
      .map((aspect) => element("p", {}, `${aspect} ${standing(aspect).values.map(plain).join(" or ")}`)));
}
