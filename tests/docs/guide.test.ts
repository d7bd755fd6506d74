import { describe, expect, it } from "vitest"
import { assessRig, move, rigWith } from "../../src/rig/index.js"
import { loadSource, markdownSamples, runSample, type Sample } from "../helpers/samples.js"

describe("the guide", () => {
  const samples = markdownSamples("docs/guide.md", "ts")
  it("has a sample in each of its sections", () => {
    expect(samples.length).toBeGreaterThanOrEqual(9)
  })
  it.each(samples)("$place", async (sample) => {
    expect(await runSample(sample, loadSource), "no value is compared").toBeGreaterThan(0)
  })
})

describe("the page on any creature", () => {
  const samples = markdownSamples("docs/any-creature.md", "ts")
  it.each(samples)("$place", async (sample) => {
    expect(await runSample(sample, loadSource), "no value is compared").toBeGreaterThan(0)
  })
  it("shows a document of about fifteen lines that is read and judged", () => {
    const [{ code }] = markdownSamples("docs/any-creature.md", "jsonc") as [Sample]
    expect(code.trim().split("\n").length).toBeLessThanOrEqual(16)
    const rig = rigWith().read(code.replace(/\/\/.*$/gm, ""))
    expect(assessRig(rig).fallsShort).toBe(0)
    expect(move(rig).outDuration).toBeLessThan(0.6)
  })
})
