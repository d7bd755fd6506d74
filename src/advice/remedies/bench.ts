// Where changes are tried: the document with other values, read and assessed anew, and what became of each finding.
import { checks, foundBy, type Judgement, type RigFinding } from "../../rig/check/assess.js"
import { type RigCheck, readsAny } from "../../rig/check/check.js"
import { type Judged, judged } from "../../rig/check/conditions.js"
import type { RigKit, Typed } from "../../rig/index.js"
import type { KeptMotions } from "../../rig/run/situation.js"
import type { RigSi } from "../../rig/whole/faults.js"
import type { Members } from "../../rig/whole/fields.js"
import { InputError } from "../../solver/index.js"
import { type FindingPair, isMended, isShown, isWorse, pairsOf } from "../compare/verdicts.js"
import { withValue } from "./paths.js"
import type { Setting } from "./rows.js"

/** How far a finding is from its limit; 0 where it keeps it with room. */
export function shortness(finding: RigFinding | null): number {
  if (finding === null || finding.verdict === "meets") return 0
  const { verdict, utilisation, value, limit } = finding
  if (utilisation !== null) return Math.max(0.001, utilisation - 0.9)
  if (verdict === "falls short" && value !== null && limit !== null) return Math.abs(value - limit) / Math.max(Math.abs(limit), 1e-12) + 0.1
  // what only lacks a field of the document is nearer than what falls short
  return verdict === "marginal" ? 0.1 : verdict === "not enough data" ? 0.05 : 1
}

/** Whether a finding tells how far it is from its limit, so that a small step already shows. */
export const isGraded = ({ utilisation, value, limit }: RigFinding): boolean => utilisation !== null || (value !== null && limit !== null)

/** A change that was tried; what became of a check is worked out when first asked for. */
export class Trial {
  readonly #found = new Map<string, readonly FindingPair[]>()
  readonly #paths: readonly string[]

  constructor(
    readonly settings: readonly Setting[],
    private readonly base: Judgement,
    /** The rig as it is judged with the change. */
    readonly judged: Judged,
  ) {
    this.#paths = settings.map(({ path }) => path)
  }

  /** Findings of a check, each beside what it was; what reads nothing that has changed is as it was. */
  of(check: RigCheck): readonly FindingPair[] {
    const known = this.#found.get(check.id)
    if (known) return known
    const before = this.base.findings.filter((one) => one.id === check.id)
    const pairs = readsAny(check, this.#paths)
      ? pairsOf(before, foundBy(check, this.judged))
      : before.map((one) => ({ before: one, after: one }))
    this.#found.set(check.id, pairs)
    return pairs
  }

  /** What is less short of its limit than it was, by these checks. */
  gains(targets: readonly RigCheck[]): readonly { readonly pair: FindingPair; readonly gain: number }[] {
    return targets.flatMap((check) =>
      this.of(check).flatMap((pair) => {
        if (pair.before === null) return []
        const before = shortness(pair.before)
        const gain = before - shortness(pair.after)
        return gain > 0.02 * before ? [{ pair, gain }] : []
      }),
    )
  }

  mendedBy(targets: readonly RigCheck[]): readonly FindingPair[] {
    return targets.flatMap((check) => this.of(check).filter(isMended))
  }

  get worse(): readonly FindingPair[] {
    return checks.flatMap((check) => this.of(check).filter(isWorse))
  }

  get shown(): readonly FindingPair[] {
    return checks.flatMap((check) => this.of(check).filter(isShown))
  }
}

type AnyAssess = RigKit<Typed, Typed, Typed>["assess"]

/** The bench: a rig as it is, and as many tries as are allowed. */
export class Bench {
  tried = 0
  readonly #known = new Map<string, Trial | null>()
  /** Motions that no change touches are put together once. */
  readonly #kept: KeptMotions = { models: new WeakMap(), curves: new WeakMap() }

  constructor(
    private readonly assess: AnyAssess,
    private readonly members: Members,
    private readonly document: object,
    readonly base: Judgement,
    private readonly limit: number,
  ) {}

  /** How many more may be tried. */
  get left(): number {
    return this.limit - this.tried
  }

  /** The document with these values. */
  changed(settings: readonly Setting[]): object {
    return settings.reduce<object>((document, { path, value }) => withValue(document, path, value), this.document)
  }

  /** The document with these values in SI; null where it cannot be built so. */
  read(settings: readonly Setting[]): RigSi | null {
    try {
      return this.assess.read(this.changed(settings)) as RigSi
    } catch (error) {
      if (error instanceof InputError) return null
      throw error
    }
  }

  /** The same rig on the motions as they were, where nothing of them has changed. */
  #like(si: RigSi, settings: readonly Setting[]): RigSi {
    const { motions } = this.base.judged.rig
    const touched = (i: number) => settings.some(({ path }) => path.startsWith(`motions[${i}]`))
    return { ...si, motions: si.motions.map((one, i) => (touched(i) ? one : (motions[i] ?? one))) }
  }

  /** The rig with these values; null where it cannot be built so, or where no more may be tried. */
  try(settings: readonly Setting[]): Trial | null {
    const key = JSON.stringify(settings)
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const si = this.read(settings)
    if (si !== null && this.left <= 0) return null
    if (si !== null) this.tried++
    const trial = si && new Trial(settings, this.base, judged(this.members, this.#like(si, settings), this.#kept))
    this.#known.set(key, trial)
    return trial
  }
}
