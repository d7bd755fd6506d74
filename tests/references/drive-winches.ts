// Published values of winches and of rope on drums: how each row is put to winch.
import { gearTrain, type WinchInput, winch } from "../../src/drive/index.js"
import type { Check } from "../helpers/references.js"

const INCH = 0.0254
/** A drum whose line runs at just this radius: a thin line on one layer. */
const drum = (radius: number, more: Partial<WinchInput> = {}) =>
  winch({
    pull: 1,
    drumDiameter: 2 * radius - 1e-4,
    lineDiameter: 1e-4,
    lineType: "fibre-rope",
    turnsPerLayer: 10_000,
    lineLength: 10,
    travel: 1,
    efficiency: 1,
    ...more,
  })

/** A crab winch: the drum, its gears without loss, and a handle. */
const crab = (load: number, radius: number, gears: readonly (readonly [number, number])[], handle: number) => {
  const { raiseTorque } = drum(radius, { pull: load })
  const { inputTorque, ratio } = gearTrain({
    stages: gears.map(([drivingTeeth, drivenTeeth]) => ({ type: "spur", drivingTeeth, drivenTeeth, meshEfficiency: 1 }) as const),
    torque: raiseTorque,
  })
  return { effort: inputTorque / handle, velocityRatio: (ratio * handle) / radius }
}

export const winchChecks: Record<string, Check> = {
  "winch-layers": ({ layer1_lbf, layer2_lbf }) => {
    // the line against the first layer's radius, by the first two pulls
    const rise = layer1_lbf / layer2_lbf - 1
    const radius = 0.03
    const out = winch({
      pull: 1,
      drumDiameter: 2 * radius - rise * radius,
      lineDiameter: rise * radius,
      lineType: "wire-rope",
      turnsPerLayer: 1,
      lineLength: 2 * Math.PI * radius * (4 + 5.5 * rise),
      travel: 2 * Math.PI * radius * (3.5 + 5.5 * rise),
      efficiency: 1,
      torque: layer1_lbf * radius,
    })
    return { layer3_lbf: out.layers[2]?.liftingPull, layer4_lbf: out.layers[3]?.liftingPull }
  },
  "winch-reel-capacity-formula": ({ width_in, depth_in, barrel_in, rope_in }) => {
    const out = winch({
      pull: 1,
      drumDiameter: barrel_in * INCH,
      lineDiameter: rope_in * INCH,
      lineType: "wire-rope",
      drumWidth: width_in * INCH,
      flangeDiameter: (barrel_in + 2 * depth_in) * INCH,
      lineLength: 1,
      travel: 0.5,
    })
    // the row's 0.2618 is a twelfth of pi, rounded
    return { length_ft: ((out.capacity as number) / (12 * INCH)) * (0.2618 / (Math.PI / 12)) }
  },
  "winch-khurmi-11-13": ({ pinion_teeth, wheel_teeth, drum_radius_mm, handle_mm, effort_N, load_N }) => {
    const { effort, velocityRatio } = crab(load_N, drum_radius_mm / 1000, [[pinion_teeth, wheel_teeth]], handle_mm / 1000)
    return {
      efficiency_percent: (100 * effort) / effort_N,
      friction_as_load_N: effort_N * velocityRatio - load_N,
      friction_as_effort_N: effort_N - effort,
    }
  },
  "winch-khurmi-11-15": ({ z1, z2, z3, z4, handle_m, drum_radius_m, efficiency, load_N }) => {
    const gears = [
      [z2, z1],
      [z4, z3],
    ] as const
    return { effort_N: crab(load_N, drum_radius_m, gears, handle_m).effort / efficiency }
  },
  "capstan-khurmi-11-5": ({ load_N, turns, friction, drum_diameter_m, drum_speed_rpm }) => {
    const speed = (drum_speed_rpm * Math.PI) / 30
    const out = drum(drum_diameter_m / 2, {
      pull: load_N,
      lineFriction: friction,
      lineLength: turns * Math.PI * drum_diameter_m + 1,
      speed,
    })
    return { hand_force_N: out.fixingPull, power_kW: ((load_N - out.fixingPull) * (out.lineSpeed?.low as number)) / 1000 }
  },
  "wire-rope-bend-strength": ({ d_over_d }) => ({
    strength_percent: (d_over_d as number[]).map(
      (ratio) =>
        100 *
        (winch({
          pull: 1,
          drumDiameter: ratio * 0.01,
          lineDiameter: 0.01,
          lineType: "wire-rope",
          turnsPerLayer: 10,
          lineLength: 1,
          travel: 0.5,
        }).bentStrengthShare as number),
    ),
  }),
}
