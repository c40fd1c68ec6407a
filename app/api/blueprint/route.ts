import { specimens } from "@/app/_server/generation";
import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readBlueprint } from "@/app/_server/use-cases/read-blueprint";

/** What a section's piece is made to: `?section=plate&blueprint=assessment&process=drawn&position=PA&thickness=12`. */
export async function GET(request: Request): Promise<Response> {
  const { section, thickness, ...piece } = Object.fromEntries(new URL(request.url).searchParams);
  const asked = { section, piece: { ...piece, thickness: thickness === "drawn" ? thickness : Number(thickness) } };
  const read = await readBlueprint(await currentCaller(), asked, specimens);
  return read.ok ? answer(read) : answerRefusal(read);
}
