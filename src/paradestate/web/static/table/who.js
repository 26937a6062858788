/* Who is who: from two letters, or from the parts of a mark that were seen. Knows no page. */

/* Units that fit what was typed and tapped; none asked for, none found. */
export function found(force, {text = "", colour = null, bars = null, sign = null}) {
  const typed = plain(text);
  if (!typed && colour === null && bars === null && sign === null) return [];
  return units(force).filter(({unit, company}) => {
    const mark = unit.mark;
    const fits = (seen, part) => seen === null || (mark !== null && mark[part] === seen);
    return fits(colour, "colour") && fits(bars, "bars") && fits(sign, "sign")
      && (!typed || codes(unit, company).some((code) => code.startsWith(typed)));
  });
}

export function units(force) {
  return force.companies.flatMap((company) => company.units.map((unit) => ({company, unit})));
}

/* What may be typed: "23" No 2 Company, 3 Platoon; "y3" yellow with three bars; words of both. */
function codes(unit, company) {
  const digits = (words) => (words.match(/\d+/g) ?? []).join("");
  const said = [digits(company.name) + digits(unit.within), ...words(unit.words)];
  if (unit.mark !== null) {
    const {colour, bars, sign} = unit.mark;
    for (const word of words(colour)) said.push(word, `${word[0]}${bars}`, `${word}${bars}`);
    said.push(initials(colour) + bars, sign, `${bars}${sign}`, `${bars}`);
  }
  return said.map(plain).filter(Boolean);
}

function words(text) {
  return text.split(/[^\p{L}\p{N}]+/u).filter(Boolean);
}

function initials(text) {
  return words(text).map((word) => word[0]).join("");
}

function plain(text) {
  return text.normalize("NFKD").toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
}
