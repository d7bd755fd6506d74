// Paths of the document that many checks read alike.

/** What a motion in any pose is made from. */
export const POSED = [
  ...["motions[].name", "motions[].on", "motions[].onMechanism"],
  ...["motions[].drive", "motions[].transmission", "motions[].mechanisms"],
] as const

/** What a motion at rest hangs on, however the wearer leans. */
export const STOOD = [...POSED, "posture"] as const

/** What the voltages of the power tree hang on. */
export const SUPPLIED = [
  "motions[].bus",
  ...["name", "type", "chemistry", "series", "parallel", "stateOfCharge", "temperature", "cellResistance", "extraResistance"].map(
    (key) => `power.sources[].${key}`,
  ),
  ...["voltage", "resistance", "currentLimit"].map((key) => `power.sources[].${key}`),
  ...["name", "from", "switchResistance", "fuseResistance", "converter"].map((key) => `power.buses[].${key}`),
  ...["length", "awg", "area", "contacts", "contactResistance", "temperature"].map((key) => `power.buses[].run.${key}`),
  ...["type", "bus", "current", "power", "resistance"].map((key) => `power.loads[].${key}`),
] as const

/** What a motion hangs on while it runs, under every condition. */
export const RIDDEN = [...STOOD, ...SUPPLIED, "day.reserve", "day.coldest", "programme"] as const

/** What all that is carried comes to. */
export const CARRIED = ["parts[].count", "parts[].mass", ...POSED] as const

/** Where its centre is. */
export const CENTRED = [...CARRIED, "parts[].forward", "parts[].left", "parts[].height"] as const

/** Wearer, as far as loads on the body hang on them. */
export const WORN_BY = ["wearer.bodyMass", "wearer.stature"] as const
