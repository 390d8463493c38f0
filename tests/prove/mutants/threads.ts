/** Two threads that run test files; one that hangs is ended, and another takes its place. */
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { build } from 'esbuild'
import { root } from '#server/clone.mjs'
import type { Job, Ran, WorkerSetting } from '#tests/prove/mutants/job.ts'

/** Heap of a thread, in MB: a mutant that never ends may also fill it. */
const HEAP_MB = 2048

const ENTRY = 'tests/prove/mutants/worker.ts'
const OUT = join(root, '.build', 'mutants-worker.mjs')

export interface TestThread {
  /** What it ran; `hung` after so many ms, `fell` where the thread ended by itself. */
  readonly run: (job: Job, withinMs: number) => Promise<Ran | 'hung' | 'fell'>
  readonly end: () => Promise<void>
}

export const buildThread = async (): Promise<void> => {
  await build({
    absWorkingDir: root,
    entryPoints: [ENTRY],
    outfile: OUT,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20.19',
    logLevel: 'silent',
  })
}

const startWorker = (setting: WorkerSetting): Promise<Worker> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(OUT, {
      workerData: setting,
      stdout: true,
      stderr: true,
      resourceLimits: { maxOldGenerationSizeMb: HEAP_MB },
    })
    worker.once('message', () => {
      worker.off('error', reject)
      resolve(worker)
    })
    worker.once('error', reject)
  })

export const createThread = async (setting: WorkerSetting): Promise<TestThread> => {
  let worker: Worker | null = await startWorker(setting)
  return {
    run: async (job, withinMs) => {
      const at = worker ?? (await startWorker(setting))
      worker = at
      const ended = await new Promise<Ran | 'hung' | 'fell'>((resolve) => {
        const fell = (): void => finish('fell')
        const finish = (by: Ran | 'hung' | 'fell'): void => {
          clearTimeout(timer)
          at.off('message', finish)
          at.off('exit', fell)
          // An error after that is one of the thread that is being ended.
          if (typeof by !== 'string') at.off('error', fell)
          resolve(by)
        }
        const timer = setTimeout(() => finish('hung'), withinMs)
        at.on('message', finish)
        at.on('error', fell)
        at.on('exit', fell)
        at.postMessage(job)
      })
      if (typeof ended === 'string') {
        worker = null
        await at.terminate()
      }
      return ended
    },
    end: async () => {
      await worker?.terminate()
    },
  }
}
