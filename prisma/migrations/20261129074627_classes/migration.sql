-- AlterTable
ALTER TABLE "User" ADD COLUMN "hasOneTimeCode" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "ClassGroup" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "joinCode" TEXT,
    "createdAt" DATETIME NOT NULL,
    "archivedAt" DATETIME
);

-- CreateTable
CREATE TABLE "ClassMember" (
    "groupId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "joinedAt" DATETIME NOT NULL,
    "leftAt" DATETIME,
    "timeFactor" REAL NOT NULL DEFAULT 1,

    PRIMARY KEY ("groupId", "userId"),
    CONSTRAINT "ClassMember_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "ClassGroup" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ClassMember_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ClassTutor" (
    "groupId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "addedAt" DATETIME NOT NULL,

    PRIMARY KEY ("groupId", "userId"),
    CONSTRAINT "ClassTutor_groupId_fkey" FOREIGN KEY ("groupId") REFERENCES "ClassGroup" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ClassTutor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "ClassGroup_joinCode_key" ON "ClassGroup"("joinCode");

-- CreateIndex
CREATE INDEX "ClassMember_userId_idx" ON "ClassMember"("userId");

-- CreateIndex
CREATE INDEX "ClassTutor_userId_idx" ON "ClassTutor"("userId");
