import { type Kind, kinds, toUnitsNet, type UnitsNetModule } from "../quantity/index.js"
import { fieldsOf } from "./display.js"
import type { AnyOutField, AnyOutFields } from "./fields.js"

function bridged(unitsnet: UnitsNetModule, field: AnyOutField, value: unknown): unknown {
  if (value === null || value === undefined) return null
  if (field.kind === "group") return bridgedAll(unitsnet, field.fields, value as Record<string, unknown>)
  if (field.kind === "list") return (value as readonly unknown[]).map((item) => bridged(unitsnet, field.of, item))
  if (typeof value !== "number" || !Object.hasOwn(kinds, field.kind)) return value
  return toUnitsNet(unitsnet, field.kind as Kind, value) ?? value
}

function bridgedAll(unitsnet: UnitsNetModule, fields: AnyOutFields, values: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, bridged(unitsnet, field, values[key])]))
}

/**
 * Turns any result into unitsnet-js objects: same shape, each quantity an object of its class. Plain
 * numbers, words and kinds that library has no class for stay as they are; cautions are kept.
 *
 * @param unitsnet - the module (`import * as unitsnet from 'unitsnet-js'`), handed over so that nothing here loads it
 * @param result - a result of one of the solvers
 * @throws TypeError where the object is no such result
 */
export function resultToUnitsNet(unitsnet: UnitsNetModule, result: object): Record<string, unknown> {
  const fields = fieldsOf(result)
  if (!fields) throw new TypeError("resultToUnitsNet() takes a result of one of Alula's solvers")
  const { cautions } = result as { readonly cautions?: unknown }
  return { ...bridgedAll(unitsnet, fields, result as Record<string, unknown>), ...(cautions === undefined ? {} : { cautions }) }
}
