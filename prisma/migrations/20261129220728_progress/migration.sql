-- CreateTable
CREATE TABLE "AttemptObservations" (
    "attemptId" TEXT NOT NULL PRIMARY KEY,
    "version" INTEGER NOT NULL,
    "value" JSONB NOT NULL,
    CONSTRAINT "AttemptObservations_attemptId_fkey" FOREIGN KEY ("attemptId") REFERENCES "Attempt" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LearnerProgress" (
    "userId" TEXT NOT NULL PRIMARY KEY,
    "version" TEXT NOT NULL DEFAULT '',
    "revision" INTEGER NOT NULL DEFAULT 0,
    "overview" JSONB,
    CONSTRAINT "LearnerProgress_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SectionTally" (
    "userId" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "value" JSONB NOT NULL,

    PRIMARY KEY ("userId", "section"),
    CONSTRAINT "SectionTally_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TypeTally" (
    "userId" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "value" JSONB NOT NULL,

    PRIMARY KEY ("userId", "type"),
    CONSTRAINT "TypeTally_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "LearnerProgress_version_idx" ON "LearnerProgress"("version");


