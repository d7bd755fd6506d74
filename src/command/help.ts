// Help, in plain trade English.

const codes = `Exit codes
  0    done; check: every check that was made is met
  1    check: something falls short or could not be judged; perform: the programme does not go as written;
       diagnose: what was read is not as planned
  2    bad input: command line, file or document; every fault is told with its line and column
  3    refused: why: something stops a motion; perform: what happens cannot be followed;
       diagnose: the plan itself stops on its way
  130  interrupted`

const common = `Options of every command
  --json         the answer as JSON on standard output
  -h, --help     help
  --version      version

A file named - is standard input or output. Documents are JSON, with // comments if you like.
Without a terminal, or with NO_COLOR set, the output is plain text, one finding a line.`

/** Help on each command. */
export const helps = {
  new: `alula new <kind> [file]

Writes a starter rig with comments that say where each number comes from.
Kinds: wings, tail, fan, jaw, collar, skirt. Without a file it is named after the kind.
For a creature of another kind begin with the one that moves most like it; alula explain lists what else a motion
may be made of.

  --force        replace a file that is there already`,
  check: `alula check <file>

Reads a document, tells every fault with its line and column, then whether the rig does what is wanted:
each motion's worst time, what falls short, what comes close, what could not be judged.

  --all          list the checks that are met too`,
  report: `alula report <file>

Writes the report: the answer, one picture, every check with its limit, every caution.

  --format       html, markdown or json; by the output's ending where left out, else html
  -o, --output   file to write; <document>-report.html where left out`,
  sheet: `alula sheet <file>

Writes the build sheet: what to buy and cut, drilling and bend templates at true scale, every wire with its
fuse and polarity, and the first power-up step by step with the readings to expect. Print it at 100 %.

  --format       html, markdown or json; by the output's ending where left out, else html
  -o, --output   file to write; <document>-sheet.html where left out`,
  why: `alula why <file>

Tells where the seconds of each motion go, and what mending each cause alone would save; then what to change on the
rig so that it does what is wanted and nothing gets worse, what else would do at a cost, and what nothing mends.

  --motion       the seconds of this motion only`,
  perform: `alula perform <file>

Plays the document's programme in time, everything that moves at once: each step with the time it takes, and
what happens meanwhile: stops, strikes, lines that go slack, supplies that give out, controllers that start anew.`,
  diagnose: `alula diagnose <file> [readings]

What is wrong with what was built. Without a file of readings it asks for them one by one: first lists all that can
be read on this creature by number, then says after each what it comes to so far and what to read next; an empty
line ends it. Questions go to standard error, the answer to standard output. A file of readings is a JSON list:
  [{ "type": "time", "value": "11.6 s" }, { "type": "voltage", "at": "pack", "during": "rest", "value": "12.1 V" }]
alula explain diagnosis tells every type. --json takes a file of readings.`,
  explain: `alula explain [name]

A page on a solver: what it takes with units, limits and defaults, what it answers, its formulae, its sources
and an example with its answer. Or on a type that a rig's document names (hinge, gearmotor, drum, cells …):
what it takes, and one from a starter rig. Without a name: every solver and type, by subject.`,
} as const satisfies Readonly<Record<string, string>>

/** A command's name. */
export type CommandName = keyof typeof helps

/** The help of the whole. */
export const help = `alula: does what is worn and moves on its own power do what is wanted, and what has to change?

  alula new <kind> [file]   a starter rig to edit
  alula check <file>        faults of a document, then whether the rig does what is wanted
  alula why <file>          where the seconds go, and what to change
  alula perform <file>      the programme played in time
  alula diagnose <file> [readings]  what is wrong with what was built, and what to read next
  alula report <file>       the whole answer as a page, Markdown or JSON
  alula sheet <file>        the build sheet: lists, templates at true scale, wires, first power
  alula explain [name]      a page on any solver, and on any type that a document names

alula <command> --help tells the options of a command.

${common}

${codes}
`

/** The help of one command. */
export const helpOn = (name: CommandName): string => `${helps[name]}\n\n${common}\n\n${codes}\n`
