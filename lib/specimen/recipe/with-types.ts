import type { ImperfectionType } from "../../imperfections";
import { FACES, type Face } from "../../weld";
import { SIZE_BANDS, type SizeBand } from "../difficulty";
import { asksFor, type Blueprint, countOf, type SectionBlueprint, type Slot } from "./blueprint";
import { refuseSection } from "./check-blueprint";
import { FEATURE_ROWS, weightOf } from "./feature-rows";
import type { JointChoice } from "./joint";
import { bandsToBeHad, PLATE_TYPES } from "./plate-items";
import type { FeatureRow, Site } from "./rows";
import { sizingsOf } from "./sizing";
import type { TypeWish, Unmet, Wished } from "./type-wish";

type Band = Slot["band"];
type Place = Slot["place"];

/**
 * A blueprint that asks for types. Each of `includes` takes one place of a slot, in its size and place as far as the type
 * comes so, and the joint is narrowed to processes and positions with which it comes; where it has a choice, it takes what
 * changes least. Slots of any family then take only `among`, and fewer where these cannot fill all of them. What comes by
 * itself (`extras`) is left alone. The result passes `checkBlueprint` if the blueprint did.
 */
export function withTypes(blueprint: Blueprint, { includes, among }: TypeWish): Wished<Blueprint> {
  const wanted = [...new Set(includes)];
  const freedom = new Map(wanted.map((type) => [type, FACES.reduce((sum, face) => sum + waysOn(face, type), 0)]));
  // what comes with few processes first, or the joint might be narrowed to others
  const inOrder = [...wanted].sort((a, b) => (freedom.get(a) ?? 0) - (freedom.get(b) ?? 0));
  let reached = blueprint;
  const unmet: Unmet[] = [];
  for (const type of inOrder) {
    const next = place(reached, type);
    if (next) reached = next;
    else unmet.push({ type, why: whyNot(blueprint, reached, type) });
  }
  const ordered = wanted.flatMap((type) => unmet.filter((one) => one.type === type));
  const narrowed = among === "any" ? reached : onlyAmong(reached, among);
  const counted = ({ sections }: Blueprint) => FACES.reduce((sum, face) => sum + countOf(sections[face]), 0);
  return { blueprint: narrowed, unmet: ordered, fewer: counted(blueprint) - counted(narrowed) };
}

function whyNot(whole: Blueprint, reached: Blueprint, type: ImperfectionType): Unmet["why"] {
  const faces = (joint: JointChoice) => FACES.filter((face) => narrowedFor(face, type, joint));
  const possible = faces(whole.joint);
  if (possible.length === 0) return "never";
  if (!possible.some((face) => canClear(face, type, whole))) return "near-limits";
  if (faces(reached.joint).length === 0) return "not-together";
  return "no-room";
}

/** Whether a type comes on a face in any size that a blueprint allows. */
function canClear(face: Face, type: ImperfectionType, { joint, sections }: Blueprint): boolean {
  const narrowed = narrowedFor(face, type, joint);
  return narrowed !== null && sizeAndPlace(face, type, ANYHOW, sections[face], narrowed) !== null;
}

const ANYHOW = { band: "any", place: "any" } as const;

const isOfPlates = (type: ImperfectionType): type is (typeof PLATE_TYPES)[number] =>
  PLATE_TYPES.some((one) => one === type);

const rowsOf = (face: Face, type: ImperfectionType): readonly FeatureRow[] =>
  FEATURE_ROWS.filter((row) => row.face === face && row.type === type);

/** With how many processes a type comes on a face. */
const waysOn = (face: Face, type: ImperfectionType): number =>
  isOfPlates(type) && face === "cap"
    ? Number.POSITIVE_INFINITY
    : new Set(
        rowsOf(face, type).flatMap(({ likelihood }) =>
          Object.entries(likelihood)
            .filter(([, l]) => l !== "never")
            .map(([p]) => p),
        ),
      ).size;

/** The joint as far as a type comes on a face with every process and position that is left; null where with none. */
function narrowedFor(face: Face, type: ImperfectionType, joint: JointChoice): JointChoice | null {
  if (isOfPlates(type)) return face === "cap" ? joint : null;
  const rows = rowsOf(face, type);
  const comes = (process: JointChoice["processes"][number], position: JointChoice["positions"][number]) =>
    rows.some((row) => weightOf(row, process, position) > 0 && sizingsOf(row, "any", false, process).length > 0);
  const processes = joint.processes.filter((one) => joint.positions.some((position) => comes(one, position)));
  const positions = joint.positions.filter((one) => processes.every((process) => comes(process, one)));
  return processes.length > 0 && positions.length > 0 ? { ...joint, processes, positions } : null;
}

interface Way {
  readonly face: Face;
  /** Number of the slot that gives one of its places. */
  readonly from: number;
  readonly slot: Slot;
  readonly joint: JointChoice;
  /** What it changes, the worst first: joint, family, place and band of the slot, evenness of faces and slots. */
  readonly cost: readonly number[];
}

/** The blueprint with one place given to a type, changing as little as can be; null where none can be had. */
function place(blueprint: Blueprint, type: ImperfectionType): Blueprint | null {
  const ways = FACES.flatMap((face) => waysTo(blueprint, face, type)).sort((a, b) => compare(a.cost, b.cost));
  for (const { face, from, slot, joint } of ways) {
    const section = blueprint.sections[face];
    const slots = [slot, ...lessOne(section.slots, from)];
    const next = { joint, sections: { ...blueprint.sections, [face]: { ...section, slots } } };
    if (refuseSection(face, next) === null) return next;
  }
  return null;
}

