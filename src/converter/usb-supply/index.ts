import {
  at,
  type Caution,
  caution,
  commonPractice,
  inconsistent,
  type NoSolution,
  optionsFrom,
  refuse,
  type Solver,
  solver,
} from "../../solver/index.js"
import { type UsbPromise, usbLimits, usbPromises } from "../data.js"
import { touchCautions } from "../hazards.js"
import { USB_2, USB_2_CABLES, USB_3, USB_CHARGING, USB_POWER_DELIVERY, USB_SUPPLIES, USB_TYPE_C } from "../sources.js"
import type { Si, UsbSupply, UsbSupplyCaution, UsbSupplyInput, UsbSupplyRefusal } from "./types.js"

export type { UsbSupply, UsbSupplyCaution, UsbSupplyInput, UsbSupplyRefusal } from "./types.js"

const promiseOf = (si: Si): UsbPromise => usbPromises[si.type]

/** Maximum current of a fixed PD voltage: P/V, at most 3 A, or 5 A from 20 V up with a marked cable. */
function promisedCurrent(si: Si): number {
  const { sourceVoltage, current } = promiseOf(si)
  if (current !== null) return current
  const most = sourceVoltage >= 20 && si.cableMarked ? usbLimits.markedCable : usbLimits.anyCable
  return Math.min(most, (si.ratedPower as number) / sourceVoltage)
}

function cableOf(si: Si): number {
  return si.cableLength === null
    ? (usbLimits.cableDropSupply + usbLimits.cableDropReturn) / usbLimits.cableCurrent
    : 2 * si.conductorResistance * si.cableLength + si.contacts * si.contactResistance
}

function lengthBudget(si: Si): number {
  return (2 * usbLimits.cableDrop2) / si.loadCurrent - si.contacts * si.contactResistance
}

function solve(si: Si): UsbSupply | NoSolution<UsbSupplyRefusal> {
  const promise = promiseOf(si)
  if (promise.abovePower !== null && !((si.ratedPower as number) > promise.abovePower))
    return refuse(
      "not-offered",
      "A Power Delivery source of {given.ratedPower power} need not offer {sourceVoltage voltage}: only those above {above power} must. Take a stronger source or a lower voltage.",
      1.001 * promise.abovePower - (si.ratedPower as number),
      { sourceVoltage: promise.sourceVoltage, above: promise.abovePower },
      { ratedPower: 1.001 * promise.abovePower },
      { "given.ratedPower": si.ratedPower as number },
    )
  if (promise.sourceVoltage > 20 && !si.cableMarked)
    return refuse(
      "needs-marked-cable",
      "A source offers {sourceVoltage voltage} only through a cable marked for the extended power range (5 A, 50 V): with any other it stays at 20 V or less. Take a marked cable.",
      promise.sourceVoltage - 20,
      { sourceVoltage: promise.sourceVoltage },
    )
  const current = promisedCurrent(si)
  const cableResistance = cableOf(si)
  const cableDrop = si.loadCurrent * cableResistance
  const minLoadVoltage = promise.minSourceVoltage - cableDrop
  if (!(minLoadVoltage > 0)) {
    const most = (0.999 * promise.minSourceVoltage) / cableResistance
    return refuse(
      "insufficient-voltage",
      "The cable would lose {cableDrop voltage} of the {minSourceVoltage voltage} at the port. Take a shorter or thicker cable, or less current.",
      si.loadCurrent - most,
      { cableDrop, minSourceVoltage: promise.minSourceVoltage },
      { loadCurrent: most },
    )
  }
  const budget = lengthBudget(si)
  return {
    sourceVoltage: promise.sourceVoltage,
    minSourceVoltage: promise.minSourceVoltage,
    promisedCurrent: current,
    promisedPower: promise.sourceVoltage * current,
    promised: si.loadCurrent <= current,
    cableResistance,
    cableDrop,
    cableHeat: si.loadCurrent * cableDrop,
    loadVoltage: promise.sourceVoltage - cableDrop,
    minLoadVoltage,
    minLoadPower: minLoadVoltage * si.loadCurrent,
    maxCableLength: budget > 0 ? budget / (2 * si.conductorResistance) : null,
    ccVoltage: promise.pullUp === null ? null : (usbLimits.pullUpVoltage * usbLimits.pullDown) / (usbLimits.pullDown + promise.pullUp),
  }
}

