// What goes in and what comes out.
import type { Charge, Energy, Mass, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { CarriedKind } from "./rules.js"

/** Input of {@link airTravel}. Give the energy printed on the battery, or nominal voltage and capacity. */
export interface AirTravelInput {
  /** What kind of battery it is. [lithium-ion, lithium-metal, lead, nickel or dry; default lithium-ion] */
  type?: CarriedKind
  /** Watt-hours printed on one battery. [E_p; 3.6 J to 100 kWh; optional] */
  energy?: Energy | null
  /** Nominal voltage of one battery, where no watt-hours are printed. [V; above 0.1 to 1000 V; optional] */
  nominalVoltage?: Voltage | null
  /** Capacity of one battery, where no watt-hours are printed. [Q; 1 mAh to 10000 Ah; optional] */
  capacity?: Charge | null
  /** Mass of lithium in one lithium-metal battery. [m_L; 1 mg to 10 kg; optional] */
  lithiumMass?: Mass | null
  /** Batteries of this kind that one passenger carries. [N; whole 1 to 1000; default 1] */
  count?: number
  /**
   * How it travels: fitted in the device it runs, spare (a pack on a cable is one), or as a power bank. [in-device,
   * spare or power-bank; default spare]
   */
  carriedAs?: "in-device" | "spare" | "power-bank"
}

/** Hazards and limits that an answer of {@link airTravel} can carry. */
export type AirTravelCaution =
  | "battery-fire"
  | "home-made"
  | "medical-only"
  | "non-spillable-only"
  | "power-bank-on-board"
  | "rules-change"
  | "spares-in-cabin"
  | "terminals-covered"

/** Result of {@link airTravel}. */
export interface AirTravel {
  /** Watt-hours of one battery; null for lithium metal or dry cells without any. [E; J] */
  readonly energy: number | null
  /** `free` (no approval usually asked), `approval` or `forbidden`. [text] */
  readonly rule: string
  /** Most of them one passenger is usually let through with; null where none are counted. [N_m] */
  readonly maxCount: number | null
  /** Whether the number carried is within that. [yes or no] */
  readonly withinMaxCount: boolean
  /** Whether it may only ride in the cabin. [yes or no] */
  readonly cabinOnly: boolean
  /** Capacity at this voltage that would just be within the first limit; null where no watt-hours are asked. [Q_f; C] */
  readonly freeCapacity: number | null
  /** Capacity at this voltage that would just be within the second limit; null where no watt-hours are asked. [Q_a; C] */
  readonly approvalCapacity: number | null
  /** How it goes when it is sent by itself, in short. [text] */
  readonly sentAs: string
  /** What it comes to, in a sentence. [text] */
  readonly verdict: string
  /** Day the rules behind this answer were read. [text] */
  readonly rulesReadOn: string
  /** Editions of those rules. [text] */
  readonly rulesFrom: string
}

export type Si = SiOf<AirTravelInput>
