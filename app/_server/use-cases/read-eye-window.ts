import type { Caller } from "../caller";
import { cutWindow } from "../eye/cut-window";
import { requireOwnEyeTask } from "../permissions";
import { refuse } from "../refusal";

/** The metal of one window of a task, counted from 0; see `unpackTile` in lib/surface. Nothing in it says what to look for. */
export async function readEyeWindow(caller: Caller, id: string, window: string) {
  const own = await requireOwnEyeTask(caller, id);
  if (!own.ok) return own;
  const known = own.kept.task.windows.find((_, n) => String(n) === window);
  const bytes = known && (await cutWindow(known.at));
  return bytes ? ({ ok: true, bytes } as const) : refuse("no-such-eye-task");
}
