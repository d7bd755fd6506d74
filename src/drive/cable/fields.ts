// Field descriptions of cable, and the faults between them.
import { type Fields, type Issue, inconsistent, type OutFields, optionsFrom, type SiOf } from "../../solver/index.js"
import { cableConstructions } from "./data.js"
import type { Cable, CableInput, CablePulley, SheathBend } from "./types.js"

const bendFields: Fields<SheathBend> = {
  angle: { kind: "angle", symbol: "theta", label: "angle of the bend", min: 0, max: "1080 deg", typical: ["20 deg", "120 deg"] },
  radius: { kind: "length", symbol: "r_b", label: "radius of the bend", min: "0.5 mm", max: 10, typical: ["60 mm", "200 mm"] },
}
const pulleyFields: Fields<CablePulley> = {
  angle: { kind: "angle", symbol: "phi", label: "wrap on the pulley", min: 0, max: "360 deg", typical: ["30 deg", "180 deg"] },
  pulleyDiameter: {
    kind: "length",
    symbol: "D_p",
    label: "diameter of the pulley, to the middle of the cable",
    min: "1 mm",
    max: 2,
    typical: ["25 mm", "60 mm"],
  },
  pinDiameter: { kind: "length", symbol: "d_p", label: "diameter of its pin", min: "0.1 mm", max: 1, typical: ["3 mm", "8 mm"] },
  bearingFriction: { kind: "number", symbol: "mu_p", label: "friction of its bearing", min: 0, max: 1, typical: [0.002, 0.2] },
  bendingLoss: {
    kind: "ratio",
    symbol: "c_p",
    label: "tension lost by bending the cable",
    min: 0,
    max: 0.3,
    typical: [0, 0.05],
    default: 0.02,
    unit: "%",
  },
}

export const input: Fields<CableInput> = {
  force: { kind: "force", symbol: "F", label: "tension at the far end", min: "1 mN", max: 1e6, typical: [10, 150] },
  travel: { kind: "length", symbol: "s_2", label: "travel of the far end", min: "0.1 mm", max: 100, typical: ["10 mm", "80 mm"] },
  length: { kind: "length", symbol: "L", label: "length of the cable", min: "10 mm", max: 1000, typical: [0.4, 2.5] },
  diameter: { kind: "length", symbol: "d", label: "diameter of the cable", min: "0.1 mm", max: "100 mm", typical: ["1 mm", "2 mm"] },
  construction: {
    kind: "choice",
    label: "construction of a wire cable",
    options: optionsFrom(cableConstructions, (key) => cableConstructions[key].label),
    default: null,
  },
  area: {
    kind: "area",
    symbol: "A",
    label: "area of its section",
    min: "0.001 mm2",
    max: "10000 mm2",
    typical: ["0.3 mm2", "0.7 mm2"],
    default: null,
  },
  modulus: {
    kind: "pressure",
    symbol: "E",
    label: "modulus of the cable",
    min: "0.1 GPa",
    max: "500 GPa",
    typical: ["50 GPa", "180 GPa"],
    default: null,
  },
  breakingForce: { kind: "force", symbol: "F_b", label: "breaking force", min: 1, max: 1e8, typical: [1500, 4000] },
  minBendRadius: {
    kind: "length",
    symbol: "r_m",
    label: "minimum bend radius of the cable",
    min: "0.5 mm",
    max: 10,
    typical: ["30 mm", "100 mm"],
    default: null,
  },
  route: {
    kind: "variant",
    label: "route",
    of: {
      sheath: {
        label: "in a sheath",
        fields: {
          bends: {
            kind: "list",
            label: "bends, from the far end",
            min: 1,
            max: 12,
            of: { kind: "group", label: "bend", fields: bendFields },
          },
          friction: { kind: "number", symbol: "mu", label: "friction in the sheath", min: 0, max: 1, typical: [0.04, 0.25] },
          sheathRate: {
            kind: "forcePerLength",
            symbol: "k_s",
            label: "stiffness of the sheath, end to end",
            min: 100,
            max: 1e10,
            typical: [2e4, 5e5],
            default: null,
          },
          sheathBore: { kind: "length", symbol: "D_i", label: "bore of the sheath", min: "0.1 mm", max: "200 mm", default: null },
        },
      },
      pulleys: {
        label: "over pulleys",
        fields: {
          pulleys: {
            kind: "list",
            label: "pulleys, from the far end",
            min: 1,
            max: 12,
            of: { kind: "group", label: "pulley", fields: pulleyFields },
          },
        },
      },
    },
  },
}

