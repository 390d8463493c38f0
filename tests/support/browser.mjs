/** Finds a browser for the end-to-end tests; plain JavaScript, read by `npm test` and playwright alike. */
import { existsSync } from 'node:fs'

const places = [
  ['/usr/bin/chromium-headless-shell', "Debian's chromium-headless-shell"],
  ['/usr/bin/chromium', 'the installed Chromium'],
  ['/usr/bin/chromium-browser', 'the installed Chromium'],
  ['/usr/bin/google-chrome', 'the installed Chrome'],
  ['/usr/bin/google-chrome-stable', 'the installed Chrome'],
  ['/opt/google/chrome/chrome', 'the installed Chrome'],
  ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome', 'the installed Chrome'],
  ['/Applications/Chromium.app/Contents/MacOS/Chromium', 'the installed Chromium'],
  ['C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe', 'the installed Chrome'],
]

/** The first place is the one that starts fastest. */
export const headlessShell = places[0][0]

/**
 * LEVEL_SCOOP_BROWSER names one; else the installed ones are looked for.
 * @returns {{ path: string, what: string } | null}
 */
export const findBrowser = () => {
  const named = process.env.LEVEL_SCOOP_BROWSER
  if (named) return { path: named, what: 'the one LEVEL_SCOOP_BROWSER names' }
  const found = places.find(([path]) => existsSync(path))
  return found === undefined ? null : { path: found[0], what: found[1] }
}

/** The test name reaches this machine without any name server, and isn't a secure context. */
export const browserArguments = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--host-resolver-rules=MAP station.test 127.0.0.1',
]
