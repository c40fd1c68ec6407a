-- CreateTable
CREATE TABLE "ErasureRequest" (
    "userId" TEXT NOT NULL PRIMARY KEY,
    "askedAt" DATETIME NOT NULL,
    CONSTRAINT "ErasureRequest_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PooledSection" (
    "section" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "PooledType" (
    "type" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "PooledQuestion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "FileCare" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "dirtySince" DATETIME,
    "cleanedAt" DATETIME
);

-- CreateTable
CREATE TABLE "XapiStatement" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "id" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "statement" JSONB NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "reason" TEXT,
    CONSTRAINT "XapiStatement_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "XapiDelivery" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sent" INTEGER NOT NULL DEFAULT 0,
    "lastSuccessAt" DATETIME,
    "lastErrorAt" DATETIME,
    "lastError" TEXT,
    "failures" INTEGER NOT NULL DEFAULT 0,
    "nextTryAt" DATETIME
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Sitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "groupId" TEXT NOT NULL,
    "paperVersionId" TEXT NOT NULL,
    "isForWholeClass" BOOLEAN NOT NULL,
    "state" TEXT NOT NULL,
    "plannedAt" DATETIME NOT NULL,
    "course" JSONB NOT NULL,
    "erased" JSONB NOT NULL DEFAULT [],
    "revision" INTEGER NOT NULL DEFAULT 0,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Sitting_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "ClassGroup" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Sitting_paperVersionId_fkey" FOREIGN KEY ("paperVersionId") REFERENCES "PaperVersion" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Sitting" ("course", "createdAt", "groupId", "id", "isForWholeClass", "paperVersionId", "plannedAt", "revision", "state") SELECT "course", "createdAt", "groupId", "id", "isForWholeClass", "paperVersionId", "plannedAt", "revision", "state" FROM "Sitting";
DROP TABLE "Sitting";
ALTER TABLE "new_Sitting" RENAME TO "Sitting";
CREATE INDEX "Sitting_groupId_plannedAt_idx" ON "Sitting"("groupId", "plannedAt");
CREATE INDEX "Sitting_state_idx" ON "Sitting"("state");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "XapiStatement_id_key" ON "XapiStatement"("id");

-- CreateIndex
CREATE INDEX "XapiStatement_state_number_idx" ON "XapiStatement"("state", "number");

-- CreateIndex
CREATE INDEX "XapiStatement_userId_idx" ON "XapiStatement"("userId");


