"use server";

import { revalidatePath } from "next/cache";
import { sentenceFor } from "@/app/_server/messages";
import { currentCaller } from "@/app/_server/session";
import { retryXapi } from "@/app/_server/use-cases/xapi-delivery";

export interface RetryState {
  readonly isGood: boolean;
  readonly told: string;
}

/** Has every statement that waits, or was refused, tried again at once. */
export async function tryAgain(): Promise<RetryState> {
  const done = await retryXapi(await currentCaller());
  if (!done.ok) return { isGood: false, told: sentenceFor(done.code) };
  revalidatePath("/desk/records");
  return { isGood: true, told: "Trying again now. Reload the page in a few seconds to see how it went." };
}
