import { powerBank } from "../../src/pack/index.js"
import type { Check } from "../helpers/references.js"
import { answer, at, curve, level, list, pack, run } from "./pack-helpers.js"

const HOUR = 3600

/** Checks by row id. */
export const banks: Record<string, Check> = {
  "pb-pack-powerbank-5V": (inputs) => {
    const out = list(inputs, "efficiency").map((bankEfficiency) =>
      answer(powerBank, {
        ratedCapacity: at(inputs, "capacity_mAh") * 3.6,
        cellNominalVoltage: at(inputs, "cell_V"),
        terminalVoltage: at(inputs, "output_V"),
        bankEfficiency,
        power: 5,
      }),
    )
    return { energy_Wh: (out[0]?.cellEnergy as number) / HOUR, output_mAh: out.map((o) => o.deliveredCharge / 3.6) }
  },
  "pb-pack-powerbank-runtime": (inputs) => ({
    time_h:
      (answer(powerBank, {
        ratedCapacity: (at(inputs, "energy_Wh") / 3.7) * HOUR,
        terminalVoltage: at(inputs, "output_V"),
        bankEfficiency: at(inputs, "efficiency"),
        current: at(inputs, "current_A"),
      }).runtime as number) / HOUR,
  }),
  "powerbank-10000mAh": (inputs) => {
    const out = list(inputs, "efficiency").map((bankEfficiency) =>
      answer(powerBank, {
        ratedCapacity: at(inputs, "cell_capacity_mAh") * 3.6,
        cellNominalVoltage: at(inputs, "cell_voltage_V"),
        terminalVoltage: at(inputs, "output_voltage_V"),
        bankEfficiency,
        power: 5,
      }),
    )
    return { output_mAh: out.map((o) => o.deliveredCharge / 3.6), cell_energy_Wh: (out[0]?.cellEnergy as number) / HOUR }
  },
}

