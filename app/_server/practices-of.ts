import { listPractices } from "@/prisma/stores/practices";

/** One person's practices: unfinished ones, and handed-in ones with their marks, the latest first. */
export async function practicesOf(userId: string) {
  const practices = await listPractices(userId);
  return {
    open: practices.filter(({ state }) => state === "open"),
    handedIn: practices
      .filter(({ state }) => state === "handed-in")
      .sort((a, b) => Number(b.handedInAt) - Number(a.handedInAt)),
  };
}
