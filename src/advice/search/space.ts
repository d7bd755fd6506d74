// The rigs that a search is about: any combination of members put into the document, and what tells them apart.
import type { RigSi } from "../../rig/whole/faults.js"
import type { Path } from "../../solver/index.js"
import { valueAt, withValue } from "../../study/place.js"
import { countAt, countedBy } from "./places.js"
import type { Axis, Member, Pick, Plan, Put } from "./plan.js"

/** A value of the document on which members of an axis differ. */
export interface Leaf {
  readonly keys: Path
  /** The path with every number of an entry left out, name by name: `motions`, `[]`, `drive`. */
  readonly tokens: readonly string[]
  /** Its value for each member; undefined where a member has none. */
  readonly values: readonly unknown[]
}

const tokensOf = (keys: Path): string[] => keys.map((key) => (typeof key === "number" ? "[]" : key))

function flatten(value: unknown, keys: Path, into: Map<string, { readonly keys: Path; readonly value: unknown }>): void {
  if (typeof value === "object" && value !== null && !Array.isArray(value))
    for (const [key, inner] of Object.entries(value)) flatten(inner, [...keys, key], into)
  else into.set(keys.join("."), { keys, value })
}

/** What members of an axis differ on. */
export function leavesOf({ members }: Axis): readonly Leaf[] {
  const flat = members.map((member) => {
    const map = new Map<string, { readonly keys: Path; readonly value: unknown }>()
    for (const put of member.puts) flatten(put.value, put.keys, map)
    return map
  })
  const names = new Map(flat.flatMap((map) => [...map].map(([name, { keys }]) => [name, keys] as const)))
  return [...names].flatMap(([name, keys]): Leaf[] => {
    const values = flat.map((map) => map.get(name)?.value)
    const first = JSON.stringify(values[0])
    return values.every((value) => JSON.stringify(value) === first) ? [] : [{ keys, tokens: tokensOf(keys), values }]
  })
}

/** Whether all members of an axis write something alike that the document does not have. */
function isForeign(rig: RigSi, { members }: Axis, leaves: readonly Leaf[]): boolean {
  const flat = new Map<string, { readonly keys: Path; readonly value: unknown }>()
  for (const put of members[0]?.puts ?? []) flatten(put.value, put.keys, flat)
  const own = new Set(leaves.map((leaf) => leaf.keys.join(".")))
  return [...flat].some(([name, { keys, value }]) => !own.has(name) && JSON.stringify(valueAt(rig, keys)) !== JSON.stringify(value))
}

const startsWith = (keys: Path, root: Path) => root.every((key, i) => keys[i] === key)

/** Whether one of two paths leads into the other. */
export const meets = (a: Path, b: Path): boolean => startsWith(a, b) || startsWith(b, a)

/** Pieces of a part, and what each weighs and costs. */
export interface PartRow {
  readonly count: number
  readonly mass: number
  readonly price: number
}

/** The row that a member is in the list of parts: wire counts as one piece of its length. */
export function rowOf(rig: RigSi, axis: Axis, member: Member): PartRow {
  const counted = axis.row?.count ?? axis.keys.reduce((n, keys) => n + countAt(rig, keys, member.per), 0)
  if (member.per === "piece") return { count: counted, mass: member.mass, price: member.price }
  return { count: 1, mass: counted * member.mass, price: counted * member.price }
}

/** All rigs of a plan. Parts of the document that are alike in two rigs are one object in both. */
export class Space {
  readonly leaves: readonly (readonly Leaf[])[]
  /** Axes that say how many parts of an axis are bought. */
  readonly counting: readonly (readonly number[])[]
  /** Axes that change each motion, and the power; any of them may change the rest. */
  readonly #motionAxes: readonly (readonly number[])[]
  readonly #powerAxes: readonly number[]
  readonly #shared = new Map<string, unknown>()
  /** Member that stands where none is picked: −1, the document as it is, unless all members write there what it does not have. */
  readonly #unpicked: Pick
  /** Puts from the outermost place inwards. */
  readonly #order: readonly { readonly axis: number; readonly depth: number }[]