/** Checks by row id. */
export const runs: Record<string, Check> = {
  "pb-pack-run-constant-current-10A": (inputs) => {
    const out = run(
      at(inputs, "capacity_Ah"),
      at(inputs, "resistance_ohm"),
      { current: at(inputs, "current_A") },
      {
        cellCutOffVoltage: at(inputs, "cutoff_V"),
        openCircuitCurve: curve(list(inputs, "soc"), list(inputs, "ocv_V")),
      },
    )
    return { soc_end: out.endStateOfCharge, runtime_h: out.runtime / HOUR, energy_Wh: out.deliveredEnergy / HOUR }
  },
  "pb-pack-run-constant-power-40W": (inputs) => {
    const out = run(
      at(inputs, "capacity_Ah"),
      at(inputs, "resistance_ohm"),
      { power: at(inputs, "power_W") },
      {
        cellCutOffVoltage: at(inputs, "cutoff_V"),
        openCircuitCurve: curve(list(inputs, "soc"), list(inputs, "ocv_V")),
      },
    )
    return {
      runtime_h: out.runtime / HOUR,
      energy_delivered_Wh: out.deliveredEnergy / HOUR,
      start_current_A: out.startCurrent,
      end_current_A: out.endCurrent,
      soc_end: out.endStateOfCharge,
    }
  },
  "pb-pack-runtime-200Ah": (inputs) => ({
    time_h: list(inputs, "current_A").map((current) =>
      Number((run(at(inputs, "capacity_Ah"), 0, { current }, { openCircuitCurve: level(12) }).runtime / HOUR).toPrecision(12)),
    ),
  }),
  "pb-pack-runtime-headlight-27W": (inputs) => {
    const out = run(at(inputs, "capacity_Ah"), 0, { power: at(inputs, "power_W") }, { openCircuitCurve: level(at(inputs, "voltage_V")) })
    return { time_h: out.runtime / HOUR, energy_MJ: out.deliveredEnergy / 1e6 }
  },
  "runtime-aaa-resistor": (inputs) => ({
    runtime_h: list(inputs, "load_resistance_ohm").map(
      (loadResistance) =>
        run(at(inputs, "capacity_Ah"), 0, { loadResistance }, { openCircuitCurve: level(at(inputs, "voltage_V")) }).runtime / HOUR,
    ),
  }),
  "runtime-constant-current-reference": (inputs) => {
    const out = onTable(inputs, { current: at(inputs, "current_A") })
    return { runtime_h: out.runtime / HOUR, end_soc: out.endStateOfCharge, energy_delivered_Wh: out.deliveredEnergy / HOUR }
  },
  "runtime-constant-power-reference": (inputs) => constantPower(inputs),
  "runtime-constant-power-double": (inputs) => {
    const out = constantPower(inputs)
    return { ...out, ratio_to_15W: out.runtime_h / (onTable(inputs, { power: 15 }).runtime / HOUR) }
  },
  "runtime-constant-resistance-reference": (inputs) => {
    const out = onTable(inputs, { loadResistance: at(inputs, "load_resistance_ohm") })
    return { runtime_h: out.runtime / HOUR, end_soc: out.endStateOfCharge }
  },
  "runtime-duty-cycle-mean-power": (inputs) => {
    const shares = list(inputs, "duty_fraction")
    // rounds so short that the last one's share does not show
    const pattern = list(inputs, "current_A").map((current, k) => ({ current, duration: 0.1 * (shares[k] as number) }))
    const out = run(4, 0.02, {}, { pattern })
    return { mean_current_A: out.meanCurrent, rms_current_A: out.rmsCurrent }
  },
  "runtime-pack-scaling-invariance": (inputs) => {
    const [series, parallelCells] = [at(inputs, "cells_series"), at(inputs, "cells_parallel")]
    const out = run(
      at(inputs, "capacity_Ah"),
      at(inputs, "internal_resistance_cell_ohm"),
      { power: at(inputs, "power_W") },
      {
        series,
        parallel: parallelCells,
        cellCutOffVoltage: at(inputs, "cutoff_terminal_V") / series,
        openCircuitCurve: curve(list(inputs, "ocv_soc"), list(inputs, "ocv_V")),
      },
    )
    const { resistance } = pack(series, parallelCells, 3.6, 4.2, { cellResistance: at(inputs, "internal_resistance_cell_ohm") })
    return { runtime_h: out.runtime / HOUR, pack_resistance_ohm: resistance, start_current_A: out.startCurrent }
  },
}
for (const id of ["lfp-1c", "lfp-c2", "nmc-1c", "nmc-c2"])
  runs[`pb-pack-predict-${id}`] = (inputs) => {
    const resistance = at(inputs, "resistance_mohm") / 1000
    // the slow discharge's own drop is put back, so that the curve is one without load
    const voltages = list(inputs, "voltage_c20_V").map((v) => v + at(inputs, "current_c20_A") * resistance)
    const out = run(
      at(inputs, "capacity_c20_Ah"),
      resistance,
      { current: at(inputs, "current_A") },
      {
        cellCutOffVoltage: at(inputs, "cutoff_V"),
        openCircuitCurve: curve(list(inputs, "soc"), voltages),
      },
    )
    const [hours, wattHours] = [out.runtime / HOUR, out.deliveredEnergy / HOUR]
    return { measured_runtime_h: hours, measured_energy_Wh: wattHours, model_runtime_h: hours, model_energy_Wh: wattHours }
  }

function onTable(inputs: object, load: object) {
  return run(at(inputs, "capacity_Ah"), at(inputs, "internal_resistance_ohm"), load, {
    cellCutOffVoltage: at(inputs, "cutoff_terminal_V"),
    openCircuitCurve: curve(list(inputs, "ocv_soc"), list(inputs, "ocv_V")),
  })
}
function constantPower(inputs: object) {
  const out = onTable(inputs, { power: at(inputs, "power_W") })
  return {
    runtime_h: out.runtime / HOUR,
    end_soc: out.endStateOfCharge,
    start_current_A: out.startCurrent,
    end_current_A: out.endCurrent,
    energy_delivered_Wh: out.deliveredEnergy / HOUR,
  }
}
