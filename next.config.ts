import type { NextConfig } from "next";

const config: NextConfig = {
  output: "standalone",
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
  serverExternalPackages: ["libsql", "@libsql/client", "@prisma/adapter-libsql", "@node-rs/argon2", "sharp"],
  poweredByHeader: false,
};

export default config;