function cautions(si: Si, out: UsbSupply): Caution<UsbSupplyCaution>[] {
  const found: Caution<UsbSupplyCaution>[] = [...touchCautions(out.sourceVoltage)]
  if (!out.promised)
    found.push(
      caution(
        "over-current",
        "caution",
        "The port promises {promisedCurrent current} and {given.loadCurrent current} are asked for: it may sag, switch off, or heat. What one power bank gives, the next need not.",
        promiseOf(si).source,
        { promisedCurrent: out.promisedCurrent, "given.loadCurrent": si.loadCurrent },
      ),
    )
  if (si.type === "usb2" || si.type === "usb3")
    found.push(
      caution(
        "enumerate",
        "caution",
        "{promisedCurrent current} is only for a device that has enumerated; a plain load is entitled to one unit load of {unit current}.",
        si.type === "usb2" ? USB_2 : USB_3,
        { promisedCurrent: out.promisedCurrent, unit: si.type === "usb2" ? usbLimits.unitLoad2 : usbLimits.unitLoad3 },
      ),
    )
  if (promiseOf(si).abovePower !== null) {
    found.push(
      caution(
        "twelve-volts",
        "note",
        "The voltages every source must have are 5, 9, 15 and 20 V by rated power: 12 V is optional, and a trigger board for it gets less from many sources.",
        USB_POWER_DELIVERY,
      ),
    )
    if (out.sourceVoltage > 5)
      found.push(
        caution(
          "negotiated-voltage",
          "caution",
          "{sourceVoltage voltage} stands only while the negotiation holds: after a dip the port falls back to 5 V or to nothing. Nothing on it may be harmed by either.",
          USB_POWER_DELIVERY,
          { sourceVoltage: out.sourceVoltage },
        ),
      )
  }
  const made = si.cableMarked ? usbLimits.markedCable : usbLimits.anyCable
  if (si.loadCurrent > made)
    found.push(
      caution(
        "overheating",
        "warning",
        "This cable and its plugs are made for {made current}: at {given.loadCurrent current} a plug can overheat and melt. Take less current through it ({most current} through a cable marked for it) and keep the plug off the wearer.",
        at(USB_TYPE_C, "cable current rating"),
        { made, "given.loadCurrent": si.loadCurrent, most: usbLimits.markedCable },
      ),
    )
  if (si.loadCurrent < 0.1)
    found.push(
      caution(
        "auto-off",
        "caution",
        "Many power banks switch off when less than 50 to 100 mA is drawn for half a minute: at {given.loadCurrent current} a build that rests is left without power.",
        commonPractice,
        { "given.loadCurrent": si.loadCurrent },
      ),
    )
  if (out.minLoadVoltage < 4.5 && out.sourceVoltage === 5)
    found.push(
      caution(
        "low-voltage",
        "note",
        "As little as {minLoadVoltage voltage} may arrive, all within the standard: check that the build works from it.",
        USB_TYPE_C,
        { minLoadVoltage: out.minLoadVoltage },
      ),
    )
  return found
}

