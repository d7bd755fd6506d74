import type { Reporter, TestModule } from "vitest/node"

/** Prints the run's count alone on the last line, in a form any build server can read. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    let [passed, failed, skipped] = [0, 0, 0]
    for (const module of modules) {
      // a file that could not be loaded has no tests to count, but it has failed
      if (module.errors().length) failed++
      for (const test of module.children.allTests()) {
        const { state } = test.result()
        if (state === "passed") passed++
        else if (state === "failed") failed++
        else skipped++
      }
    }
    process.on("exit", () => console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ""}`))
  }
}
