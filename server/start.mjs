/** `npm start`: a fresh clone to a running server, in one process. */
import { createServer } from 'node:net'
import { readyWords as words } from '#lib/words/house/ready-en.mjs'
import { bundleUrl } from './build.mjs'
import { NotReady } from './clone.mjs'
import { endWithParent } from './parent.mjs'
import { endWith, ensureReady } from './ready.mjs'

/** Asked before anything is built, so that a server that runs from this folder isn't built over. */
const portIsTaken = (port, host) =>
  new Promise((resolve) => {
    const probe = createServer()
    probe.once('error', (problem) => resolve(problem.code === 'EADDRINUSE'))
    probe.listen(port, host, () => probe.close(() => resolve(false)))
  })

endWithParent()
try {
  const port = process.env.PORT || '4321'
  if (/^\d{1,5}$/.test(port) && (await portIsTaken(Number(port), process.env.HOST || '0.0.0.0'))) {
    throw new NotReady(words.portTaken(port))
  }
  const screens = process.env.LEVEL_SCOOP_SCREENS !== 'off'
  await ensureReady({ screens, bundles: ['main'] })
  process.env.NODE_ENV = 'production'
  process.env.NEXT_TELEMETRY_DISABLED = '1'
  await import(bundleUrl('main'))
} catch (problem) {
  endWith(problem)
}
