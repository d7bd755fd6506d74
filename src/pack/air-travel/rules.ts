// Rules of carriage, one row for each kind of battery. They change every year, and airlines and countries add their own.
import type { Source } from "../../solver/index.js"
import { AIR_CARGO, AIR_PASSENGERS, LEAD_CARGO, LITHIUM_METAL_CARGO, NICKEL_CARGO, OTHER_BATTERIES_BY_AIR } from "../sources.js"

/** Kind of battery that rules of carriage tell apart. */
export type CarriedKind = "lithium-ion" | "lithium-metal" | "lead" | "nickel" | "dry"

/** What holds for one kind of battery: carried by a passenger, and sent. */
export interface CarriageRule {
  readonly label: string
  readonly passenger: {
    /** Energy, J, up to which no approval is asked, and up to which the airline may approve; null where energy is not asked for. */
    readonly energy: { readonly free: number; readonly approval: number } | null
    /** The same by mass of lithium, kg. */
    readonly lithium: { readonly free: number; readonly approval: number } | null
    /** Maximum nominal voltage, V. */
    readonly maxVoltage: number | null
    /** Spare batteries for each passenger that need no approval; null where none is counted. */
    readonly spares: number | null
    /** Spare batteries over the first limit for each passenger. */
    readonly largeSpares: number | null
    /** Devices with batteries for each passenger. */
    readonly devices: number | null
    /** Whether spares may ride in the hold. */
    readonly sparesInHold: boolean
    /** Energy, J, and mass of lithium, kg, of a battery fixed in baggage that is checked in. */
    readonly fixedInBaggage: { readonly energy: number | null; readonly lithium: number | null } | null
    readonly source: Source
  }
  /** Sent as goods. */
  readonly sent: {
    /** Number under which it is sent by itself, with its equipment, and one that can spill; null where it has none of its own. */
    readonly alone: string | null
    readonly withEquipment: string | null
    readonly spillable: string | null
    /** Hazard class. */
    readonly hazardClass: number | null
    /** Whether the number is used by air; by sea it is. */
    readonly byAir: boolean
    /** Whether it may fly as goods in an aeroplane with passengers. */
    readonly onPassengerAircraft: boolean
    /** Maximum state of charge. */
    readonly maxStateOfCharge: number | null
    /** Gross mass in one unit, kg, from which papers are asked by sea. */
    readonly papersFromMass: number | null
    readonly source: Source
  }
}

const WH = 3600
const LITHIUM = {
  maxVoltage: null,
  spares: 20,
  largeSpares: 2,
  devices: 15,
  sparesInHold: false,
  source: AIR_PASSENGERS,
} as const
const UNCOUNTED = {
  energy: null,
  lithium: null,
  maxVoltage: null,
  spares: null,
  largeSpares: null,
  devices: null,
  sparesInHold: true,
  fixedInBaggage: null,
  source: OTHER_BATTERIES_BY_AIR,
} as const

/** Rules of carriage as they stood on the day each source was read. */
export const transportRules = {
  "lithium-ion": {
    label: "lithium-ion, rechargeable",
    passenger: {
      ...LITHIUM,
      energy: { free: 100 * WH, approval: 160 * WH },
      lithium: null,
      fixedInBaggage: { energy: 2.7 * WH, lithium: null },
    },
    sent: {
      alone: "UN 3480",
      withEquipment: "UN 3481",
      spillable: null,
      hazardClass: 9,
      byAir: true,
      onPassengerAircraft: false,
      maxStateOfCharge: 0.3,
      papersFromMass: null,
      source: AIR_CARGO,
    },
  },
  "lithium-metal": {
    label: "lithium metal, not rechargeable",
    passenger: {
      ...LITHIUM,
      energy: null,
      lithium: { free: 2e-3, approval: 8e-3 },
      fixedInBaggage: { energy: null, lithium: 0.3e-3 },
    },
    sent: {
      alone: "UN 3090",
      withEquipment: "UN 3091",
      spillable: null,
      hazardClass: 9,
      byAir: true,
      onPassengerAircraft: false,
      maxStateOfCharge: null,
      papersFromMass: null,
      source: LITHIUM_METAL_CARGO,
    },
  },
  lead: {
    label: "lead-acid, sealed and non-spillable",
    passenger: {
      energy: { free: 100 * WH, approval: 100 * WH },
      lithium: null,
      maxVoltage: 12,
      spares: 2,
      largeSpares: null,
      devices: 15,
      sparesInHold: true,
      fixedInBaggage: null,
      source: OTHER_BATTERIES_BY_AIR,
    },
    sent: {
      alone: "UN 2800",
      withEquipment: null,
      spillable: "UN 2794",
      hazardClass: 8,
      byAir: true,
      onPassengerAircraft: true,
      maxStateOfCharge: null,
      papersFromMass: null,
      source: LEAD_CARGO,
    },
  },
  nickel: {
    label: "nickel-metal hydride",
    passenger: UNCOUNTED,
    sent: {
      alone: "UN 3496",
      withEquipment: null,
      spillable: "UN 2795",
      hazardClass: 9,
      byAir: false,
      onPassengerAircraft: true,
      maxStateOfCharge: null,
      papersFromMass: 100,
      source: NICKEL_CARGO,
    },
  },
  dry: {
    label: "alkaline and other dry cells",
    passenger: UNCOUNTED,
    sent: {
      alone: null,
      withEquipment: null,
      spillable: null,
      hazardClass: null,
      byAir: false,
      onPassengerAircraft: true,
      maxStateOfCharge: null,
      papersFromMass: null,
      source: OTHER_BATTERIES_BY_AIR,
    },
  },
} as const satisfies Readonly<Record<CarriedKind, CarriageRule>>

/** Rules for power banks, since 27 March 2026: each passenger may carry so many, as spares, and recharge none on board. */
export const powerBankRules = { max: 2, countsAsSpare: true, rechargedOnBoard: false } as const

/** Limits for lithium-ion cells and batteries sent by themselves that count as small, and the net mass in a package of section IB, kg. */
export const smallLithium = { cellEnergy: 20 * WH, batteryEnergy: 100 * WH, netMass: 10 } as const
