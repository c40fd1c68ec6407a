-- CreateTable
CREATE TABLE "CriteriaSet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "basedOn" TEXT,
    "own" JSONB NOT NULL,
    "ownerId" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    "archivedAt" DATETIME,
    CONSTRAINT "CriteriaSet_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "CriteriaSet_ownerId_idx" ON "CriteriaSet"("ownerId");


