import { spawn } from 'node:child_process'
import { join } from 'node:path'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Role } from '#lib/service/roles.ts'
import { root } from '#server/root.ts'

const runLog = (...args: readonly string[]): Promise<string> =>
  new Promise((settle, fail) => {
    const child = spawn(process.execPath, ['server/shell/run.mjs', 'log', ...args], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
      env: { ...process.env, NODE_ENV: 'production' },
    })
    let said = ''
    child.stdout.on('data', (data: Buffer) => {
      said += data.toString()
    })
    child.on('error', fail)
    child.on('close', (code) =>
      code === 0 ? settle(said) : fail(new Error(`${join('shell', 'log')} ended with ${code}`)),
    )
  })

/** What `npm run log` prints of a data folder that no server uses. */
export const readLog = async (data: string): Promise<readonly Recorded[]> =>
  (await runLog('--data', data))
    .split('\n')
    .filter((line) => line !== '')
    .map((line): Recorded => JSON.parse(line))

/**
 * What `npm run log -- --fold` prints of the log up to a position: more may have fallen due since. As
 * the server has it where no role is named.
 */
export const foldLog = async (
  data: string,
  upto: number,
  as: Role | null = null,
): Promise<{ position: number; hash: string }> =>
  JSON.parse(
    await runLog('--data', data, '--fold', '--upto', String(upto), ...(as ? ['--as', as] : [])),
  )
