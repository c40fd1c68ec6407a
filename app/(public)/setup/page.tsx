import type { Metadata } from "next";
import { connection } from "next/server";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { openDemo, setUp, signInFromDemo } from "./actions";
import { FirstStart } from "./first-start";

export const metadata: Metadata = { title: "Set up" };

export default async function SetUpPage() {
  await connection();
  const isSetUp = (await readWorkshop()) !== null;
  return (
    <PageFrame
      title="Welcome to the bench"
      lead="Toeline makes welded plates to practise on, and marks what you report line by line. Nobody has an account here yet: start with your own workshop, or look round in an invented one."
    >
      <FirstStart isSetUp={isSetUp} setUp={setUp} openDemo={openDemo} signInFromDemo={signInFromDemo} />
    </PageFrame>
  );
}
