import { type CamDriveInput, camDrive } from "../../src/linkage/index.js"
import type { SiOf } from "../../src/solver/index.js"
import type { Edges } from "../helpers/edges.js"

/** Rise over lift with two derivatives, each law by its own textbook form. */
function rise(si: SiOf<CamDriveInput>, u: number): [number, number, number] {
  const pi = Math.PI
  switch (si.law) {
    case "uniform":
      return [u, 1, 0]
    case "parabolic":
      return u <= 0.5 ? [2 * u * u, 4 * u, 4] : [4 * u - 2 * u * u - 1, 4 - 4 * u, -4]
    case "harmonic":
      return [(1 - Math.cos(pi * u)) / 2, (pi / 2) * Math.sin(pi * u), ((pi * pi) / 2) * Math.cos(pi * u)]
    case "cycloidal":
      return [u - Math.sin(2 * pi * u) / (2 * pi), 1 - Math.cos(2 * pi * u), 2 * pi * Math.sin(2 * pi * u)]
    case "polynomial-345":
      return [10 * u ** 3 - 15 * u ** 4 + 6 * u ** 5, 30 * u ** 2 - 60 * u ** 3 + 30 * u ** 4, 60 * u - 180 * u ** 2 + 120 * u ** 3]
    default:
      return [
        35 * u ** 4 - 84 * u ** 5 + 70 * u ** 6 - 20 * u ** 7,
        140 * u ** 3 - 420 * u ** 4 + 420 * u ** 5 - 140 * u ** 6,
        420 * u ** 2 - 1680 * u ** 3 + 2100 * u ** 4 - 840 * u ** 5,
      ]
  }
}

/** Friction's share of the push and radius of the roller centre's path over 721 places, the path as a curve in polar angles. */
function worst(si: SiOf<CamDriveInput>): { radius: number; taken: number; angle: number } {
  let [radius, taken, angle] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0]
  for (let i = 0; i <= 720; i++) {
    const [s, v, a] = rise(si, i / 720)
    const y = Math.sqrt(si.primeRadius ** 2 - si.offset ** 2) + si.lift * s
    const [y1, y2] = [(si.lift * v) / si.riseAngle, (si.lift * a) / si.riseAngle ** 2]
    const o = si.offset
    // velocity and acceleration of o·i + y·j carried round backward at unit speed
    const [vx, vy, ax, ay] = [y, y1 - o, -o + 2 * y1, y2 - y]
    const bend = vx * ay - vy * ax
    const r = -(Math.hypot(vx, vy) ** 3) / bend
    if (r > 0) radius = Math.min(radius, r)
    const lost =
      (si.guideFriction * ((si.overhang + si.guideLength) / si.guideLength + si.overhang / si.guideLength) * Math.abs(y1 - o)) / y
    if (lost > taken * (1 + 1e-15)) [taken, angle] = [lost, (si.riseAngle * i) / 720]
  }
  return { radius, taken, angle }
}

const blocked = { lift: "30 mm", primeRadius: "35 mm", offset: 0, rollerRadius: 0, camSpeed: 0 }

export const edges: Edges = {
  cautions: [
    { solver: camDrive, code: "pinch", severity: "warning", shown: {}, notShown: null },
    { solver: camDrive, code: "large-pressure-angle", severity: "caution", shown: { lift: 0.0372 }, notShown: { lift: 0.037 } },
    {
      solver: camDrive,
      code: "large-pressure-angle",
      severity: "caution",
      shown: { pressureLimit: 0.183 },
      notShown: { pressureLimit: 0.1834 },
    },
    { solver: camDrive, code: "follower-lifts", severity: "warning", shown: { camSpeed: 83.8 }, notShown: { camSpeed: 83 } },
    {
      solver: camDrive,
      code: "stored-energy",
      severity: "warning",
      shown: { preload: 1e-3, springRate: 0 },
      notShown: { preload: 0, springRate: 0 },
    },
    {
      solver: camDrive,
      code: "stored-energy",
      severity: "warning",
      shown: { preload: 0, springRate: 1e-3 },
      notShown: { preload: 0, springRate: 0 },
    },
    {
      solver: camDrive,
      code: "falls-unpowered",
      severity: "warning",
      shown: { load: 1e-3, followerMass: 0 },
      notShown: { load: 0, followerMass: 0 },
    },
    {
      solver: camDrive,
      code: "falls-unpowered",
      severity: "warning",
      shown: { load: 0, followerMass: 1e-3 },
      notShown: { load: 0, followerMass: 0 },
    },
    { solver: camDrive, code: "jolts", severity: "note", shown: { law: "harmonic" }, notShown: { law: "cycloidal" } },
    { solver: camDrive, code: "jolts", severity: "note", shown: { law: "parabolic" }, notShown: { law: "polynomial-345" } },
    { solver: camDrive, code: "jolts", severity: "note", shown: { law: "uniform" }, notShown: { law: "polynomial-4567" } },
  ],
  refusals: [
    { solver: camDrive, code: "undercut", refused: { rollerRadius: 0.03765 }, answered: { rollerRadius: 0.0376 } },
    { solver: camDrive, code: "jammed", refused: { ...blocked, guideFriction: 0.748 }, answered: { ...blocked, guideFriction: 0.745 } },
  ],
  faults: [
    { solver: camDrive, path: "camAngle", faulty: { camAngle: "120.1 deg" }, sound: { camAngle: "120 deg" } },
    { solver: camDrive, path: "offset", faulty: { offset: "36.01 mm" }, sound: { offset: "35.99 mm" } },
    { solver: camDrive, path: "offset", faulty: { offset: "-36.01 mm" }, sound: { offset: "-35.99 mm" } },
    { solver: camDrive, path: "rollerRadius", faulty: { rollerRadius: "40 mm" }, sound: { rollerRadius: "39.9 mm" } },
  ],
  numbers: {
    "camDrive.offset.most": (si) => (9 * si.primeRadius) / 10,
    "camDrive.large-pressure-angle.limit": (si) => Math.min(si.pressureLimit, Math.PI / 6),
    "camDrive.undercut.shortBy": (si) => si.rollerRadius - 0.999 * worst(si).radius,
    "camDrive.undercut.minRadius": (si) => worst(si).radius,
    "camDrive.jammed.shortBy": (si) => worst(si).taken - 1,
    "camDrive.jammed.taken": (si) => worst(si).taken,
    "camDrive.jammed.at.camAngle": (si) => worst(si).angle,
  },
}
