// The power tree at an instant: every drive as what it is to its bus at its rate, a resistance beside a back-EMF.
import type { DriveLine } from "../drives/drive.js"
import type { MotionModel } from "../run/motion-model.js"
import { settle } from "../supply/settle.js"
import { type SourceModel, type SupplyModel, type SupplyState, supplyModel, supplyState } from "../supply/tree.js"
import type { RigSi } from "../whole/faults.js"

type Power = NonNullable<RigSi["power"]>
type Writable<T> = { -readonly [K in keyof T]: T[K] }

/** A motion's drives as its bus meets them; what is written before, and what comes out. */
export interface Motor {
  readonly motion: MotionModel
  /** Its bus; −1 where none is named: it then runs at its rated voltage. */
  readonly bus: number
  readonly line: DriveLine
  /** Share of the bus voltage that its driver puts on the motor, negative the other way round; null: nothing, its circuit open. */
  duty: number | null
  /** Its rate. */
  rate: number
  /** Voltage of its bus, current of one winding and current that one draws. */
  volts: number
  winding: number
  drawn: number
  held: boolean
}

export function motorOf(motion: MotionModel, bus: number): Motor {
  const { effortConstant, backEmfConstant, windingResistance, frictionCurrent, circuitCurrent } = motion.drive
  const line = { effortConstant, backEmfConstant, windingResistance, frictionCurrent, circuitCurrent }
  return { motion, bus, line, duty: null, rate: 0, volts: motion.drive.ratedVoltage, winding: 0, drawn: 0, held: false }
}

/** Something that gives only so much: a source, or the output of a converter. */
export interface Guard {
  readonly name: string
  readonly source: number
  /** Bus of the converter; of a source, the first bus that it feeds. */
  readonly bus: number
  readonly limit: number
  readonly action: "hold" | "hiccup" | "latch"
  readonly onTime: number
  readonly offTime: number
}

/** A supply ready to be asked at any instant. */
export interface Feeder {
  readonly power: Power
  readonly model: SupplyModel
  readonly state: SupplyState
  readonly motors: readonly Motor[]
  readonly guards: readonly Guard[]
  /** Those that hold their current, from the loads towards the sources. */
  readonly holding: readonly Guard[]
  /** Which buses are switched off, with all behind them. */
  readonly off: Uint8Array
  readonly dark: Uint8Array
  /** Buses with a converter, or right behind a source, that may be held at a limit, and which are. */
  readonly holders: readonly { readonly bus: number; readonly name: string }[]
  readonly held: Uint8Array
  readonly sources: Writable<SourceModel>[]
  /** Times that the tree was settled. */
  settled: number
}

type Kept = Pick<SupplyModel, "steady" | "power" | "conductance" | "converters">
const base = new WeakMap<Feeder, Kept>()

/** A feeder of a rig's power; limits of current are its guards, what a converter takes in at most is kept in the tree. */
export function feederOf(power: Power, motors: readonly Motor[]): Feeder {
  const plain = supplyModel(power)
  const sources = plain.sources.map((s) => ({ ...s, currentLimit: null }))
  const guards: Guard[] = []
  const guard = (name: string, source: number, bus: number, limit: number | null) => {
    const at = power.buses[bus]
    if (limit === null || !at) return
    guards.push({ name, source, bus, limit, action: at.limitAction ?? "hiccup", onTime: at.onTime, offTime: Math.max(at.offTime, 1e-3) })
  }
  plain.sources.forEach((s, i) => {
    const first = power.buses.findIndex((b) => b.from === s.name)
    guard(s.name, i, first, s.currentLimit)
  })
  plain.converters.forEach((c, i) => {
    guard(plain.names[i] as string, -1, i, c?.outputCurrentLimit ?? null)
  })
  const converters = plain.converters.map((c) => c && { ...c, outputCurrentLimit: null })
  const model: SupplyModel = {
    ...plain,
    sources,
    converters: [...converters],
    steady: plain.steady.slice(),
    power: plain.power.slice(),
    conductance: plain.conductance.slice(),
  }
  const n = plain.names.length
  const feeder: Feeder = {
    power,
    model,
    state: supplyState(model),
    motors,
    guards,
    holding: guards
      .filter((one) => one.action === "hold")
      .sort((a, b) => (a.source >= 0 ? 1 : 0) - (b.source >= 0 ? 1 : 0) || plain.order.indexOf(b.bus) - plain.order.indexOf(a.bus)),
    off: new Uint8Array(n),
    dark: new Uint8Array(n),
    holders: [
      ...guards.filter((one) => one.action === "hold" && one.source >= 0),
      ...converters.flatMap((one, bus) => (one ? [{ bus, name: plain.names[bus] as string }] : [])),
    ],
    held: new Uint8Array(n),
    sources,
    settled: 0,
  }
  base.set(feeder, { steady: plain.steady, power: plain.power, conductance: plain.conductance, converters })
  return feeder
}

