import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** In the data folder: a device of role lead for scripts of whoever owns the folder. */
export const SCRIPTS_TOKEN = 'scripts-token'

/** Written anew at each start, for its owner's eyes only. Returns where it lies. */
export const writeScriptsToken = (folder: string, token: string): string => {
  const path = join(folder, SCRIPTS_TOKEN)
  const next = `${path}.new`
  // A file that lies there already would keep its own mode.
  rmSync(next, { force: true })
  writeFileSync(next, `${token}\n`, { mode: 0o600, flag: 'wx' })
  renameSync(next, path)
  return path
}

/** It lets nobody in any more. Before the stores are closed: what a next server writes stays. */
export const removeScriptsToken = (folder: string): void =>
  rmSync(join(folder, SCRIPTS_TOKEN), { force: true })
