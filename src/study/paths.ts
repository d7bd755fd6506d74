// Paths of the values of an input or a result, and what lies at them, as types: `run.length`, `wires.0.length`. They are taken
// from the interfaces, not from the descriptions, which would cost the compiler many times as much.

/** What lies at the end of a path. */
export type Sort = "number" | "word" | "flag"

/** How many names deep a path may go; each list and each group is one. */
type Deeper = [never, 0, 1, 2, 3, 4, 5, 6, 7, 8]

type Given<V> = Exclude<V, null | undefined>

/** The rest of a path behind a value: nothing at a number, a word or a flag that is asked for. */
type Behind<V, S extends Sort, Depth extends number> = unknown extends V
  ? "" | `.${string}`
  : [number] extends [V]
    ? "number" extends S
      ? ""
      : never
    : [V] extends [boolean]
      ? "flag" extends S
        ? ""
        : never
      : [V] extends [string]
        ? "word" extends S
          ? ""
          : never
        : [V] extends [number]
          ? never
          : [Depth] extends [0]
            ? never
            : [V] extends [readonly (infer E)[]]
              ? `.${number}${Behind<Given<E>, S, Deeper[Depth]>}`
              : `.${Names<V, S, Deeper[Depth]>}`

/** Paths from a group, or from any member of a variant. */
type Names<T, S extends Sort, Depth extends number> = T extends unknown
  ? { [K in keyof T & string]-?: K extends "type" ? Chosen<T[K], S> : `${K}${Behind<Unless<T[K]>, S, Depth>}` }[keyof T & string]
  : never

/** Null and undefined put aside, an unknown left as it is. */
type Unless<V> = unknown extends V ? V : Given<V>

/** A `type` of one word tells a member of a variant and is not to be changed; one of several words is a choice. */
type Chosen<V, S extends Sort> = "word" extends S ? (IsUnion<V> extends true ? "type" : never) : never

type IsUnion<T, Whole = T> = T extends unknown ? ([Whole] extends [T] ? false : true) : never

/**
 * Paths of an input or a result: names joined by points, entries of lists counted from 0 (`wires.0.length`).
 *
 * @typeParam T - input or result of a solver
 * @typeParam S - what must lie there: a number (with or without a unit), a word (a choice or a text), a flag
 */
export type PathTo<T, S extends Sort = Sort> = Names<T, S, 8>

type Step<T, K extends string> = T extends readonly (infer E)[] ? E : T extends unknown ? (K extends keyof T ? T[K] : never) : never

/** The type of what lies at a path, of an optional value what is given there. */
export type ValueAt<T, P extends string> = P extends `${infer K}.${infer Rest}`
  ? ValueAt<Given<Step<T, K>>, Rest>
  : unknown extends Step<T, P>
    ? Step<T, P>
    : Given<Step<T, P>>

/** The type of what lies at a path of a result, with null where it may be missing. */
export type ResultAt<T, P extends string> = ValueAt<T, P> | null
