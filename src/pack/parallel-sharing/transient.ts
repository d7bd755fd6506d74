import { type Chemistry, openCircuitVoltage } from "../chemistry.js"

/** Strings in parallel, SI. */
interface Si {
  readonly strings: readonly { readonly openCircuitVoltage: number; readonly resistance: number; readonly capacity: number }[]
  readonly voltageSpan: number
  readonly laterTime: number
}

/** Strings whose cells are told by their chemistry. */
interface Described {
  readonly strings: Si["strings"]
  readonly chemistry: Chemistry
}

/** Rise of one cell between 10 and 90 % of its charge, taken to 0 and 100 %, V. */
const cellSpan = (chemistry: Chemistry) => (openCircuitVoltage(chemistry, 0.9) - openCircuitVoltage(chemistry, 0.1)) / 0.8

/** Cells in series that the highest voltage is taken for, half charged, where no rise is given. */
export const cellsTaken = ({ strings, chemistry }: Described) =>
  Math.max(1, Math.round(Math.max(...strings.map((s) => s.openCircuitVoltage)) / openCircuitVoltage(chemistry, 0.5)))

/** The input with its rise from empty to full: as given, or of as many cells as the voltage is taken for. */
export function spanned<T extends Omit<Si, "voltageSpan"> & Described & { readonly voltageSpan: number | null }>(si: T): T & Si {
  return { ...si, voltageSpan: si.voltageSpan ?? cellSpan(si.chemistry) * cellsTaken(si) }
}

/** Sum of a list. */
export const total = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)

/** Common voltage of sources behind resistances, feeding a current and a conductance (Millman). */
export function commonVoltage(emf: readonly number[], conductance: readonly number[], current: number, load: number): number {
  return (total(emf.map((e, k) => e * (conductance[k] as number))) - current) / (total(conductance) + load)
}

/** Slowest rate at which differences die out (1/s): the root of Σg_k/(a_k − λ) = 0 between the two smallest of the strings' own rates a_k. */
export function slowestRate(order: readonly (readonly [rate: number, conductance: number])[]): number {
  let [low, high] = [(order[0] as readonly [number, number])[0], (order[1] as readonly [number, number])[0]]
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const mid = (low + high) / 2
    if (total(order.map(([a, g]) => g / (a - mid))) < 0) low = mid
    else high = mid
  }
  return (low + high) / 2
}

/** The strings' own rates U/(Q·r), slowest first, with their conductances. */
export function ratesOf(si: Si): readonly (readonly [rate: number, conductance: number])[] {
  return si.strings.map((s) => [si.voltageSpan / s.capacity / s.resistance, 1 / s.resistance] as const).sort((x, y) => x[0] - y[0])
}

type Matrix = readonly (readonly number[])[]
const times = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => b.map((_, j) => total(row.map((x, k) => x * ((b[k] as readonly number[])[j] as number)))))

/** Exponential of a matrix: Taylor series of a halved argument, squared up again. */
function exponential(matrix: Matrix): Matrix {
  const norm = Math.max(...matrix.map((row) => total(row.map(Math.abs))))
  const halvings = Math.max(0, Math.ceil(Math.log2(norm + 1e-300)) + 2)
  const small = matrix.map((row) => row.map((x) => x / 2 ** halvings))
  let term: Matrix = matrix.map((row, i) => row.map((_, j) => (i === j ? 1 : 0)))
  let sum = term
  for (let k = 1; k <= 14; k++) {
    term = times(term, small).map((row) => row.map((x) => x / k))
    sum = sum.map((row, i) => row.map((x, j) => x + ((term[i] as readonly number[])[j] as number)))
  }
  for (let k = 0; k < halvings; k++) sum = times(sum, sum)
  return sum
}

/** The strings' voltages after a time, each falling with its own charge: dE/dt = M·E + b, solved exactly. */
export function voltagesAfter(si: Si, load: { current: number; conductance: number }): readonly number[] {
  const emf = si.strings.map((s) => s.openCircuitVoltage)
  if (si.laterTime === 0) return emf
  const conductance = si.strings.map((s) => 1 / s.resistance)
  const all = total(conductance) + load.conductance
  const rows = si.strings.map((s, k) => {
    const rate = (si.voltageSpan / s.capacity / s.resistance) * si.laterTime
    return [...conductance.map((g, j) => rate * (g / all - (j === k ? 1 : 0))), (-rate * load.current) / all]
  })
  const grown = exponential([...rows, [...emf.map(() => 0), 0]])
  return emf.map((_, k) => total([...emf, 1].map((x, j) => x * ((grown[k] as readonly number[])[j] as number))))
}

/** Whether the two slowest rates differ enough to tell the root between them. */
export function ratesApart(si: Si): boolean {
  const [first, second] = ratesOf(si)
  return first !== undefined && second !== undefined && second[0] > first[0] * (1 + 1e-4)
}
