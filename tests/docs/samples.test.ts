import { describe, expect, it } from "vitest"
import { loadSource, runSample, sourceSamples } from "../helpers/samples.js"
import { solvers } from "../helpers/solvers.js"

describe("samples in the reference pages", () => {
  const samples = sourceSamples()
  it.each(samples)("$place", async (sample) => {
    expect(await runSample(sample, loadSource), "no value is compared").toBeGreaterThan(0)
  })
  it.each(solvers)("$id has one", ({ id }) => {
    const [domain, name] = id.split(".") as [string, string]
    const own = samples.filter((s) => s.place.startsWith(`${domain}/`) && new RegExp(`\\b${name}\\b`).test(s.code))
    expect(own.length).toBeGreaterThan(0)
  })
})
