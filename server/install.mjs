/** Packages: installed when what lies in node_modules isn't what the lockfile asks for. */
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { readyWords as words } from '#lib/words/house/ready-en.mjs'
import { NotReady, readOr, root, run, sha256 } from './clone.mjs'

const installStamp = join(root, 'node_modules', '.level-scoop-stamp')

/**
 * @param {string} version as in process.versions.node
 * @returns {string | null} a sentence where that Node can't run Level Scoop
 */
export const nodeProblem = (version) => {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  const fits = major >= 24 || (major === 22 && minor >= 12) || (major === 20 && minor >= 19)
  return fits ? null : words.nodeTooOld(version)
}

const wantedInstall = () =>
  sha256(
    readFileSync(join(root, 'package-lock.json')),
    process.platform,
    process.arch,
    process.versions.modules,
  )

/** npm's own script: the npm that started this, else the one beside this Node. */
const npmScript = () => {
  const beside = dirname(process.execPath)
  const candidates = [
    process.env.npm_execpath,
    join(beside, '..', 'lib', 'node_modules', 'npm', 'bin', 'npm-cli.js'),
    join(beside, 'node_modules', 'npm', 'bin', 'npm-cli.js'),
    join(beside, '..', 'share', 'nodejs', 'npm', 'bin', 'npm-cli.js'),
  ]
  const found = candidates.find((file) => file?.endsWith('npm-cli.js') && existsSync(file))
  if (found === undefined) throw new NotReady(words.noNpm)
  return found
}

/** The reason why the database binding doesn't load under this Node, in a process of its own. */
const databaseProblem = () => {
  const tried = spawnSync(
    process.execPath,
    ['-e', "new (require('better-sqlite3'))(':memory:').close()"],
    { cwd: root, encoding: 'utf8' },
  )
  if (tried.status === 0) return null
  const lines = tried.stderr.split('\n')
  const from = lines.findIndex((line) => /^\w*Error: /.test(line))
  return from === -1 ? `signal ${tried.signal}` : lines.slice(from, from + 4).join(' ')
}

/** Whether an `npm ci` made by hand left exactly what the lockfile asks for. */
const installedByHand = () => {
  const hidden = readOr(join(root, 'node_modules', '.package-lock.json'), null)
  if (hidden === null) return false
  const have = JSON.parse(hidden).packages
  const want = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages
  const all = Object.entries(want).every(
    ([path, entry]) =>
      path === '' || entry.optional === true || have[path]?.integrity === entry.integrity,
  )
  return all && databaseProblem() === null
}

const missingTools = () =>
  ['python3', 'make', 'g++'].filter(
    (tool) => spawnSync(tool, ['--version'], { stdio: 'ignore' }).status !== 0,
  )

const installFresh = async (say) => {
  say(words.installing)
  const begun = performance.now()
  rmSync(installStamp, { force: true })
  const prefix = join(dirname(process.execPath), '..')
  const headers = existsSync(join(prefix, 'include', 'node', 'node.h'))
  // The headers beside this Node are the ones to compile for, whatever npm is set to elsewhere.
  const env = headers ? { npm_config_nodedir: prefix } : {}
  const { code, said } = await run(
    [npmScript(), 'ci', '--include=dev', '--no-progress', '--loglevel=error'],
    env,
  )
  if (code !== 0) {
    throw new NotReady(
      /node-gyp|gyp ERR|prebuild-install/.test(said)
        ? words.compileNeeds(missingTools())
        : words.installFailed(code),
    )
  }
  const problem = databaseProblem()
  if (problem !== null) throw new NotReady(words.databaseWontLoad(problem))
  say(words.installed(Math.round((performance.now() - begun) / 1000)))
}

/**
 * The stamp is written last: an install that was cut short is done again.
 * @param {(line: string) => void} say
 * @throws {NotReady}
 */
export const ensureInstalled = async (say) => {
  const wanted = wantedInstall()
  if (readOr(installStamp, '') === wanted) return
  if (installedByHand()) say(words.adopted)
  else await installFresh(say)
  writeFileSync(installStamp, wanted)
}
