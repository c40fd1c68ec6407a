-- AlterTable
ALTER TABLE "Practice" ADD COLUMN "questions" JSONB;
ALTER TABLE "Practice" ADD COLUMN "reportClosedAt" DATETIME;


