import { expect, it } from "vitest"
import { counterbalance, hingeActuator, placeActuator, scissor, tetheredFan } from "../../src/linkage/index.js"
import type { AnySolver } from "../helpers/solvers.js"

const region = { left: "-100 mm", right: "0 mm", bottom: "-250 mm", top: "-50 mm" }

/** Values far apart, so that one said in place of the other shows. */
const rows: readonly (readonly [solver: unknown, change: object, received: string, expected: string])[] = [
  [scissor, { foldedAngle: "50 deg", extendedAngle: "20 deg" }, "20°", "50°"],
  [counterbalance, { armAngle: { low: "40 deg", high: "-30 deg" } }, "-30°", "40°"],
  [counterbalance, { element: { type: "gas-strut", extendedLength: "200 mm", stroke: "300 mm", force: "50 N" } }, "300 mm", "200 mm"],
  [counterbalance, { element: { type: "spring", coil: { wire: "12 mm", meanDiameter: "5 mm", activeCoils: 20 } } }, "12 mm", "5 mm"],
  [hingeActuator, { extension: "60 mm", stroke: "40 mm" }, "60 mm", "40 mm"],
  [
    tetheredFan,
    { openAngle: "-90 deg", foldedAngle: "-60 deg", driverAngle: null, threads: [0.03, 0.03, 0.03, 0.03, 0.03] },
    "-90°",
    "-60°",
  ],
  [tetheredFan, { foldedAngle: "-70 deg", openAngle: "60 deg", driverAngle: "75 deg" }, "75°", "-70°"],
  [tetheredFan, { foldedAngle: "-70 deg", openAngle: "60 deg", driverAngle: "75 deg" }, "75°", "60°"],
  [tetheredFan, { rootDistance: "800 mm" }, "800 mm", "600 mm"],
  [tetheredFan, { centre: "900 mm" }, "900 mm", "600 mm"],
  [tetheredFan, { threads: [0.03, 0.03] }, "2 threads", "6 vanes"],
  [tetheredFan, { foldedAngle: "-70 deg", foldedStep: "1 deg", openAngle: "60 deg", span: "150 deg", driverAngle: null }, "150°", "135°"],
  [placeActuator, { fixedPivotRegion: { ...region, right: "-300 mm" } }, "-300 mm", "-100 mm"],
  [placeActuator, { fixedPivotRegion: { ...region, top: "-400 mm" } }, "-400 mm", "-250 mm"],
  [placeActuator, { movingPivotRegion: { ...region, right: "-300 mm" } }, "-300 mm", "-100 mm"],
  [placeActuator, { movingPivotRegion: { ...region, top: "-400 mm" } }, "-400 mm", "-250 mm"],
  [placeActuator, { lowAngle: { from: "-20 deg", to: "-50 deg" } }, "-50°", "-20°"],
  [placeActuator, { lowAngle: { from: "-200 deg", to: "170 deg" } }, "170°", "-200°"],
  [placeActuator, { swing: "60 deg", maxSwing: "30 deg" }, "30°", "60°"],
  [placeActuator, { minLever: "40 mm", maxLever: "20 mm" }, "20 mm", "40 mm"],
]

it.each(rows.map((row, i) => [i, ...row] as const))(
  "fault %i between fields says which value is which",
  (_, solver, change, received, expected) => {
    const { example, attempt } = solver as AnySolver
    const outcome = attempt({ ...example, ...change })
    if (outcome.ok) throw new Error("answered")
    const said = outcome.error.message.replaceAll("−", "-").split("\n")
    expect(
      said.some((line) => line.includes(`received ${received}`) && line.split("received")[0]?.includes(expected)),
      said.join("\n"),
    ).toBe(true)
  },
)
