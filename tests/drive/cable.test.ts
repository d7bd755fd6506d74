import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type Cable, type CableInput, cable, cableConstructions, drawCable } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { readXml } from "../drawing/xml.js"
import { refusalOf } from "../linkage/refusal.js"

const solved = (input: CableInput): Cable => {
  const out = cable.si(cable.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const near = (a: number | null, b: number, relative = 1e-9) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(relative * Math.abs(b) + 1e-12)
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 23, numRuns: 60 }

const common = {
  force: between(5, 150),
  travel: between(0.005, 0.1),
  length: between(0.3, 3),
  diameter: between(0.001, 0.002),
  area: between(3e-7, 7e-7),
  modulus: between(4e10, 1.8e11),
  breakingForce: fc.constant(1e6),
}
const sheathed = fc.record({
  ...common,
  route: fc.record({
    type: fc.constant("sheath" as const),
    friction: between(0, 0.5),
    bends: fc.array(fc.record({ angle: between(0, 2.5), radius: between(0.03, 0.2) }), { minLength: 1, maxLength: 4 }),
    sheathRate: between(2e4, 5e5),
    sheathBore: between(0.0021, 0.004),
  }),
})
const overPulleys = fc.record({
  ...common,
  route: fc.record({
    type: fc.constant("pulleys" as const),
    pulleys: fc.array(
      fc.record({
        angle: between(0.05, 6),
        pulleyDiameter: between(0.01, 0.06),
        pinDiameter: between(0.002, 0.009),
        bearingFriction: between(0, 0.4),
        bendingLoss: fc.constant(0),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  }),
})

/** A cable as a chain of straight pieces that rub on a bend's wall: tension behind the wall, heat of rubbing over a travel. */
function dragged(tension: number, angle: number, friction: number, travel: number, sense: 1 | -1) {
  const pieces = 4000
  let [behind, heat] = [tension, 0]
  const turn = angle / pieces
  for (let k = 0; k < pieces; k++) {
    // wall pushes with N across, rubs with μN along: N = (T + T')·sin(turn/2), (T' − T)·cos(turn/2) = ±μN
    const lean = (friction * Math.tan(turn / 2)) as number
    const next = sense > 0 ? (behind * (1 + lean)) / (1 - lean) : (behind * (1 - lean)) / (1 + lean)
    heat += friction * (behind + next) * Math.sin(turn / 2) * travel
    behind = next
  }
  return { tension: behind, heat }
}

describe("cable in a sheath", () => {
  it("pulls and pays out as a chain of pieces dragged along the wall does, losing what rubs", () => {
    fc.assert(
      fc.property(sheathed, (input) => {
        const out = solved(input)
        for (const [sense, end] of [
          [1, out.pullingForce],
          [-1, out.payingOutForce],
        ] as const) {
          let [tension, heat] = [input.force, 0]
          for (const { angle } of input.route.bends) {
            const step = dragged(tension, angle, input.route.friction, input.travel, sense)
            tension = step.tension
            heat += step.heat
          }
          near(end, tension, 1e-5)
          const work = sense > 0 ? out.workIn - out.workOut : out.workOut - out.returnedWork
          expect(Math.abs(work - heat)).toBeLessThanOrEqual(1e-5 * out.workIn)
        }
        // work in is work out and losses
        near(out.workIn, out.workOut + out.frictionWork)
        near(out.efficiency * out.workIn, out.workOut)
        near(out.backwardEfficiency * out.workOut, out.returnedWork)
      }),
      seeded,
    )
  })

  it("stretches as a row of springs under each place's tension, with all bends half-way", () => {
    fc.assert(
      fc.property(sheathed, (input) => {
        const out = solved(input)
        const pieces = 1000
        let [own, sheath, own3] = [0, 0, 0]
        for (let k = 0; k < pieces; k++) {
          const pulling = k < pieces / 2 ? input.force : out.pullingForce
          const payingOut = k < pieces / 2 ? input.force : out.payingOutForce
          own += (pulling * input.length) / pieces / (input.area * input.modulus)
          sheath += pulling / pieces / input.route.sheathRate
          own3 += (payingOut / pieces) * (input.length / (input.area * input.modulus) + 1 / input.route.sheathRate)
        }
        near(out.stretch, own)
        near(out.sheathShortening, sheath)
        near(out.lostMotion, own + sheath)
        expect(Math.abs(out.reversalLoss - (own + sheath - own3))).toBeLessThanOrEqual(1e-9 * out.lostMotion)
        // nowhere is there more tension than at the drive: springs under each place's own tension hold no more
        const each = (tension: number) => (tension ** 2 / 4) * (input.length / (input.area * input.modulus) + 1 / input.route.sheathRate)
        expect(out.storedEnergy).toBeGreaterThanOrEqual((each(input.force) + each(out.pullingForce)) * (1 - 1e-12))
        near(out.storedEnergy, (out.pullingForce ** 2 / 2) * (input.length / (input.area * input.modulus) + 1 / input.route.sheathRate))
      }),
      seeded,
    )
  })

  it("takes up in its bends the way between their outer and inner wall", () => {
    fc.assert(
      fc.property(sheathed, (input) => {
        const out = solved(input)
        const gap = (input.route.sheathBore - input.diameter) / 2
        const way = (side: number) => input.route.bends.reduce((sum, { angle, radius }) => sum + angle * (radius + side * gap), 0)
        expect(Math.abs((out.slackPlay as number) - (way(1) - way(-1)))).toBeLessThan(1e-12)
        near(out.driveTravel, input.travel + out.lostMotion + (out.slackPlay as number))
        near(out.minRadius, Math.min(...input.route.bends.map((b) => b.radius)))
        near(out.bendRatio, (2 * out.minRadius) / input.diameter)
      }),
      seeded,
    )
  })

  it("answers alike however one angle is shared out among bends, whatever their radius", () => {
    const route = { type: "sheath" as const, friction: 0.2 }
    const si = cable.read(cable.example)
    const one = solved({ ...si, route: { ...route, bends: [{ angle: 3, radius: 0.1 }] } } as CableInput)
    const three = solved({
      ...si,
      route: { ...route, bends: [0.5, 1, 1.5].map((angle, k) => ({ angle, radius: 0.1 + k / 10 })) },
    } as CableInput)
    near(one.pullingForce, three.pullingForce, 1e-12)
    expect(one.sheathShortening).toBeNull()
    expect(one.slackPlay).toBeNull()
    near(one.driveTravel, (si.travel as number) + one.stretch)
  })
})

/** Tension that just moves a pulley, by halving: forces of both spans and the pin as vectors, moments about the pin. */
function balanced(
  tension: number,
  pulley: { angle: number; pulleyDiameter: number; pinDiameter: number; bearingFriction: number },
  sense: 1 | -1,
) {
  const surplus = (drive: number) => {
    // spans leave the rim along its tangents, a wrap apart
    const [x, y] = [-drive + tension * Math.cos(pulley.angle), tension * Math.sin(pulley.angle)]
    const moment = ((drive - tension) * pulley.pulleyDiameter) / 2
    return moment - (sense * pulley.bearingFriction * pulley.pinDiameter * Math.hypot(x, y)) / 2
  }
  let [low, high] = sense > 0 ? [tension, tension * 100] : [0, tension]
  for (let k = 0; k < 200; k++) {
    const middle = (low + high) / 2
    if (surplus(middle) < 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

describe("cable over pulleys", () => {
  it("pulls and pays out with what balances each pulley about its pin", () => {
    fc.assert(
      fc.property(overPulleys, (input) => {
        const out = solved(input)
        let [pull, pay] = [input.force, input.force]
        for (const [k, pulley] of input.route.pulleys.entries()) {
          pull = balanced(pull, pulley, 1)
          pay = balanced(pay, pulley, -1)
          near(out.spans[k + 1]?.pulling as number, pull, 1e-7)
          near(out.spans[k + 1]?.payingOut as number, pay, 1e-7)
        }
        near(out.pullingForce, pull, 1e-7)
        near(out.payingOutForce, pay, 1e-7)
        near(out.turnedAngle, out.spans.at(-1)?.turned as number)
        expect(out.slackPlay).toBeNull()
        expect(out.sheathShortening).toBeNull()
        near(out.minRadius, Math.min(...input.route.pulleys.map((p) => p.pulleyDiameter)) / 2)
      }),
      seeded,
    )
  })

  it("loses to bending what is said, both ways, on top of the bearing", () => {
    const si = cable.read(cable.example)
    const pulley = { angle: Math.PI, pulleyDiameter: 0.03, pinDiameter: 0.004, bearingFriction: 0 }
    const at = (bendingLoss?: number) =>
      solved({
        ...si,
        route: {
          type: "pulleys",
          pulleys: [
            { ...pulley, bendingLoss },
            { ...pulley, bendingLoss },
          ],
        },
      } as CableInput)
    near(at(0).efficiency, 1)
    near(at(0.1).efficiency, 0.81)
    near(at(0.1).backwardEfficiency, 0.81)
    near(at().efficiency, 0.98 ** 2)
  })
})

describe("strength and construction", () => {
  it("keeps in its tightest bend what the published table says, 95 % from 40 diameters on", () => {
    const si = cable.read(cable.example)
    const share = (ratio: number) =>
      solved({
        ...si,
        diameter: 0.0015,
        route: { type: "sheath", friction: 0.1, bends: [{ angle: 1, radius: 0.00075 * ratio }] },
      } as CableInput)
    // the sheave table's two columns, between its points by the straight line
    for (const [ratio, percent] of [
      [40, 95],
      [35, 94],
      [30, 93],
      [20, 91],
      [15, 89],
      [10, 86],
      [8, 83],
      [6, 79],
      [4, 75],
      [2, 65],
      [1.0000001, 50],
      [200, 95],
    ] as const) {
      near(share(ratio).strengthShare, percent / 100, 1e-5)
      near(share(ratio).safetyFactor, (1500 * percent) / 100 / share(ratio).pullingForce, 1e-5)
    }
  })

  it("stretches by its construction as its stretch factor says, in inches and pounds-force", () => {
    const si = cable.read(cable.example)
    for (const [construction, factor] of [
      ["1x7-galvanised", 0.00000661],
      ["1x19-galvanised", 0.00000698],
      ["7x7-galvanised", 0.0000107],
      ["7x19-galvanised", 0.000014],
      ["1x19-stainless", 0.00000779],
      ["7x7-stainless", 0.000012],
      ["7x19-stainless", 0.0000162],
    ] as const) {
      const out = solved({ ...si, construction } as CableInput)
      const mean = ((si.force as number) + out.pullingForce) / 2 / 4.4482216152605
      near(out.stretch / (si.length as number), (mean * factor) / ((si.diameter as number) / 0.0254) ** 2 / 100)
    }
    expect(Object.keys(cableConstructions)).toHaveLength(7)
  })
})

it("refuses a pull that breaks it, and names a load and a cable that hold", () => {
  const weak = { ...cable.example, breakingForce: "80 N" } as CableInput
  const refusal = refusalOf(cable.attempt(weak))
  expect(Object.keys(refusal.nearest)).toEqual(["force", "breakingForce"])
  for (const [key, value] of Object.entries(refusal.nearest)) expect(cable.attempt({ ...weak, [key]: value }).ok, key).toBe(true)
})

it("draws the tension over the angle turned, and nothing where it breaks", () => {
  const si = cable.read(cable.example)
  const out = solved(si as CableInput)
  const picture = drawCable(si) as string
  expect(readXml(picture).name).toBe("svg")
  expect(picture).toContain("paying out")
  expect(picture).not.toMatch(/NaN|Infinity/)
  expect(out.spans).toHaveLength(3)
  expect(drawCable(cable.read({ ...cable.example, breakingForce: "80 N" } as CableInput))).toBeNull()
})
