import { join } from "node:path"
import ts from "typescript"

/** Asks TypeScript's language service what an editor shows at a place of one of these files, which need not be on disk. */
export function languageService(root: string, files: Readonly<Record<string, string>>): (file: string, at: number) => string {
  const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config as { compilerOptions: object }
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root)
  const read = (file: string) => files[file] ?? ts.sys.readFile(file)
  const service = ts.createLanguageService({
    getScriptFileNames: () => Object.keys(files),
    getScriptVersion: () => "1",
    getScriptSnapshot: (file) => {
      const text = read(file)
      return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text)
    },
    getCurrentDirectory: () => root,
    getCompilationSettings: () => options,
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: (file) => file in files || ts.sys.fileExists(file),
    readFile: read,
    directoryExists: ts.sys.directoryExists,
    getDirectories: ts.sys.getDirectories,
    readDirectory: ts.sys.readDirectory,
  })
  return (file, at) => ts.displayPartsToString(service.getQuickInfoAtPosition(file, at)?.documentation)
}
