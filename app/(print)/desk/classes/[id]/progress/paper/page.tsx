import type { Metadata } from "next";
import { PaperFrame } from "@/app/_paper/paper-frame";
import { PrintedBlocks } from "@/app/_paper/printed-blocks";
import { classBlocks } from "@/app/_progress/class/class-blocks";
import { PrintedHeatMap } from "@/app/_progress/class/printed-heat-map";
import { CLASS_RANGE_NOTE } from "@/app/_progress/class/range-words";
import { teachWords } from "@/app/_progress/class/teach-words";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { classStanding, readinessOf } from "@/lib/progress";

export const metadata: Metadata = { title: "What a class misses, to print" };

export default async function ClassProgressPaperPage({ params }: PageProps<"/desk/classes/[id]/progress/paper">) {
  const { id } = await params;
  const read = await readClassProgress(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { group, learners, passMarks, at } = read;
  const people = learners.map(({ person }) => person);
  const standing = classStanding(learners.map(({ overview }) => overview));
  const sections = readinessOf(
    learners.map(({ marks }) => marks),
    passMarks,
  );
  const counted = `${standing.pieces} sections of practice and of released sittings, ${standing.indications} imperfections`;
  return (
    <PaperFrame
      title="What the class still misses"
      of={group.name}
      back={{ href: `/desk/classes/${id}/progress`, name: "Back to the class" }}
      isFlat
    >
      <PrintedBlocks
        blocks={[
          {
            kind: "facts",
            facts: [
              ["As of", at],
              ["From", counted],
              ["Ranges", CLASS_RANGE_NOTE],
              ["To teach next", teachWords(standing).join(" ")],
            ],
          },
        ]}
      />
      <PrintedHeatMap learners={people} missed={standing.missed} />
      <PrintedBlocks blocks={classBlocks(standing, people, sections)} />
    </PaperFrame>
  );
}
