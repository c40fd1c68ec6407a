import { auth, OPEN_AUTH_PATHS } from "@/app/_server/auth";
import { answerRefusal } from "@/app/_server/http/answer";
import { isSameOrigin } from "@/app/_server/http/same-origin";
import { refuse } from "@/app/_server/refusal";

function handle(request: Request): Promise<Response> | Response {
  const path = new URL(request.url).pathname.replace(/^\/api\/auth/, "");
  const isOpen = (OPEN_AUTH_PATHS as readonly string[]).includes(path);
  if (!isOpen) return new Response(null, { status: 404 });
  if (request.method !== "GET" && !isSameOrigin(request)) return answerRefusal(refuse("foreign-origin"));
  return auth().handler(request);
}

export { handle as GET, handle as POST };
