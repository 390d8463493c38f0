import { existsSync, readdirSync, rmdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'

/** What a house's stores leave in their folder. */
const STORES = /^(log|guests|house)\.db(-wal|-shm|-journal)?$/

/**
 * Takes a closed demo's files away: what was tried out in it is nobody's to keep, and names in it are
 * gone with it. Whatever else lies in the folder stays.
 */
export const removeDemo = (folder: string): void => {
  if (!existsSync(folder)) return
  for (const name of readdirSync(folder)) if (STORES.test(name)) rmSync(join(folder, name))
  if (readdirSync(folder).length === 0) rmdirSync(folder)
}
