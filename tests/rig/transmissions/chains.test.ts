// Any chain that fits: three elements drawn at random behind a drive, judged by the rig's own sum of efforts and by work.
import { describe, expect, it } from "vitest"
import type { Mechanism, MechanismState } from "../../../src/rig/mechanisms/mechanism.js"
import { emptyState } from "../../../src/rig/mechanisms/mechanism.js"
import { effortAt, effortState, type MotionModel, standing } from "../../../src/rig/run/motion-model.js"
import { transmissions } from "../../../src/rig/transmissions/index.js"
import type { Transmission } from "../../../src/rig/transmissions/transmission.js"
import { samples, seeded, spread } from "../members.js"

const still = standing({ leanForward: 0, leanLeft: 0 })
const random = seeded(333)
const stock = Object.entries(transmissions).flatMap(([type, member]) =>
  samples<Transmission>(member as never, 25, random).map(({ made }) => ({ type, made })),
)

/** A load that asks one effort wherever it stands. */
function steady(effort: number): Mechanism {
  return {
    travel: "length",
    start: 0,
    low: Number.NEGATIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    at(_q: number, state: MechanismState) {
      state.springs = effort
    },
    deadPoints: [],
  } as unknown as Mechanism
}

function modelOf(chain: readonly Transmission[], load: number): MotionModel {
  const frame = { at: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const
  const part = {
    name: "load",
    mechanism: steady(load),
    own: [],
    count: 1,
    sign: 1,
    mirrored: false,
    start: 0,
    frame,
    state: emptyState(),
    effort: 0,
  } as const
  return { name: "m", drive: { inertia: 0 } as MotionModel["drive"], drives: 1, chain, parts: [{ ...part }], span: 1 }
}

/** Three elements, each taking what the one before it gives. */
function drawChain(): { readonly types: readonly string[]; readonly chain: readonly Transmission[] } {
  const chain: Transmission[] = []
  const types: string[] = []
  while (chain.length < 3) {
    const fits = stock.filter(({ made }) => chain.length === 0 || made.takes === chain.at(-1)?.gives)
    const { type, made } = fits[Math.floor(random() * fits.length)] as (typeof stock)[number]
    chain.push(made)
    types.push(type)
  }
  return { types, chain }
}

/** Farthest travel from the start, up to one wanted, at which every element still stands inside its range. */
function within(chain: readonly Transmission[], wanted: number): number {
  let travel = wanted
  for (let tries = 0; tries < 60; tries++) {
    let x = travel
    const stands = chain.every((element) => {
      const inside = x > element.low && x < element.high
      x = element.out(x)
      return inside
    })
    if (stands) return travel
    travel /= 2
  }
  return 0
}

/** Heat of each element for a step of the drive, from its own shares: what friction keeps, and its drag. */
function heat(chain: readonly Transmission[], at: number, step: number, load: number): number {
  const places = [at]
  for (const element of chain) places.push(element.out(places.at(-1) as number))
  const slopes = chain.map((element, k) => Math.abs(element.ratio(places[k] as number)))
  let [effort, sum] = [load, 0]
  for (let k = chain.length - 1; k >= 0; k--) {
    const element = chain[k] as Transmission
    const before = slopes.slice(0, k).reduce((product, slope) => product * slope, step)
    const work = effort * (slopes[k] as number) * before
    const rubs = work > 0 ? work / element.forward - work : -work * (1 - element.backward + element.unlocking)
    sum += rubs + element.drag * before
    effort = (work + rubs) / before + element.drag
  }
  return sum
}

describe("chains of three elements", () => {
  const used = new Set<string>()
  const seen = { lifting: 0, lowering: 0, slack: 0 }
  const found = effortState()

  it("put in what they give out and what rubs, both ways, to 1e-9", () => {
    for (let k = 0; k < 400; k++) {
      const { types, chain } = drawChain()
      const far = within(chain, (random() < 0.5 ? 1 : -1) * spread(random, 0.01, 20) * (chain[0]?.takes === "length" ? 0.05 : 1))
      if (far === 0) continue
      const load = (random() < 0.5 ? 1 : -1) * spread(random, 0.1, 100)
      const model = modelOf(chain, load)
      const way = far > 0 ? 1 : -1
      const [nodes, weights] = [
        [-0.7745966692414834, 0, 0.7745966692414834],
        [5 / 18, 8 / 18, 5 / 18],
      ] as const
      let [put, given, rubbed] = [0, 0, 0]
      let isSlack = false
      const parts = 4
      for (let p = 0; p < parts; p++)
        for (const [n, node] of nodes.entries()) {
          const at = (far * (p + 0.5 + node / 2)) / parts
          effortAt(model, at, way, still, found)
          if (found.trouble === "slack") isSlack = true
          else expect(found.trouble, types.join(" ")).toBe("none")
          const step = ((weights[n] as number) * Math.abs(far)) / parts
          let [x, slope] = [at, way]
          for (const element of chain) {
            slope *= element.ratio(x)
            x = element.out(x)
          }
          put += found.effort * step
          given += load * slope * step
          // against the motion, as the elements' own shares count it
          rubbed += heat(chain, at, step, load * Math.sign(slope))
        }
      if (isSlack) {
        seen.slack++
        expect(chain.some((element) => element.transmits !== "both-ways")).toBe(true)
        continue
      }
      if (given > 0) seen.lifting++
      else seen.lowering++
      for (const type of types) used.add(type)
      expect(rubbed).toBeGreaterThanOrEqual(0)
      expect(Math.abs(put - given - rubbed), types.join(" ")).toBeLessThanOrEqual(1e-9 * (Math.abs(given) + rubbed))
    }
    expect(Math.min(seen.lifting, seen.lowering)).toBeGreaterThan(60)
    expect(seen.slack).toBeGreaterThan(20)
    expect([...used].sort()).toEqual(Object.keys(transmissions).sort())
  })
})
