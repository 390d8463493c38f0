import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { ensureReady } from '#server/ready.mjs'
import { root } from '#server/root.ts'

const START_MS = 60_000
const ASK_MS = 25

export interface Ended {
  readonly code: number | null
  readonly signal: NodeJS.Signals | null
  readonly stdout: string
  readonly stderr: string
}

export interface LaunchedServer {
  /** Such as "http://127.0.0.1:4321", where scripts reach it. */
  readonly url: string
  /** Such as "http://station.test:4321", where pages are opened: not a secure context. */
  readonly pageUrl: string
  readonly port: number
  readonly pid: number
  readonly data: string
  /** What /health answers now. */
  health(): Promise<Record<string, unknown>>
  /** What the terminal shows by now. */
  terminal(): string
  /** SIGTERM, and how it ended. */
  stop(): Promise<Ended>
  /** kill -9, and how it ended. */
  kill(): Promise<Ended>
  signal(name: NodeJS.Signals): void
  readonly ended: Promise<Ended>
}

export interface Launch {
  /** A folder; a new temporary one, removed at the end of this process, where left away. */
  readonly data?: string
  /** 0, the default, takes any free port. */
  readonly port?: number
  /** False starts without Next, in a fraction of the time. */
  readonly screens?: boolean
  readonly env?: Readonly<Record<string, string>>
  /** In front of Node, such as a tracer; it must leave the server as this process's own child. */
  readonly before?: readonly string[]
  /** For Node itself, before the server's file. */
  readonly nodeArguments?: readonly string[]
}

const folders = new Set<string>()
const running = new Set<ChildProcess>()
process.once('exit', () => {
  for (const child of running) child.kill('SIGKILL')
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

const MEMORY = '/dev/shm'

/**
 * A new empty folder, removed when this process ends. `quick`: in memory where the system has a
 * folder there, for whom no power fails, so that nobody waits for a disk.
 */
export const temporaryFolder = (quick = false): string => {
  const folder = mkdtempSync(join(quick && existsSync(MEMORY) ? MEMORY : tmpdir(), 'level-scoop-'))
  folders.add(folder)
  return folder
}

interface Said {
  stdout: string
  stderr: string
}

const whole = async (
  child: ChildProcess,
  said: Said = { stdout: '', stderr: '' },
): Promise<Ended> => {
  for (const name of ['stdout', 'stderr'] as const) {
    child[name]?.on('data', (chunk: Buffer) => {
      said[name] += chunk.toString()
    })
  }
  const [code, signal] = await once(child, 'close')
  return { code, signal, ...said }
}

const spawnServer = async (launch: Launch, data: string): Promise<ChildProcess> => {
  const screens = launch.screens ?? true
  await ensureReady({ bundles: ['main'], screens, say: () => {} })
  const line = [
    ...(launch.before ?? []),
    process.execPath,
    ...(launch.nodeArguments ?? []),
    join(root, '.build', 'main.mjs'),
  ]
  const [program = process.execPath, ...args] = line
  const { npm_lifecycle_event: _, ...inherited } = process.env
  const child = spawn(program, args, {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...inherited,
      NODE_ENV: 'production',
      HOST: '127.0.0.1',
      PORT: String(launch.port ?? 0),
      LEVEL_SCOOP_DATA: data,
      LEVEL_SCOOP_SCREENS: screens ? 'on' : 'off',
      ...launch.env,
    },
  })
  running.add(child)
  child.once('close', () => running.delete(child))
  return child
}

/** Starts a server that is expected not to stay, and tells how it ended. */
export const launchToEnd = async (launch: Launch): Promise<Ended> =>
  whole(await spawnServer(launch, launch.data ?? temporaryFolder()))

const portOf = (data: string, pid: number): number | null => {
  try {
    const running: { pid: number; port: number } = JSON.parse(
      readFileSync(join(data, 'server.json'), 'utf8'),
    )
    return running.pid === pid ? running.port : null
  } catch {
    return null
  }
}

/**
 * Starts the bundled server as a child process and waits until /health answers.
 * @throws with all it said, where it ends or stays silent for 60 s
 */
export const launchServer = async (launch: Launch = {}): Promise<LaunchedServer> => {
  const data = launch.data ?? temporaryFolder()
  const child = await spawnServer(launch, data)
  const { pid } = child
  if (pid === undefined) throw new Error('the server could not be spawned')
  let hasEnded = false
  const said: Said = { stdout: '', stderr: '' }
  const ended = whole(child, said).finally(() => {
    hasEnded = true
  })
  const begun = performance.now()
  let port: number | null = null
  while (port === null) {
    if (hasEnded) throw new Error(`the server ended: ${JSON.stringify(await ended)}`)
    if (performance.now() - begun > START_MS) {
      child.kill('SIGKILL')
      throw new Error(`the server did not answer: ${JSON.stringify(await ended)}`)
    }
    await pause(ASK_MS)
    port = portOf(data, pid)
  }
  const url = `http://127.0.0.1:${port}`
  const signal = (name: NodeJS.Signals): void => {
    child.kill(name)
  }
  const endBy = (name: NodeJS.Signals) => (): Promise<Ended> => {
    signal(name)
    return ended
  }
  return {
    url,
    pageUrl: `http://station.test:${port}`,
    port,
    pid,
    data,
    health: async () => (await fetch(`${url}/health`)).json() as Promise<Record<string, unknown>>,
    terminal: () => said.stdout,
    stop: endBy('SIGTERM'),
    kill: endBy('SIGKILL'),
    signal,
    ended,
  }
}
