import * as whole from "mathjs"
import { expect, it } from "vitest"
import { math } from "../../src/working/mathjs.js"

const agree = (text: string, scope: object) =>
  expect(JSON.stringify(math.evaluate(text, { ...scope })), text).toBe(JSON.stringify(whole.evaluate(text, { ...scope })))

it("the part of mathjs that is bundled reads formulae as the whole of it does", () => {
  const scope = {
    a: [3, 1, 2],
    b: [
      [1, 2],
      [3, 4],
    ],
    n: 4,
  }
  for (const text of [
    "1:n",
    "a[1]",
    "a[2:3]",
    "b[2, 1]",
    "map(1:n, f(i) = i ^ 2)",
    "map(a, f(x, i) = i[1])",
    "sum(b, 1)",
    "max(b, 2)",
    "min(b, 1)",
    "mean(b, 2)",
    "cumsum(a)",
    "concat(b, b, 1)",
    "subset(a, index(2))",
    // what decides early leaves the rest alone
    "false and missing > 1",
    "true or missing > 1",
    "n > 3 or missing > 1",
  ])
    agree(text, scope)
})
