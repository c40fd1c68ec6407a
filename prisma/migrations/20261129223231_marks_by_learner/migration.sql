-- CreateIndex
CREATE INDEX "Attempt_practiceId_section_markThousandths_reviewedThousandths_idx" ON "Attempt"("practiceId", "section", "markThousandths", "reviewedThousandths");

-- CreateIndex
CREATE INDEX "Practice_userId_handedInAt_id_idx" ON "Practice"("userId", "handedInAt", "id");


