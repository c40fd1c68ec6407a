import type { KeptSetDrill, SetDrill } from "@/lib/eye";
import { database } from "../client";
import { setTypesColumn } from "../columns";
import type { SetDrillModel } from "../generated/client/models";

const withNames = { setBy: { select: { name: true } }, group: { select: { name: true } } } as const;

export async function createSetDrill(
  { drill, types, ...keys }: SetDrill & { readonly id: string; readonly groupId: string; readonly setById: string },
  now: Date,
): Promise<void> {
  await database().setDrill.create({ data: { ...keys, drill, types: setTypesColumn.write(types), setAt: now } });
}

/** The drills that a class is to do, and so many of those that were withdrawn, the latest of each first. */
export async function listSetDrills(groupId: string, withdrawn: number): Promise<readonly KeptSetDrill[]> {
  const latest = { orderBy: [{ setAt: "desc" as const }, { id: "asc" as const }], include: withNames };
  const [open, past] = await Promise.all([
    database().setDrill.findMany({ where: { groupId, withdrawnAt: null }, ...latest }),
    database().setDrill.findMany({ where: { groupId, withdrawnAt: { not: null } }, take: withdrawn, ...latest }),
  ]);
  return [...open, ...past].map(setDrillOf);
}

/** The drills that somebody is to do in the classes that they are in, those done included, the oldest first. */
export async function listSetDrillsFor(
  userId: string,
): Promise<readonly (KeptSetDrill & { readonly isDone: boolean })[]> {
  const rows = await database().setDrill.findMany({
    where: { withdrawnAt: null, group: { archivedAt: null, members: { some: { userId, leftAt: null } } } },
    orderBy: [{ setAt: "asc" }, { id: "asc" }],
    include: {
      ...withNames,
      _count: {
        select: {
          rounds: { where: { userId, finishedAt: { not: null }, tasks: { some: { answeredAt: { not: null } } } } },
        },
      },
    },
  });
  return rows.map(({ _count, ...row }) => ({ ...setDrillOf(row), isDone: _count.rounds > 0 }));
}

/** Every drill that was ever set in these classes. */
export async function listSetDrillIds(groupIds: readonly string[]): Promise<readonly string[]> {
  const rows = await database().setDrill.findMany({
    where: { groupId: { in: [...groupIds] } },
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

export async function readSetDrill(id: string): Promise<KeptSetDrill | null> {
  const row = await database().setDrill.findUnique({ where: { id }, include: withNames });
  return row && setDrillOf(row);
}

/** Nobody is asked to do it any more; false where the class has none by that id that is not withdrawn. */
export async function withdrawSetDrill(groupId: string, id: string, now: Date): Promise<boolean> {
  const { count } = await database().setDrill.updateMany({
    where: { id, groupId, withdrawnAt: null },
    data: { withdrawnAt: now },
  });
  return count === 1;
}

function setDrillOf({
  id,
  groupId,
  drill,
  types,
  setAt,
  withdrawnAt,
  setBy,
  group,
}: SetDrillModel & { readonly setBy: { name: string } | null; readonly group: { name: string } }): KeptSetDrill {
  return {
    id,
    classId: groupId,
    className: group.name,
    drill,
    types: setTypesColumn.read(types),
    setBy: setBy?.name ?? null,
    setAt,
    withdrawnAt,
  };
}
