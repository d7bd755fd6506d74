import { type Caution, caution, fill, type Issue, inconsistent, optionsFrom, type Solver, type Source, solver } from "../../solver/index.js"
import {
  AIR_CARGO,
  AIR_PASSENGERS,
  LEAD_CARGO,
  LITHIUM_METAL_CARGO,
  NICKEL_CARGO,
  OTHER_BATTERIES_BY_AIR,
  POWER_BANKS_BY_AIR,
  UN_38_3,
} from "../sources.js"
import { type CarriageRule, powerBankRules, transportRules } from "./rules.js"
import type { AirTravel, AirTravelCaution, AirTravelInput, Si } from "./types.js"

export type { AirTravel, AirTravelInput } from "./types.js"

const ruleOf = (si: Si): CarriageRule => transportRules[si.type]

// the limits themselves are still within; rounding of a product is not to push a battery over
const dust = 1 + 1e-9

function bandOf(si: Si, energy: number | null): "free" | "approval" | "forbidden" {
  const { passenger } = ruleOf(si)
  if (passenger.maxVoltage !== null && (si.nominalVoltage as number) > passenger.maxVoltage * dust) return "forbidden"
  const limits = passenger.lithium ?? passenger.energy
  if (limits === null) return "free"
  const value = (passenger.lithium ? si.lithiumMass : energy) as number
  return value <= limits.free * dust ? "free" : value <= limits.approval * dust ? "approval" : "forbidden"
}

function mostOf(si: Si, band: string): number | null {
  const { spares, largeSpares, devices } = ruleOf(si).passenger
  if (band === "forbidden") return 0
  if (si.carriedAs === "power-bank") return powerBankRules.max
  if (si.carriedAs === "in-device") return devices
  return band === "approval" ? largeSpares : spares
}

/** How it goes when it is sent by itself, in short. */
function sentOf(si: Si): string {
  const { alone, withEquipment, hazardClass, maxStateOfCharge, papersFromMass } = ruleOf(si).sent
  const values = { alone: alone ?? "", withEquipment: withEquipment ?? "", hazardClass: hazardClass ?? 0 }
  switch (si.type) {
    case "lithium-ion":
      return fill(
        "{alone} by itself, {withEquipment} with what it runs, class {hazardClass}; by air in cargo aircraft alone, at most {charge ratio %} charged.",
        {
          ...values,
          charge: maxStateOfCharge ?? 1,
        },
      )
    case "lithium-metal":
      return fill("{alone} by itself, {withEquipment} with what it runs, class {hazardClass}; by air in cargo aircraft alone.", values)
    case "lead":
      return fill(
        "{alone}, class {hazardClass}; where it does not leak and is marked non-spillable, with its terminals covered, not restricted.",
        values,
      )
    case "nickel":
      return fill(
        "By air not restricted with its terminals covered; by sea {alone}, class {hazardClass}, with papers from {mass mass kg} on.",
        {
          ...values,
          mass: papersFromMass ?? 0,
        },
      )
    default:
      return "Not restricted with its terminals covered."
  }
}

/** Day on which the oldest of the rules used was read. */
const readOn = (...sources: readonly Source[]) => sources.map((source) => source.read ?? "").sort()[0] ?? ""

function verdictOf(si: Si, band: string, most: number | null, cabinOnly: boolean): string {
  const where = cabinOnly ? " in the cabin, contacts covered" : ""
  if (band === "forbidden")
    return si.type === "lead"
      ? "Passengers are not let through with it: lead batteries over 12 V or 100 Wh have to be sent as dangerous goods."
      : "Passengers are not let through with it: leave it out, divide it into smaller batteries, or have it sent as dangerous goods."
  if (si.type === "lithium-metal" && band === "approval")
    return "For portable medical electronics alone, and only with the airline's approval beforehand: leave it out."
  if (most === null) return "Usually let through in any number, contacts covered; ask the airline, which may be stricter."
  if (si.count > most)
    return fill(
      "Each is within the limit, but {count} are more than the {maxCount} that one passenger is usually let through with: leave some out, or ask the airline.",
      {
        count: si.count,
        maxCount: most,
      },
    )
  if (band === "approval")
    return fill("Only with the airline's approval beforehand, and no more than {maxCount}{where}.", { maxCount: most, where })
  return fill("Usually let through{where}; ask the airline, which may be stricter.", { where })
}

