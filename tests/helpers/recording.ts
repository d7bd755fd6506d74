// What of a document is looked at: a stand-in for it that takes down each path at which a value is read.

/**
 * A document whose reads are taken down as paths, with `[]` for entries of lists: each value, or all of one at a path of `whole`.
 * Values that a spread copies from a path of `copied` are not read yet: they are taken down apart.
 */
export function recording<T extends object>(
  document: T,
  { whole = [], copied = [] }: { readonly whole?: readonly string[]; readonly copied?: readonly string[] },
): { readonly read: T; readonly touched: ReadonlySet<string>; readonly carried: ReadonlySet<string> } {
  const touched = new Set<string>()
  const carried = new Set<string>()
  const wrapped = new WeakMap<object, object>()
  const wrap = (target: object, path: string): object => {
    const known = wrapped.get(target)
    if (known) return known
    // a spread asks for each key's description right before its value; another look does not
    let described: string | symbol | null = null
    const proxy: object = new Proxy(target, {
      getOwnPropertyDescriptor(of, key) {
        described = key
        return Reflect.getOwnPropertyDescriptor(of, key)
      },
      get(of, key) {
        const isCopied = described === key && copied.includes(path)
        described = null
        const value: unknown = Reflect.get(of, key)
        if (typeof key === "symbol" || typeof value === "function") return value
        if (Array.isArray(of) && !/^\d+$/.test(key)) {
          if (of.length === 0) touched.add(path)
          return value
        }
        const here = Array.isArray(of) ? `${path}[]` : path ? `${path}.${key}` : key
        const isGroup = typeof value === "object" && value !== null
        if (isGroup && (isCopied || !whole.includes(here))) return wrap(value, here)
        if (isCopied) carried.add(here)
        else touched.add(here)
        return value
      },
    })
    wrapped.set(target, proxy)
    return proxy
  }
  return { read: wrap(document, "") as T, touched, carried }
}

const steps = (path: string) => path.split(/\.|(?=\[\])/)

/** Whether one path is another, or lies below it. */
export function isWithin(path: string, other: string): boolean {
  const [here, above] = [steps(path), steps(other)]
  return above.length <= here.length && above.every((step, i) => step === here[i])
}
