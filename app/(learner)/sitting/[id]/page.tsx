import type { Metadata } from "next";
import { PaperFront } from "@/app/_papers/paper-front";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readOwnSitting } from "@/app/_server/use-cases/read-own-sitting";
import { LocalTime } from "@/app/_ui/local-time";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { MainCard } from "../../main-card";
import { standingOf } from "../../sitting-words";
import { ComeIn } from "./come-in";
import { SectionRows } from "./section-rows";
import { StayCurrent } from "./stay-current";

export const metadata: Metadata = { title: "Sitting" };

const LETS_IN: readonly string[] = ["open", "running", "paused"];

export default async function SittingPage({ params }: PageProps<"/sitting/[id]">) {
  const { id } = await params;
  const read = await readOwnSitting(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { sitting, paper, criteriaNames, isIn, standing, now } = read;
  const { next, isOn } = standingOf(sitting, isIn);
  const mayComeIn = LETS_IN.includes(sitting.state) && !isIn;
  const factor = sitting.sections[0]?.factor ?? 1;
  const rows = <SectionRows sitting={sitting} mayStart={isIn && sitting.state === "running"} now={now} />;
  return (
    <PageFrame
      title={sitting.paperName}
      lead={
        <>
          A sitting of {sitting.className}, planned for <LocalTime at={sitting.plannedAt} />.
        </>
      }
    >
      <div className="mt-6 grid max-w-4xl gap-4">
        {isOn ? (
          <MainCard title={sitting.state === "paused" ? "The sitting is paused" : TITLES[mayComeIn ? "out" : "in"]}>
            <p className="mt-1 text-bench-dim" role="status">
              {next}
            </p>
            {mayComeIn ? <ComeIn id={id} /> : rows}
          </MainCard>
        ) : (
          <Sheet title="How it stands">
            <p className="mt-2" role="status">
              {next}
            </p>
            {standing && <p className="mt-2 font-medium">{standing}</p>}
            {sitting.sections.length > 0 && rows}
          </Sheet>
        )}
        <PaperFront paper={paper} criteria={criteriaNames} factor={factor} />
      </div>
      <StayCurrent
        id={id}
        isIn={isIn}
        drawn={JSON.stringify(sitting)}
        isOver={sitting.state === "released" || sitting.state === "void"}
      />
    </PageFrame>
  );
}

const TITLES = { in: "You are in", out: "You can come in" } as const;
