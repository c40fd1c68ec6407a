import type { ImperfectionType } from "../imperfections";
import type { SurfaceFace } from "../weld";
import type { Criteria, Criterion } from "./criteria";

/**
 * One set on top of another: what the upper one speaks of, a type on a face, goes by it alone, and everything else by the lower
 * one. Rows that judge nothing are left out. A lower row that loses a type on some of its faces only is split by face and keeps its id, so its sums stay whole. Rules
 * about cross sections are the upper set's where it has any.
 */
export function mergeCriteria(lower: Criteria, upper: Criteria): Criteria {
  const isTaken = (type: ImperfectionType, face: SurfaceFace) =>
    upper.rows.some(({ types, faces }) => types.includes(type) && faces.includes(face));
  const kept = lower.rows.flatMap((row) => withoutTaken(row, isTaken));
  const ids = new Set(kept.map(({ id }) => id));
  // an id that both have would be summed up as one row
  const own = upper.rows.map((row) => (ids.has(row.id) ? { ...row, id: freeId(row.id, ids) } : row));
  return {
    ...upper,
    edition: `${upper.edition}; for the rest ${lower.edition}`.slice(0, 200).trimEnd(),
    rows: [...own, ...kept],
    sections: upper.sections.length > 0 ? upper.sections : lower.sections,
  };
}

function withoutTaken(row: Criterion, isTaken: (type: ImperfectionType, face: SurfaceFace) => boolean): Criterion[] {
  const byTypes = new Map<string, Criterion>();
  for (const face of row.faces) {
    const types = row.types.filter((type) => !isTaken(type, face));
    const same = byTypes.get(types.join());
    if (same) same.faces.push(face);
    else if (types.length > 0) byTypes.set(types.join(), { ...row, types, faces: [face] });
  }
  return [...byTypes.values()];
}

function freeId(id: string, taken: ReadonlySet<string>): string {
  let n = 2;
  while (taken.has(`${id.slice(0, 36)}-${n}`)) n += 1;
  return `${id.slice(0, 36)}-${n}`;
}
