// Values of a document by their paths, such as `power.buses[0].run.awg`.

type Bag = Readonly<Record<string, unknown>>

const stepsOf = (path: string): readonly string[] => path.match(/[^.[\]]+/g) ?? []

/** The value at a path; undefined where the document does not go that far. */
export function valueAt(of: unknown, path: string): unknown {
  let here = of
  for (const step of stepsOf(path)) {
    if (typeof here !== "object" || here === null) return undefined
    here = (here as Bag)[step]
  }
  return here
}

function put(of: unknown, [step, ...rest]: readonly string[], value: unknown): unknown {
  if (step === undefined) return value
  if (Array.isArray(of)) return of.map((one: unknown, i) => (String(i) === step ? put(one, rest, value) : one))
  // a group that was left out to its default begins empty
  const group = (typeof of === "object" && of !== null ? of : {}) as Bag
  return { ...group, [step]: put(group[step], rest, value) }
}

/** A copy of a document with another value at a path. */
export const withValue = <T>(document: T, path: string, value: unknown): T => put(document, stepsOf(path), value) as T

/** Paths of a document that a pattern such as `motions[].drive` stands for. */
export function expand(of: unknown, pattern: string): readonly string[] {
  const [head, ...rest] = pattern.split("[]")
  let paths = [head as string]
  for (const tail of rest)
    paths = paths.flatMap((path) => {
      const list = valueAt(of, path)
      return Array.isArray(list) ? list.map((_, i) => `${path}[${i}]${tail}`) : []
    })
  return paths
}

/** Whether a path is one that a pattern stands for, or lies below one. */
export function isUnder(path: string, pattern: string): boolean {
  const [a, b] = [path, pattern].map((one) => stepsOf(one.replaceAll("[]", "[*]"))) as [readonly string[], readonly string[]]
  return b.length <= a.length && b.every((step, i) => step === a[i] || (step === "*" && /^\d+$/.test(a[i] ?? "")))
}

/** Names that stand along a path, the nearest first: the mass, its mechanism, its motion. */
export function namesAlong(of: unknown, path: string): readonly string[] {
  const names: string[] = []
  let here = of
  for (const step of stepsOf(path)) {
    if (typeof here !== "object" || here === null) break
    here = (here as Bag)[step]
    const name = typeof here === "object" && here !== null ? (here as Bag).name : undefined
    if (typeof name === "string") names.unshift(name)
  }
  return names
}