  constructor(readonly plan: Plan) {
    const { axes, rig } = plan
    this.leaves = axes.map(leavesOf)
    this.#unpicked = axes.map((axis, a) => (isForeign(rig, axis, this.leaves[a] as readonly Leaf[]) ? 0 : -1))
    this.counting = axes.map((axis) => {
      if (!axis.row || axis.row.count !== null) return []
      const paths = axis.members.flatMap((member) => axis.keys.flatMap((keys) => countedBy(keys, member.per)))
      return axes.flatMap((_, b) =>
        (this.leaves[b] as readonly Leaf[]).some((leaf) => paths.some((path) => meets(leaf.keys, path))) ? [b] : [],
      )
    })
    const changing = (root: Path) => axes.flatMap((axis, a) => (axis.keys.some((keys) => meets(keys, root)) ? [a] : []))
    this.#motionAxes = rig.motions.map((_, i) => changing(["motions", i]))
    this.#powerAxes = changing(["power"])
    const depths = new Map(axes.flatMap((axis, a) => (axis.members[0]?.puts ?? []).map((put) => [`${a} ${put.keys.length}`, 0] as const)))
    this.#order = [...depths.keys()]
      .map((key) => key.split(" ").map(Number) as [number, number])
      .map(([axis, depth]) => ({ axis, depth }))
      .sort((a, b) => a.depth - b.depth || a.axis - b.axis)
  }

  #putAll(rig: RigSi, axes: readonly number[] | null, pick: Pick, wanted: (keys: Path) => boolean): RigSi {
    let changed = rig
    for (const { axis, depth } of this.#order) {
      if (axes && !axes.includes(axis)) continue
      for (const { keys, value } of (this.plan.axes[axis] as Axis).members[pick[axis] as number]?.puts ?? [])
        if (keys.length === depth && wanted(keys)) changed = withValue(changed, keys, value)
    }
    return changed
  }

  #known<T>(key: string, make: () => T): T {
    if (!this.#shared.has(key)) this.#shared.set(key, make())
    return this.#shared.get(key) as T
  }

  /** The rig of one member on each axis; where it is −1, what nobody asks about. Rows and numbers may be given in place of a member's own. */
  rigOf(picked: Pick, rows: ReadonlyMap<number, PartRow> = new Map(), numbers: readonly Put[] = []): RigSi {
    const { rig, axes } = this.plan
    const pick = picked.map((m, a) => (m < 0 ? (this.#unpicked[a] as number) : m))
    const motions = rig.motions.map((motion, i) => {
      const own = this.#motionAxes[i] as readonly number[]
      if (!own.length) return motion
      const key = `motion ${i} ${own.map((a) => pick[a]).join(" ")}`
      return this.#known(
        key,
        () => this.#putAll(rig, own, pick, (keys) => keys[0] === "motions" && keys[1] === i).motions[i] as typeof motion,
      )
    })
    const power = this.#powerAxes.length
      ? this.#known(
          `power ${this.#powerAxes.map((a) => pick[a]).join(" ")}`,
          () => this.#putAll(rig, this.#powerAxes, pick, (keys) => keys[0] === "power").power,
        )
      : rig.power
    const rest = this.#putAll({ ...rig, motions, power }, null, pick, (keys) => keys[0] !== "motions" && keys[0] !== "power")
    // before parts are counted: how many there are, and of what length, may hang on these numbers
    const whole = numbers.reduce<RigSi>((one, { keys, value }) => withValue(one, keys, value), rest)
    return { ...whole, parts: this.#partsOf(whole, axes, pick, rows) }
  }

  #partsOf(rig: RigSi, axes: readonly Axis[], pick: Pick, rows: ReadonlyMap<number, PartRow>): RigSi["parts"] {
    const chosen = axes.flatMap((axis, a) => {
      const member = axis.members[pick[a] as number]
      return axis.row && member ? [{ axis, row: axis.row, member, of: rows.get(a) ?? rowOf(rig, axis, member) }] : []
    })
    if (!chosen.length) return rig.parts
    const taken = new Set(chosen.map(({ row }) => row.index))
    const added = chosen.flatMap(({ axis, row, member, of }) =>
      of.mass > 0 || of.price > 0 ? [{ name: `${axis.family}: ${member.name}`.slice(0, 100), ...of, ...row.place }] : [],
    )
    return [...rig.parts.filter((_, i) => !taken.has(i)), ...added]
  }
}
