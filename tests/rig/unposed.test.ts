// A drive that would carry its mechanism past where it closes: what asks for the pose there is not judged, and says what to see first.
import { describe, expect, it } from "vitest"
import { assessRig, type Rig } from "../../src/rig/index.js"
import { starters } from "../../src/starters/index.js"

const [motion] = starters.wings.rig.motions
const past: Rig = {
  ...starters.wings.rig,
  // the triangle of pivots closes at 188 mm + 68 mm; 165 mm and 300 mm of stroke are far past it
  motions: [{ ...motion, drive: { ...motion?.drive, stroke: "300 mm" } } as Rig["motions"][number]],
}

describe("a motion without a pose at the end of its travel", () => {
  const { findings } = assessRig(past)
  it("stops, and is named by every check that asks for its pose, of body, wind and ways too", () => {
    expect(findings.find((f) => f.id === "passes")?.verdict).toBe("falls short")
    for (const check of ["load-share", "lean", "side-balance", "schedule", "tip-over", "ways", "holds-unpowered"]) {
      const found = findings.find((f) => f.id === check)
      expect(found, check).toMatchObject({ verdict: "cannot be judged", because: "passes: wings" })
    }
  })
  it("leaves no number that is none in any word", () => {
    expect(findings.filter((f) => /NaN|undefined|fault/.test(f.sentence))).toEqual([])
  })
})
