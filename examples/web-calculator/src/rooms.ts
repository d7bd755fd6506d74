// The rooms of the library, each loaded when one of its solvers is first asked for.
import type { Solver } from "alula/solver"

type AnySolver = Solver<object, object>

const rooms: Readonly<Record<string, () => Promise<object>>> = {
  linkage: () => import("alula/linkage"),
  drive: () => import("alula/drive"),
  pack: () => import("alula/pack"),
  converter: () => import("alula/converter"),
  wire: () => import("alula/wire"),
  frame: () => import("alula/frame"),
  thermoform: () => import("alula/thermoform"),
  worn: () => import("alula/worn"),
}

/** A solver by its room and name; null where there is none. */
export async function solverAt(room: string, name: string): Promise<AnySolver | null> {
  const all = Object.hasOwn(rooms, room) ? ((await rooms[room]?.()) as Readonly<Record<string, unknown>>) : {}
  const one = Object.hasOwn(all, name) ? all[name] : null
  return typeof one === "function" && "~standard" in one ? (one as AnySolver) : null
}
