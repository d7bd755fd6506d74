import { readFileSync } from "node:fs"
import { readCatalogue, search } from "alula/advice"
import { assessRig, rigWith } from "alula/rig"

const read = (path) => JSON.parse(readFileSync(new URL(`../shared/${path}.json`, import.meta.url), "utf8"))
const catalogue = read("catalogue/lantern-moth")
const moth = rigWith().read(read("rigs/lantern-moth-cells"))
const [arms] = moth.motions
const [wing] = arms.mechanisms
const rig = {
  ...moth,
  contact: { ...moth.contact, region: "upper-arm-elbow" },
  motions: [{ ...arms, mechanisms: [{ ...wing, panels: [{ area: "0.25 m2", radius: "450 mm" }] }] }],
}
const one = assessRig.read(rig)
const baseline = "rig.assessRig.si (one combination assessed whole)"
const place = { forward: "-130 mm", height: "1.1 m" }
const supply = [
  { at: "power.sources[0]", family: "cell", part: "cell pack in its box" },
  { at: "power.sources[0].series", values: [2, 3, 4] },
  { at: "power.sources[0].parallel", values: [1, 2] },
  { at: "power.buses[0].run", family: "wire", part: place },
  { at: "power.buses[0]", family: "fuse", part: place },
]
const mechanics = [
  { at: "motions[0].drive", family: "actuator", part: "actuators" },
  { at: "motions[0].mechanisms[0]", family: "bracket", part: place },
  { at: "motions[0].mechanisms[0]", family: "helper spring", part: place, without: true },
]

export const rows = [
  { name: baseline, run: () => assessRig.si(one) },
  { name: "advice.readCatalogue (49 parts)", run: () => readCatalogue(catalogue), baseline },
  {
    name: "advice.search (13 824 combinations)",
    run: () => search(rig, { catalogue, vary: [mechanics[0], ...supply] }),
    baseline,
  },
  {
    name: "advice.search (760 320 combinations)",
    run: () => search(rig, { catalogue, vary: [...mechanics, ...supply] }),
    baseline,
  },
]