function waysTo(blueprint: Blueprint, face: Face, type: ImperfectionType): Way[] {
  const section = blueprint.sections[face];
  const joint = narrowedFor(face, type, blueprint.joint);
  if (!joint) return [];
  const lost =
    blueprint.joint.processes.length * blueprint.joint.positions.length -
    joint.processes.length * joint.positions.length;
  const asked = section.slots.reduce((sum, slot) => sum + (slot.types ? slot.count : 0), 0);
  return section.slots.flatMap((old, from) => {
    if (old.types) return [];
    const fit = sizeAndPlace(face, type, old, section, joint);
    if (!fit) return [];
    const cost = [
      lost,
      asksFor(old, type) ? 0 : 1,
      fit.place === old.place ? 0 : 1,
      fit.band === old.band ? 0 : 1,
      asked / countOf(section),
      -old.count,
    ];
    return [{ face, from, joint, cost, slot: { count: 1, families: "any", types: [type], ...fit } }];
  });
}

/** Band and place of a slot as far as a type comes so with all of a joint; null where it cannot be had in any size. */
function sizeAndPlace(
  face: Face,
  type: ImperfectionType,
  slot: Pick<Slot, "band" | "place">,
  { nearLimits }: SectionBlueprint,
  joint: JointChoice,
): { band: Band; place: Place } | null {
  const comes = (band: Band, at: Place): boolean => {
    if (isOfPlates(type)) return (at === "any" || at === "weld") && plateBand(type, band, nearLimits);
    const rows = rowsOf(face, type).filter(({ site }) => at === "any" || at === site);
    return joint.processes.every((process) =>
      joint.positions.every((position) =>
        rows.some(
          (row) => weightOf(row, process, position) > 0 && sizingsOf(row, band, !nearLimits, process).length > 0,
        ),
      ),
    );
  };
  const bands: Band[] = [slot.band, ...neighbours(slot.band), "any"];
  const places: (Site | "any")[] = [slot.place, "any"];
  for (const at of places) {
    const band = bands.find((one) => comes(one, at));
    if (band) return { band, place: at };
  }
  return null;
}

const plateBand = (type: (typeof PLATE_TYPES)[number], band: Band, nearLimits: boolean): boolean =>
  band === "any" || bandsToBeHad(type, !nearLimits).includes(band);

/** The bands beside one, nearest first. */
function neighbours(band: Band): SizeBand[] {
  if (band === "any") return [];
  const away = (one: SizeBand) => Math.abs(SIZE_BANDS.indexOf(one) - SIZE_BANDS.indexOf(band));
  return SIZE_BANDS.filter((one) => one !== band).sort((a, b) => away(a) - away(b));
}

function onlyAmong(blueprint: Blueprint, among: readonly ImperfectionType[]): Blueprint {
  const sections = { ...blueprint.sections };
  for (const face of FACES) {
    const { section, isOpen } = narrowed(face, blueprint, among);
    sections[face] = withoutSurplus(face, { ...blueprint, sections: { ...sections, [face]: section } }, isOpen);
  }
  return { ...blueprint, sections };
}

/** A section whose open slots take only some types, and which of its slots these are. */
function narrowed(
  face: Face,
  { joint, sections }: Blueprint,
  among: readonly ImperfectionType[],
): { section: SectionBlueprint; isOpen: boolean[] } {
  const section = sections[face];
  const kept = section.slots.flatMap((slot): { slot: Slot; open: boolean }[] => {
    if (slot.families !== "any" || slot.types) return [{ slot, open: false }];
    const here = among.filter((type) => (isOfPlates(type) ? face === "cap" : rowsOf(face, type).length > 0));
    const bands: Band[] = [slot.band, "any"];
    for (const band of bands) {
      const candidate: Slot = { ...slot, band, types: here };
      if (
        here.length > 0 &&
        refuseSection(face, {
          joint,
          sections: { ...sections, [face]: { ...section, slots: [{ ...candidate, count: 1 }] } },
        }) === null
      )
        return [{ slot: candidate, open: true }];
    }
    return [];
  });
  return { section: { ...section, slots: kept.map(({ slot }) => slot) }, isOpen: kept.map(({ open }) => open) };
}

/** The section of a face, with one after the other taken from its open slots until nothing is known against it. */
function withoutSurplus(face: Face, blueprint: Blueprint, isOpen: readonly boolean[]): SectionBlueprint {
  const section = blueprint.sections[face];
  const refusal = refuseSection(face, blueprint);
  if (!refusal) return section;
  const refused = "slot" in refusal && isOpen[refusal.slot] ? refusal.slot : isOpen.lastIndexOf(true);
  if (refused < 0) return section;
  const slots = lessOne(section.slots, refused);
  const open = slots.length < section.slots.length ? isOpen.filter((_, n) => n !== refused) : isOpen;
  const next = { ...blueprint, sections: { ...blueprint.sections, [face]: { ...section, slots } } };
  return withoutSurplus(face, next, open);
}

const lessOne = (slots: readonly Slot[], from: number): Slot[] =>
  slots.flatMap((slot, n) => (n !== from ? [slot] : slot.count > 1 ? [{ ...slot, count: slot.count - 1 }] : []));

function compare(a: readonly number[], b: readonly number[]): number {
  const first = a.findIndex((value, n) => value !== b[n]);
  return first < 0 ? 0 : a[first] - b[first];
}
