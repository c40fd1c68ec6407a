import type { Metadata } from "next";
import Link from "next/link";
import { refuse } from "@/app/_server/refusal";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readClass } from "@/app/_server/use-cases/read-class";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { bringList } from "./actions";
import { ListDesk } from "./list-desk";

export const metadata: Metadata = { title: "Add learners" };

export default async function AddPage({ params }: PageProps<"/desk/classes/[id]/add">) {
  const { id } = await params;
  const [read, workshop] = await Promise.all([readClass(await currentCaller(), id), readWorkshop()]);
  if (!read.ok) return showRefusal(read);
  if (read.group.archivedAt) return showRefusal(refuse("no-such-class"));
  return (
    <PageFrame
      title={`Add learners to ${read.group.name}`}
      lead="Bring a list, look at what will happen to every row, and confirm. Until then nothing is done."
    >
      <Link
        href={`/desk/classes/${id}`}
        className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4"
      >
        Back to the class
      </Link>
      <ListDesk
        classId={id}
        className={read.group.name}
        workshop={workshop?.name ?? ""}
        publicAddress={process.env.PUBLIC_URL ?? null}
        bring={bringList}
      />
    </PageFrame>
  );
}
