import {
  boostStage,
  buckStage,
  constantPowerPoint,
  converterLimit,
  type UsbStandard,
  usbLimits,
  usbPromises,
  usbSupply,
} from "../../src/converter/index.js"
import { brent } from "../../src/numeric/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { type Check, referenceTests } from "../helpers/references.js"

type Numbers = Readonly<Record<string, number>>
const numbers =
  (check: (inputs: Numbers) => Readonly<Record<string, unknown>>): Check =>
  (inputs) =>
    check(inputs as unknown as Numbers)

/** Both roots and the limit of a constant-power load. */
const roots = numbers(({ source_V, resistance_ohm, power_W }) => {
  const point = constantPowerPoint({
    sourceVoltage: source_V as number,
    sourceResistance: resistance_ohm as number,
    power: power_W as number,
  })
  return {
    v_high_V: point.terminalVoltage,
    i_high_A: point.current,
    v_low_V: point.unstableVoltage,
    i_low_A: point.unstableCurrent,
    p_max_W: point.maxPower,
  }
})

/** A large inductance, where a source neglects the ripple. */
const noRipple = { inductance: 1e3, frequency: 1e6 }

/** CC voltage and currents of a Type-C advertisement. */
const advertisement = (standard: UsbStandard): Check =>
  numbers(() => ({ vrd_V: usbSupply({ type: standard, loadCurrent: 0.1 }).ccVoltage }))

/** Currents of a PD source at each voltage the row asks for. */
const powerRules = numbers(({ pdp_W }) =>
  Object.fromEntries(
    (["5V", "9V", "15V", "20V"] as const).flatMap((v) => {
      const outcome = usbSupply.attempt({ type: `pd-${v}`, loadCurrent: 0.1, ratedPower: pdp_W })
      return outcome.ok ? [[`i${v}_A`, outcome.value.promisedCurrent]] : []
    }),
  ),
)

/** A resistive load on a source, by the constant-power point that takes the same power. */
function loaded(emf: number, inner: number, load: number): { current: number; voltage: number; power: number } {
  const power = (emf / (inner + load)) ** 2 * load
  const point = constantPowerPoint({ sourceVoltage: emf, sourceResistance: inner, power })
  const root =
    load > inner
      ? { current: point.current, voltage: point.terminalVoltage }
      : { current: point.unstableCurrent, voltage: point.unstableVoltage }
  return { ...root, power: root.current * root.voltage }
}

