// Published values of roller chains: how each row is put to chainDrive.
import { type ChainDriveInput, chainDrive } from "../../src/drive/index.js"
import { theRoot } from "../../src/numeric/index.js"
import type { Check } from "../helpers/references.js"

const [INCH, RPM, FOOT, LBF] = [0.0254, Math.PI / 30, 0.3048, 4.4482216152605]
const drive = (pitch: number, drivingTeeth: number, drivenTeeth: number, centreDistance: number, more: Partial<ChainDriveInput> = {}) =>
  chainDrive({ pitch, drivingTeeth, drivenTeeth, centreDistance, torque: 0, efficiency: 1, ...more })

export const chainChecks: Record<string, Check> = {
  "chain-ansi-pitch-diameters": (row) => {
    const diameter = (size: number) => drive(row[`pitch_in_${size}`] * INCH, row[`teeth_${size}`], 20, 1).drivingDiameter / INCH
    return { diameter_35b20_in: diameter(35), diameter_40b15_in: diameter(40), diameter_25b20_in: diameter(25) }
  },
  "chain-bhandari-14-3": (row) => {
    const out = drive(row.pitch_mm / 1000, row.teeth_1, row.teeth_2, row.centre_distance_mm / 1000)
    return { links_exact: out.exactLinks, links_even: out.links, centre_distance_mm: out.fittingDistance * 1000 }
  },
  "chain-bhandari-14-4": (row) => {
    const pitch = row.pitch_mm / 1000
    const out = drive(pitch, row.teeth_1, row.teeth_2, row.centre_pitches * pitch)
    return {
      pitch_diameter_1_mm: out.drivingDiameter * 1000,
      pitch_diameter_2_mm: out.drivenDiameter * 1000,
      links_exact: out.exactLinks,
    }
  },
  "chain-chordal-numeric": ({ teeth }) =>
    Object.fromEntries((teeth as number[]).map((z) => [`ripple_z${z}`, drive(0.01, z, 20, 1).speedRipple])),
  "chain-khurmi-11-23": (row) => {
    const teeth = Math.round((row.driver_teeth * row.driver_speed_rpm) / row.driven_speed_rpm)
    const at = (pitch: number) => drive(pitch, row.driver_teeth, teeth, row.centre_distance_mm / 1000)
    // the pitch whose driven sprocket has this pitch circle
    const pitch = theRoot((p) => at(p).drivenDiameter - row.driven_pitch_diameter_mm / 1000, 0.01, 0.06, 0, "pitch").x
    return { driven_teeth: at(pitch).ratio * row.driver_teeth, pitch_mm: pitch * 1000, length_m: at(pitch).exactLinks * pitch }
  },
  "chain-wentzell-14-4": (row) => {
    const inputSpeed = row.speed_rpm * RPM
    // lbf·in by the handbooks' rounded 63000
    const torque = 2 * ((63000 * row.power_hp) / row.speed_rpm) * LBF * INCH
    const out = drive(row.pitch_in * INCH, row.teeth_driver, 2 * row.teeth_driver, 1, { inputSpeed, torque })
    return { chain_speed_ft_per_min: ((out.chainSpeed as number) * 60) / FOOT, pull_lbf: out.pull / LBF }
  },
}
