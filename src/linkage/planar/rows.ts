import type { Model, Row } from "./model.js"

/** Vector between two points. */
export const sub = (q: Float64Array, from: number, to: number): [number, number] => [
  (q[2 * to] as number) - (q[2 * from] as number),
  (q[2 * to + 1] as number) - (q[2 * from + 1] as number),
]
/** Reference direction of a crank, turned by its angle. */
export function turned(row: Extract<Row, { kind: "crank" }>, q: Float64Array, angle: number): [number, number] {
  const [ux, uy] = row.refFrom < 0 ? [1, 0] : sub(q, row.refFrom, row.refTo)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return [c * ux - s * uy, s * ux + c * uy]
}

/** Value of a constraint, m. */
export function rowValue(row: Row, q: Float64Array, drive: readonly number[]): number {
  const [vx, vy] = sub(q, row.from, row.to)
  switch (row.kind) {
    case "bar":
      return (vx * vx + vy * vy - row.length ** 2) / (2 * row.length)
    case "carried": {
      const [x, y] = sub(q, row.from, row.point)
      return row.axis === 0 ? x - row.p * vx + row.q * vy : y - row.p * vy - row.q * vx
    }
    case "slider": {
      const [x, y] = sub(q, row.from, row.point)
      return (vx * y - vy * x) / row.length - row.offset
    }
    case "crank": {
      const [wx, wy] = turned(row, q, drive[row.driver] as number)
      return (wx * vy - wy * vx) / row.scale
    }
    case "actuator":
      return (vx * vx + vy * vy - (drive[row.driver] as number) ** 2) / (2 * row.scale)
  }
}

/** Gradient of a constraint, handed out point by point; what a crank does to its reference line is marked. */
export function rowGradient(
  row: Row,
  q: Float64Array,
  drive: readonly number[],
  add: (point: number, gx: number, gy: number, isReference?: boolean) => void,
): void {
  const [vx, vy] = sub(q, row.from, row.to)
  switch (row.kind) {
    case "bar":
    case "actuator": {
      const scale = row.kind === "bar" ? row.length : row.scale
      add(row.to, vx / scale, vy / scale)
      add(row.from, -vx / scale, -vy / scale)
      return
    }
    case "carried":
      if (row.axis === 0) {
        add(row.point, 1, 0)
        add(row.to, -row.p, row.q)
        add(row.from, row.p - 1, -row.q)
      } else {
        add(row.point, 0, 1)
        add(row.to, -row.q, -row.p)
        add(row.from, row.q, row.p - 1)
      }
      return
    case "slider": {
      const [x, y] = sub(q, row.from, row.point)
      const l = row.length
      add(row.point, -vy / l, vx / l)
      add(row.to, y / l, -x / l)
      add(row.from, (vy - y) / l, (x - vx) / l)
      return
    }
    case "crank": {
      const angle = drive[row.driver] as number
      const [wx, wy] = turned(row, q, angle)
      const k = row.scale
      add(row.to, -wy / k, wx / k)
      add(row.from, wy / k, -wx / k)
      if (row.refFrom < 0) return
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      const [gx, gy] = [(c * vy - s * vx) / k, (-s * vy - c * vx) / k]
      add(row.refTo, gx, gy, true)
      add(row.refFrom, -gx, -gy, true)
    }
  }
}

/** Change of a constraint with its own driver, at standing points. */
export function rowDrive(row: Row, q: Float64Array, drive: readonly number[]): number {
  if (row.kind === "actuator") return -(drive[row.driver] as number) / row.scale
  if (row.kind !== "crank") return 0
  const [vx, vy] = sub(q, row.from, row.to)
  const [wx, wy] = turned(row, q, drive[row.driver] as number)
  return -(wx * vx + wy * vy) / row.scale
}

/** Second time derivative of a constraint with all point accelerations set to zero. */
export function rowBias(row: Row, q: Float64Array, v: Float64Array, drive: readonly number[], rate: number, change: number): number {
  const [vx, vy] = sub(q, row.from, row.to)
  const [dx, dy] = sub(v, row.from, row.to)
  switch (row.kind) {
    case "bar":
      return (dx * dx + dy * dy) / row.length
    case "carried":
      return 0
    case "slider": {
      const [x, y] = sub(v, row.from, row.point)
      return (2 * (dx * y - dy * x)) / row.length
    }
    case "crank": {
      const angle = drive[row.driver] as number
      const [wx, wy] = turned(row, q, angle)
      const [tx, ty] = row.refFrom < 0 ? [0, 0] : turned(row, v, angle)
      // reference direction turned: its first derivative, and the second without point accelerations
      const [ax, ay] = [tx - rate * wy, ty + rate * wx]
      const [bx, by] = [-2 * rate * ty - change * wy - rate ** 2 * wx, 2 * rate * tx + change * wx - rate ** 2 * wy]
      return (bx * vy - by * vx + 2 * (ax * dy - ay * dx)) / row.scale
    }
    case "actuator": {
      const length = drive[row.driver] as number
      return (dx * dx + dy * dy - rate ** 2 - length * change) / row.scale
    }
  }
}

/** Jacobian of all constraints over the moving coordinates, row-major. */
export function jacobian(model: Model, q: Float64Array, drive: readonly number[]): Float64Array {
  const { rows, unknowns, columns } = model
  const a = new Float64Array(rows.length * unknowns)
  rows.forEach((row, i) => {
    rowGradient(row, q, drive, (point, gx, gy) => {
      const column = columns[point] as number
      if (column < 0) return
      const k = i * unknowns + column
      a[k] = (a[k] as number) + gx
      a[k + 1] = (a[k + 1] as number) + gy
    })
  })
  return a
}