function solve(si: Si): AirTravel {
  const energy = si.energy ?? (si.nominalVoltage !== null && si.capacity !== null ? si.nominalVoltage * si.capacity : null)
  const rule = bandOf(si, energy)
  const maxCount = mostOf(si, rule)
  const { passenger, sent } = ruleOf(si)
  const cabinOnly = !passenger.sparesInHold && si.carriedAs !== "in-device"
  // no limit of energy, no capacity under it
  const capacityOf = (limit: number | undefined) => (si.nominalVoltage === null || limit === undefined ? null : limit / si.nominalVoltage)
  const sources = [passenger.source, POWER_BANKS_BY_AIR, sent.source]
  return {
    energy,
    rule,
    maxCount,
    withinMaxCount: maxCount === null || si.count <= maxCount,
    cabinOnly,
    freeCapacity: capacityOf(passenger.energy?.free),
    approvalCapacity: capacityOf(passenger.energy?.approval),
    verdict: verdictOf(si, rule, maxCount, cabinOnly),
    sentAs: sentOf(si),
    rulesReadOn: readOn(...sources),
    rulesFrom: [...new Set(sources.map(({ by, edition }) => (edition ? `${by} ${edition}` : by)))].join("; "),
  }
}

function check(si: Si): Issue[] {
  const faults: Issue[] = []
  if (si.carriedAs === "power-bank" && si.type !== "lithium-ion")
    faults.push(inconsistent(["carriedAs"], "a power bank of another kind", "lithium-ion: that is what power banks hold"))
  if (si.type === "lithium-metal") {
    if (si.lithiumMass === null) faults.push(inconsistent(["lithiumMass"], "nothing", "the mass of lithium of a lithium-metal battery"))
    return faults
  }
  if (si.type === "dry" || si.type === "nickel") return faults
  const rated = si.nominalVoltage !== null && si.capacity !== null ? si.nominalVoltage * si.capacity : null
  if (si.type === "lead" && si.nominalVoltage === null)
    faults.push(inconsistent(["nominalVoltage"], "nothing", "the nominal voltage of a lead battery, by which it is judged"))
  if (si.energy === null && rated === null) faults.push(inconsistent(["energy"], "neither", "energy, or nominalVoltage and capacity"))
  if (si.energy !== null && rated !== null && Math.abs(si.energy / rated - 1) > 0.05)
    faults.push(
      inconsistent(
        ["energy"],
        "{energy energy Wh}",
        "the {rated energy Wh} that nominal voltage and capacity make, to 5 % (an inspector will compare the printed figures)",
        { energy: si.energy, rated },
      ),
    )
  return faults
}

function cautions(si: Si, out: AirTravel): Caution<AirTravelCaution>[] {
  const lithium = si.type === "lithium-ion" || si.type === "lithium-metal"
  const found: Caution<AirTravelCaution>[] = [
    caution(
      "rules-change",
      "warning",
      "Guidance, not permission: rules change every year, airlines and countries add their own, and the crew decides. These were read on {rulesReadOn}: look up the current edition and ask the airline in writing.",
      lithium ? AIR_PASSENGERS : OTHER_BATTERIES_BY_AIR,
      { rulesReadOn: out.rulesReadOn },
    ),
  ]
  if (lithium)
    found.push(
      caution(
        "battery-fire",
        "warning",
        "A lithium battery can burn on board: keep it where you see it, not in an overhead locker, and tell the crew at once if it gets hot, swells or smokes. A damaged, swollen or recalled one must not fly at all.",
        AIR_PASSENGERS,
      ),
    )
  if (si.type === "lithium-ion")
    found.push(
      caution(
        "home-made",
        "warning",
        "A home-made pack has no printed watt-hours and no UN 38.3 test summary; it may be refused whatever its size. A bought pack of a known make, marked with its watt-hours, is the safer choice for travel.",
        UN_38_3,
      ),
    )
  if (si.type === "lithium-metal" && out.rule === "approval")
    found.push(
      caution(
        "medical-only",
        "warning",
        "Between 2 g and 8 g of lithium airlines approve for portable medical electronics alone: a costume is none, so count on its being refused.",
        AIR_PASSENGERS,
      ),
    )
  if (out.cabinOnly)
    found.push(
      caution(
        "spares-in-cabin",
        "warning",
        "Spares and power banks ride in the cabin with their contacts covered, never in checked baggage; a pack that feeds wings by a cable counts as a spare.",
        AIR_PASSENGERS,
      ),
    )
  if (si.carriedAs === "power-bank")
    found.push(
      caution(
        "power-bank-on-board",
        "warning",
        "Since 27 March 2026 at most {maxCount} power banks a person: in the cabin, each protected against short circuit, never recharged on board, and better not used there at all. Some airlines let through one, or none in use.",
        POWER_BANKS_BY_AIR,
        { maxCount: powerBankRules.max },
      ),
    )
  if (si.type === "lead")
    found.push(
      caution(
        "non-spillable-only",
        "warning",
        "This holds for sealed lead batteries (gel or absorbed glass mat) marked non-spillable, up to 12 V and 100 Wh, terminals covered and strongly packed: passengers are not let through with any that can be topped up.",
        OTHER_BATTERIES_BY_AIR,
      ),
    )
  if (si.type === "dry" || si.type === "nickel")
    found.push(
      caution(
        "terminals-covered",
        "caution",
        "Dry and nickel cells get hot enough to burn when short-circuited: keep them in their retail packing or tape over the terminals; a charger does not count as cover.",
        OTHER_BATTERIES_BY_AIR,
      ),
    )
  return found
}

