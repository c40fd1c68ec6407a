import type { Metadata } from "next";
import Link from "next/link";
import { SaveRecord } from "@/app/_paper/save-record";
import { refuse } from "@/app/_server/refusal";
import { currentActor, currentCaller, showRefusal } from "@/app/_server/session";
import { listOwnClasses } from "@/app/_server/use-cases/join-class";
import { readOwnRecord } from "@/app/_server/use-cases/own-record";
import { listOwnSessions } from "@/app/_server/use-cases/own-sessions";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { changeErasureRequest, changePassword, endSessions } from "./actions";
import { describeDevice } from "./device-words";
import { Devices } from "./devices";
import { OwnRecord } from "./own-record";
import { PasswordForm } from "./password-form";

export const metadata: Metadata = { title: "Your account" };

export default async function AccountPage() {
  const actor = await currentActor();
  if (!actor) return showRefusal(refuse("not-signed-in"));
  const caller = await currentCaller();
  const [mine, signedIn, record] = await Promise.all([
    listOwnClasses(caller),
    listOwnSessions(caller),
    readOwnRecord(caller),
  ]);
  if (!mine.ok) return showRefusal(mine);
  if (!signedIn.ok) return showRefusal(signedIn);
  if (!record.ok) return showRefusal(record);
  const devices = signedIn.sessions.map(({ id, since, userAgent, isThisOne }) => ({
    id,
    since,
    isThisOne,
    words: describeDevice(userAgent),
  }));
  return (
    <PageFrame title={actor.name} lead={`You are a ${actor.role} in this workshop.`} isNarrow>
      {actor.role === "learner" && (
        <Sheet title="Your classes" className="mt-6">
          {mine.classes.length === 0 && <p className="mt-2">You are in no class and practise by yourself.</p>}
          <ul className="mt-2 space-y-1">
            {mine.classes.map(({ id, name, tutors }) => (
              <li key={id} className="wrap-anywhere">
                <strong className="font-medium">{name}</strong>{" "}
                <span className="text-ink-2">with {tutors.map((tutor) => tutor.name).join(", ")}</span>
              </li>
            ))}
          </ul>
          <Link
            href="/join"
            className="mt-2 inline-flex min-h-11 items-center font-medium text-action underline underline-offset-4"
          >
            Join a class with its code
          </Link>
        </Sheet>
      )}
      <PasswordForm change={changePassword} />
      <Devices devices={devices} end={endSessions} />
      <OwnRecord askedAt={record.role === "learner" ? record.askedAt : undefined} change={changeErasureRequest}>
        <SaveRecord personId={record.personId} />
      </OwnRecord>
    </PageFrame>
  );
}
