// An arm on a rod as bodies in the plane held together by constraint forces: places, not a reduced coordinate. Nothing of src.

type Row = number[]

/** Solves a small linear system by elimination with row exchanges. */
function solve(a: Row[], b: number[]): number[] {
  const n = b.length
  for (let c = 0; c < n; c++) {
    let p = c
    for (let r = c + 1; r < n; r++) if (Math.abs((a[r] as Row)[c] as number) > Math.abs((a[p] as Row)[c] as number)) p = r
    ;[a[c], a[p]] = [a[p] as Row, a[c] as Row]
    ;[b[c], b[p]] = [b[p] as number, b[c] as number]
    for (let r = c + 1; r < n; r++) {
      const f = ((a[r] as Row)[c] as number) / ((a[c] as Row)[c] as number)
      for (let k = c; k < n; k++) (a[r] as Row)[k] = ((a[r] as Row)[k] as number) - f * ((a[c] as Row)[k] as number)
      b[r] = (b[r] as number) - f * (b[c] as number)
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    for (let k = r + 1; k < n; k++) b[r] = (b[r] as number) - ((a[r] as Row)[k] as number) * (b[k] as number)
    b[r] = (b[r] as number) / ((a[r] as Row)[r] as number)
  }
  return b
}

interface ArmBody {
  readonly hinge: { readonly x: number; readonly y: number }
  readonly fixedPivot: { readonly x: number; readonly y: number }
  readonly movingPivot: { readonly radius: number; readonly angle: number }
  readonly mass: number
  readonly radius: number
  readonly hingeFriction: number
}

interface RodDrive {
  readonly retractedLength: number
  readonly ratedVoltage: number
  readonly noLoadSpeed: number
  readonly noLoadCurrent: number
  readonly ratedForce: number
  readonly ratedSpeed: number
  readonly ratedCurrent: number
  readonly reflectedMass: number
}

/**
 * Rises for a time under full voltage: unknowns are the load's place, the rod's length, and the forces that keep the load at its
 * distance from the hinge and the rod's end on the arm; classical Runge–Kutta in even steps.
 */
export function constrainedArm(arm: ArmBody, drive: RodDrive, duration: number, steps: number) {
  // the datasheet's two points as linear equations
  const { ratedVoltage: u, noLoadSpeed: v0, noLoadCurrent: i0, ratedSpeed: v1, ratedCurrent: i1, ratedForce } = drive
  const winding = (u * (v1 - v0)) / (i0 * v1 - i1 * v0)
  const emf = (u - i0 * winding) / v0
  const share = ratedForce / (i1 - i0) / emf
  const [hx, hy] = [arm.hinge.x, arm.hinge.y]
  const scale = arm.movingPivot.radius / arm.radius
  const [c, s] = [scale * Math.cos(arm.movingPivot.angle), scale * Math.sin(arm.movingPivot.angle)]
  // the pin from the load's place about the hinge, and the rod from its fixed end
  const rod = (x: number, y: number) => [hx + c * x - s * y - arm.fixedPivot.x, hy + s * x + c * y - arm.fixedPivot.y] as const
  let force = 0
  const slopes = ([x, y, l, vx, vy, vl]: readonly number[] & { length: number }): number[] => {
    const [px, py, pl, qx, qy, ql] = [x as number, y as number, l as number, vx as number, vy as number, vl as number]
    const [dx, dy] = rod(px, py)
    // of the rod's end: (c·dx + s·dy, −s·dx + c·dy) is the slope of its half squared length over the load's place
    const [gx, gy] = [c * dx + s * dy, -s * dx + c * dy]
    const [ex, ey] = [c * qx - s * qy, s * qx + c * qy]
    const current = (u - emf * ql) / winding
    const turning = Math.sign(px * qy - py * qx || 1)
    const rub = arm.hingeFriction / arm.radius ** 2
    // unknown: ax, ay, al, tension towards the hinge (per radius), force of the rod (per its length)
    const a = [
      [arm.mass, 0, 0, px, -gx],
      [0, arm.mass, 0, py, -gy],
      [0, 0, drive.reflectedMass, 0, pl / share],
      [px, py, 0, 0, 0],
      [gx, gy, -pl, 0, 0],
    ]
    const b = [
      turning * rub * py,
      -arm.mass * 9.80665 - turning * rub * px,
      emf * (current - i0),
      -(qx * qx + qy * qy),
      ql * ql - (ex * ex + ey * ey),
    ]
    const [ax = 0, ay = 0, al = 0, , per = 0] = solve(a, b)
    force = per * pl
    return [qx, qy, ql, ax, ay, al]
  }
  // where the circles round both pins meet: the arm's angle at the start, on the side of the arm that the rod pushes outward
  const [fx, fy] = [arm.fixedPivot.x - hx, arm.fixedPivot.y - hy]
  const apart = Math.hypot(fx, fy)
  const r = arm.movingPivot.radius
  const along = (apart ** 2 + r ** 2 - drive.retractedLength ** 2) / (2 * apart)
  const off = Math.sqrt(r ** 2 - along ** 2)
  const pin = Math.atan2((along * fy + off * fx) / apart, (along * fx - off * fy) / apart)
  const start = pin - arm.movingPivot.angle
  let state = [arm.radius * Math.cos(start), arm.radius * Math.sin(start), drive.retractedLength, 0, 0, 0]
  const h = duration / steps
  let peakForce = 0
  for (let i = 0; i < steps; i++) {
    const put = (d: readonly number[], k: number) => state.map((one, j) => one + k * (d[j] as number))
    const k1 = slopes(state)
    peakForce = Math.max(peakForce, force)
    const k2 = slopes(put(k1, h / 2))
    const k3 = slopes(put(k2, h / 2))
    const k4 = slopes(put(k3, h))
    state = state.map((one, j) => one + (h / 6) * ((k1[j] as number) + 2 * (k2[j] as number) + 2 * (k3[j] as number) + (k4[j] as number)))
  }
  slopes(state)
  return { travel: (state[2] as number) - drive.retractedLength, speed: state[5] as number, force, peakForce }
}