export const either = [{ exactlyOne: ["construction", ["area", "modulus"]] }] as const

export const output: OutFields<Cable> = {
  transmits: { kind: "text", label: "transmits" },
  turnedAngle: { kind: "angle", symbol: "theta_t", label: "total angle of bends", unit: "deg" },
  pullingForce: { kind: "force", symbol: "F_1", label: "force at the drive, pulling" },
  payingOutForce: { kind: "force", symbol: "F_3", label: "force at the drive, paying out" },
  efficiency: { kind: "ratio", symbol: "eta", label: "efficiency, pulling", unit: "%" },
  backwardEfficiency: { kind: "ratio", symbol: "eta_b", label: "efficiency, paying out", unit: "%" },
  stretch: { kind: "length", symbol: "x_c", label: "stretch of the cable" },
  sheathShortening: { kind: "length", symbol: "x_s", label: "shortening of the sheath" },
  lostMotion: { kind: "length", symbol: "x", label: "lost motion under load" },
  driveTravel: { kind: "length", symbol: "s_1", label: "travel of the drive, from slack" },
  reversalLoss: { kind: "length", symbol: "b_r", label: "lost motion on reversing" },
  slackPlay: { kind: "length", symbol: "b_s", label: "slack taken up in the bends" },
  workIn: { kind: "energy", symbol: "W_1", label: "work of the drive" },
  workOut: { kind: "energy", symbol: "W_2", label: "work at the far end" },
  frictionWork: { kind: "energy", symbol: "W_f", label: "work lost, pulling" },
  returnedWork: { kind: "energy", symbol: "W_3", label: "work given back, paying out" },
  storedEnergy: { kind: "energy", symbol: "W_e", label: "energy stored, at most" },
  minRadius: { kind: "length", symbol: "r_t", label: "tightest radius" },
  bendRatio: { kind: "number", symbol: "D_d", label: "tightest bend, diameter over the cable's" },
  strengthShare: { kind: "ratio", symbol: "f_b", label: "strength left in the tightest bend", unit: "%" },
  safetyFactor: { kind: "number", symbol: "S", label: "safety factor of the cable" },
  bendUtilisation: { kind: "ratio", symbol: "u", label: "minimum bend radius against the tightest", unit: "%" },
  spans: {
    kind: "list",
    label: "tension, from the far end",
    of: {
      kind: "group",
      label: "past a bend",
      fields: {
        turned: { kind: "angle", label: "angle turned so far" },
        pulling: { kind: "force", label: "tension, pulling" },
        payingOut: { kind: "force", label: "tension, paying out" },
      },
    },
  },
}

export function check(si: SiOf<CableInput>): Issue[] {
  const faults: Issue[] = []
  const round = (Math.PI / 4) * si.diameter ** 2
  if (si.area !== null && si.area > round)
    faults.push(
      inconsistent(["area"], "{area area mm²}", "at most {round area mm²}, a full circle of the cable's diameter", {
        area: si.area,
        round,
      }),
    )
  const { route } = si
  const tight = (path: (string | number)[], radius: number) => {
    if (2 * radius < si.diameter)
      faults.push(
        inconsistent(path, "a bend {across length} across", "at least the cable's own {diameter length}", {
          across: 2 * radius,
          diameter: si.diameter,
        }),
      )
  }
  if (route.type === "sheath") for (const [k, { radius }] of route.bends.entries()) tight(["route", "bends", k, "radius"], radius)
  if (route.type === "sheath" && route.sheathBore !== null && !(route.sheathBore > si.diameter))
    faults.push(
      inconsistent(["route", "sheathBore"], "{route.sheathBore length}", "more than the cable's {diameter length}", {
        "route.sheathBore": route.sheathBore,
        diameter: si.diameter,
      }),
    )
  if (route.type === "pulleys")
    for (const [k, { pulleyDiameter, pinDiameter }] of route.pulleys.entries()) {
      tight(["route", "pulleys", k, "pulleyDiameter"], pulleyDiameter / 2)
      if (!(pinDiameter < pulleyDiameter))
        faults.push(
          inconsistent(["route", "pulleys", k, "pinDiameter"], "{pin length}", "less than its pulley's {pulley length}", {
            pin: pinDiameter,
            pulley: pulleyDiameter,
          }),
        )
    }
  return faults
}
