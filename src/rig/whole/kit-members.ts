// Which members a kit's verbs were made over, for verbs that assess the same rig many times.
import type { Members } from "./fields.js"

const known = new WeakMap<object, Members>()

/** Keeps the members of a kit beside its verb, and hands the verb on. */
export function withMembers<V extends object>(verb: V, members: Members): V {
  known.set(verb, members)
  return verb
}

/** Members that a verb was made over; null for one that no kit made. */
export const membersOf = (verb: object): Members | null => known.get(verb) ?? null
