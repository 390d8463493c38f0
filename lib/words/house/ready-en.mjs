/** What the scripts say before anything is installed: plain JavaScript, so that it can be read then. */
export const readyWords = {
  nodeTooOld: (found) =>
    `Level Scoop needs Node 20.19 or later in 20, 22.12 or later in 22, or 24 and later; this is ${found}. Install one of these and start again.`,
  installing: 'Installing what Level Scoop needs (once; one to two minutes) ...',
  installed: (seconds) => `Installed in ${seconds} s.`,
  adopted: 'The packages that are installed fit; nothing to install.',
  noNpm:
    'npm was not found beside this Node. Start with "npm start", or install a Node that brings npm.',
  installFailed: (code) =>
    `Installing failed (npm ended with ${code}); its words are above. The package registry must be reachable for the first start.`,
  compileNeeds: (missing) =>
    `The database (better-sqlite3) has no ready-made binary for this machine and could not be compiled. A compile needs python3, make, g++ (or another C++20 compiler) and Node's headers. ${
      missing.length === 0
        ? 'The first three are here: look for the headers (set npm_config_nodedir to where include/node lies).'
        : `Missing here: ${missing.join(', ')}.`
    } On Debian or Ubuntu: apt-get install python3 make g++.`,
  databaseWontLoad: (reason) =>
    `The database (better-sqlite3) was installed but does not load: ${reason}`,
  waiting: (pid) =>
    `Another start (process ${pid}) is getting things ready here; waiting for it ...`,
  buildingScreens: 'Building the screens (once after each change; up to a minute) ...',
  builtScreens: (seconds) => `Screens built in ${seconds} s.`,
  buildFailed: 'Building the screens failed; the reason is above. Nothing was started.',
  bundleFailed: (name, reason) => `Building ${name} failed: ${reason}`,
  noSuchScript: (name, names) => `There is no "${name}" to run. There is: ${names}.`,
  missingEntry: (name, file) => `"${name}" can't run: its file ${file} is missing.`,
  portTaken: (port) =>
    `Port ${port} is in use by another program, or Level Scoop runs already ("npm stop" ends it). Another port: PORT=${Number(port) + 1} npm start. Nothing was started.`,
  nothingRunning: (port) =>
    `Nothing was running on port ${port}. Started on another port? Then: PORT=… npm stop`,
  notOurs: (port) =>
    `Something answers on port ${port}, but it is not a Level Scoop that this machine may stop. It was left alone.`,
  stopping: (pid) => `Stopping Level Scoop (process ${pid}) ...`,
  stopped: 'Stopped. Everything that was accepted is stored.',
  didNotStop: (pid, seconds) =>
    `Process ${pid} did not stop within ${seconds} s. End it by its number if it must go.`,
  mayNotStop: (pid) =>
    `Process ${pid} belongs to another user of this machine; only they can stop it.`,
}

/** What `npm test` says beside its runners' own words. */
export const testWords = {
  browserFound: (what, path) => `Browser for the tests: ${what} (${path}).`,
  browserInstalling:
    "Debian's chromium-headless-shell is missing and this is root: installing it with apt-get ...",
  browserDownloading:
    "No Chrome or Chromium is installed: downloading Playwright's own (npx playwright install chromium) ...",
  browserMissing:
    'No browser could be had, so the end-to-end tests count as failed. Install Chrome or Chromium, or name one: LEVEL_SCOOP_BROWSER=PATH npm test.',
  units: 'Unit, reference and architecture tests:',
  pages: 'End-to-end tests:',
  summary: (units, pages) =>
    `Unit, reference, architecture: ${units.passed} passed, ${units.failed} failed. End to end: ${pages.passed} passed, ${pages.failed} failed.`,
  parts: (parts) =>
    `Where the time went: ${parts.map(({ name, seconds }) => `${name} ${Math.round(seconds)} s`).join(', ')}.`,
  partNames: {
    ready: 'getting ready',
    units: 'units',
    everyday: 'the main job’s stories',
    stories: 'screens and stories',
    timed: 'timed',
  },
  slowest: (tests) =>
    [
      `The ${tests.length} slowest, each while another ran beside it:`,
      ...tests.map(({ seconds, name }) => `${seconds.toFixed(1).padStart(7)} s  ${name}`),
    ].join('\n'),
  total: (passed, failed, skipped) =>
    skipped === 0
      ? `${passed} passed, ${failed} failed`
      : `${passed} passed, ${failed} failed, ${skipped} skipped`,
}
