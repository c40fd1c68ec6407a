import type { AuditEntry } from "@/prisma/stores/audit";
import type { Actor } from "../caller";

/** What a tutor does now, as it is kept. */
export const auditEntry = (
  actor: Actor,
  at: Date,
  act: string,
  subject: AuditEntry["subject"],
  { reason = null, ...details }: { readonly reason?: string | null } & AuditEntry["details"] = {},
): AuditEntry => ({ at, actorId: actor.id, act, subject, reason, details });
