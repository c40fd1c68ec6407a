import type { Metadata } from "next";
import Link from "next/link";
import { ClassOnPaper } from "@/app/_paper/class-on-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readClass } from "@/app/_server/use-cases/read-class";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { Caution } from "@/app/_ui/caution";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { readWorkshop } from "@/prisma/stores/workshops";
import { countLearners } from "../../describe-desk";
import {
  addTutorToClass,
  archive,
  changeDetails,
  changeMembers,
  removeTutorFromClass,
  switchJoinCode,
} from "../actions";
import { ArchiveForm, DetailsForm } from "./class-forms";
import { ClassTutors } from "./class-tutors";
import { CourseSheet } from "./course-sheet";
import { JoinCode } from "./join-code";
import { MembersDesk } from "./members-desk";

export const metadata: Metadata = { title: "Class" };

export default async function ClassPage({ params }: PageProps<"/desk/classes/[id]">) {
  const { id } = await params;
  const caller = await currentCaller();
  const [read, courses, workshop] = await Promise.all([
    readClass(caller, id),
    readClassCourses(caller, id),
    readWorkshop(),
  ]);
  if (!read.ok) return showRefusal(read);
  if (!courses.ok) return showRefusal(courses);
  const { group, members, left, otherClasses, otherTutors } = read;
  const isArchived = group.archivedAt !== null;
  return (
    <PageFrame
      title={group.name}
      lead={
        <>
          {capital(countLearners(members.length))}, with {group.tutors.map(({ name }) => name).join(", ")}. Made on{" "}
          <LocalTime at={group.createdAt} withTime={false} />.
        </>
      }
    >
      <Link href="/desk/classes" className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4">
        All your classes
      </Link>
      <Link
        href={`/desk/classes/${id}/progress`}
        className="mt-3 flex min-h-11 w-fit items-center rounded border border-action bg-sheet px-5 font-medium text-action hover:bg-paper-2"
      >
        What the class still misses
      </Link>
      <ClassOnPaper classId={id} />
      {group.archivedAt && (
        <div className="mt-3">
          <Notice isGood>
            Archived on <LocalTime at={group.archivedAt} withTime={false} />. You read everything here and change
            nothing; take the class back into use below if you need to.
          </Notice>
        </div>
      )}
      <MembersDesk
        classId={id}
        isArchived={isArchived}
        members={members.map(({ handedIn, ...member }) => ({
          ...member,
          handedInCount: handedIn.length,
          last: handedIn[0],
        }))}
        otherClasses={otherClasses.map((other) => ({ id: other.id, name: other.name }))}
        workshop={workshop?.name ?? ""}
        publicAddress={process.env.PUBLIC_URL ?? null}
        change={changeMembers}
      />
      {courses.papers.map((course) => (
        <CourseSheet key={course.paperId} course={course} practiceOf={courses.practiceOf} />
      ))}
      <div className="mt-5 grid items-start gap-5 lg:grid-cols-2">
        {!isArchived && <JoinCode group={group} change={switchJoinCode} />}
        <Sheet title="Name and notes">
          <DetailsForm group={group} change={changeDetails} />
        </Sheet>
        <ClassTutors group={group} others={otherTutors} add={addTutorToClass} remove={removeTutorFromClass} />
        <Sheet title={isArchived ? "Take back into use" : "Archive"}>
          <ArchiveForm group={group} change={archive} />
        </Sheet>
        {left.length > 0 && (
          <Sheet title="Have left this class">
            <ul className="mt-2">
              {left.map(({ id, name, leftAt }) => (
                <li key={id} className="border-t border-line py-2 first:border-0 wrap-anywhere">
                  {name}{" "}
                  <span className="text-sm text-ink-2">
                    until <LocalTime at={leftAt} withTime={false} />
                  </span>
                </li>
              ))}
            </ul>
          </Sheet>
        )}
      </div>
      <Caution />
    </PageFrame>
  );
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
