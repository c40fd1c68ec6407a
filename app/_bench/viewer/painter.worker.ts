import type { Aspect } from "@/lib/weld";
import type { Painter } from "./painter";
import { createProcessorPainter } from "./processor-painter";
import type { PainterAnswer, PainterOrder, PaintRequest, PaintTarget } from "./protocol";
import { createWebglPainter } from "./webgl-painter";

const scope = self as unknown as DedicatedWorkerGlobalScope;
/** The newest request of each kind that has not been painted. */
const wanted = new Map<PaintTarget, PaintRequest>();
/** What somebody has seen already. */
const seen = new Set<Aspect>();
let isPainting = false;

const painter: Painter = createPainter();
answer({ kind: "ready", means: painter.means });

function createPainter(): Painter {
  try {
    return createWebglPainter() ?? createProcessorPainter();
  } catch {
    return createProcessorPainter();
  }
}

scope.onmessage = async ({ data: order }: MessageEvent<PainterOrder>) => {
  switch (order.kind) {
    case "face":
      painter.takeFace(order.unpacked);
      answer({ kind: "taken", aspect: order.unpacked.aspect });
      break;
    case "paint":
      wanted.set(order.request.target, order.request);
      break;
    case "forget":
      wanted.delete(order.target);
      break;
    case "measure":
      if (painter.hasAspect(order.request.view.aspect)) {
        answer({ kind: "measured", timings: await painter.measure(order.request) });
      }
      break;
  }
  if (!isPainting) await paintWanted();
};

async function paintWanted() {
  isPainting = true;
  try {
    for (let request = nextRequest(); request; request = nextRequest()) {
      // the first picture of a face comes in a hurry, whatever its quality: somebody waits for the plate
      const isFirst = !request.isMoving && request.target === "picture" && !seen.has(request.view.aspect);
      const current = isFirst ? { ...request, isMoving: true } : request;
      wanted.delete(current.target);
      const isOutdated = async () => {
        await letMessagesIn();
        return wanted.has(current.target) || [...wanted.values()].some(({ isMoving }) => isMoving);
      };
      const painted = await painter.paint(current, isOutdated);
      if (painted) {
        seen.add(current.view.aspect);
        answer({ kind: "frame", request: current, ...painted }, [painted.bitmap]);
        if (isFirst && !painted.isFinal && !wanted.has(current.target)) wanted.set(current.target, request);
        await letMessagesIn();
      } else if (!wanted.has(current.target)) wanted.set(current.target, request);
    }
  } catch (error) {
    answer({ kind: "broken", reason: error instanceof Error ? error.message : String(error) });
  } finally {
    isPainting = false;
  }
}

/** What moves goes first. */
function nextRequest(): PaintRequest | undefined {
  const ready = [...wanted.values()].filter(({ view }) => painter.hasAspect(view.aspect));
  return ready.find(({ isMoving }) => isMoving) ?? ready[0];
}

function letMessagesIn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

function answer(message: PainterAnswer, moved: Transferable[] = []) {
  scope.postMessage(message, moved);
}
