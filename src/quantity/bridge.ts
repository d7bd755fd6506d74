import { type Kind, kinds } from "./kinds.js"
import { readQuantity } from "./parse.js"

/** The part of unitsnet-js the bridge uses: `import * as unitsnet from 'unitsnet-js'`. */
export type UnitsNetModule = Readonly<Record<string, unknown>>

/**
 * Makes the unitsnet-js object for an SI number of a kind.
 *
 * @param unitsnet - the module, handed over by the caller so that nothing here loads it
 * @param kind - kind of quantity
 * @param value - SI number
 * @returns the object, or null where that library has no class for the kind
 */
export function toUnitsNet(unitsnet: UnitsNetModule, kind: Kind, value: number): object | null {
  const { net } = kinds[kind]
  if (!net) return null
  const make = (unitsnet[net[0]] as Readonly<Record<string, (value: number) => object>> | undefined)?.[`From${net[1]}`]
  if (!make) throw new TypeError(`this unitsnet-js module has no ${net[0]}.From${net[1]}`)
  return make(value)
}

/**
 * Reads a unitsnet-js object of a kind as an SI number.
 *
 * @throws TypeError when the object is not of that kind
 */
export function fromUnitsNet(kind: Kind, value: object): number {
  const read = readQuantity(kind, value)
  if (typeof read === "number") return read
  throw new TypeError(`not a unitsnet-js ${kind}`)
}
