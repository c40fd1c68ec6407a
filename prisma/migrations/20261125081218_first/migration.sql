-- CreateTable
CREATE TABLE "Workshop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "allowsOwnAccounts" BOOLEAN NOT NULL DEFAULT true,
    "capPassMark" REAL NOT NULL DEFAULT 70,
    "rootPassMark" REAL NOT NULL DEFAULT 70,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "username" TEXT NOT NULL,
    "displayUsername" TEXT,
    "role" TEXT NOT NULL DEFAULT 'learner',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "expiresAt" DATETIME NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "userId" TEXT NOT NULL,
    CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" DATETIME,
    "refreshTokenExpiresAt" DATETIME,
    "scope" TEXT,
    "password" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "RateLimit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "lastRequest" BIGINT NOT NULL
);

-- CreateTable
CREATE TABLE "Specimen" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "seed" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "isReserved" BOOLEAN NOT NULL DEFAULT false,
    "stage" TEXT NOT NULL DEFAULT '',
    "generatorVersion" TEXT,
    "truth" JSONB,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "SpecimenSurface" (
    "specimenId" TEXT NOT NULL,
    "face" TEXT NOT NULL,
    "bytes" BLOB NOT NULL,

    PRIMARY KEY ("specimenId", "face"),
    CONSTRAINT "SpecimenSurface_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Practice" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "specimenId" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "capPassMark" REAL NOT NULL,
    "rootPassMark" REAL NOT NULL,
    "report" JSONB NOT NULL,
    "sequence" INTEGER NOT NULL DEFAULT 0,
    "startedAt" DATETIME NOT NULL,
    "savedAt" DATETIME,
    "handedInAt" DATETIME,
    "truth" JSONB,
    "generatorVersion" TEXT,
    CONSTRAINT "Practice_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Practice_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "Specimen" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Attempt" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "practiceId" TEXT NOT NULL,
    "section" TEXT NOT NULL,
    "passMark" REAL NOT NULL,
    "markThousandths" INTEGER NOT NULL,
    "isPassed" BOOLEAN NOT NULL,
    "ruleVersion" TEXT NOT NULL,
    "result" JSONB NOT NULL,
    "handedInAt" DATETIME NOT NULL,
    CONSTRAINT "Attempt_practiceId_fkey" FOREIGN KEY ("practiceId") REFERENCES "Practice" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "User_username_key" ON "User"("username");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Account_userId_idx" ON "Account"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "RateLimit_key_key" ON "RateLimit"("key");

-- CreateIndex
CREATE UNIQUE INDEX "Specimen_seed_key" ON "Specimen"("seed");

-- CreateIndex
CREATE INDEX "Specimen_state_createdAt_idx" ON "Specimen"("state", "createdAt");

-- CreateIndex
CREATE INDEX "Practice_userId_startedAt_idx" ON "Practice"("userId", "startedAt");

-- CreateIndex
CREATE INDEX "Practice_specimenId_idx" ON "Practice"("specimenId");

-- CreateIndex
CREATE INDEX "Attempt_handedInAt_idx" ON "Attempt"("handedInAt");

-- CreateIndex
CREATE UNIQUE INDEX "Attempt_practiceId_section_key" ON "Attempt"("practiceId", "section");