/**
 * What a USB port promises, and what is left of it behind the cable.
 *
 * Formula: R_c = 2·r·L + n·R_k, or 0.75 V/3 A for the worst Type-C cable; V = V_port − I·R_c, from the nominal and from
 * the minimum port voltage. A Power Delivery source of rated power P gives min(3 A, P/V) (5 A from 20 V up with a marked
 * cable), and must offer 9 V above 15 W, 15 V above 27 W, 20 V above 45 W, 28, 36 and 48 V above 100, 140 and 180 W
 * (these three through a marked cable only). I is the current of the build, L the cable's length, r the resistance of
 * one of its power conductors, n its contacts, R_k each contact's resistance. CC pin: 5 V·5.1 kΩ/(5.1 kΩ + R_p). Valid
 * for direct current at a port that keeps its standard.
 *
 * **Inputs**
 * - `type`: what the port promises [one of 14 words]
 * - `loadCurrent`: current of the build [I; 0.1 mA to 10 A]
 * - `ratedPower`: rated power of the source [P_r; 0.1 to 240 W; optional]
 * - `cableMarked`: cable marked for 5 A [yes or no; default no]
 * - `cableLength`: cable length [L; 0 to 100 m; optional]
 * - `conductorResistance`: resistance per length of one power conductor [r; 0.001 mΩ/m to 10 Ω/m; default 90.9 mΩ/m]
 * - `contacts`: power contacts, out and back [n; whole 0 to 100; default 4]
 * - `contactResistance`: resistance of one contact [R_k; 0 to 10 Ω; default 30 mΩ]
 *
 * **Results**
 *
 * `sourceVoltage`: nominal port voltage [V_p; V]; `minSourceVoltage`: minimum port voltage [V_m; V];
 * `promisedCurrent`: current promised [I_p; A]; `promisedPower`: power promised [P_p; W]; `promised`: current is
 * promised [yes or no]; `cableResistance`: cable, both ways [R_c; Ω]; `cableDrop`: lost in the cable [U; V];
 * `cableHeat`: heat in the cable [P_c; W]; `loadVoltage`: voltage at the build [V_b; V]; `minLoadVoltage`: minimum
 * voltage at the build [V_l; V]; `minLoadPower`: power there [P_l; W]; `maxCableLength`: length that loses 0.125 V
 * each way [L_m; m]; `ccVoltage`: voltage on the CC pin [V_cc; V].
 *
 * **Symbols of the working**
 *
 * fixed: 1 for a fixed promise, 0 for Power Delivery; I_s: current of the standard [A]; I_m: most the cable is made
 * for [A]; R_p: advertising resistor (0: none) [Ω].
 *
 * **Sources**
 * - USB-IF: Universal Serial Bus Specification, Revision 2.0, 2000, section 7.2: loads and port voltages
 * - USB-IF: Universal Serial Bus Specification, Revision 2.0, 2000, section 6.6, table 6-6: maximum conductor
 *   resistance by gauge; 0.125 V on each conductor (not verified against the document)
 * - USB-IF: Universal Serial Bus 3.0 Specification, 2008, section 11.4
 * - USB-IF: IEC 62680-1-1, Battery Charging Specification 1.2, 2010, table 5-2
 * - IEC: IEC 62680-1-3, USB Type-C cable and connector specification, 2022, section 4.4.1 (voltage lost in the cable);
 *   advertisement by Rp
 * - IEC: IEC 63002, Identification and communication interoperability method for external power supplies used with
 *   portable computing devices, 2016 (superseded by the third edition, 2025), clause 4.4
 * - USB-IF: Universal Serial Bus Power Delivery Specification, Revision 3.1, 2021, power rules; voltages within 5 %
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `not-offered` where a PD source of that power need not have the voltage,
 * `needs-marked-cable` above 20 V without one, `insufficient-voltage` where the cable is too thin
 * @example
 * ```ts
 * import { usbSupply } from 'alula/converter'
 * const port = usbSupply({ type: 'type-c-3A', loadCurrent: '2.4 A' })
 * port.minLoadVoltage // => 4.15
 * port.promised // => true
 * ```
 */
export const usbSupply: Solver<UsbSupplyInput, UsbSupply, UsbSupplyRefusal, UsbSupplyCaution> = /* @__PURE__ */ solver<
  UsbSupplyInput,
  UsbSupply,
  UsbSupplyRefusal,
  UsbSupplyCaution
