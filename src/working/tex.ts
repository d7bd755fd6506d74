import type { MathNode } from "mathjs"
import { nameOf } from "./line.js"
import { math } from "./mathjs.js"
import { asWritten } from "./units.js"

const GREEK =
  /^(alpha|beta|gamma|delta|epsilon|zeta|eta|theta|iota|kappa|lambda|mu|nu|xi|pi|rho|sigma|tau|phi|chi|psi|omega|Gamma|Delta|Theta|Lambda|Xi|Pi|Sigma|Phi|Psi|Omega)$/

/** A symbol and what is written below it: `R_w` is R with a w. */
export const partsOf = (symbol: string): readonly [name: string, below: string] => {
  const at = symbol.indexOf("_")
  return at < 0 ? [symbol, ""] : [symbol.slice(0, at), symbol.slice(at + 1)]
}

export const isGreek = (name: string): boolean => GREEK.test(name)

/** Whether a name in a formula is a unit, not a symbol: a symbol hides a unit of the same name. */
export const isUnitName = (name: string, symbols: { has(name: string): boolean }): boolean =>
  !symbols.has(name) && math.Unit.isValuelessUnit(name)

function symbolTex(symbol: string): string {
  const [name, below] = partsOf(symbol)
  const letter = isGreek(name) ? ` \\${name}` : name.length > 1 ? ` \\mathit{${name}}` : ` ${name}`
  // a command before it (\cdot) must not run into its letter
  return below === "" ? letter : `${letter}_{${isGreek(below) ? `\\${below}` : `\\mathrm{${below.replace(/_/g, "\\,")}}`}}`
}

/** TeX of a formula: symbols as variables, units upright. */
export function texOf(node: MathNode, symbols: { has(name: string): boolean }): string {
  const options = {
    handler: (part: MathNode) => {
      if (part.type !== "SymbolNode") return undefined
      const name = nameOf(part)
      return isUnitName(name, symbols) ? `\\,\\mathrm{${asWritten(name).replace("Ω", "\\Omega")}}` : symbolTex(name)
    },
  }
  return node.toTex(options)
}

/** TeX of a symbol by itself, whatever unit has the same letter. */
export const symbolTexOf = (symbol: string): string => symbolTex(symbol).trim()
