import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readBlueprint } from "@/app/_server/use-cases/read-blueprint";

/**
 * What a section's piece is made to: `?section=plate&blueprint=assessment&process=drawn&position=PA&thickness=12`, and where
 * it asks for types `&includes=overlap,surface-pore&among=any`.
 */
export async function GET(request: Request): Promise<Response> {
  const { section, thickness, includes, among, ...rest } = Object.fromEntries(new URL(request.url).searchParams);
  const isAsked = includes !== undefined || among !== undefined;
  const piece = {
    ...rest,
    thickness: thickness === "drawn" ? thickness : Number(thickness),
    ...(isAsked && { types: { includes: listed(includes), among: among === "any" ? among : listed(among) } }),
  };
  const asked = { section, piece };
  try {
    const read = await readBlueprint(await currentCaller(), asked, specimens, request.signal);
    return read.ok ? answer(read) : answerRefusal(read);
  } catch (error) {
    // whoever asked has typed on, and nobody reads this
    if (request.signal.aborted) return new Response(null, { status: 408 });
    throw error;
  }
}

const listed = (names = ""): string[] => names.split(",").filter((name) => name !== "");
