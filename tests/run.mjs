/**
 * `npm test`: installs what is missing, finds a browser, runs the tests, counts honestly. Of the pages
 * it runs the main job's stories; `npm test -- --whole` runs every one, and what is timed.
 */
import { spawn, spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import { join, relative } from 'node:path'
import { testWords as words } from '#lib/words/house/ready-en.mjs'
import { root } from '#server/clone.mjs'
import { endWith, ensureReady } from '#server/ready.mjs'
import { findBrowser, headlessShell } from '#tests/support/browser.mjs'
import { pageTimes, unitTimes } from '#tests/support/test-times.mjs'

const unitReport = join(root, '.build', 'unit-report.json')
const reportOfPages = (project) => join(root, '.build', `page-report-${project}.json`)

/** Runs a program with its words shown; the exit code. */
const show = (program, args, env = {}) =>
  new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
    })
    child.on('error', reject)
    child.on('close', (code) => resolve(code ?? 1))
  })

const ofPackage = (...path) => join(root, 'node_modules', ...path)
const playwright = ofPackage('@playwright', 'test', 'cli.js')

const isRootWithApt = () =>
  process.getuid?.() === 0 && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0

/** Debian's shell as root, else what is installed, else Playwright's download. */
const provideBrowser = async () => {
  const found = findBrowser()
  if (found !== null && (found.path === headlessShell || process.env.LEVEL_SCOOP_BROWSER)) {
    console.log(words.browserFound(found.what, found.path))
    return true
  }
  if (isRootWithApt()) {
    console.log(words.browserInstalling)
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' }
    const args = ['install', '-y', '-qq', '--no-install-recommends', 'chromium-headless-shell']
    if ((await show('apt-get', args, quiet)) !== 0) {
      await show('apt-get', ['update', '-qq'], quiet)
      await show('apt-get', args, quiet)
    }
  }
  const after = findBrowser()
  if (after !== null) {
    console.log(words.browserFound(after.what, after.path))
    return true
  }
  console.log(words.browserDownloading)
  const code = await show(process.execPath, [playwright, 'install', 'chromium'])
  if (code !== 0) console.error(words.browserMissing)
  return code === 0
}

const readReport = (file) => {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}

const noReport = { passed: 0, failed: 1, skipped: 0 }

/** Counts of one runner; no report, or a runner that failed without a failed test, is a failure. */
const counted = (counts, code) =>
  counts === null || (code !== 0 && counts.failed === 0)
    ? { ...(counts ?? noReport), failed: (counts?.failed ?? 0) + 1 }
    : counts

const runUnits = async () => {
  rmSync(unitReport, { force: true })
  const args = ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitReport}`]
  const code = await show(process.execPath, [ofPackage('vitest', 'vitest.mjs'), ...args])
  const report = readReport(unitReport)
  const counts = report && {
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    skipped: report.numPendingTests + report.numTodoTests,
  }
  return counted(counts, code)
}

const runPages = async (project) => {
  const pageReport = reportOfPages(project)
  rmSync(pageReport, { force: true })
  const args = [playwright, 'test', `--project=${project}`, '--reporter=list,json']
  const code = await show(process.execPath, args, { PLAYWRIGHT_JSON_OUTPUT_FILE: pageReport })
  const stats = readReport(pageReport)?.stats
  const counts = stats && {
    passed: stats.expected,
    failed: stats.unexpected + stats.flaky,
    skipped: stats.skipped,
  }
  return counted(counts ?? null, code)
}

const isWhole = process.argv.includes('--whole')
const projects = isWhole ? ['stories', 'timed'] : ['everyday']

const parts = []

/** What a part of the run came to; how long it took is told at the end. */
const part = async (name, act) => {
  const begun = performance.now()
  const result = await act()
  parts.push({ name: words.partNames[name], seconds: (performance.now() - begun) / 1000 })
  return result
}

const SLOWEST = 10

const slowest = () =>
  [
    ...unitTimes(readReport(unitReport)),
    ...projects.flatMap((project) => pageTimes(readReport(reportOfPages(project)))),
  ]
    .map(({ file, ...test }) => ({ ...test, name: `${relative(root, file)}: ${test.title}` }))
    .sort((one, other) => other.seconds - one.seconds)
    .slice(0, SLOWEST)

try {
  const hasBrowser = await part('ready', async () => {
    await ensureReady({ bundles: ['main', 'houses'] })
    return provideBrowser()
  })
  console.log(words.units)
  const units = await part('units', runUnits)
  await ensureReady({ screens: true, bundles: ['main', 'houses'] })
  console.log(words.pages)
  const pages = { passed: 0, failed: 0, skipped: 0 }
  for (const project of projects) {
    const run = hasBrowser ? await part(project, () => runPages(project)) : noReport
    for (const count of Object.keys(pages)) pages[count] += run[count]
  }
  const passed = units.passed + pages.passed
  const failed = units.failed + pages.failed
  console.log(words.slowest(slowest()))
  console.log(words.parts(parts))
  console.log(words.summary(units, pages))
  console.log(words.total(passed, failed, units.skipped + pages.skipped))
  process.exitCode = failed === 0 && passed > 0 ? 0 : 1
} catch (problem) {
  endWith(problem)
}
