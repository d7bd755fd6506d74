import ts from "typescript"

/** Questions that rules ask about types. */
export interface Types {
  isNumber(node: ts.Node): boolean
  isString(node: ts.Node): boolean
  /** Both of one type, so that one can stand for the other. */
  areAlike(a: ts.Node, b: ts.Node): boolean
  /** The type is exactly one of these interfaces (or a list of them). */
  isNamed(node: ts.Node, name: string): boolean
  isListOf(node: ts.Node, name: string): boolean
  /** What the function round a node returns is exactly this. */
  returns(fn: ts.SignatureDeclaration, name: string): boolean
}

/** Answers them by the compiler's own checker. */
export function typesOf(checker: ts.TypeChecker): Types {
  const typeOf = (node: ts.Node) => checker.getTypeAtLocation(node)
  const every = (type: ts.Type, flag: ts.TypeFlags): boolean =>
    type.isUnion() ? type.types.every((t) => every(t, flag)) : (type.flags & flag) !== 0
  const named = (type: ts.Type, name: string) => (type.symbol ?? type.aliasSymbol)?.name === name
  return {
    isNumber: (node) => every(typeOf(node), ts.TypeFlags.NumberLike),
    isString: (node) => every(typeOf(node), ts.TypeFlags.StringLike),
    areAlike(a, b) {
      const [x, y] = [typeOf(a), typeOf(b)]
      if (every(x, ts.TypeFlags.NumberLike) && every(y, ts.TypeFlags.NumberLike)) return true
      const isThing = (t: ts.Type) => (t.flags & ts.TypeFlags.Object) !== 0 && t.getCallSignatures().length === 0
      return isThing(x) && isThing(y) && checker.typeToString(x) === checker.typeToString(y) && !checker.typeToString(x).startsWith("{}")
    },
    isNamed: (node, name) => named(typeOf(node), name),
    isListOf: (node, name) => {
      const type = typeOf(node)
      const [of] = checker.isArrayType(type) ? checker.getTypeArguments(type as ts.TypeReference) : []
      return of !== undefined && named(of, name)
    },
    returns(fn, name) {
      const signature = checker.getSignatureFromDeclaration(fn)
      return signature !== undefined && named(checker.getReturnTypeOfSignature(signature), name)
    },
  }
}
