import { readDemoHistory } from "@/prisma/stores/demo-history";
import { readDelivery, readQueue, tryAgain } from "@/prisma/stores/xapi";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";
import type { DeliveryView } from "../xapi/delivery-view";
import { type RecordStore, recordStore } from "../xapi/settings";

/** How many statements wait, what was refused and why, and how it went last. It says of nobody what is told. */
export async function readXapiDelivery(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const [queue, delivery, demo] = await Promise.all([readQueue(), readDelivery(), readDemoHistory()]);
  const { store, problem } = configured();
  const view: DeliveryView = { ...queue, ...delivery, isDemo: demo !== null, host: store?.host ?? null, problem };
  return { ok: true, delivery: view } as const;
}

/** Has everything tried again at once, what was refused as well. */
export async function retryXapi(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  if (!configured().store) return refuse("no-record-store");
  await tryAgain();
  return { ok: true } as const;
}

function configured(): { readonly store: RecordStore | null; readonly problem: string | null } {
  try {
    return { store: recordStore(), problem: null };
  } catch (error) {
    return { store: null, problem: error instanceof Error ? error.message : String(error) };
  }
}
