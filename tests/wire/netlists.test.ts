import { spawnSync } from "node:child_process"
import { describe, expect, it } from "vitest"

describe("stored circuit results", () => {
  // the results are checked in; only where the simulator is at hand are they run again
  it("come out of ngspice again as stored, to 1e-9", (context) => {
    if (spawnSync("ngspice", ["--version"]).status !== 0) return context.skip()
    const script = new URL("../../scripts/run-netlists.mjs", import.meta.url).pathname
    const run = spawnSync(process.execPath, [script, "--check"], { encoding: "utf8" })
    expect(run.stderr).toBe("")
    expect(run.status).toBe(0)
  })
})
