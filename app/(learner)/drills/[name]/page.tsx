import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { DrillDesk } from "@/app/_drills/drill-desk";
import { DRILL_WORDS } from "@/app/_drills/drill-words";
import { requireSignedIn } from "@/app/_server/permissions";
import { randomId } from "@/app/_server/random-id";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { DRILLS, type Drill } from "@/lib/drills";

const drillOf = (name: string): Drill | undefined => DRILLS.find((drill) => drill === name);

export async function generateMetadata({ params }: PageProps<"/drills/[name]">): Promise<Metadata> {
  const drill = drillOf((await params).name);
  return { title: drill && DRILL_WORDS[drill].title };
}

export default async function DrillPage({ params }: PageProps<"/drills/[name]">) {
  const signedIn = requireSignedIn(await currentCaller());
  if (!signedIn.ok) return showRefusal(signedIn);
  const drill = drillOf((await params).name);
  if (!drill) return notFound();
  const { title, does } = DRILL_WORDS[drill];
  return (
    <PageFrame
      title={title}
      lead={
        <>
          {does}{" "}
          <Link href="/drills" className="whitespace-nowrap text-action underline underline-offset-4">
            All drills
          </Link>
        </>
      }
      isWide={drill !== "read-scale"}
    >
      {/* what it names goes to the browser with its answers: an exercise with feedback at once, by which nothing is marked */}
      <DrillDesk drill={drill} name={`drill/${randomId()}`} />
      <Caution />
    </PageFrame>
  );
}
