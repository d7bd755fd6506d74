import { fileURLToPath } from "node:url"
import { defineConfig } from "vitest/config"
import ClosingLine from "./scripts/closing-line.ts"

const src = (path: string) => fileURLToPath(new URL(`./src/${path}`, import.meta.url))

export default defineConfig({
  resolve: {
    // examples and docs import the package by name; tests run them on the sources
    alias: [
      { find: /^alula$/, replacement: src("index.ts") },
      { find: /^alula\/(.+)$/, replacement: src("$1/index.ts") },
    ],
  },
  test: {
    include: ["tests/**/*.test.ts"],
    setupFiles: ["tests/helpers/seed.ts"],
    testTimeout: process.env.WIDE ? 900_000 : 120_000,
    // every core: the suite is nearly all calculation
    maxWorkers: "100%",
    // what has not changed since the last run is not transformed again
    experimental: { fsModuleCache: true },
    reporters: ["default", new ClosingLine()],
  },
})
