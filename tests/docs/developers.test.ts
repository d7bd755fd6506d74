import { expect, it } from "vitest"
import { loadSource, markdownSamples, runSample } from "../helpers/samples.js"

it("DEVELOPERS.md: the example of a new solver works as printed, units, working and all", async () => {
  const [sample] = markdownSamples("DEVELOPERS.md", "ts")
  const code = `${sample!.code.replace(/^export /gm, "").replace(/"\.\.\/(\w+)\/index\.js"/g, '"alula/$1"')}
import { working } from "alula/working"
runResistance({ length: "2 m", area: "1 mm2" }).resistance // => 0.03448
runResistance({ length: "1 m", area: "1 in2" }).resistance === runResistance({ length: 1, area: 0.00064516 }).resistance // => true
runResistance.attempt({ length: "2 kg" }).error.issues.length // => 2
working(runResistance, { length: 2, area: 1e-6 }).values.R // => 0.03448
`
  expect(await runSample({ place: sample!.place, code }, loadSource)).toBe(4)
})
