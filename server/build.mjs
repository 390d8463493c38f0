/** Screens and shells: built when their sources changed. Run under the lock of ready.mjs. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { pathToFileURL } from 'node:url'
import { readyWords as words } from '#lib/words/house/ready-en.mjs'
import { NotReady, readOr, root, run, sha256 } from './clone.mjs'

const buildStamp = join(root, '.next', 'level-scoop-stamp')
export const bundleFolder = join(root, '.build')

/** Entry points that can be bundled, by the name they run under. */
export const entries = {
  main: 'server/main.ts',
  drive: 'server/shell/drive.ts',
  log: 'server/shell/log.ts',
  protocol: 'server/shell/protocol.ts',
  bench: 'tests/bench/bench.ts',
  prove: 'tests/prove/prove.ts',
  pictures: 'tests/pictures/pictures.ts',
  simulate: 'tests/simulate/simulate.ts',
  houses: 'tests/support/houses.ts',
}

const filesBelow = (folder) =>
  readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath ?? entry.path, entry.name)))

/** Identity of all that the screens are built from: 16 hex digits, the same on every machine. */
export const screensRevision = () => {
  const files = ['app', 'components', 'lib', 'public']
    .filter((folder) => existsSync(join(root, folder)))
    .flatMap(filesBelow)
    .concat('next.config.ts', 'package-lock.json')
    .map((file) => file.split(sep).join('/'))
    .filter((file) => !file.endsWith('.md'))
    .sort()
  return sha256(...files.flatMap((file) => [file, readFileSync(join(root, file))])).slice(0, 16)
}

/**
 * @param {(line: string) => void} say
 * @throws {NotReady}
 */
export const ensureScreens = async (say) => {
  const wanted = screensRevision()
  if (readOr(buildStamp, '') === wanted) return
  say(words.buildingScreens)
  const begun = performance.now()
  rmSync(buildStamp, { force: true })
  const next = join(root, 'node_modules', 'next', 'dist', 'bin', 'next')
  const { code } = await run([next, 'build'], {
    NODE_ENV: 'production',
    LEVEL_SCOOP_BUILD: wanted,
  })
  if (code !== 0) throw new NotReady(words.buildFailed)
  writeFileSync(buildStamp, wanted)
  say(words.builtScreens(Math.round((performance.now() - begun) / 1000)))
}

const inputsHash = (inputs) =>
  sha256(
    readFileSync(join(root, 'server', 'build.mjs')),
    readFileSync(join(root, 'package-lock.json')),
    ...inputs.flatMap((file) => [file, readOr(join(root, file), 'missing')]),
  )

const bundleIsFresh = (name) => {
  if (!existsSync(join(bundleFolder, `${name}.mjs`))) return false
  const stamp = readOr(join(bundleFolder, `${name}.json`), null)
  if (stamp === null) return false
  const { inputs, hash } = JSON.parse(stamp)
  return inputsHash(inputs) === hash
}

/**
 * @param {string} name one of `entries`
 * @throws {NotReady}
 */
export const ensureBundle = async (name) => {
  const entry = entries[name]
  if (entry === undefined) {
    throw new NotReady(words.noSuchScript(name, Object.keys(entries).join(', ')))
  }
  if (!existsSync(join(root, entry))) throw new NotReady(words.missingEntry(name, entry))
  if (bundleIsFresh(name)) return
  const { build } = await import('esbuild')
  const outfile = join(bundleFolder, `${name}.mjs`)
  const built = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    metafile: true,
    logLevel: 'silent',
    write: false,
  }).catch((problem) => {
    throw new NotReady(words.bundleFailed(name, problem.message))
  })
  const inputs = Object.keys(built.metafile.inputs).sort()
  for (const file of built.outputFiles) {
    writeFileSync(file.path, file.contents)
  }
  writeFileSync(
    join(bundleFolder, `${name}.json`),
    JSON.stringify({ inputs, hash: inputsHash(inputs) }),
  )
}

/** The bundle of a shell, as an address to import. */
export const bundleUrl = (name) => pathToFileURL(join(bundleFolder, `${name}.mjs`)).href