/**
 * Which passenger rule a battery falls under in an aeroplane: guidance, not permission.
 *
 * Formula: E = V·Q with V the nominal voltage and Q the rated capacity of one battery, not of all together.
 * Lithium-ion: up to 100 Wh no approval is usually asked, over 100 to 160 Wh the airline's is, above 160 Wh not by
 * passengers; the limits themselves are still within. Lithium metal: 2 g, and 8 g for medical devices alone. Lead: 12 V
 * and 100 Wh, non-spillable. Usual numbers for each passenger: 15 devices, 20 spares, 2 spares over 100 Wh or
 * of lead, 2 power banks (since 27 March 2026); nickel and dry cells are not counted. A pack whose purpose is to power another device is a spare.
 *
 * Valid for the editions named, on the days they were read; rules change yearly and airlines may be stricter.
 *
 * **Inputs**
 * - `type`: kind of battery [lithium-ion, lithium-metal, lead, nickel or dry; default lithium-ion]
 * - `energy`: watt-hours printed [E_p; 3.6 J to 100 kWh; optional]
 * - `nominalVoltage`: nominal voltage [V; above 0.1 to 1000 V; optional]
 * - `capacity`: capacity [Q; 1 mAh to 10000 Ah; optional]
 * - `lithiumMass`: lithium in a lithium-metal battery [m_L; 1 mg to 10 kg; optional]
 * - `count`: batteries carried [N; whole 1 to 1000; default 1]
 * - `carriedAs`: how it travels [in-device, spare or power-bank; default spare]
 *
 * **Results**
 *
 * `energy`: energy of one battery [E; J]; `rule`: rule (free: no approval usually asked) [text]; `maxCount`: usual
 * number for each passenger [N_m]; `withinMaxCount`: number within it [yes or no]; `cabinOnly`: cabin only [yes or
 * no]; `freeCapacity`: capacity that stays under the first limit [Q_f; C]; `approvalCapacity`: capacity that stays
 * under the second limit [Q_a; C]; `sentAs`: sent as goods [text]; `verdict`: in short [text]; `rulesReadOn`: rules
 * read on [text]; `rulesFrom`: rules of [text].
 *
 * **Symbols of the working**
 *
 * counted: 1 where the rules count them; by_energy: 1 where the rules ask for watt-hours; N_u: usual number, from the
 * rules; E_2: energy of the second limit [J].
 *
 * **Sources**
 * - IATA: Dangerous Goods Regulations, provisions for dangerous goods carried by passengers or crew, 67th, 2026,
 *   section 2.3, table 2.3.A (read 2026-11-28)
 * - ICAO: Technical Instructions for the Safe Transport of Dangerous Goods by Air (Doc 9284), Addendum No. 1,
 *   2025-2026, in force from 27 March 2026, dangerous goods carried by passengers and crew: power banks (read
 *   2026-11-28)
 * - US FAA: 49 CFR 175.10, passenger guidance on batteries, batteries, wet, nonspillable: 12 V, 100 Wh, two spares;
 *   batteries, dry (alkaline, nickel): no limit of number, terminals covered (read 2026-11-29)
 * - IATA: Dangerous Goods Regulations, packing instruction 965 (UN 3480), sections IA and IB; the net mass of 10 kg is
 *   section IB's (read 2026-11-28)
 * - IATA: Dangerous Goods Regulations, packing instruction 968 (UN 3090), cargo aircraft only (not verified against
 *   the document; read 2026-11-29)
 * - IATA: Dangerous Goods Regulations, list of dangerous goods, UN 2800, 66th, 2025, class 8, packing instruction 872;
 *   special provision A67: not restricted where it does not leak at 55 °C and is marked non-spillable (read
 *   2026-11-29)
 * - IATA special provision A199; IMDG code, special provisions 117 and 963: Notices on the carriage of nickel-metal
 *   hydride batteries (UN 3496), by air not restricted with terminals covered; by sea class 9 with papers from 100 kg,
 *   not in equipment, no button cells (read 2026-11-29)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { airTravel } from 'alula/pack'
 * const wingPack = airTravel({ nominalVoltage: '10.8 V', capacity: '5.2 Ah', carriedAs: 'spare' })
 * wingPack.energy / 3600 // => 56.16
 * wingPack.rule // => 'free'
 * wingPack.cabinOnly // => true
 * ```
 */
