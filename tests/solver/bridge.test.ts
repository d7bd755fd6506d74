import * as unitsnet from "unitsnet-js"
import { describe, expect, it } from "vitest"
import { fromUnitsNet, type Kind, kinds } from "../../src/quantity/index.js"
import { type AnyOutField, type AnyOutFields, resultToUnitsNet } from "../../src/solver/index.js"
import { solvers } from "../helpers/solvers.js"

const net = unitsnet as unknown as Readonly<Record<string, unknown>>

/** Every quantity of a bridged result reads back as the number it came from. */
function compare(field: AnyOutField, plain: unknown, bridged: unknown, path: string): number {
  if (plain === null || plain === undefined) return 0
  if (field.kind === "group") return compareAll(field.fields, plain as Record<string, unknown>, bridged as Record<string, unknown>, path)
  if (field.kind === "list")
    return (plain as unknown[]).reduce<number>((sum, p, i) => sum + compare(field.of, p, (bridged as unknown[])[i], `${path}[${i}]`), 0)
  if (typeof plain !== "number" || !Object.hasOwn(kinds, field.kind) || kinds[field.kind as Kind].net === null) {
    expect(bridged, path).toEqual(plain)
    return 0
  }
  const read = fromUnitsNet(field.kind as Kind, bridged as object)
  expect(Math.abs(read - plain), path).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(plain)))
  return 1
}
const compareAll = (
  fields: AnyOutFields,
  plain: Readonly<Record<string, unknown>>,
  bridged: Readonly<Record<string, unknown>>,
  path = "",
): number => Object.entries(fields).reduce((sum, [key, field]) => sum + compare(field, plain[key], bridged[key], `${path}.${key}`), 0)

describe("any result as unitsnet-js objects", () => {
  it.each(solvers)("$id", ({ solver }) => {
    const result = solver(solver.example as never)
    compareAll(solver.output as unknown as AnyOutFields, result, resultToUnitsNet(net, result))
  })
  it("makes objects of the library's own classes", () => {
    const drop = solvers.find((s) => s.id === "wire.voltageDrop")!.solver
    const bridged = resultToUnitsNet(net, drop({ current: 4, length: 1.2, awg: 20 }))
    expect(bridged.drop).toBeInstanceOf(unitsnet.ElectricPotential)
    expect((bridged.area as unitsnet.Area).SquareMillimeters).toBeCloseTo(0.5176, 4)
    expect(bridged.cautions).toEqual([])
  })
  it("takes results only", () => {
    expect(() => resultToUnitsNet(net, { drop: 1 })).toThrow(TypeError)
  })
})
