/** A thread that runs one test file after another, each on modules loaded anew. */
import { createRequire } from 'node:module'
import { posix } from 'node:path'
import { Script } from 'node:vm'
import { parentPort, workerData } from 'node:worker_threads'
import fc from 'fast-check'
import { z } from 'zod'
import type { Job, Ran, WorkerSetting } from '#tests/prove/mutants/job.ts'
import { createTestFile } from '#tests/prove/mutants/test-file.ts'

type Load = (
  require: (specifier: string) => unknown,
  module: { exports: object },
  exports: object,
  url: string,
  hit: (file: string, probe: number) => void,
) => void

// Lists and the like from this realm: what is run here shares it, so that they are what they seem.
const compile = (path: string, code: string): Load =>
  new Script(`(function (require, module, exports, __url, __hit) {${code}\n})`, {
    filename: path,
  }).runInThisContext()

const main = async (port: NonNullable<typeof parentPort>, setting: WorkerSetting) => {
  const packages = new Map<string, object>()
  for (const name of setting.packages)
    packages.set(name, { __esModule: true, ...(await import(name)) })
  // Schemas are made anew for each test file: code made for them wouldn't pay.
  z.config({ jitless: true })
  // The same histories each time; and a failure is enough, however long it is.
  fc.configureGlobal({ seed: 1, endOnFailure: true })

  const compiled = new Map<string, Load>()
  let changed: { readonly of: string; readonly load: Load } | null = null

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
    const loaded = new Map<string, { exports: object }>()
    const load = (path: string): object => {
      const known = loaded.get(path)
      if (known) return known.exports
      const module = { exports: {} }
      loaded.set(path, module)
      if (job.isProbed && path in setting.probed) hit(path, 0)
      if (path.endsWith('.json')) {
        module.exports = JSON.parse(setting.modules[path] ?? '')
        return module.exports
      }
      const require = (specifier: string): unknown => {
        if (specifier === 'vitest') return { ...packages.get('vitest'), ...tests.words }
        if (specifier.startsWith('#')) return load(specifier.slice(1))
        if (specifier.startsWith('.')) return load(posix.join(posix.dirname(path), specifier))
        return packages.get(specifier) ?? createRequire(setting.root)(specifier)
      }
      loadOf(path, job)(require, module, module.exports, `file://${setting.root}/${path}`, hit)
      return module.exports
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
