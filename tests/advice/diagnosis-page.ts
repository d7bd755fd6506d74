// The page that tells how often a diagnosis is right.
import { rows } from "../../src/advice/diagnose/faults.js"
import { meters, strays } from "../../src/advice/diagnose/meters.js"
import { formatNumber, formatQuantity } from "../../src/quantity/index.js"

/** What some builds came to. */
export interface Count {
  readonly builds: number
  /** The fault first (or one that no reading tells from it), among the first three, called unexplained by one fault, as planned. */
  readonly first: number
  readonly three: number
  readonly unexplained: number
  readonly asPlanned: number
  /** A pair named alone: rightly, wrongly. */
  readonly pair: number
  readonly wrongPair: number
}

const share = (count: number, of: number) => (of ? `${formatNumber((100 * count) / of, 2)} %` : "–")

const sum = (counts: Readonly<Record<string, Count>>, set: string): Count => {
  const all = Object.entries(counts).flatMap(([key, one]) => (key.endsWith(` · ${set}`) ? [one] : []))
  const of = (key: keyof Count) => all.reduce((total, one) => total + one[key], 0)
  return {
    builds: of("builds"),
    first: of("first"),
    three: of("three"),
    unexplained: of("unexplained"),
    asPlanned: of("asPlanned"),
    pair: of("pair"),
    wrongPair: of("wrongPair"),
  }
}

const size = (row: (typeof rows)[number]) => {
  if (!row.size) return "there or not"
  const { kind, label } = row.size
  const value =
    kind === "number" || kind === "degrees"
      ? formatNumber(row.usual, 2)
      : kind === "ratio"
        ? formatQuantity("ratio", row.usual, "%", 2)
        : formatQuantity(kind, row.usual, undefined, 2)
  return `${label}, ${value}`
}

/** The page, from what was counted. */
export function page(counts: Readonly<Record<string, Count>>): string {
  const [healthy, single, pairs, near, far, stalled] = [
    "healthy",
    "one listed fault",
    "two listed faults",
    "an unlisted fault, 3 to 6 standard deviations from each listed one",
    "an unlisted fault, over 6 standard deviations from each listed one",
    "does not come through",
  ].map((set) => sum(counts, set)) as [Count, Count, Count, Count, Count, Count]
  return `# How often the diagnosis is right

Written by \`tests/advice/diagnose.test.ts\` from \`tests/advice/diagnosis-counts.json\`; \`WIDE=1\` counts anew and fails where a count differs,
\`WRITE_DOCS=1\` with it writes both.

The builds are made by another model than the one that diagnoses: bodies cut free and moved on in time by their forces, the supply
solved by halving intervals, parts that stray from their datasheets by a few per cent, and a voltmeter, an ammeter and a scale
that each have a gain error of their own (\`tests/advice/synthetic.ts\`). Three creatures: wings on two linear actuators and
cells, a neck on a geared motor with a winch behind a battery bank and a step-up converter, a jaw on a servo behind a step-down
converter. Readings are those of a phone, a voltmeter, an ammeter and a luggage scale: times and currents both ways, swing,
voltages at rest and moving, voltage lost on the run, pulls at two places both ways, and of cells their resistance and
temperature. A real build departs in more ways than these: take the figures as good cases.

| builds | how many | what came out |
| --- | ---: | --- |
| healthy | ${healthy.builds} | called faulty ${share(healthy.builds - healthy.asPlanned, healthy.builds)} (false alarms) |
| one fault of the table, 4 standard deviations or more from the plan | ${single.builds} | named first ${share(single.first, single.builds)}, among the first three ${share(single.three, single.builds)}; called healthy ${share(single.asPlanned, single.builds)}, unexplained ${share(single.unexplained, single.builds)} |
| two faults of the table | ${pairs.builds} | unexplained by one ${share(pairs.unexplained, pairs.builds)}; the pair first ${share(pairs.first, pairs.builds)}, among the first three ${share(pairs.three, pairs.builds)}; a pair named alone: rightly ${pairs.pair}, wrongly ${pairs.wrongPair} |
| a fault that the table has not, over 3 standard deviations from every single one | ${near.builds + far.builds} | called unexplained by one fault ${share(near.unexplained + far.unexplained, near.builds + far.builds)}; of these a pair of listed ones was named alone, and wrongly, in ${near.wrongPair + far.wrongPair} |
| of these, 3 to 6 standard deviations | ${near.builds} | ${share(near.unexplained, near.builds)} |
| of these, over 6 | ${far.builds} | ${share(far.unexplained, far.builds)} |
| does not come through (stiff, heavy or gritty) | ${stalled.builds} | named first ${share(stalled.first, stalled.builds)}, among the first three ${share(stalled.three, stalled.builds)}; called healthy ${share(stalled.asPlanned, stalled.builds)} |

"Named first" counts a fault that these readings cannot tell from the true one, where both do the very same to every meter: a thin wire and
a bad contact in one run. The answer then names both. Both ways of being wrong are in the table: a healthy build called faulty,
and a faulty one called healthy.

Of faults that the table has not, those near a listed one pass for it: about 14 readings are tested together, at a level that takes two right
explanations in a hundred for wrong, and a departure of 3 to 4 standard deviations is within what chance gives so many in about every
second build. In these builds it is a cloth that pulls like an elastic, which a much heavier part also explains: a size far above the usual
is a reason to look twice.

By creature:

| builds | how many | first | first three | unexplained by one | called healthy |
| --- | ---: | ---: | ---: | ---: | ---: |
${Object.entries(counts)
  .sort(([a], [b]) => (a < b ? -1 : 1))
  .map(([key, c]) => `| ${key} | ${c.builds} | ${c.first} | ${c.three} | ${c.unexplained} | ${c.asPlanned} |`)
  .join("\n")}

## What is taken for granted

All of these are common practice, without a source; a reading with an uncertainty of its own goes before them, and \`straying\` scales
the second table.

| reading | tool | uncertainty (standard deviation, SI) | gain that all readings of the tool share | minutes |
| --- | --- | --- | --- | ---: |
${Object.entries(meters)
  .map(
    ([type, m]) =>
      `| ${type} | ${m.tool} | ${formatNumber(m.fixed)}${m.share ? `, and ${formatQuantity("ratio", m.share, "%")} of the value` : ""} | ${m.gain ? formatQuantity("ratio", m.gain, "%") : "none"} | ${m.minutes} |`,
  )
  .join("\n")}

How far good parts stray (standard deviation, as a share; Ω, N, °C where it is one): ${Object.entries(strays)
    .map(([name, value]) => `${name} ${formatNumber(value)}`)
    .join(", ")}.

## What is looked for

Each row stands for every element of the document that can have it, alone and with every other. The size is what is usual; larger is
less plausible. "Weight" is how often it is met against the others.

| fault | what it changes | usual size | weight |
| --- | --- | --- | ---: |
${rows.map((row) => `| ${row.label("…")} | \`${row.path}\` | ${size(row)} | ${row.prior} |`).join("\n")}
`
}
