import { join } from "node:path"
import ts from "typescript"
import { root } from "./packed.js"

const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config as { compilerOptions: object }
const options: ts.CompilerOptions = {
  ...ts.convertCompilerOptionsFromJson(config.compilerOptions, root).options,
  noUnusedLocals: false,
  noUnusedParameters: false,
}

/**
 * Compiles pieces of TypeScript as if they stood in `tests/`, under the project's own options.
 *
 * @returns for each piece, its errors as `line:code`, lines counted from 1
 */
export function errorsOf(pieces: readonly string[]): string[][] {
  const files = new Map(pieces.map((text, i) => [join(root, "tests", `piece-${i}.ts`), text]))
  const host = ts.createCompilerHost(options)
  const { fileExists, readFile, getSourceFile } = host
  host.fileExists = (name) => files.has(name) || fileExists(name)
  host.readFile = (name) => files.get(name) ?? readFile(name)
  host.getSourceFile = (name, target, ...rest) => {
    const text = files.get(name)
    return text === undefined ? getSourceFile(name, target, ...rest) : ts.createSourceFile(name, text, target)
  }
  const program = ts.createProgram([...files.keys()], options, host)
  return [...files.keys()].map((name) => {
    const file = program.getSourceFile(name) as ts.SourceFile
    return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].map(
      (d) => `${file.getLineAndCharacterOfPosition(d.start ?? 0).line + 1}:${d.code}`,
    )
  })
}
