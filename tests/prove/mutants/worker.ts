/**
 * A thread that runs one test file after another. No module keeps state of its own (vitest.config.ts),
 * so that only what reaches the mutant is loaded anew, once for all tests of that mutant.
 */
import { createRequire } from 'node:module'
import { posix } from 'node:path'
import { Script } from 'node:vm'
import { parentPort, workerData } from 'node:worker_threads'
import fc from 'fast-check'
import { z } from 'zod'
import type { Job, Ran, WorkerSetting } from '#tests/prove/mutants/job.ts'
import { createTestFile } from '#tests/prove/mutants/test-file.ts'
import { STRETCH } from '#tests/support/stretch.ts'

interface Module {
  exports: object
}

type Load = (
  require: (specifier: string) => unknown,
  module: Module,
  exports: object,
  url: string,
  hit: (file: string, probe: number) => void,
) => void

// Lists and the like from this realm: what is run here shares it, so that they are what they seem.
const compile = (path: string, code: string): Load =>
  new Script(`(function (require, module, exports, __url, __hit) {${code}\n})`, {
    filename: path,
  }).runInThisContext()

/** The files that load a file, or load one that does, and the file itself. */
const reaching = (path: string, { loads }: WorkerSetting): ReadonlySet<string> => {
  const found = new Set([path])
  const above = Object.entries(loads)
  for (let size = 0; size < found.size; ) {
    size = found.size
    for (const [file, loaded] of above) if (loaded.some((one) => found.has(one))) found.add(file)
  }
  return found
}

const main = async (port: NonNullable<typeof parentPort>, setting: WorkerSetting) => {
  const packages = new Map<string, object>()
  for (const name of setting.packages)
    packages.set(name, { __esModule: true, ...(await import(name)) })
  // Schemas are made anew for each test file: code made for them wouldn't pay.
  z.config({ jitless: true })
  // The same histories each time; and a failure is enough, however long it is.
  fc.configureGlobal({ seed: 1, endOnFailure: true })
  process.env[STRETCH] = 'short'

  const compiled = new Map<string, Load>()
  let changed: { readonly of: string; readonly load: Load } | null = null
  const unchanged = new Map<string, Module>()
  let mutant: { readonly of: string; readonly loaded: Map<string, Module> } | null = null
  const stale = new Map<string, ReadonlySet<string>>()

  /** Where a module is kept once it is loaded for a job. */
  const keptFor = ({ test, mutated, isProbed }: Job): ((path: string) => Map<string, Module>) => {
    const own = new Map<string, Module>()
    if (isProbed) return () => own
    if (!mutated) return (path) => (path === test ? own : unchanged)
    const known = stale.get(mutated.path) ?? reaching(mutated.path, setting)
    stale.set(mutated.path, known)
    const of = `${mutated.path} ${mutated.code}`
    const { loaded } = mutant?.of === of ? mutant : { loaded: new Map<string, Module>() }
    mutant = { of, loaded }
    return (path) => (path === test ? own : known.has(path) ? loaded : unchanged)
  }

  const loadOf = (path: string, { mutated, isProbed }: Job): Load => {
    if (mutated?.path === path) {
      if (changed?.of !== mutated.code)
        changed = { of: mutated.code, load: compile(path, mutated.code) }
      return changed.load
    }
    const probedCode = isProbed ? setting.probed[path] : undefined
    const key = probedCode === undefined ? path : `${path} probed`
    const code = probedCode ?? setting.modules[path]
    if (code === undefined) throw new Error(`no module ${path}`)
    const load = compiled.get(key) ?? compile(path, code)
    compiled.set(key, load)
    return load
  }

  const run = async (job: Job): Promise<Ran> => {
    const hits = new Map<string, Set<number>>()
    const hit = (file: string, probe: number) => {
      const known = hits.get(file) ?? new Set()
      hits.set(file, known.add(probe))
    }
    const tests = createTestFile()
    const kept = keptFor(job)
    const load = (path: string): object => {
      const loaded = kept(path)
      const known = loaded.get(path)
      if (known) return known.exports
      const module = { exports: {} }
      loaded.set(path, module)
      try {
        evaluate(path, module)
      } catch (problem) {
        loaded.delete(path)
        throw problem
      }
      return module.exports
    }
    const evaluate = (path: string, module: Module): void => {
      if (job.isProbed && path in setting.probed) hit(path, 0)
      if (path.endsWith('.json')) {
        module.exports = JSON.parse(setting.modules[path] ?? '')
        return
      }
      const require = (specifier: string): unknown => {
        if (specifier === 'vitest') return { ...packages.get('vitest'), ...tests.words }
        if (specifier.startsWith('#')) return load(specifier.slice(1))
        if (specifier.startsWith('.')) return load(posix.join(posix.dirname(path), specifier))
        return packages.get(specifier) ?? createRequire(setting.root)(specifier)
      }
      loadOf(path, job)(require, module, module.exports, `file://${setting.root}/${path}`, hit)
    }
    const begun = performance.now()
    let failed: string | null = null
    try {
      load(job.test)
      await tests.run()
    } catch (problem) {
      failed = String(problem).slice(0, 500)
    }
    return {
      failed,
      tests: tests.done(),
      ms: performance.now() - begun,
      hits: [...hits].map(([file, probes]) => [file, [...probes]] as const),
    }
  }

  let stray: string | null = null
  process.on('unhandledRejection', (problem) => {
    stray = String(problem)
  })
  port.on('message', (job: Job) => {
    stray = null
    void run(job).then((ran) => port.postMessage({ ...ran, failed: ran.failed ?? stray }))
  })
  port.postMessage('ready')
}

if (parentPort) await main(parentPort, workerData)
