// Writes the JSON Schema of the rig document beside the built package.
import { mkdirSync, writeFileSync } from "node:fs"
import { assessRig } from "../dist/rig/index.js"

const schema = {
  ...assessRig.jsonSchema(),
  title: "Rig document",
  description: "A whole wearable: one JSON document that every check of alula/rig reads",
}
mkdirSync(new URL("../schema/", import.meta.url), { recursive: true })
writeFileSync(new URL("../schema/rig.json", import.meta.url), `${JSON.stringify(schema, null, 2)}\n`)
