import type { Criteria, InHouseSet } from "@/lib/criteria";
import { database } from "../client";
import { criteriaColumn } from "../columns";
import type { CriteriaSetModel } from "../generated/client/models";

const withOwner = { owner: { select: { name: true } } } as const;

export interface CriteriaSetToCreate {
  readonly basedOn: string | null;
  /** Its id is that of the set. */
  readonly own: Criteria;
  readonly ownerId: string;
  readonly createdAt: Date;
}

export async function createCriteriaSet({ basedOn, own, ownerId, createdAt }: CriteriaSetToCreate): Promise<void> {
  await database().criteriaSet.create({
    data: {
      id: own.id,
      name: own.name,
      basedOn,
      own: criteriaColumn.write(own),
      ownerId,
      createdAt,
      updatedAt: createdAt,
    },
  });
}

export async function readCriteriaSet(id: string): Promise<InHouseSet | null> {
  const row = await database().criteriaSet.findUnique({ where: { id }, include: withOwner });
  return row && setOf(row);
}

/** Every set of the workshop by name, also those that are put away. */
export async function listCriteriaSets(): Promise<readonly InHouseSet[]> {
  const rows = await database().criteriaSet.findMany({ orderBy: [{ name: "asc" }, { id: "asc" }], include: withOwner });
  return rows.map(setOf);
}

export interface CriteriaEdit {
  readonly basedOn: string | null;
  readonly own: Criteria;
  /** When the version was stored that the edit started from. */
  readonly seen: Date;
  /** Later than that. */
  readonly updatedAt: Date;
}

/** Stores an edit, unless another one came in between: then false. */
export async function updateCriteriaSet({ basedOn, own, seen, updatedAt }: CriteriaEdit): Promise<boolean> {
  const { count } = await database().criteriaSet.updateMany({
    where: { id: own.id, updatedAt: seen },
    data: { name: own.name, basedOn, own: criteriaColumn.write(own), updatedAt },
  });
  return count === 1;
}

/** Puts a set away, or takes it back with null; false where there is none. What it says is left as it is. */
export async function archiveCriteriaSet(id: string, archivedAt: Date | null): Promise<boolean> {
  const { count } = await database().criteriaSet.updateMany({ where: { id }, data: { archivedAt } });
  return count === 1;
}

type CriteriaSetRow = CriteriaSetModel & { readonly owner: { readonly name: string } | null };

function setOf({ id, basedOn, own, owner, createdAt, updatedAt, archivedAt }: CriteriaSetRow): InHouseSet {
  return {
    id,
    basedOn,
    own: criteriaColumn.read(own),
    madeBy: owner?.name ?? null,
    createdAt,
    updatedAt,
    archivedAt,
  };
}
