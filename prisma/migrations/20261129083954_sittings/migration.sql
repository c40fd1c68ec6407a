-- CreateTable
CREATE TABLE "Sitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "paperVersionId" TEXT NOT NULL,
    "isForWholeClass" BOOLEAN NOT NULL,
    "state" TEXT NOT NULL,
    "plannedAt" DATETIME NOT NULL,
    "course" JSONB NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 0,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Sitting_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "ClassGroup" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Sitting_paperVersionId_fkey" FOREIGN KEY ("paperVersionId") REFERENCES "PaperVersion" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SectionRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sittingId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "isBorderline" BOOLEAN NOT NULL DEFAULT false,
    "state" TEXT NOT NULL,
    "course" JSONB NOT NULL,
    "liveWindowId" TEXT,
    "practiceId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "SectionRun_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SectionRun_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SectionRun_practiceId_fkey" FOREIGN KEY ("practiceId") REFERENCES "Practice" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SittingPresence" (
    "sittingId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "enteredAt" DATETIME NOT NULL,
    "lastSeenAt" DATETIME NOT NULL,

    PRIMARY KEY ("sittingId", "userId"),
    CONSTRAINT "SittingPresence_sittingId_fkey" FOREIGN KEY ("sittingId") REFERENCES "Sitting" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SittingPresence_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "at" DATETIME NOT NULL,
    "actorId" TEXT NOT NULL,
    "act" TEXT NOT NULL,
    "subjectKind" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "reason" TEXT,
    "details" JSONB
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Specimen" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL DEFAULT 'butt',
    "seed" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "isReserved" BOOLEAN NOT NULL DEFAULT false,
    "isAwaited" BOOLEAN NOT NULL DEFAULT false,
    "asked" JSONB,
    "stage" TEXT NOT NULL DEFAULT '',
    "generatorVersion" TEXT,
    "truth" JSONB,
    "ends" JSONB,
    "createdAt" DATETIME NOT NULL
);
INSERT INTO "new_Specimen" ("createdAt", "ends", "generatorVersion", "id", "isReserved", "kind", "seed", "stage", "state", "truth") SELECT "createdAt", "ends", "generatorVersion", "id", "isReserved", "kind", "seed", "stage", "state", "truth" FROM "Specimen";
DROP TABLE "Specimen";
ALTER TABLE "new_Specimen" RENAME TO "Specimen";
CREATE UNIQUE INDEX "Specimen_seed_key" ON "Specimen"("seed");
CREATE INDEX "Specimen_kind_state_createdAt_idx" ON "Specimen"("kind", "state", "createdAt");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "Sitting_groupId_plannedAt_idx" ON "Sitting"("groupId", "plannedAt");

-- CreateIndex
CREATE INDEX "Sitting_state_idx" ON "Sitting"("state");

-- CreateIndex
CREATE UNIQUE INDEX "SectionRun_practiceId_key" ON "SectionRun"("practiceId");

-- CreateIndex
CREATE INDEX "SectionRun_sittingId_idx" ON "SectionRun"("sittingId");

-- CreateIndex
CREATE INDEX "SectionRun_userId_idx" ON "SectionRun"("userId");

-- CreateIndex
CREATE INDEX "AuditEntry_subjectKind_subjectId_at_idx" ON "AuditEntry"("subjectKind", "subjectId", "at");


