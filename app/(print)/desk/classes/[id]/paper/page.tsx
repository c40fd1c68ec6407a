import type { Metadata } from "next";
import { PaperFrame } from "@/app/_paper/paper-frame";
import { PrintedBlocks } from "@/app/_paper/printed-blocks";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readClassResults } from "@/app/_server/use-cases/read-class-results";
import { classPrint } from "@/lib/printing";

export const metadata: Metadata = { title: "Result list to print" };

export default async function ClassPaperPage({ params }: PageProps<"/desk/classes/[id]/paper">) {
  const { id } = await params;
  const read = await readClassResults(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { group, learners, results, at } = read;
  const { name } = group;
  const blocks = classPrint({ name, tutors: group.tutors.map((tutor) => tutor.name), learners, results, at });
  return (
    <PaperFrame title="Result list" of={name} back={{ href: `/desk/classes/${id}`, name: "Back to the class" }}>
      <PrintedBlocks blocks={blocks} />
    </PaperFrame>
  );
}
