import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import type { StationDocument } from '#lib/station/station-document.ts'
import { ensureReady } from '#server/ready.mjs'
import { root } from '#server/root.ts'
import type { Answered, Asked } from '#tests/support/houses.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'
import { publishIn } from '#tests/support/own-station.ts'

/** A server with a data folder of its own, in a process that it shares with others. */
export interface House {
  readonly url: string
  readonly pageUrl: string
  readonly port: number
  readonly data: string
  health(): Promise<Record<string, unknown>>
  signal(name: NodeJS.Signals): void
  /** What the process said on stderr since this house opened, once it is closed. */
  close(): Promise<{ readonly stderr: string }>
}

export interface Houses {
  /** With these stations as its own ones; where there are none with the demo alone. */
  open(stations?: readonly StationDocument[]): Promise<House>
  /** How the process ended. */
  end(): Promise<{ readonly code: number | null; readonly stderr: string }>
}

/** Starts the process that fresh servers open in. @throws where it ends instead */
export const launchHouses = async (): Promise<Houses> => {
  await ensureReady({ bundles: ['main', 'houses'], screens: true, say: () => {} })
  const child = spawn(process.execPath, [join(root, '.build', 'houses.mjs')], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    env: { ...process.env, NODE_ENV: 'production' },
  })
  const kill = () => child.kill('SIGKILL')
  process.once('exit', kill)
  let stderr = ''
  child.stderr?.on('data', (chunk: Buffer) => {
    stderr += chunk.toString()
  })
  const ended = once(child, 'exit').then(([code]: (number | null)[]) => {
    process.off('exit', kill)
    return { code: code ?? null, stderr }
  })
  let number = 0
  const ask = async (asked: Asked): Promise<Answered> => {
    const answer = new Promise<Answered>((done) => {
      const hear = (one: Answered): void => {
        if (one.number !== asked.number) return
        child.off('message', hear)
        done(one)
      }
      child.on('message', hear)
    })
    child.send(asked)
    const failed = ended.then((end) => {
      throw new Error(`the houses ended: ${JSON.stringify(end)}`)
    })
    return Promise.race([answer, failed])
  }
  return {
    open: async (stations = []) => {
      const said = stderr.length
      const data = temporaryFolder(true)
      if (stations.length > 0) await publishIn(data, ...stations)
      number += 1
      const { port } = await ask({ ask: 'open', number, data })
      const url = `http://127.0.0.1:${port}`
      return {
        url,
        pageUrl: `http://station.test:${port}`,
        port,
        data,
        health: async () =>
          (await fetch(`${url}/health`)).json() as Promise<Record<string, unknown>>,
        signal: (name) => child.kill(name),
        close: async () => {
          number += 1
          await ask({ ask: 'close', number, port })
          return { stderr: stderr.slice(said) }
        },
      }
    },
    end: () => {
      child.send({ ask: 'end', number: 0 } satisfies Asked)
      return ended
    },
  }
}
