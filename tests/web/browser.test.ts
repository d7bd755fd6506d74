// The calculators as a person meets them: built, served to a real browser, filled in.
import { existsSync, readdirSync, readFileSync } from "node:fs"
import { createServer, type Server } from "node:http"
import type { AddressInfo } from "node:net"
import { extname } from "node:path"
import { fileURLToPath } from "node:url"
import { gzipSync } from "node:zlib"
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core"
import { build } from "vite"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { report } from "../../src/report/index.js"
import { displayNumber } from "../../src/solver/index.js"
import { starters, starterText } from "../../src/starters/index.js"
import { creature } from "../helpers/rigs.js"
import { solvers } from "../helpers/solvers.js"

const CHROMIUM = "/usr/bin/chromium"
const QUIET = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
]
const root = fileURLToPath(new URL("../../out/web/", import.meta.url))
const types: Readonly<Record<string, string>> = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css" }
const axe = readFileSync(fileURLToPath(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url)), "utf8")

let server: Server
let browser: Browser
let base = ""
const served: string[] = []

function serve(): Promise<Server> {
  const made = createServer((asked, answer) => {
    const path = (asked.url ?? "/").replace(/[?#].*$/, "")
    const file = `${root}${path === "/" ? "index.html" : path.slice(1)}`
    served.push(path)
    if (path.includes("..") || !existsSync(file)) return void answer.writeHead(404).end()
    answer.writeHead(200, { "content-type": types[extname(file)] ?? "application/octet-stream" }).end(readFileSync(file))
  })
  return new Promise((resolve) => made.listen(0, "127.0.0.1", () => resolve(made)))
}

describe.skipIf(!existsSync(CHROMIUM))("calculators in a browser", () => {
  beforeAll(async () => {
    await build({ configFile: fileURLToPath(new URL("../../examples/web-calculator/vite.config.mjs", import.meta.url)), logLevel: "error" })
    server = await serve()
    base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
    browser = await chromium.launch({ executablePath: CHROMIUM, args: QUIET })
  }, 120_000)
  afterAll(async () => {
    await browser?.close()
    await new Promise((resolve) => server?.close(resolve))
  })

  async function opened(
    address: string,
    options: Parameters<Browser["newContext"]>[0] = {},
  ): Promise<{ page: Page; context: BrowserContext; errors: string[] }> {
    const context = await browser.newContext({ serviceWorkers: "block", ...options })
    const page = await context.newPage()
    const errors: string[] = []
    page.on("pageerror", (error) => errors.push(error.message))
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()))
    await page.goto(base + address)
    return { page, context, errors }
  }
  /** What axe finds wrong, by the rules of WCAG 2.2 A and AA. */
  const faultsOf = async (page: Page): Promise<readonly string[]> => {
    await page.evaluate(axe)
    return page.evaluate(async () => {
      const { axe: run } = globalThis as unknown as {
        axe: { run(on: Document, options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
      }
      const { violations } = await run.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] })
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
    })
  }

  it("load their first page in less than 120 kB, and every page's working and rig on demand", async () => {
    served.length = 0
    const { page, context, errors } = await opened("#/")
    await page.waitForSelector(".rooms a")
    const size = [...new Set(served)]
      .filter((path) => existsSync(root + path.slice(1)))
      .reduce((sum, path) => sum + gzipSync(readFileSync(`${root}${path === "/" ? "index.html" : path.slice(1)}`)).length, 0)
    expect(size).toBeLessThan(120_000)
    expect(served.some((path) => /rig|worked|wire-/.test(path))).toBe(false)
    expect(errors).toEqual([])
    await context.close()
  })

  it("show every solver of the library, each filled with its example, with the library's own numbers", async () => {
    const { page, context, errors } = await opened("#/")
    const listed = await page.$$eval(".rooms a", (links) => links.map((a) => (a as HTMLAnchorElement).hash))
    const domains = solvers
      .map(({ id, solver }) => ({ module: id.split(".")[0] as string, name: id.split(".")[1] as string, solver }))
      .filter(({ module }) => !["rig", "advice"].includes(module))
    expect(listed.sort()).toEqual(domains.map(({ module, name }) => `#/${module}/${name}`).sort())
    for (const { module, name, solver } of domains) {
      await page.evaluate((hash) => {
        location.hash = hash
      }, `#/${module}/${name}`)
      await page.waitForFunction((title) => document.querySelector("h1")?.textContent === title, solver.title)
      const rows = await page.$$eval(".answer > table.values tr", (all) =>
        all.map((row) => [row.children[0]?.textContent, row.children[1]?.textContent]),
      )
      const result = solver(solver.example) as Readonly<Record<string, unknown>>
      const wanted = Object.entries(solver.output as Readonly<Record<string, { kind: string; label: string }>>)
        .filter(([, field]) => field.kind !== "group" && field.kind !== "list")
        .map(([key, field]) => {
          const value = result[key]
          return [
            field.label,
            value === null || value === undefined
              ? "—"
              : typeof value === "number"
                ? displayNumber(field, value)
                : value === true
                  ? "yes"
                  : value === false
                    ? "no"
                    : String(value),
          ]
        })
      // another machine's own sine leaves other residuals, and may take a round more or less until nothing changes
      const read = (all: readonly (readonly (string | null | undefined)[])[]) =>
        all.map(([label, text]) => [
          label,
          Math.abs(Number.parseFloat(text ?? "")) < 1e-9 || /iterations|evaluations|steps/.test(label ?? "") ? "0" : text,
        ])
      expect(read(rows), name).toEqual(read(wanted))
    }
    expect(errors).toEqual([])
    await context.close()
  })

  it("tell a fault beside its entry, take any spelling of a quantity, keep it in another unit, and carry it in the address", async () => {
    const { page, context } = await opened("#/wire/voltageDrop")
    const length = page.getByLabel("length one way", { exact: true })
    await length.fill("5000")
    await page.waitForSelector("[aria-invalid]")
    expect(await page.locator(".wrong .fault").textContent()).toMatch(/1000 m/)
    expect(await page.locator(".faults").textContent()).toMatch(/1 entry needs/)
    await length.fill("6 ft 6 in")
    await page.waitForFunction(() => !document.querySelector("[aria-invalid]"))
    const shown = await page.locator(".answer").textContent()
    await length.fill("1.9812")
    await page.waitForTimeout(300)
    expect(await page.locator(".answer").textContent()).toBe(shown)
    await page.getByLabel("Unit of length one way").selectOption("cm")
    expect(await length.inputValue()).toBe("198.12")
    await page.waitForTimeout(300)
    expect(await page.locator(".answer").textContent()).toBe(shown)
    const again = await opened(new URL(page.url()).hash)
    await again.page.waitForSelector(".answer table")
    expect(await again.page.locator(".answer").textContent()).toBe(shown)
    await again.context.close()
    await context.close()
  })

  it("keep a keyboard's place as entries are added and taken out, and the others' values as one is cleared", async () => {
    const { page, context, errors } = await opened("#/linkage/hingeActuator")
    await page.waitForSelector(".answer table")
    const focus = () => page.evaluate(() => document.activeElement?.closest("[data-path]")?.getAttribute("data-path") ?? "")
    const masses = page.locator("fieldset[data-path=masses]")
    const before = await masses.locator(":scope > details").count()
    await masses.locator(":scope > .add").focus()
    await page.keyboard.press("Enter")
    expect(await masses.locator(":scope > details").count()).toBe(before + 1)
    expect(await focus()).toBe("masses")
    await masses.locator("button", { hasText: "Take out" }).first().focus()
    await page.keyboard.press("Enter")
    expect(await masses.locator(":scope > details").count()).toBe(before)
    expect(await focus()).toBe("masses")
    // an optional length is asked in the unit of its limits, not in the smallest there is
    expect(await page.getByLabel("Unit of distance between the hinge's bearings").inputValue()).toBe("mm")
    expect(errors).toEqual([])
    await context.close()
  })

  it("say so where an address carries no entries, and offer to leave out what no field takes", async () => {
    const { page, context } = await opened("#/wire/voltageDrop/NQ")
    await page.waitForSelector(".answer table")
    expect(await page.locator("article > .faults").textContent()).toMatch(/cannot be read/)
    const old = Buffer.from(JSON.stringify({ length: "2 m", awg: 18, current: "3 A", gone: 7 })).toString("base64url")
    const other = await opened(`#/wire/voltageDrop/${old}`)
    await other.page.getByRole("button", { name: "Leave out: gone" }).click()
    await other.page.waitForSelector(".answer table")
    await other.context.close()
    await context.close()
  })

  it("open a document with comments, tell what is no document, and save no report of other entries", async () => {
    const { page, context, errors } = await opened("#/rig")
    await page.waitForSelector(".times")
    const open = (name: string, text: string) =>
      page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) })
    await open("wrong.json", "<p>no document</p>")
    await page.waitForFunction(() => document.querySelector(".faults")?.textContent?.includes("was not opened"))
    await open("newt.jsonc", starterText(starters.tail))
    await page.waitForFunction(() => document.querySelector(".times")?.textContent?.includes("tail"))
    await page.getByLabel("name of the rig").fill("")
    await page.waitForFunction(() => document.querySelector(".faults")?.textContent?.includes("another look"))
    expect(await page.locator(".answer.stale").count()).toBe(1)
    await page.getByRole("button", { name: "Save the report" }).click()
    expect(await page.locator(".faults").first().textContent()).toMatch(/once there is an answer/)
    expect(errors).toEqual([])
    await context.close()
  })

  it("offer what would mend a creature, each as a button that puts it into the document", async () => {
    const { page, context, errors } = await opened("#/rig")
    await page.waitForSelector(".times")
    const { rig } = starters.tail
    const [bus] = rig.power?.buses ?? []
    const thin = { ...rig, power: { ...rig.power, buses: [{ ...bus, run: { ...bus?.run, awg: 30 } }] } }
    const file = { name: "thin.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(thin)) }
    await page.locator("input[type=file]").setInputFiles(file)
    await page.waitForFunction(
      () =>
        document.querySelector(".falls-short")?.textContent?.includes("tail line") ||
        document.querySelector(".state.does-not-work, .state.could-hurt"),
    )
    const before = await page.locator(".state").textContent()
    await page.getByRole("button", { name: "What would mend it?" }).click()
    await page.getByRole("button", { name: "Take it" }).first().click({ timeout: 60_000 })
    await page.waitForFunction((old) => document.querySelector(".state") && document.querySelector(".state")?.textContent !== old, before)
    expect(errors).toEqual([])
    await context.close()
  }, 90_000)

  it("show the working and what another value would give", async () => {
    const { page, context, errors } = await opened("#/linkage/hingeActuator")
    await page.getByRole("button", { name: "Show the working" }).click()
    await page.waitForSelector(".worked")
    await page.getByRole("button", { name: "Show the curves" }).click()
    await page.waitForSelector("figure svg[role=img]")
    await page.getByRole("button", { name: "What if …" }).click()
    await page.waitForSelector("svg.curve path.line")
    expect(await page.locator("svg.curve").getAttribute("aria-label")).toMatch(/over/)
    expect(errors).toEqual([])
    await context.close()
  })

  it.each([
    ["wide", { viewport: { width: 1280, height: 900 } }],
    ["on a phone", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }],
  ] as const)("take a creature from its start to a saved report, %s", async (_, options) => {
    const { page, context, errors } = await opened("#/rig", options)
    await page.getByLabel("Start from").selectOption("fan")
    await page.waitForFunction(() => document.querySelector(".times")?.textContent?.includes("fan"))
    const before = await page.locator(".times").textContent()
    const details = page.locator("details[data-path='motions.0'] > summary")
    if (
      !(await page
        .locator("details[data-path='motions.0']")
        .getAttribute("open")
        .then((o) => o !== null))
    )
      await details.click()
    await page.locator("details[data-path='motions.0.drive'] > summary").click()
    const speed = page.locator("details[data-path='motions.0.drive'] .field", { hasText: "no-load speed" }).locator("input")
    await speed.fill(String(Number(await speed.inputValue()) * 1.1))
    await page.waitForFunction(
      (old) => !document.querySelector(".answer.stale") && document.querySelector(".times")?.textContent !== old,
      before,
    )
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth + 1)).toBe(true)
    const saved = page.waitForEvent("download")
    await page.getByRole("button", { name: "Save the report" }).click()
    expect((await saved).suggestedFilename()).toMatch(/\.html$/)
    await page.getByRole("button", { name: "Play it in time" }).click()
    await page.waitForSelector("figure svg[aria-label^='way of each motion']")
    const sheet = page.waitForEvent("download")
    await page.getByRole("button", { name: "Save the build sheet" }).click()
    expect((await sheet).suggestedFilename()).toMatch(/build-sheet\.html$/)
    expect(errors).toEqual([])
    await context.close()
  })

  it.each(["light", "dark"] as const)("are clean by axe's rules, %s", async (colorScheme) => {
    for (const [address, ready] of [
      ["#/", ".rooms a"],
      ["#/linkage/hingeActuator", ".answer table"],
      ["#/rig", ".times"],
    ] as const) {
      const { page, context } = await opened(address, { colorScheme })
      await page.waitForSelector(ready)
      expect(await faultsOf(page), address).toEqual([])
      await context.close()
    }
  })

  it.each(["lantern-moth-bank", "ember-lizard-collar", "umbrella-legs"])("have reports that clip nothing on a phone: %s", async (name) => {
    const context = await browser.newContext({ viewport: { width: 360, height: 780 } })
    const page = await context.newPage()
    await page.setContent(report(creature(name)).html)
    const clipped = await page.$$eval("main *", (all) =>
      all
        .filter((one) => one.getClientRects().length && one.getBoundingClientRect().right > innerWidth + 1)
        .map((one) => one.outerHTML.slice(0, 80)),
    )
    expect(clipped).toEqual([])
    await context.close()
  })

  it("go on without a network, once they were loaded", async () => {
    const { page, context } = await opened("#/wire/voltageDrop", { serviceWorkers: "allow" })
    await page.waitForSelector(".answer table")
    await page.evaluate(() => navigator.serviceWorker.ready)
    await page.waitForFunction(async () => (await caches.keys()).length > 0)
    await context.setOffline(true)
    await page.reload()
    await page.waitForSelector(".answer table")
    await page.goto(`${base}#/worn/breakaway`)
    await page.waitForSelector(".answer table")
    await context.close()
  })

  it("are built of nothing that is loaded from elsewhere", () => {
    for (const file of readdirSync(root, { recursive: true })
      .map(String)
      .filter((f) => /\.(html|js|css)$/.test(f)))
      expect(readFileSync(root + file, "utf8").match(/(?:src|href|import\()\s*=?\s*["']https?:/g) ?? [], file).toEqual([])
  })
})
