/** `npm run drive` and its like: makes a shell ready without a word on stdout, then becomes it. */
import { bundleUrl } from '#server/build.mjs'
import { endWith, ensureReady } from '#server/ready.mjs'

const [name = '', ...rest] = process.argv.slice(2)
try {
  await ensureReady({ bundles: [name] })
} catch (problem) {
  endWith(problem)
}
process.argv.splice(1, process.argv.length - 1, new URL(bundleUrl(name)).pathname, ...rest)
await import(bundleUrl(name))
