import type { Criteria, Criterion } from "../../../../lib/criteria";
import { PIECES } from "../../../../lib/weld";
import { type Asked, byNumber, byText, faceIn, numberIn, type Opinion, typeNamed, typeWithin } from "./reading";

type Values = Readonly<Record<string, number>>;

/** What the stem gives: "thickness t = 8 mm". */
function valuesIn(stem: string, criteria: Criteria): Values {
  const told = stem.slice(`By ${criteria.name}`.length);
  const value = (name: string) => Number(new RegExp(`${name} = ([\\d.]+) mm`).exec(told)?.[1]);
  return {
    t: value("thickness t"),
    s: value("nominal thickness s"),
    a: value("nominal throat a"),
    aA: value("actual throat aA"),
    b: value("from toe to toe b"),
    bRoot: value("root run b"),
    z: value("nominal leg z"),
  };
}

/** Rows of the set that hold for a type on a face; ranges by a symbol that the stem does not give count as holding. */
function rowsFor(criteria: Criteria, type: string, face: string, values: Values): Criterion[] {
  const rows: Criterion[] = [];
  for (const row of criteria.rows) {
    if (!(row.types as string[]).includes(type) || !(row.faces as string[]).includes(face)) continue;
    let holds = true;
    for (const { symbol, from, over, upTo, under } of row.ranges) {
      const value = values[symbol];
      if (from !== undefined && value < from) holds = false;
      if (over !== undefined && value <= over) holds = false;
      if (upTo !== undefined && value > upTo) holds = false;
      if (under !== undefined && value >= under) holds = false;
    }
    if (holds) rows.push(row);
  }
  return rows;
}

/** The limit of a row in mm with the values of the stem; NaN where it is none. */
function limitOf(row: Criterion | undefined, values: Values): number {
  if (row?.limit.kind !== "at-most") return Number.NaN;
  const { constant, coefficient, symbol, atMost } = row.limit.formula;
  let limit = constant ?? 0;
  if (symbol !== undefined && coefficient !== undefined) limit += coefficient * values[symbol];
  return atMost !== undefined && limit > atMost ? atMost : limit;
}

/**
 * Limits of ISO 5817:2014 for thickness over 3 mm, written down from public sources of its table 1 (rows 1.3, 1.4, 1.7, 1.9, 1.10
 * and 1.16): constant, factor, of what, and the most; levels B, C, D.
 */
const ISO: Readonly<Record<string, readonly (readonly [number, number, string, number] | null)[]>> = {
  "continuous-undercut": [
    [0, 0.05, "t", 0.5],
    [0, 0.1, "t", 0.5],
    [0, 0.2, "t", 1],
  ],
  "intermittent-undercut": [
    [0, 0.05, "t", 0.5],
    [0, 0.1, "t", 0.5],
    [0, 0.2, "t", 1],
  ],
  "excess-weld-metal": [
    [1, 0.1, "b", 5],
    [1, 0.15, "b", 7],
    [1, 0.25, "b", 10],
  ],
  "excessive-convexity": [
    [1, 0.1, "b", 3],
    [1, 0.15, "b", 4],
    [1, 0.25, "b", 5],
  ],
  "crater-pipe": [null, [0, 0.1, "t", 1], [0, 0.2, "t", 2]],
  "surface-pore": [null, [0, 0.2, "s", 2], [0, 0.3, "s", 3]],
  "excessive-asymmetry": [
    [1.5, 0.15, "a", 99],
    [2, 0.15, "a", 99],
    [2, 0.2, "a", 99],
  ],
};

/** The limit as the published table has it, where the set is ISO 5817:2014 and the type is in the list above; else as the row has it. */
function published(asked: Asked, type: string, face: string): number {
  const { criteria, question } = asked;
  const values = valuesIn(question.stem, criteria);
  const level = /^ISO 5817, quality level ([BCD])$/.exec(criteria.name)?.[1];
  const rows = rowsFor(criteria, type, face, values);
  if (rows.length !== 1) return Number.NaN;
  const own = limitOf(rows[0], values);
  if (level === undefined || !criteria.edition.includes("2014") || !(type in ISO) || values.t <= 3) return own;
  const row = ISO[type]["BCD".indexOf(level)];
  if (row === null) return Number.NaN;
  const [constant, factor, symbol, most] = row;
  // fillets go by the throat where butt welds go by s
  return Math.min(most, constant + factor * values[symbol === "s" && face === "fillet" ? "a" : symbol]);
}

const largest: Opinion = (asked) => {
  const { stem } = asked.question;
  const body = stem.slice(stem.indexOf(": "));
  return byNumber(asked, published(asked, typeWithin(body), faceIn(body)), 0.0051, 0.015);
};

const sentenceOfUndercut: Opinion = (asked) => {
  const { stem } = asked.question;
  const body = stem.slice(stem.indexOf(": "));
  const limit = published(asked, typeWithin(body), faceIn(body));
  const depth = Number(/([\d.]+) mm deep/.exec(body)?.[1]);
  return byText(asked, (option) => {
    const named = Number(/over ([\d.]+) mm$/.exec(option)?.[1]);
    return Math.abs(named - limit) < 0.0051 && option.startsWith(depth > limit ? "Reject" : "Accept");
  });
};

