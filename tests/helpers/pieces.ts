import { errorsOf } from "./compiled.js"

/** The errors a piece says it gives, `line:code`: a line that must not compile ends in their codes. */
const announced = (text: string): string[] =>
  text.split("\n").flatMap((line, i) => {
    const codes = / \/\/ ([\d ]+)$/.exec(line)?.[1]?.split(" ") ?? []
    return codes.map((code) => `${i + 1}:${code}`)
  })

/** Pieces of TypeScript behind a common head, compiled together: the errors each announces, and those it gives. */
export function compiledPieces(
  head: string,
  pieces: Readonly<Record<string, string>>,
): readonly { readonly name: string; readonly announced: readonly string[]; readonly got: readonly string[] }[] {
  const texts = Object.values(pieces).map((code) => `${head.trim()}\n${code.trim()}`)
  const got = errorsOf(texts)
  return Object.keys(pieces).map((name, i) => ({ name, announced: announced(texts[i] as string), got: got[i] as string[] }))
}