referenceTests(
  "converter",
  {
    "converter-boost-ripple": numbers((i) => {
      const stage = boostStage({
        inputVoltage: i.vin_V as number,
        outputVoltage: i.vout_V as number,
        outputCurrent: 0.1,
        inductance: i.inductance_H as number,
        frequency: i.f_Hz as number,
        diodeVoltage: i.diode_V as number,
        switchVoltage: i.switch_V as number,
      })
      return {
        duty: stage.duty,
        on_time_us: (stage.duty / (i.f_Hz as number)) * 1e6,
        slope_A_per_us: stage.slope / 1e6,
        ripple_pp_A: stage.rippleCurrent,
        dcm_boundary_load_A: stage.boundaryCurrent,
      }
    }),
    "converter-boost-minimum-input": numbers((i) => {
      // the least input is the one whose greatest output is the current asked for
      const greatest = (inputVoltage: number) => {
        const out = boostStage({
          inputVoltage,
          outputVoltage: i.vout_V as number,
          outputCurrent: i.iout_A as number,
          efficiency: i.efficiency as number,
          switchCurrentLimit: i.inductor_limit_A as number,
          ...noRipple,
        })
        return (out.maxOutputCurrent as number) - (i.iout_A as number)
      }
      const vin = (brent(greatest, 0.5, (i.vout_V as number) * 0.99) as { x: number }).x
      return { vin_times_eta_V: vin * (i.efficiency as number), vin_min_V: vin }
    }),
    "converter-boost-peak-current-3p3uH": numbers((i) => ({
      peak_A: boostStage({
        inputVoltage: i.vin_V as number,
        outputVoltage: i.vout_V as number,
        outputCurrent: i.iout_A as number,
        efficiency: i.efficiency as number,
        inductance: i.inductance_H as number,
        frequency: i.f_Hz as number,
      }).peakCurrent,
    })),
    "converter-boost-quick": numbers((i) => ({
      iout_A: boostStage({
        inputVoltage: i.vin_V as number,
        outputVoltage: i.vout_V as number,
        outputCurrent: 1,
        efficiency: 1,
        switchCurrentLimit: i.limit_A as number,
        ...noRipple,
      }).maxOutputCurrent,
    })),
    "converter-boost-valley": numbers((i) => ({
      valley_A: boostStage({
        inputVoltage: i.vin_V as number,
        outputVoltage: i.vout_V as number,
        outputCurrent: i.iout_A as number,
        efficiency: i.efficiency as number,
        inductance: i.inductance_H as number,
        frequency: i.f_Hz as number,
      }).valleyCurrent,
    })),
    "converter-buck-discontinuous": numbers(({ duty_1, vin_V, vout_V }) => {
      const [duty, vin, vout] = [duty_1 as number, vin_V as number, vout_V as number]
      // output current at which this duty stands, for any L·f
      const lf = 100
      const outputCurrent = ((vin - vout) * duty ** 2 * vin) / (2 * lf * vout)
      const stage = buckStage({
        inputVoltage: vin,
        outputVoltage: vout,
        outputCurrent,
        diodeVoltage: 0,
        inductance: lf / 1e6,
        frequency: 1e6,
      })
      return { duty_2: stage.fallDuty, rms_ratio: stage.capacitorCurrent / stage.rmsCurrent }
    }),
    ...Object.fromEntries(
      ["converter-buck-3a", "converter-buck-5a"].map((id) => [
        id,
        numbers((i) => {
          const stage = buckStage({
            inputVoltage: i.vin_max_V as number,
            outputVoltage: i.vout_V as number,
            outputCurrent: i.iout_A as number,
            diodeVoltage: 0,
            inductance: i.inductance_H as number,
            inductanceTolerance: 0.2,
            frequency: i.f_Hz as number,
            rippleRatio: i.k_ind as number,
          })
          return { inductance_min_uH: stage.suggestedInductance * 1e6, rms_A: stage.rmsCurrent, peak_A: stage.peakCurrent }
        }),
      ]),
    ),
    "converter-input-current-liion-4p2V": numbers((i) => ({
      input_current_A: converterLimit({
        outputVoltage: i.vout_V as number,
        loadCurrent: i.iout_A as number,
        sourceVoltage: i.vin_V as number,
        efficiency: [{ outputCurrent: 1, efficiency: i.efficiency as number }],
      }).inputCurrent,
    })),
    "supply-constant-power-12V-0p2ohm-60W": roots,
    "supply-constant-power-12V-1ohm-20W": roots,
    "supply-constant-power-5V-0p25ohm-10W": roots,
    "supply-constant-power-60V-9ohm-75W": roots,
    "supply-constant-power-infeasible": numbers(({ source_V, resistance_ohm, power_W }) => {
      const out = constantPowerPoint.si(
        constantPowerPoint.read({ sourceVoltage: source_V, sourceResistance: resistance_ohm, power: power_W }),
      )
      return { feasible: !isNoSolution(out), p_max_W: isNoSolution(out) ? out.nearest.power : null }
    }),
    "supply-internal-resistance-openstax": numbers(({ emf_V, internal_ohm, load_ohm }) => {
      const { current, voltage, power } = loaded(emf_V as number, internal_ohm as number, load_ohm as number)
      return { current_A: current, terminal_V: voltage, load_power_W: power }
    }),
    "supply-max-power-transfer-boylestad": numbers(({ thevenin_V, thevenin_ohm }) => {
      const at = (load: number) => loaded(thevenin_V as number, thevenin_ohm as number, load)
      const { maxPower } = constantPowerPoint({ sourceVoltage: thevenin_V as number, sourceResistance: thevenin_ohm as number, power: 1 })
      return { p_3ohm_W: at(3).power, p_9ohm_W: maxPower, p_27ohm_W: at(27).power }
    }),
    "supply-usb-bc12-limits": () => ({
      cdp_min_A: usbSupply({ type: "charging-port", loadCurrent: 0.1 }).promisedCurrent,
      charging_port_max_A: usbLimits.chargingPortMaximum,
      device_draw_max_A: usbLimits.chargingDeviceMaximum,
      dcp_min_A: usbLimits.dedicatedPortMinimum,
    }),
    "supply-usb-pd-15W": powerRules,
    "supply-usb-pd-50W": powerRules,
    "supply-usb-pd-epr": () => {
      const power = (standard: UsbStandard) =>
        usbSupply({ type: standard, loadCurrent: 0.1, ratedPower: 240, cableMarked: true }).promisedPower
      return { p28V_W: power("pd-28V"), p36V_W: power("pd-36V"), p48V_W: power("pd-48V") }
    },
    "supply-usb2-cable-length-rederived": numbers((i) => {
      const longest = (conductor: number) =>
        usbSupply({ type: "usb2", loadCurrent: 0.5, conductorResistance: conductor, contactResistance: i.contact_ohm as number })
          .maxCableLength
      return {
        awg28_m: longest(i.awg28_ohm_per_m as number),
        awg26_m: longest(i.awg26_ohm_per_m as number),
        awg24_m: longest(i.awg24_ohm_per_m as number),
        awg22_m: longest(i.awg22_ohm_per_m as number),
      }
    }),
    "supply-usb2-limits": () => {
      const port = usbSupply({ type: "usb2", loadCurrent: 0.1 })
      const idle = usbSupply({ type: "usb2-unconfigured", loadCurrent: 0.1 })
      return {
        high_power_A: usbLimits.unitLoad2 * usbLimits.unitLoads2 === port.promisedCurrent ? port.promisedCurrent : null,
        power_W: port.promisedPower,
        port_min_V: port.minSourceVoltage,
        port_max_V: usbLimits.portMaximum2,
        low_power_port_min_V: idle.minSourceVoltage,
        unconfigured_max_A: idle.promisedCurrent,
      }
    },
    "supply-usb3-limits": () => {
      const port = usbSupply({ type: "usb3", loadCurrent: 0.1 })
      return {
        high_power_A: port.promisedCurrent,
        power_W: port.promisedPower,
        low_power_hub_port_min_V: port.minSourceVoltage,
        device_min_V: usbLimits.deviceMinimum3,
      }
    },
    "supply-usbc-cable-ir-drop": () => {
      const worst = usbSupply({ type: "type-c-3A", loadCurrent: usbLimits.cableCurrent })
      return {
        vbus_resistance_max_mohm: (usbLimits.cableDropSupply / usbLimits.cableCurrent) * 1000,
        gnd_resistance_max_mohm: (usbLimits.cableDropReturn / usbLimits.cableCurrent) * 1000,
        loop_drop_max_V: worst.cableDrop,
      }
    },
    "supply-usbc-cc-divider-1p5A": advertisement("type-c-1.5A"),
    "supply-usbc-cc-divider-3A": advertisement("type-c-3A"),
    "supply-usbc-cc-divider-default": advertisement("type-c-default"),
    "supply-usbc-current-modes": () => ({
      default_usb2_A: usbPromises["type-c-default"].current,
      default_usb3_A: usbPromises.usb3.current,
      medium_A: usbPromises["type-c-1.5A"].current,
      high_A: usbPromises["type-c-3A"].current,
      high_power_W: usbSupply({ type: "type-c-3A", loadCurrent: 0.1 }).promisedPower,
    }),
  },
  {
    "converter-input-current-liion-4p2V": {
      inductance_uH: "the source mixes a lossless duty with a lossy mean current; boostStage takes both from one loss model",
    },
  },
)
