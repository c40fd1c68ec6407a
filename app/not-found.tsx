import Link from "next/link";
import { PageFrame } from "./_ui/page-frame";

export default function NotFound() {
  return (
    <PageFrame title="There is nothing here" lead="The page you asked for does not exist, or it is not yours." isNarrow>
      <Link href="/" className="mt-6 inline-block font-medium text-action underline underline-offset-4">
        Go to Today
      </Link>
    </PageFrame>
  );
}