/** "accept", "reject" or what keeps it open, by plain reading of the rows. */
function plainSentence(asked: Asked, type: string, face: string, measure: string): string {
  const { criteria, question } = asked;
  const values = valuesIn(question.stem, criteria);
  const rows = rowsFor(criteria, type, face, values);
  if (rows.length === 0) return "no limit given";
  const [row] = rows;
  if (rows.length > 1) return "several";
  if (row.limit.kind === "not-permitted") return "reject";
  if (row.limit.kind === "depends") return "cannot be judged";
  const measured = /(?:depth|height|diameter|legs|gap|plate|leg) ([\d.]+) mm/.exec(measure);
  if (row.limit.kind !== "at-most" || !measured) return "cannot be judged";
  const value = Number(measured[1]);
  const limit = published(asked, type, face);
  if (!(Math.abs(value - limit) > 0.1)) return "too near";
  if (value > limit) return "reject";
  return row.alsoNeeds === undefined ? "accept" : "cannot be judged";
}

const which =
  (wanted: string): Opinion =>
  (asked) =>
    byText(asked, (option) => {
      const name = option.split(/ on the |, /)[0];
      return plainSentence(asked, typeNamed(name) ?? "", faceIn(option), option.slice(option.indexOf(","))) === wanted;
    });

const whichOutcome: Opinion = (asked) => {
  const { stem } = asked.question;
  const body = stem.slice(stem.lastIndexOf(": ") + 2);
  const sentence = plainSentence(asked, typeWithin(body.split(",")[0]), faceIn(body), body.slice(body.indexOf(",")));
  return byText(asked, (option) => option.toLowerCase() === sentence);
};

const neverPermitted: Opinion = (asked) => {
  const values = valuesIn(asked.question.stem, asked.criteria);
  return byText(asked, (option) => {
    const type = typeNamed(option) ?? "";
    const kinds = PIECES[asked.truth.joint.kind].faces.flatMap((face) =>
      rowsFor(asked.criteria, type, face, values).map((row) => row.limit.kind),
    );
    return kinds.length > 0 && kinds.includes("not-permitted");
  });
};

const MEASURES: Readonly<Record<string, string>> = {
  t: "On the thickness of the plate",
  s: "On the thickness of the weld",
  a: "On the throat of the drawing",
  aA: "On the throat as it is welded",
  b: "On the width from toe to toe",
  bRoot: "On the width of the root run",
  z: "On the leg that is asked for",
};

const goesBy: Opinion = (asked) => {
  const { stem } = asked.question;
  const body = stem.slice(stem.indexOf(": "));
  const rows = rowsFor(asked.criteria, typeWithin(body), faceIn(body), valuesIn(stem, asked.criteria)).filter(
    ({ limit }) => limit.kind === "at-most",
  );
  const symbols = new Set<string | undefined>(
    rows.map(({ limit }) => (limit.kind === "at-most" ? limit.formula.symbol : undefined)),
  );
  // several rows for several ranges of something: then the limit goes by that, too
  const type = typeWithin(body);
  const face = faceIn(body);
  const all = asked.criteria.rows.filter(
    (row) => (row.types as string[]).includes(type) && (row.faces as string[]).includes(face),
  );
  if (all.length > 1) for (const row of all) for (const { symbol } of row.ranges) symbols.add(symbol);
  // a cap that is reached on this piece is one number, whatever the rest of the rule says
  const values = valuesIn(stem, asked.criteria);
  for (const { limit } of rows) {
    if (limit.kind !== "at-most" || limit.formula.atMost === undefined) continue;
    const { atMost, ...uncapped } = limit.formula;
    const grown = (uncapped.constant ?? 0) + (uncapped.coefficient ?? 0) * values[uncapped.symbol ?? "t"];
    if (grown >= atMost) symbols.add(undefined);
  }
  return byText(asked, (option) =>
    [...symbols].some(
      (symbol) => option === (symbol === undefined ? "On nothing: it is one number" : MEASURES[symbol]),
    ),
  );
};

/** What one rule on summed lengths has: the stretch and how much may lie in it; a short imperfection of ISO 5817 is 25 mm in 100 mm. */
function rulesOn(asked: Asked): { window: number; most: number }[] {
  const { stem } = asked.question;
  const body = stem.slice(stem.indexOf(": "));
  const type = typeWithin(body);
  const values = valuesIn(stem, asked.criteria);
  return PIECES[asked.truth.joint.kind].faces.flatMap((face) =>
    rowsFor(asked.criteria, type, face, values).flatMap((row) => [
      ...(row.limit.kind === "at-most" && row.limit.shortOnly ? [{ window: 100, most: 25 }] : []),
      ...row.sums.flatMap((rule) =>
        rule.window !== undefined && rule.most.kind === "fixed" ? [{ window: rule.window, most: rule.most.value }] : [],
      ),
    ]),
  );
}

export const CRITERIA: Readonly<Record<string, Opinion>> = {
  "undercut-limit": largest,
  "height-limit": largest,
  "pore-limit": largest,
  "undercut-sentence": sentenceOfUndercut,
  "which-rejected": which("reject"),
  "which-accepted": which("accept"),
  "which-outcome": whichOutcome,
  "never-permitted": neverPermitted,
  "limit-goes-by": goesBy,
  "summed-over": (asked) => byText(asked, (option) => rulesOn(asked).some(({ window }) => window === numberIn(option))),
  "summed-most": (asked) => {
    const window = Number(/worst (\d+) mm/.exec(asked.question.stem)?.[1]);
    return byText(asked, (option) =>
      rulesOn(asked).some((rule) => rule.window === window && rule.most === numberIn(option)),
    );
  },
};
