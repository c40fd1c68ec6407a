import { useEffect, useRef, useState } from "react";
import { z } from "zod";
import type { BlueprintView } from "@/app/_server/blueprint-view";
import type { PaperSection } from "@/lib/sittings";

type Asked = { readonly key: string; readonly blueprint: BlueprintView | null; readonly message: string };

const refusedSchema = z.object({
  message: z.string(),
  fields: z.record(z.string(), z.string()).default({}),
});

const UNREACHED =
  "The workshop's server could not be reached. Choose again, or reload the page, to have it worked out.";

/** Whoever types or goes through a list is still for so long; only then is it worked out. */
const STILL_MS = 500;

/**
 * The blueprint of a section's piece from the server; null with an empty message while it is worked out. What is changed meanwhile
 * takes the question back.
 */
export function useBlueprint(section: PaperSection["section"], piece: PaperSection["piece"]): Omit<Asked, "key"> {
  const key = questionOf(section, piece);
  const [asked, setAsked] = useState<Asked | null>(null);
  const isFirst = useRef(true);
  useEffect(() => {
    const leaving = new AbortController();
    const timer = setTimeout(
      () => {
        isFirst.current = false;
        ask(key, leaving.signal).then(setAsked, () => {
          if (!leaving.signal.aborted) setAsked({ key, blueprint: null, message: UNREACHED });
        });
      },
      isFirst.current ? 0 : STILL_MS,
    );
    return () => {
      clearTimeout(timer);
      leaving.abort();
    };
  }, [key]);
  return asked?.key === key ? asked : { blueprint: null, message: "" };
}

/** As the route reads it: types by name, with commas between them. */
function questionOf(
  section: PaperSection["section"],
  { blueprint, process, position, thickness, types }: PaperSection["piece"],
): string {
  return new URLSearchParams({
    section,
    blueprint,
    process,
    position,
    thickness: String(thickness),
    ...(types && { includes: types.includes.join(), among: types.among === "any" ? "any" : types.among.join() }),
  }).toString();
}

async function ask(key: string, signal: AbortSignal): Promise<Asked> {
  const response = await fetch(`/api/blueprint?${key}`, { signal });
  const body: unknown = await response.json();
  // the server's own answer, typed there
  if (response.ok) return { key, blueprint: (body as { blueprint: BlueprintView }).blueprint, message: "" };
  const { message, fields } = refusedSchema.parse(body);
  const isMisfit = Object.keys(fields).length > 0;
  return { key, blueprint: null, message: isMisfit ? "This piece cannot be had: put right what is marked." : message };
}
