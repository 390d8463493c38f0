import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

export interface RunningNote {
  write(): void
  /** Leaves a note alone that another process wrote since. */
  remove(): void
}

/** A note in the data folder of which process serves it and where, for `npm stop`. */
export const runningNote = (
  dataFolder: string,
  at: { readonly host: string; readonly port: number; readonly secure: boolean },
): RunningNote => {
  const file = join(dataFolder, 'server.json')
  const text = `${JSON.stringify({ pid: process.pid, ...at })}\n`
  return {
    write: () => writeFileSync(file, text),
    remove: () => {
      if (readFileSync(file, 'utf8') === text) rmSync(file)
    },
  }
}
