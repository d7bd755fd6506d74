// The main job on the demo rigs: how far, how hard, how long, and what limits it.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { movePage, moveText } from "alula/rig"

const read = (name) => JSON.parse(readFileSync(new URL(`../shared/rigs/${name}.json`, import.meta.url), "utf8"))
const rigs = ["lantern-moth-bank", "lantern-moth-cells"].map(read)

for (const rig of rigs) console.log(`${moveText(rig)}\n`)

const out = new URL("../out/", import.meta.url)
mkdirSync(out, { recursive: true })
writeFileSync(new URL("lantern-moth.html", out), movePage("Lantern moth: will it move in time?", rigs))
console.log("Pictures of poses and curves: out/lantern-moth.html")