export const airTravel: Solver<AirTravelInput, AirTravel, never, AirTravelCaution> = /* @__PURE__ */ solver<
  AirTravelInput,
  AirTravel,
  never,
  AirTravelCaution
>("airTravel", "Which passenger rule a battery falls under when flying", solve, () => ({
  input: {
    type: {
      kind: "choice",
      label: "kind of battery",
      options: optionsFrom(transportRules, (key) => transportRules[key].label),
      default: "lithium-ion",
    },
    energy: {
      kind: "energy",
      symbol: "E_p",
      label: "watt-hours printed",
      min: 3.6,
      max: "100 kWh",
      typical: ["10 Wh", "200 Wh"],
      default: null,
    },
    nominalVoltage: {
      kind: "voltage",
      symbol: "V",
      label: "nominal voltage",
      above: "0.1 V",
      max: 1000,
      typical: [3.6, 24],
      default: null,
    },
    capacity: {
      kind: "charge",
      symbol: "Q",
      label: "capacity",
      min: "1 mAh",
      max: "10000 Ah",
      typical: ["1 Ah", "20 Ah"],
      default: null,
    },
    lithiumMass: {
      kind: "mass",
      symbol: "m_L",
      label: "lithium in a lithium-metal battery",
      min: "1 mg",
      max: 10,
      typical: ["0.5 g", "10 g"],
      default: null,
    },
    count: { kind: "number", symbol: "N", label: "batteries carried", whole: true, min: 1, max: 1000, typical: [1, 30], default: 1 },
    carriedAs: {
      kind: "choice",
      label: "how it travels",
      options: { "in-device": "fitted in the device it runs", spare: "spare, or pack on a cable", "power-bank": "power bank" },
      default: "spare",
    },
  },
  output: {
    energy: { kind: "energy", symbol: "E", label: "energy of one battery", unit: "Wh" },
    rule: { kind: "text", label: "rule (free: no approval usually asked)" },
    maxCount: { kind: "number", symbol: "N_m", label: "usual number for each passenger" },
    withinMaxCount: { kind: "flag", label: "number within it" },
    cabinOnly: { kind: "flag", label: "cabin only" },
    freeCapacity: { kind: "charge", symbol: "Q_f", label: "capacity that stays under the first limit", unit: "Ah" },
    approvalCapacity: { kind: "charge", symbol: "Q_a", label: "capacity that stays under the second limit", unit: "Ah" },
    sentAs: { kind: "text", label: "sent as goods" },
    verdict: { kind: "text", label: "in short" },
    rulesReadOn: { kind: "text", label: "rules read on" },
    rulesFrom: { kind: "text", label: "rules of" },
  },
  example: { nominalVoltage: "10.8 V", capacity: "5.2 Ah", count: 2, carriedAs: "spare" },
  formulae: [
    { symbol: "E", meaning: "energy as printed", is: "E_p", when: "has_energy" },
    { symbol: "E", meaning: "energy of one battery", is: "V * Q", when: "has_nominalVoltage and has_capacity and not has_energy" },
    {
      symbol: "counted",
      kind: "number",
      meaning: "1 where the rules count them",
      given: (_, out) => (out.maxCount === null ? 0 : 1),
      source: OTHER_BATTERIES_BY_AIR,
    },
    {
      symbol: "by_energy",
      kind: "number",
      meaning: "1 where the rules ask for watt-hours",
      given: (si) => (ruleOf(si).passenger.energy === null ? 0 : 1),
      source: AIR_PASSENGERS,
    },
    {
      symbol: "N_u",
      kind: "number",
      meaning: "usual number, from the rules",
      given: (_, out) => out.maxCount ?? 0,
      source: AIR_PASSENGERS,
    },
    { symbol: "N_m", meaning: "usual number", is: "N_u", when: "counted == 1" },
    {
      symbol: "E_2",
      kind: "energy",
      meaning: "energy of the second limit",
      given: (si) => ruleOf(si).passenger.energy?.approval ?? 0,
      source: AIR_PASSENGERS,
    },
    {
      symbol: "Q_f",
      meaning: "capacity within the first limit",
      is: "100 W * 1 hour / V",
      when: "has_nominalVoltage and by_energy == 1",
      source: AIR_PASSENGERS,
    },
    {
      symbol: "Q_a",
      meaning: "capacity within the second limit",
      is: "E_2 / V",
      when: "has_nominalVoltage and by_energy == 1",
      source: AIR_PASSENGERS,
    },
  ],
  sources: [AIR_PASSENGERS, POWER_BANKS_BY_AIR, OTHER_BATTERIES_BY_AIR, AIR_CARGO, LITHIUM_METAL_CARGO, LEAD_CARGO, NICKEL_CARGO],
  check,
  cautions,
}))
