-- DropIndex
DROP INDEX "Practice_userId_handedInAt_id_idx";

-- CreateIndex
CREATE INDEX "Practice_userId_section_handedInAt_id_idx" ON "Practice"("userId", "section", "handedInAt", "id");