/** Writes the loads of all buses into the model: what draws all day, and the motors. */
function loads({ model, off, dark, motors }: Feeder, kept: Kept): void {
  const converters = model.converters as SupplyModel["converters"][number][]
  for (let k = 0; k < model.order.length; k++) {
    const i = model.order[k] as number
    const up = model.above[i] as number
    const out = off[i] === 1 || (up !== -1 && dark[up] === 1)
    dark[i] = out ? 1 : 0
    model.steady[i] = out ? 0 : (kept.steady[i] as number)
    model.power[i] = out ? 0 : (kept.power[i] as number)
    model.conductance[i] = out ? 0 : (kept.conductance[i] as number)
    converters[i] = out ? null : (kept.converters[i] as SupplyModel["converters"][number])
  }
  for (const motor of motors) {
    const { bus, line, duty, rate, motion } = motor
    if (bus < 0 || dark[bus] === 1) continue
    const { drive, drives } = motion
    const add = (steady: number, conductance: number) => {
      model.steady[bus] = (model.steady[bus] as number) + drives * steady
      model.conductance[bus] = (model.conductance[bus] as number) + drives * conductance
    }
    if (duty === null) add(drive.standbyCurrent, 0)
    else if (motor.volts <= drive.minVoltage) add(line.circuitCurrent, 0)
    else if (motor.held) add(line.circuitCurrent + duty * motor.winding, 0)
    else add(line.circuitCurrent - (duty * line.backEmfConstant * rate) / line.windingResistance, (duty * duty) / line.windingResistance)
  }
}

/** What one motor takes at the voltage of its bus; whether that changes what its bus meets. */
function takes(motor: Motor, volts: number): boolean {
  const { motion, line, duty, rate } = motor
  const { drive } = motion
  const dead = motor.volts <= drive.minVoltage
  let changed = dead !== volts <= drive.minVoltage
  if (duty === null || volts <= drive.minVoltage) {
    motor.volts = volts
    motor.winding = 0
    motor.drawn = duty === null ? drive.standbyCurrent : line.circuitCurrent
    motor.held = false
    return changed
  }
  if (drive.lineAt) {
    const [k, e, r] = [line.effortConstant, line.backEmfConstant, line.windingResistance]
    drive.lineAt(volts, line)
    const off = Math.abs(line.effortConstant / k - 1) + Math.abs(line.backEmfConstant / e - 1) + Math.abs(line.windingResistance / r - 1)
    if (off > 1e-13) changed = true
  }
  motor.volts = volts
  const free = (duty * volts - line.backEmfConstant * rate) / line.windingResistance
  const limit = drive.currentLimit
  const held = limit !== null && Math.abs(free) > limit
  motor.winding = held ? Math.sign(free) * limit : free
  if (held !== motor.held) changed = true
  motor.held = held
  motor.drawn = line.circuitCurrent + duty * motor.winding
  return changed
}

const ROUNDS = 100

function balanced(feeder: Feeder, kept: Kept): boolean {
  const { model, state, motors, dark } = feeder
  for (let round = 0; round < ROUNDS; round++) {
    loads(feeder, kept)
    settle(model, nothing(model.names.length), state)
    feeder.settled++
    if (state.failed >= 0) return false
    let changed = false
    for (const motor of motors)
      if (motor.bus >= 0 && takes(motor, dark[motor.bus] === 1 ? 0 : (state.volts[motor.bus] as number))) changed = true
    if (!changed) return true
  }
  return true
}

const zeros = new Map<number, Float64Array>()
function nothing(n: number): Float64Array {
  let found = zeros.get(n)
  if (!found) {
    found = new Float64Array(n)
    zeros.set(n, found)
  }
  return found
}

/** Current that a guard lets pass now. */
export const guarded = ({ state }: Feeder, { source, bus }: Guard): number =>
  source >= 0 ? (state.sourceAmps[source] as number) : (state.outAmps[bus] as number)

