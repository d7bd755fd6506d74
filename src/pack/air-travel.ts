import type { Charge, Energy, Mass, Voltage } from "../quantity/index.js"
import { type Caution, caution, type Issue, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"

/** Passenger rules as they stood; rules change every year and airlines add their own. */
export const airRules = {
  /** Lithium-ion battery, J, up to which no approval is asked. */
  freeEnergy: 100 * 3600,
  /** Lithium-ion battery, J, up to which the airline may approve. */
  approvalEnergy: 160 * 3600,
  /** Lithium-metal battery, kg of lithium, up to which no approval is asked. */
  freeLithium: 2e-3,
  /** Lithium-metal battery, kg of lithium, up to which the airline may approve. */
  approvalLithium: 8e-3,
  /** Devices with batteries for each passenger. */
  mostDevices: 15,
  /** Spare batteries of up to 100 Wh for each passenger. */
  mostSpares: 20,
  /** Spare batteries over 100 Wh for each passenger. */
  mostLargeSpares: 2,
  /** Spares ride in the cabin, never in the hold. */
  sparesInHold: false,
  /** A battery whose main purpose is to power another device is a spare. */
  powerBankIsSpare: true,
  /** Greatest mass of lithium and watt-hours of a battery fixed in baggage that is checked in. */
  fixedBaggageEnergy: 2.7 * 3600,
  fixedBaggageLithium: 0.3e-3,
  source: {
    title: "Dangerous Goods Regulations, provisions for passengers and crew (table 2.3.A), and passenger guidance on lithium batteries",
    by: "IATA",
    edition: "65th and 66th, 2024 and 2025",
    where: "section 2.3; numbers of devices and spares from memory",
  },
} as const

/** Limits for lithium-ion cells and batteries sent by themselves (UN 3480) and for small ones. */
export const cargoRules = {
  smallCellEnergy: 20 * 3600,
  smallBatteryEnergy: 100 * 3600,
  mostCharge: 0.3,
  onPassengerAircraft: false,
  netMassOnCargoAircraft: 10,
  source: { title: "Dangerous Goods Regulations, packing instruction 965", by: "IATA", edition: "2024", where: "sections IA and IB" },
} as const

/** Input of {@link airTravel}. Give the energy printed on the battery, or nominal voltage and capacity. */
export interface AirTravelInput {
  /** What kind of battery it is. */
  kind?: "lithium-ion" | "lithium-metal" | "dry"
  /** Watt-hours printed on one battery. */
  energy?: Energy | null
  /** Nominal voltage of one battery, where no watt-hours are printed. */
  nominalVoltage?: Voltage | null
  /** Capacity of one battery, where no watt-hours are printed. */
  capacity?: Charge | null
  /** Mass of lithium in one lithium-metal battery. */
  lithiumMass?: Mass | null
  /** Batteries of this kind that one passenger carries. */
  count?: number
  /** How it travels: fitted in the device it runs, or spare; a pack on a cable and a power bank are spares. */
  carried?: "in-device" | "spare"
}

/** Result of {@link airTravel}. */
export interface AirTravel {
  /** Watt-hours of one battery, J; null for lithium metal without any. */
  readonly energy: number | null
  /** `free`, `approval` or `forbidden`. */
  readonly band: string
  /** Most of them one passenger is usually let through with. */
  readonly most: number
  /** Whether the number carried is within that. */
  readonly countWithin: boolean
  /** Whether it may only ride in the cabin. */
  readonly cabinOnly: boolean
  /** Capacity at this voltage that would just be within the first limit, C. */
  readonly freeCapacity: number | null
  /** Capacity at this voltage that would just be within the second limit, C. */
  readonly approvalCapacity: number | null
  /** What it comes to, in a sentence. */
  readonly verdict: string
}

type Si = SiOf<AirTravelInput>

const dust = 1 + 1e-9

function bandOf(si: Si, energy: number | null): "free" | "approval" | "forbidden" {
  if (si.kind === "dry") return "free"
  const [value, free, approval] =
    si.kind === "lithium-metal"
      ? [si.lithiumMass as number, airRules.freeLithium, airRules.approvalLithium]
      : [energy as number, airRules.freeEnergy, airRules.approvalEnergy]
  // the limits themselves are still within; rounding of a product is not to push a battery over
  return value <= free * dust ? "free" : value <= approval * dust ? "approval" : "forbidden"
}

function solve(si: Si): AirTravel {
  const energy = si.energy ?? (si.nominalVoltage !== null && si.capacity !== null ? si.nominalVoltage * si.capacity : null)
  const band = bandOf(si, energy)
  const most =
    band === "forbidden"
      ? 0
      : si.carried === "in-device"
        ? airRules.mostDevices
        : band === "approval"
          ? airRules.mostLargeSpares
          : airRules.mostSpares
  const countWithin = si.count <= most
  const cabinOnly = si.kind !== "dry" && si.carried === "spare"
  const verdict =
    band === "forbidden"
      ? "Passengers are not let through with it: leave it out, divide it into smaller batteries, or have it sent as dangerous goods."
      : si.kind === "lithium-metal" && band === "approval"
        ? "For portable medical electronics alone, and only with the airline's approval beforehand: leave it out."
        : band === "approval"
          ? `Only with the airline's approval beforehand, and no more than ${most}${cabinOnly ? " spares, in the cabin" : ""}.`
          : countWithin
            ? `Usually let through${cabinOnly ? " in the cabin, contacts covered" : ""}; ask the airline, which may be stricter.`
            : `Each is within the limit, but ${si.count} are more than the usual ${most}: ask the airline.`
  return {
    energy,
    band,
    most,
    countWithin,
    cabinOnly,
    freeCapacity: si.nominalVoltage === null ? null : airRules.freeEnergy / si.nominalVoltage,
    approvalCapacity: si.nominalVoltage === null ? null : airRules.approvalEnergy / si.nominalVoltage,
    verdict,
  }
}

function check(si: Si): Issue[] {
  const rated = si.nominalVoltage !== null && si.capacity !== null
  if (si.kind === "lithium-metal")
    return si.lithiumMass === null ? [inconsistent(["lithiumMass"], "nothing", "the mass of lithium of a lithium-metal battery")] : []
  if (si.kind === "dry") return []
  if (si.energy === null && !rated) return [inconsistent(["energy"], "neither", "energy, or nominalVoltage and capacity")]
  if (si.energy !== null && rated && Math.abs(si.energy / ((si.nominalVoltage as number) * (si.capacity as number)) - 1) > 0.05)
    return [
      inconsistent(
        ["energy"],
        `${si.energy / 3600} Wh`,
        "what nominal voltage and capacity make, to 5 % (an inspector will compare the printed figures)",
      ),
    ]
  return []
}

function cautions(si: Si, out: AirTravel): Caution[] {
  const found = [
    caution(
      "rules-change",
      "warning",
      "Guidance, not permission: rules change every year, airlines and countries add their own, and the crew decides. Look up the current edition and ask the airline in writing.",
      `${airRules.source.title}, ${airRules.source.edition}`,
    ),
  ]
  if (si.kind === "lithium-ion")
    found.push(
      caution(
        "home-made",
        "warning",
        "A home-made pack has no printed watt-hours and no UN 38.3 test summary; it may be refused whatever its size. A bought pack of a known make, marked with its watt-hours, is the safer choice for travel.",
        "UN Manual of Tests and Criteria, section 38.3; IATA Dangerous Goods Regulations, section 2.3",
      ),
      caution(
        "damaged",
        "warning",
        "A damaged, swollen or recalled battery must not fly at all.",
        "IATA Dangerous Goods Regulations, special provision A154 (from memory)",
      ),
    )
  if (si.kind === "lithium-metal" && out.band === "approval")
    found.push(
      caution(
        "medical-only",
        "warning",
        "Between 2 g and 8 g of lithium airlines approve for portable medical electronics alone: a costume is none, so count on its being refused.",
        "IATA Dangerous Goods Regulations, table 2.3.A (portable medical electronic devices; from memory)",
      ),
    )
  if (out.cabinOnly)
    found.push(
      caution(
        "spares-in-cabin",
        "warning",
        "Spares and power banks ride in the cabin with their contacts covered, never in checked baggage; a pack that feeds wings by a cable counts as a spare.",
        `${airRules.source.title}, ${airRules.source.edition}`,
      ),
    )
  return found
}

/**
 * Which passenger rule a battery falls under in an aeroplane: guidance, not permission.
 *
 * Formula: E = V·Q with V the nominal voltage (V) and Q the rated capacity (C) of one battery, not of all
 * together. Lithium-ion: up to 100 Wh free, over 100 to 160 Wh with the airline's approval, above 160 Wh not by
 * passengers; the limits themselves are still within. Lithium metal: 2 g, and 8 g for medical devices alone. Usual numbers for
 * each passenger (count, default 1): 15 devices, 20 spares, 2 spares over 100 Wh. A pack whose purpose is to
 * power another device is a spare.
 *
 * Valid for the editions named; rules change yearly and airlines may be stricter.
 *
 * Sources: IATA Dangerous Goods Regulations, 65th and 66th edition (2024, 2025), section 2.3.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { airTravel } from 'alula/pack'
 * const wingPack = airTravel({ nominalVoltage: '10.8 V', capacity: '5.2 Ah', carried: 'spare' })
 * wingPack.energy / 3600 // => 56.16
 * wingPack.band // => 'free'
 * wingPack.cabinOnly // => true
 * ```
 */
export const airTravel: Solver<AirTravelInput, AirTravel> = /* @__PURE__ */ solver<AirTravelInput, AirTravel>({
  name: "airTravel",
  title: "Which passenger rule a battery falls under when flying",
  input: {
    kind: {
      kind: "choice",
      label: "kind of battery",
      options: {
        "lithium-ion": "lithium-ion, rechargeable",
        "lithium-metal": "lithium metal, not rechargeable",
        dry: "alkaline or nickel-metal hydride",
      },
      default: "lithium-ion",
    },
    energy: {
      kind: "energy",
      symbol: "E_p",
      label: "watt-hours printed",
      above: 0,
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
    capacity: { kind: "charge", symbol: "Q", label: "capacity", above: 0, max: "10000 Ah", typical: ["1 Ah", "20 Ah"], default: null },
    lithiumMass: {
      kind: "mass",
      symbol: "m_L",
      label: "lithium in a lithium-metal battery",
      above: 0,
      max: 10,
      typical: ["0.5 g", "10 g"],
      default: null,
    },
    count: { kind: "number", symbol: "N", label: "batteries carried", whole: true, min: 1, max: 1000, typical: [1, 30], default: 1 },
    carried: {
      kind: "choice",
      label: "how it travels",
      options: { "in-device": "fitted in the device it runs", spare: "spare, power bank, or pack on a cable" },
      default: "spare",
    },
  },
  output: {
    energy: { kind: "energy", symbol: "E", label: "energy of one battery", unit: "Wh" },
    band: { kind: "text", label: "rule" },
    most: { kind: "number", symbol: "N_m", label: "usual number for each passenger" },
    countWithin: { kind: "flag", label: "number within it" },
    cabinOnly: { kind: "flag", label: "cabin only" },
    freeCapacity: { kind: "charge", symbol: "Q_f", label: "capacity within the first limit", unit: "Ah" },
    approvalCapacity: { kind: "charge", symbol: "Q_a", label: "capacity within the second limit", unit: "Ah" },
    verdict: { kind: "text", label: "in short" },
  },
  example: { nominalVoltage: "10.8 V", capacity: "5.2 Ah", count: 2, carried: "spare" },
  formulae: [
    { symbol: "E", meaning: "energy as printed", is: "E_p", when: "has_energy" },
    { symbol: "E", meaning: "energy of one battery", is: "V * Q", when: "has_nominalVoltage and has_capacity and not has_energy" },
    {
      symbol: "N_m",
      kind: "number",
      meaning: "usual number, from the rules",
      given: (_, out) => out.most,
      source: "IATA DGR, section 2.3",
    },
    {
      symbol: "Q_f",
      meaning: "capacity within the first limit",
      is: "100 W * 1 hour / V",
      when: "has_nominalVoltage",
      source: "IATA DGR, section 2.3",
    },
    {
      symbol: "Q_a",
      meaning: "capacity within the second limit",
      is: "160 W * 1 hour / V",
      when: "has_nominalVoltage",
      source: "IATA DGR, section 2.3",
    },
  ],
  sources: [airRules.source],
  check,
  solve,
  cautions,
})
