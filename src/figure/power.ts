// The power tree with volts and amperes at every node, at rest and while everything that may run does.
import { element, escapeXml, label, svg } from "../drawing/index.js"
import { formatQuantity } from "../quantity/index.js"
import type { Judgement } from "../rig/check/assess.js"
import { assessRig, type Rig, type RigDrive, type RigKit, type RigMechanism, type RigTransmission, type Typed } from "../rig/index.js"
import type { Figure } from "./figure.js"

interface Node {
  readonly name: string
  readonly lines: readonly string[]
  readonly kind: "source" | "bus" | "leaf"
  readonly below: readonly Node[]
}

type AnyAssess = RigKit<Typed, Typed, Typed>["assess"]

const volts = (value: number) => formatQuantity("voltage", value)
const amps = (value: number) => formatQuantity("current", value)

/** The tree of a judged rig: the condition under which its lowest bus falls furthest. */
function treeOf({ rig, supplies, resting }: Judgement["judged"]): { readonly roots: readonly Node[]; readonly condition: string } | null {
  const { power } = rig
  if (!power || !resting || !supplies?.length) return null
  const worst = supplies.reduce((a, b) => (b.state.failed >= 0 || Math.min(...b.state.volts) < Math.min(...a.state.volts) ? b : a))
  const { model, state, condition } = worst
  const gives = state.failed >= 0 ? model.names[state.failed] : null
  const leaves = (bus: string): Node[] => [
    ...rig.motions
      .filter((motion) => motion.bus === bus)
      .map((motion) => ({ name: motion.name, lines: ["moves"], kind: "leaf" as const, below: [] })),
    ...power.loads
      .filter((load) => load.bus === bus)
      .map((load) => ({ name: load.name, lines: [load.type], kind: "leaf" as const, below: [] })),
  ]
  const busesFrom = (from: string): Node[] =>
    power.buses
      .filter((bus) => bus.from === from)
      .map((bus) => {
        const i = model.names.indexOf(bus.name)
        const rest = resting.volts[i] as number
        const [v, a] = [state.volts[i] as number, state.runAmps[i] as number]
        const moving =
          gives === null ? `${volts(v)}, ${amps(a)} moving` : gives === bus.name ? "gives out here" : "not told: the supply gives out"
        return {
          name: bus.name,
          lines: [`${volts(rest)} at rest`, moving],
          kind: "bus" as const,
          below: [...busesFrom(bus.name), ...leaves(bus.name)],
        }
      })
  const roots = power.sources.map((source, s) => {
    const { openVoltage } = model.sources[s] as (typeof model.sources)[number]
    const drawn = gives === null ? `${amps(state.sourceAmps[s] as number)} moving` : "gives out"
    return { name: source.name, lines: [`${volts(openVoltage)} open`, drawn], kind: "source" as const, below: busesFrom(source.name) }
  })
  return { roots, condition }
}

const [WIDE, HIGH, GAP, STEP] = [158, 58, 14, 196]
const fills: Readonly<Record<Node["kind"], string>> = { source: "#2b8a63", bus: "#3d7bb8", leaf: "#c2571a" }
const words = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "currentColor" }

/** Draws a node with all below it; tells the height of its own middle. */
function draw(node: Node, depth: number, at: { row: number; deepest: number }, out: string[]): number {
  at.deepest = Math.max(at.deepest, depth)
  const left = 12 + depth * STEP
  const middles = node.below.map((one) => draw(one, depth + 1, at, out))
  const middle = middles.length ? ((middles[0] as number) + (middles.at(-1) as number)) / 2 : 40 + at.row++ * (HIGH + GAP) + HIGH / 2
  for (const below of middles)
    out.push(
      element("path", {
        d: `M${left + WIDE} ${middle.toFixed(1)}C${left + WIDE + 20} ${middle.toFixed(1)} ${left + STEP - 20} ${below.toFixed(1)} ${left + STEP} ${below.toFixed(1)}`,
        fill: "none",
        stroke: "currentColor",
        "stroke-opacity": 0.6,
      }),
    )
  const short = (text: string) => (text.length > 24 ? `${text.slice(0, 23)}…` : text)
  out.push(
    element("rect", {
      x: left,
      y: middle - HIGH / 2,
      width: WIDE,
      height: HIGH,
      rx: node.kind === "leaf" ? HIGH / 2 : 5,
      fill: fills[node.kind],
      "fill-opacity": 0.16,
      stroke: fills[node.kind],
    }),
    label(left + 12, middle - 11, short(node.name), { ...words, "font-weight": 600 }),
    ...node.lines.map((line, i) => label(left + 12, middle + 5 + 15 * i, short(line), words)),
  )
  return middle
}

/**
 * The power tree of a rig, from its sources to what they feed: each bus with its voltage at rest, and its voltage and current
 * while everything that may run at once does, under the condition that pulls the lowest bus down furthest.
 *
 * @param rig - a rig document of version 2
 * @param kit - verbs over members of one's own, from `rigWith`
 * @returns the picture; null where the document states no power
 * @throws InputError naming every fault of the document
 * @example
 * ```ts
 * import { assessRig } from 'alula/rig'
 * import { powerFigure } from 'alula/figure'
 * powerFigure(assessRig.example).svg.startsWith('<svg') // => true
 * ```
 */
export function powerFigure<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>(
  rig: Rig<D, T, M>,
  kit: Pick<RigKit<D, T, M>, "assess"> = { assess: assessRig } as unknown as Pick<RigKit<D, T, M>, "assess">,
): Figure | null {
  const { assess } = kit as unknown as { readonly assess: AnyAssess }
  const trace: Partial<Judgement> = {}
  assess.si(assess.read(rig), trace)
  if (!trace.judged) throw new TypeError("powerFigure: the kit is not one that rigWith made")
  const tree = treeOf(trace.judged)
  if (!tree) return null
  const at = { row: 0, deepest: 0 }
  const parts: string[] = []
  for (const root of tree.roots) draw(root, 0, at, parts)
  const told = (node: Node): string =>
    `${node.name}: ${node.lines.join(", ")}${node.below.length ? `; feeds ${node.below.map((one) => one.name).join(", ")}` : ""}. ${node.below.map(told).join("")}`
  const title = `Power, ${tree.condition}`
  const alternative = tree.roots.map(told).join("").trim()
  return {
    title,
    alternative,
    svg: svg(
      { title, description: alternative, width: 24 + at.deepest * STEP + WIDE, height: 40 + Math.max(1, at.row) * (HIGH + GAP) },
      element("text", { x: 12, y: 20, ...words, "font-size": 14, "font-weight": 600 }, escapeXml(title)),
      ...parts,
    ),
  }
}
