"use client";

import { Button } from "./_ui/button";
import { PageFrame } from "./_ui/page-frame";

export default function ErrorPage({ reset }: { readonly reset: () => void }) {
  return (
    <PageFrame
      title="That did not work"
      lead="Something went wrong in the workshop's server. What was saved is kept. Try again; if it stays like this, tell whoever runs it."
      isNarrow
    >
      <div className="mt-6">
        <Button onClick={reset}>Try again</Button>
      </div>
    </PageFrame>
  );
}