>("usbSupply", "What a USB port promises, behind its cable", solve, () => ({
  input: {
    type: { kind: "choice", label: "what the port promises", options: optionsFrom(usbPromises, (key) => usbPromises[key].label) },
    loadCurrent: { kind: "current", symbol: "I", label: "current of the build", min: "0.1 mA", max: 10, typical: [0.05, 3] },
    ratedPower: {
      kind: "power",
      symbol: "P_r",
      label: "rated power of the source",
      min: "0.1 W",
      max: 240,
      typical: [15, 100],
      default: null,
    },
    cableMarked: { kind: "flag", label: "cable marked for 5 A", default: false },
    cableLength: { kind: "length", symbol: "L", label: "cable length", min: 0, max: 100, typical: [0.2, 2], default: null },
    conductorResistance: {
      kind: "resistancePerLength",
      symbol: "r",
      label: "resistance per length of one power conductor",
      min: 1e-6,
      max: 10,
      typical: [0.05, 0.25],
      default: usbLimits.conductor2,
    },
    contacts: {
      kind: "number",
      symbol: "n",
      label: "power contacts, out and back",
      whole: true,
      min: 0,
      max: 100,
      typical: [4, 8],
      default: 4,
    },
    contactResistance: {
      kind: "resistance",
      symbol: "R_k",
      label: "resistance of one contact",
      min: 0,
      max: 10,
      typical: ["10 mohm", "50 mohm"],
      default: "30 mohm",
    },
  },
  output: {
    sourceVoltage: { kind: "voltage", symbol: "V_p", label: "nominal port voltage" },
    minSourceVoltage: { kind: "voltage", symbol: "V_m", label: "minimum port voltage" },
    promisedCurrent: { kind: "current", symbol: "I_p", label: "current promised" },
    promisedPower: { kind: "power", symbol: "P_p", label: "power promised" },
    promised: { kind: "flag", label: "current is promised" },
    cableResistance: { kind: "resistance", symbol: "R_c", label: "cable, both ways" },
    cableDrop: { kind: "voltage", symbol: "U", label: "lost in the cable" },
    cableHeat: { kind: "power", symbol: "P_c", label: "heat in the cable" },
    loadVoltage: { kind: "voltage", symbol: "V_b", label: "voltage at the build" },
    minLoadVoltage: { kind: "voltage", symbol: "V_l", label: "minimum voltage at the build" },
    minLoadPower: { kind: "power", symbol: "P_l", label: "power there" },
    maxCableLength: { kind: "length", symbol: "L_m", label: "length that loses 0.125 V each way" },
    ccVoltage: { kind: "voltage", symbol: "V_cc", label: "voltage on the CC pin" },
  },
  example: { type: "type-c-3A", loadCurrent: "2.4 A", ratedPower: "15 W", cableLength: "1 m" },
  formulae: [
    {
      symbol: "V_p",
      kind: "voltage",
      meaning: "nominal voltage of the port",
      given: (si) => promiseOf(si).sourceVoltage,
      source: USB_SUPPLIES,
    },
    {
      symbol: "V_m",
      kind: "voltage",
      meaning: "minimum voltage of the port",
      given: (si) => promiseOf(si).minSourceVoltage,
      source: USB_SUPPLIES,
    },
    {
      symbol: "fixed",
      kind: "number",
      meaning: "1 for a fixed promise, 0 for Power Delivery",
      given: (si) => (promiseOf(si).current === null ? 0 : 1),
    },
    {
      symbol: "I_s",
      kind: "current",
      meaning: "current of the standard",
      given: (si) => promiseOf(si).current ?? 0,
      source: USB_SUPPLIES,
    },
    {
      symbol: "I_m",
      kind: "current",
      meaning: "most the cable is made for",
      given: (si) => (promiseOf(si).sourceVoltage >= 20 && si.cableMarked ? 5 : 3),
      source: USB_TYPE_C,
    },
    { symbol: "I_p", meaning: "current promised", is: "I_s", when: "fixed == 1" },
    {
      symbol: "I_p",
      meaning: "current promised",
      is: "min(I_m, P_r / V_p)",
      when: "fixed == 0",
      source: USB_POWER_DELIVERY,
    },
    { symbol: "P_p", meaning: "power promised", is: "V_p * I_p" },
    { symbol: "R_c", meaning: "cable and contacts, both ways", is: "2 * r * L + n * R_k", when: "has_cableLength" },
    {
      symbol: "R_c",
      meaning: "worst cable allowed",
      is: "0.75 V / (3 A)",
      when: "not has_cableLength",
      source: USB_TYPE_C,
    },
    { symbol: "U", meaning: "lost in the cable", is: "I * R_c" },
    { symbol: "P_c", meaning: "heat in it", is: "I * U" },
    { symbol: "V_b", meaning: "voltage at the build", is: "V_p - U" },
    { symbol: "V_l", meaning: "minimum voltage at the build", is: "V_m - U" },
    { symbol: "P_l", meaning: "power there", is: "V_l * I" },
    {
      symbol: "L_m",
      meaning: "length that loses 0.125 V each way",
      is: "(0.25 V / I - n * R_k) / (2 * r)",
      when: "0.25 V / I > n * R_k",
      source: USB_2_CABLES,
    },
    {
      symbol: "R_p",
      kind: "resistance",
      meaning: "advertising resistor (0: none)",
      given: (si) => promiseOf(si).pullUp ?? 0,
      source: USB_TYPE_C,
    },
    { symbol: "V_cc", meaning: "voltage on the CC pin", is: "5 V * 5100 ohm / (5100 ohm + R_p)", when: "R_p > 0 ohm" },
  ],
  sources: [USB_2, USB_2_CABLES, USB_3, USB_CHARGING, USB_TYPE_C, USB_SUPPLIES, USB_POWER_DELIVERY],
  check: (si) =>
    promiseOf(si).abovePower !== null && si.ratedPower === null
      ? [inconsistent(["ratedPower"], "no ratedPower", "the rated power of a Power Delivery source")]
      : [],
  cautions,
}))
