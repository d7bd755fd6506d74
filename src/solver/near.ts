/** Words of the trade that mean one thing; any of them leads to the one that is known here. */
const alike: readonly string[] = [
  "lfp lifepo4 life lithiumironphosphate ironphosphate",
  "nmc liion lithiumion lithium 18650 21700",
  "lipo lithiumpolymer polymer pouch",
  "nimh nickelmetalhydride nickel",
  "leadacid lead sla agm vrla gel carbattery",
  "aluminium aluminum alu alloy",
  "acrylic pmma",
  "polycarbonate pc",
  "polystyrene hips ps styrene",
  "polypropylene pp",
  "polyethylene pe hdpe",
  "glassfibre fibreglass fiberglass grp gfrp",
  "carbonfibre carbon cfrp carbonfiber",
  "awg gauge wiregauge wiresize",
  "area crosssection section",
  "voltage volts",
  "current amps amperage",
  "resistance ohms",
  "power watts wattage",
  "length distance run",
  "outsidediameter diameter dia od",
  "wall wallthickness thickness",
  "mass weight",
  "boost stepup",
  "buck stepdown",
  "stroke travel",
  "temperature temp",
]

const plain = (word: string) => word.toLowerCase().replace(/[^a-z0-9]/g, "")

/** Edits that turn one word into another, as far as `most`. */
function edits(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1
  let row = Array.from({ length: b.length + 1 }, (_, i) => i)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min((row[j] as number) + 1, (next[j - 1] as number) + 1, (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1))
    row = next
  }
  return row[b.length] as number
}

/** The known word that was probably meant: the same but for signs, a word of the trade for it, or at most two edits away. */
export function nearestWord(word: string, known: readonly string[]): string | null {
  if (word.length > 60) return null
  const asked = plain(word)
  const same = known.find((candidate) => plain(candidate) === asked)
  if (same !== undefined) return same
  const group = alike.map((words) => words.split(" ")).find((words) => words.includes(asked))
  const meant = group && known.find((candidate) => group.includes(plain(candidate)))
  if (meant !== undefined) return meant
  const most = Math.min(2, word.length - 1)
  let best: string | null = null
  let least = most + 1
  for (const candidate of known) {
    const count = edits(word.toLowerCase(), candidate.toLowerCase(), most)
    if (count < least) {
      least = count
      best = candidate
    }
  }
  return best
}
