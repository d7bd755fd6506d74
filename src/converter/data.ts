import type { Source } from "../solver/index.js"
import { USB_2, USB_3, USB_CHARGING, USB_POWER_DELIVERY, USB_TYPE_C } from "./sources.js"

/** What an open USB standard promises at its port. */
export interface UsbPromise {
  readonly label: string
  /** Nominal voltage, V. */
  readonly sourceVoltage: number
  /** Minimum voltage at the port under load, V. */
  readonly minSourceVoltage: number
  /** Current promised, A; null where it follows from the rated power of a PD source. */
  readonly current: number | null
  /** Rated power above which a PD source must offer this voltage, W; null for others. */
  readonly abovePower: number | null
  /** Resistor by which a Type-C source advertises itself, to 5 V, Ω; null for others. */
  readonly pullUp: number | null
  readonly source: Source
}

const port = (voltage: number) => 0.95 * voltage

/** Voltages and currents at the port, each with its source. PD voltages hold within 5 %. */
export const usbPromises = {
  "usb2-unconfigured": {
    label: "USB 2.0, device not enumerated: one unit load",
    sourceVoltage: 5,
    minSourceVoltage: 4.4,
    current: 0.1,
    abovePower: null,
    pullUp: null,
    source: USB_2,
  },
  usb2: {
    label: "USB 2.0, enumerated",
    sourceVoltage: 5,
    minSourceVoltage: 4.75,
    current: 0.5,
    abovePower: null,
    pullUp: null,
    source: USB_2,
  },
  usb3: {
    label: "USB 3, enumerated",
    sourceVoltage: 5,
    minSourceVoltage: 4.45,
    current: 0.9,
    abovePower: null,
    pullUp: null,
    source: USB_3,
  },
  "charging-port": {
    label: "Battery Charging 1.2, charging downstream port",
    sourceVoltage: 5,
    minSourceVoltage: 4.75,
    current: 1.5,
    abovePower: null,
    pullUp: null,
    source: USB_CHARGING,
  },
  "type-c-default": {
    label: "Type-C, default (USB 2.0) advertisement",
    sourceVoltage: 5,
    minSourceVoltage: 4.75,
    current: 0.5,
    abovePower: null,
    pullUp: 56000,
    source: USB_TYPE_C,
  },
  "type-c-1.5A": {
    label: "Type-C, 1.5 A advertisement",
    sourceVoltage: 5,
    minSourceVoltage: 4.75,
    current: 1.5,
    abovePower: null,
    pullUp: 22000,
    source: USB_TYPE_C,
  },
  "type-c-3A": {
    label: "Type-C, 3 A advertisement",
    sourceVoltage: 5,
    minSourceVoltage: 4.75,
    current: 3,
    abovePower: null,
    pullUp: 10000,
    source: USB_TYPE_C,
  },
  "pd-5V": {
    label: "Power Delivery, 5 V",
    sourceVoltage: 5,
    minSourceVoltage: 4.75,
    current: null,
    abovePower: 0,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
  "pd-9V": {
    label: "Power Delivery, 9 V by negotiation",
    sourceVoltage: 9,
    minSourceVoltage: port(9),
    current: null,
    abovePower: 15,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
  "pd-15V": {
    label: "Power Delivery, 15 V by negotiation",
    sourceVoltage: 15,
    minSourceVoltage: port(15),
    current: null,
    abovePower: 27,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
  "pd-20V": {
    label: "Power Delivery, 20 V by negotiation",
    sourceVoltage: 20,
    minSourceVoltage: port(20),
    current: null,
    abovePower: 45,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
  "pd-28V": {
    label: "Power Delivery, extended range, 28 V",
    sourceVoltage: 28,
    minSourceVoltage: port(28),
    current: null,
    abovePower: 100,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
  "pd-36V": {
    label: "Power Delivery, extended range, 36 V",
    sourceVoltage: 36,
    minSourceVoltage: port(36),
    current: null,
    abovePower: 140,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
  "pd-48V": {
    label: "Power Delivery, extended range, 48 V",
    sourceVoltage: 48,
    minSourceVoltage: port(48),
    current: null,
    abovePower: 180,
    pullUp: null,
    source: USB_POWER_DELIVERY,
  },
} as const satisfies Readonly<Record<string, UsbPromise>>

/** A USB promise by name. */
export type UsbStandard = keyof typeof usbPromises

/** Further limits of the USB standards that no port promises on its own. */
export const usbLimits = {
  /** Unit loads, A (USB 2.0 section 7.2; USB 3.0 section 11.4), and how many a device may take. */
  unitLoad2: 0.1,
  unitLoads2: 5,
  unitLoad3: 0.15,
  unitLoads3: 6,
  /** Port voltage limits and what a USB 3 device must work at, V. */
  portMaximum2: 5.25,
  deviceMinimum3: 4,
  /** Battery Charging 1.2, table 5-2: A. */
  chargingPortMaximum: 5,
  chargingDeviceMaximum: 1.5,
  dedicatedPortMinimum: 0.5,
  /** Pull-down of a Type-C sink, Ω, and the voltage the pull-up stands on here, V. */
  pullDown: 5100,
  pullUpVoltage: 5,
  /** Maximum cable drops of Type-C on supply and return, V, at `cableCurrent` A (Type-C section 4.4.1). */
  cableDropSupply: 0.5,
  cableDropReturn: 0.25,
  cableCurrent: 3,
  /** Drop budget of a USB 2.0 cable on each conductor, V at 0.5 A, and a contact's resistance, Ω (section 6.6). */
  cableDrop2: 0.125,
  /** Maximum resistance of a USB 2.0 power conductor of AWG 24, tinned strands, Ω/m (table 6-6). */
  conductor2: 0.0909,
  contactResistance2: 0.03,
  /** Currents of PD: with any Type-C cable, and with one marked for 5 A, A. */
  anyCable: 3,
  markedCable: 5,
} as const
