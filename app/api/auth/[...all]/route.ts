import { auth, OPEN_AUTH_PATHS } from "@/app/_server/auth";

function handle(request: Request): Promise<Response> | Response {
  const path = new URL(request.url).pathname.replace(/^\/api\/auth/, "");
  const isOpen = (OPEN_AUTH_PATHS as readonly string[]).includes(path);
  return isOpen ? auth().handler(request) : new Response(null, { status: 404 });
}

export { handle as GET, handle as POST };
