import { at, type SiOf, type Step } from "../../../solver/index.js"
import { type SegmentTable, segmentTables, upperBodies } from "../../body/data-segments.js"
import { CCIP_016, HALL } from "../../sources-load.js"
import { publishedShare } from "../data-load.js"
import type { CarriedLoad, CarriedLoadInput } from "./types.js"

// mathjs takes numbers closer than 1e-15 for equal, so largest values are picked among scaled ones
type CarriedStep = Step<SiOf<CarriedLoadInput>, CarriedLoad>

/** The balance by one segment table, pose by pose. */
function leanSteps(table: SegmentTable, index: number): readonly CarriedStep[] {
  const { hipHeight, upperMass, upperHeight, backHeight, backMass, backCentre } = upperBodies[table]
  const given = (symbol: string, meaning: string, value: number): CarriedStep => ({
    symbol: `${symbol}_${index}`,
    kind: "number",
    meaning: `${meaning} (${segmentTables[table]})`,
    given: () => value,
  })
  const i = index
  return [
    given("a", "hip height over stature", hipHeight),
    given("f", "share of body mass above the hips", upperMass),
    given("h", "its centre above the hips over stature", upperHeight),
    given("l", "low back above the hips over stature", backHeight),
    given("f_b", "share of body mass above the low back", backMass),
    given("h_b", "its centre above the hips over stature", backCentre),
    {
      symbol: `phi_${i}`,
      kind: "angle",
      meaning: "lean that balances, pose by pose",
      is: `map(-(b_r * x_r) ./ (f_${i} * b_w * h_${i} * b_h + b_r * (z_r - a_${i} * b_h)), atan)`,
    },
    {
      symbol: `B_${i}`,
      kind: "moment",
      meaning: "moment about the low back, leaning",
      is: `(g_0 * (f_b_${i} * b_w * (h_b_${i} - l_${i}) * b_h * map(phi_${i}, sin) + b_r * (x_r .* map(phi_${i}, cos) + (z_r - (a_${i} + l_${i}) * b_h) .* map(phi_${i}, sin)))) * (1 N m)`,
    },
  ]
}

/** The formulae of carriedLoad, in order. */
export const carriedLoadSteps: readonly CarriedStep[] = [
  { symbol: "g_0", kind: "number", meaning: "standard gravity in m/s²", is: "9.80665" },
  { symbol: "b_w", kind: "number", meaning: "body mass in kg", is: "m_w / kg" },
  { symbol: "b_r", kind: "number", meaning: "rig mass in kg", is: "m_r / kg" },
  { symbol: "b_h", kind: "number", meaning: "stature in m", is: "H / (1 m)" },
  {
    symbol: "x_r",
    kind: "number",
    meaning: "rig ahead of the hips in m, pose by pose",
    is: "map(x / (1 m), f(t) = abs(t) < 1e-12 ? 0 : t)",
  },
  { symbol: "y_r", kind: "number", meaning: "rig left of the middle in m", is: "map(y / (1 m), f(t) = abs(t) < 1e-12 ? 0 : t)" },
  { symbol: "z_r", kind: "number", meaning: "rig above the ground in m", is: "z / (1 m)" },
  { symbol: "q", meaning: "share of body mass", is: "m_r / m_w" },
  { symbol: "q_p", kind: "number", meaning: "published share for such a wearer", given: (si) => publishedShare(si.bodyMass), source: HALL },
  { symbol: "q_a", meaning: "limit that counts: the published share", is: "q_p", when: "not has_shareLimit" },
  { symbol: "q_a", meaning: "limit that counts: the lower of the two", is: "min(q_l, q_p)", when: "has_shareLimit" },
  { symbol: "m_l", meaning: "mass at the limit", is: "q_a * m_w" },
  { symbol: "m_m", meaning: "left under the limit", is: "m_l - m_r" },
  ...(Object.keys(segmentTables) as SegmentTable[]).flatMap((table, i) => leanSteps(table, i + 1)),
  { symbol: "phi_all", kind: "angle", meaning: "leans by all tables", is: "concat(phi_1, phi_2, phi_3)" },
  { symbol: "phi", meaning: "largest lean either way", is: "max(abs(phi_all) * 1e20) / 1e20" },
  { symbol: "phi_d", meaning: "between the poses that differ most", is: "max(phi_all * 1e20) / 1e20 - min(phi_all * 1e20) / 1e20" },
  { symbol: "M_h", meaning: "hips, upright", is: "max(abs(x_r) * 1e20) / 1e20 * b_r * g_0 * (1 N m)" },
  { symbol: "B_all", kind: "number", meaning: "low back, leaning, in N·m", is: "concat(B_1, B_2, B_3) / (1 N m)" },
  { symbol: "M_l", meaning: "low back, leaning", is: "max(abs(B_all) * 1e20) / 1e20 * (1 N m)" },
  { symbol: "M_b", meaning: "low back, upright or leaning", is: "max(M_h, M_l)" },
  { symbol: "F_b", meaning: "pull of the back muscles", is: "M_b / d_m", source: at(HALL, "problem 9.1") },
  {
    symbol: "F_c",
    meaning: "compression by the pull and the weight above",
    is: "F_b + g_0 * (max(f_b_1, f_b_2, f_b_3) * b_w + b_r) * (1 N)",
  },
  { symbol: "M_s", meaning: "moment to one side", is: "max(abs(y_r) * 1e20) / 1e20 * b_r * g_0 * (1 N m)" },
  { symbol: "q_f", meaning: "most on one foot", is: "1/2 + max(abs(y_r) * 1e20) / 1e20 * b_r / ((b_w + b_r) * s / (1 m))" },
  {
    symbol: "d_c",
    meaning: "shift of the common centre, level",
    is: "max(map((x_r - x_r[1]).^2 + (y_r - y_r[1]).^2, sqrt) * 1e20) / 1e20 * b_r / (b_w + b_r) * (1 m)",
  },
  { symbol: "d_z", meaning: "rise of the common centre", is: "(max(z_r) - z_r[1]) * b_r / (b_w + b_r) * (1 m)" },
  {
    symbol: "F_p",
    meaning: "peak force while walking, all four harmonics at their worst together",
    is: "b_r * g_0 * (1 + min(0.56, 0.41 * (f_s / Hz - 0.95)) + 0.115 + (2 * 0.0056 + 3 * 0.0064 + 4 * 0.0065) * f_s / Hz) * (1 N)",
    source: CCIP_016,
  },
]
