"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { postJson } from "./post-json";

/** The way into a sitting that is open. */
export function ComeIn({ id }: { readonly id: string }) {
  const router = useRouter();
  const [problem, setProblem] = useState("");
  const [isSending, setIsSending] = useState(false);
  const comeIn = async () => {
    setIsSending(true);
    const sent = await postJson(`/api/sittings/${id}/enter`);
    setIsSending(false);
    setProblem(sent.problem ?? "");
    if (!sent.problem) router.refresh();
  };
  return (
    <div className="mt-5">
      <Button look="lamp" isLarge onClick={comeIn} disabled={isSending}>
        Come in
      </Button>
      {problem && (
        <div className="mt-4 text-ink">
          <Notice>{problem}</Notice>
        </div>
      )}
    </div>
  );
}
