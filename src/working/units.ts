import { type Kind, kinds } from "../quantity/index.js"

/** mathjs unit text where it differs from our SI token; angles are plain numbers there. */
const special: Partial<Record<Kind, string>> = {
  angle: "",
  angularSpeed: "s^-1",
  angularAcceleration: "s^-2",
  temperature: "K",
  secondMoment: "m^4",
  momentOfInertia: "kg m^2",
  rotationalStiffness: "N m",
  backEmfConstant: "V s",
  perTemperature: "K^-1",
  density: "kg/m^3",
  areaDensity: "kg/m^2",
  acceleration: "m/s^2",
  heatTransferCoefficient: "W/(m^2 K)",
  thermalConductivity: "W/(m K)",
  specificHeat: "J/(kg K)",
  heatFlux: "W/m^2",
  thermalDiffusivity: "m^2/s",
  currentDensity: "A/m^2",
  meltingIntegral: "A^2 s",
}

/** Unit text of a kind in mathjs; empty for plain numbers. */
export function mathUnit(kind: Kind | "number"): string {
  return kind === "number" ? "" : (special[kind] ?? kinds[kind].si)
}

/** Added to an SI number of the kind before mathjs sees it: it works with temperatures in kelvins. */
export function mathOffset(kind: Kind | "number"): number {
  return kind === "temperature" ? 273.15 : 0
}

const RAISED: Readonly<Record<string, string>> = { "2": "²", "3": "³", "4": "⁴" }

/** A unit text of ours (`kg/m3`, `W/m2/K`) as people write it. */
const written = (unit: string): string =>
  unit
    .replace(/^([^/]+)\/([^/]+)\/(.+)$/, "$1/($2 $3)")
    .replace(/^1\//, "/")
    .replace(/[234]/g, (digit) => RAISED[digit] as string)
    .replace(/ohm/g, "Ω")
    .replace(/ /g, "·")

/** The SI unit of a kind inside a line: one system, no prefixes but the kilogram's; kelvins. Empty for plain numbers. */
export function lineUnit(kind: Kind | "number"): string {
  if (kind === "number") return ""
  return kind === "temperature" ? "K" : written(kinds[kind].si)
}

/** A unit that mathjs writes (`(kg m^2) / s^2`) as people write it. */
export const asWritten = (unit: string): string =>
  unit
    .replace(/ \/ /g, "/")
    .replace(/^\((.+?)\)\//, "$1/")
    .replace(/\^([234])/g, (_, digit: string) => RAISED[digit] as string)
    .replace(/ohm/g, "Ω")
    .replace(/ /g, "·")
