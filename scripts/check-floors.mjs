// Imports only ever point down: fails when a file in src/ imports from its own floor's neighbours or from above, or from itself by way of others.
import { readdirSync, readFileSync } from "node:fs"
import { dirname, join, relative } from "node:path"

const floors = [
  ["quantity", "numeric", "drawing"],
  ["solver"],
  ["linkage", "drive", "pack", "converter", "wire", "frame", "thermoform", "worn"],
  ["study"],
  ["rig"],
  ["advice", "starters"],
  ["working", "figure", "zod"],
  ["report"],
  // faces: they have the whole house below them, and nothing stands on them
  ["command"],
]
const floorOf = (module) => floors.findIndex((floor) => floor.includes(module))
// thermoform and frame share nothing: a domain that needs another's figure is coupled in the rig
const root = new URL("../src", import.meta.url).pathname
const faults = []
for (const path of readdirSync(root, { recursive: true })) {
  if (!path.endsWith(".ts") || !path.includes("/")) continue
  const from = path.split("/")[0]
  if (floorOf(from) < 0) faults.push(`${path}: ${from} stands on no floor`)
  for (const [, target] of readFileSync(join(root, path), "utf8").matchAll(/from "(\.[^"]+)"/g)) {
    const to = relative(root, join(root, dirname(path), target)).split("/")[0]
    // a study walks any solver by its descriptions, so that it needs none of them
    if (from === "study" && floorOf(to) === floorOf("wire")) faults.push(`${path}: study may not know a domain (${to})`)
    if (to !== from && floorOf(to) >= floorOf(from)) faults.push(`${path}: ${from} may not import ${to}`)
  }
}

// no file reaches itself through others, types included
const links = new Map()
for (const path of readdirSync(root, { recursive: true })) {
  if (!path.endsWith(".ts")) continue
  const found = [...readFileSync(join(root, path), "utf8").matchAll(/from "(\.[^"]+)"/g)]
  links.set(path, new Set(found.map(([, target]) => join(dirname(path), target).replace(/\.js$/, ".ts"))))
}
const done = new Set()
const follow = (path, trail) => {
  if (trail.includes(path)) return faults.push(`a circle: ${[...trail.slice(trail.indexOf(path)), path].join(" > ")}`)
  if (done.has(path)) return
  for (const next of links.get(path) ?? []) follow(next, [...trail, path])
  done.add(path)
}
for (const path of links.keys()) follow(path, [])

if (faults.length) {
  console.error(faults.join("\n"))
  process.exit(1)
}
console.log("floors hold: imports only point down, no file in a circle")
