import { describe, expect, it } from "vitest"
import { loadSource, markdownSamples, runSample } from "../helpers/samples.js"

describe("the guide", () => {
  const samples = markdownSamples("docs/guide.md", "ts")
  it("has a sample in each of its sections", () => {
    expect(samples.length).toBeGreaterThanOrEqual(9)
  })
  it.each(samples)("$place", async (sample) => {
    expect(await runSample(sample, loadSource), "no value is compared").toBeGreaterThan(0)
  })
})
