// The table of what can be wrong with a built rig: each row for every element that can have it.
import type { Built } from "./built.js"
import type { Fault, FaultRow } from "./fault.js"
import { motionRows } from "./faults-motion.js"
import { powerRows } from "./faults-power.js"

/** Every row. */
export const rows: readonly FaultRow[] = [...powerRows, ...motionRows]

/** Every fault that a rig can have. */
export const faultsOf = (planned: Built): readonly Fault[] =>
  rows.flatMap((row) => row.sites(planned).map((site) => ({ name: `${row.id}@${site.at}`, row, site, range: site.range ?? row.range })))
