// What was entered: plain data as a solver takes it, changed by path.

export type Step = string | number
export type Entered = Readonly<Record<string, unknown>>

/** The value at a path; undefined where there is none. */
export function valueAt(from: unknown, path: readonly Step[]): unknown {
  return path.reduce<unknown>((value, step) => (value === null || value === undefined ? undefined : (value as Entered)[step]), from)
}

/** The same data with another value at a path; undefined leaves it out, but in a list, whose other entries keep their places. */
export function withValue(from: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value
  const inner = withValue((from as Entered | undefined)?.[step], rest, value)
  if (Array.isArray(from)) {
    const list = [...from]
    list[Number(step)] = inner ?? ""
    return list
  }
  const { [step]: _, ...others } = (from ?? {}) as Record<string, unknown>
  if (inner === undefined) return others
  // a field keeps its place, so that what is saved reads as what was opened
  return from !== undefined && from !== null && step in (from as object)
    ? { ...(from as object), [step]: inner }
    : { ...others, [step]: inner }
}

/** Data as text for an address, and back; null where the text is no input of a solver. */
export function packed(data: unknown): string {
  const bytes = new TextEncoder().encode(JSON.stringify(data))
  // one by one: a long form is more than a call takes at once
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""))
    .replaceAll("+", "-")
    .replaceAll("/", "_")
    .replace(/=+$/, "")
}
export function unpacked(text: string): object | null {
  try {
    const bytes = Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (c) => c.charCodeAt(0))
    const data: unknown = JSON.parse(new TextDecoder().decode(bytes))
    return typeof data === "object" && data !== null && !Array.isArray(data) ? data : null
  } catch {
    return null
  }
}