/** Puts currents and voltages of everything to the rates and duties that its motors bear; the bus where the tree has no state, or −1. */
export function feed(feeder: Feeder): number {
  const kept = base.get(feeder) as Kept
  for (const motor of feeder.motors) {
    // a start that does not hang on what was asked before, so that one state has one answer
    motor.held = false
    if (motor.bus < 0) takes(motor, motor.motion.drive.ratedVoltage)
    else {
      motor.volts = motor.motion.drive.ratedVoltage
      if (motor.motion.drive.lineAt) motor.motion.drive.lineAt(motor.volts, motor.line)
    }
  }
  const { held, holders } = feeder
  held.fill(0)
  if (!balanced(feeder, kept)) return feeder.state.failed
  const full = feeder.sources.map((one) => one.openVoltage)
  let so: Kept | null = kept
  // each stays lowered while the next towards the source is: that one then has less to give
  for (const guard of feeder.holding) {
    if (guarded(feeder, guard) <= guard.limit) continue
    held[guard.bus] = 1
    so = holds(feeder, so, guard)
    if (so === null) break
  }
  feeder.sources.forEach((one, s) => {
    one.openVoltage = full[s] as number
  })
  if (so === null) return held.indexOf(1)
  for (const { bus } of holders) if (folds(feeder, bus)) held[bus] = 1
  return -1
}

/** Whether a converter is at a limit of its own input, not held down by another one above it. */
function folds({ model: { above, converters }, state: { limits } }: Feeder, bus: number): boolean {
  if (!converters[bus] || limits[bus] === "none") return false
  for (let up = above[bus] as number; up !== -1; up = above[up] as number) if (converters[up] && limits[up] !== "none") return false
  return true
}

/** Lowers the voltage of what holds its current until it gives no more than its limit; how the tree then is, null where it has no state. */
function holds(feeder: Feeder, kept: Kept, guard: Guard): Kept | null {
  const { sources } = feeder
  const at = guard.source
  const source = sources[at]
  const converter = kept.converters[guard.bus] ?? null
  const most = at >= 0 && source ? source.openVoltage : (converter?.outputVoltage ?? 0)
  let own = kept
  const put = (volts: number) => {
    if (at >= 0 && source) source.openVoltage = volts
    else own = { ...kept, converters: kept.converters.map((c, i) => (i === guard.bus && c ? { ...c, outputVoltage: volts } : c)) }
    return balanced(feeder, own)
  }
  let [low, high] = [0, most]
  for (let k = 0; k < 50 && high - low > 1e-13 * most; k++) {
    const mid = (low + high) / 2
    if (put(mid) && guarded(feeder, guard) > guard.limit) high = mid
    else low = mid
  }
  return put(low) && guarded(feeder, guard) <= guard.limit * (1 + 1e-9) ? own : null
}

/** Powers of the supply at an instant, W, in this order. */
export interface SupplyPower {
  source: number
  inside: number
  wires: number
  converters: number
  loads: number
}

/** Where the power goes that the sources give at their open-circuit voltages, the motors left out. */
export function supplyPower({ model, state, motors, dark }: Feeder, out: SupplyPower): void {
  out.source = 0
  out.inside = 0
  out.wires = 0
  out.converters = 0
  out.loads = 0
  for (let s = 0; s < model.sources.length; s++) {
    const amps = state.sourceAmps[s] as number
    const { openVoltage } = model.sources[s] as SourceModel
    out.source += openVoltage * amps
    out.inside += openVoltage * amps
  }
  for (let i = 0; i < model.names.length; i++) {
    if (dark[i] === 1) continue
    const amps = state.runAmps[i] as number
    const drop = amps * (model.resistance[i] as number)
    out.wires += drop * amps
    // a source that holds its current down loses what its own voltage would have given
    if ((model.above[i] as number) === -1) out.inside -= ((state.inputVolts[i] as number) + drop) * amps
    const volts = state.volts[i] as number
    if (model.converters[i]) out.converters += (state.inputVolts[i] as number) * amps - volts * (state.outAmps[i] as number)
    out.loads += volts * (state.outAmps[i] as number)
    for (let j = 0; j < model.names.length; j++)
      if (model.above[j] === i && dark[j] !== 1) out.loads -= volts * (state.runAmps[j] as number)
  }
  for (const motor of motors) if (motor.bus >= 0) out.loads -= motor.motion.drives * motor.volts * motor.drawn
}
