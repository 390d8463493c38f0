import { closeSync, fsyncSync, mkdirSync, openSync, statSync, unlinkSync, writeSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { StoreProblem, storeProblemOf } from '#server/store/store-problem.ts'

/** Absolute paths of the folder and of the three files in it. */
export interface DataFolder {
  readonly path: string
  readonly log: string
  readonly guests: string
  readonly house: string
}

const kindOf = (path: string): 'folder' | 'file' | 'nothing' => {
  try {
    return statSync(path).isDirectory() ? 'folder' : 'file'
  } catch {
    return 'nothing'
  }
}

/** The nearest thing above that exists: what stands in the way, or where writing would begin. */
const nearest = (path: string): string => {
  const above = dirname(path)
  return kindOf(path) !== 'nothing' || above === path ? path : nearest(above)
}

const requireFoldersOnly = (path: string): void => {
  const at = nearest(path)
  if (kindOf(at) !== 'file') return
  const reason = at === path ? 'is-a-file' : 'below-a-file'
  throw new StoreProblem({ code: 'unwritable', path, at, reason, detail: 'ENOTDIR' })
}

/** A new folder is on the disk only once the one above it has been synced. */
const syncFolder = (path: string): void => {
  // Windows cannot sync a folder.
  if (process.platform === 'win32') return
  const folder = openSync(path, 'r')
  try {
    fsyncSync(folder)
  } finally {
    closeSync(folder)
  }
}

/** One at a time: Node's recursive way never returns where the system answers ENOENT (/proc). */
const createFolder = (path: string): void => {
  if (kindOf(path) === 'folder') return
  createFolder(dirname(path))
  mkdirSync(path, { mode: 0o700 })
  syncFolder(dirname(path))
}

const tryWriting = (path: string): void => {
  const trial = join(path, '.write-trial')
  const file = openSync(trial, 'w', 0o600)
  try {
    writeSync(file, 'trial')
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
  unlinkSync(trial)
}

/**
 * Makes the folder where it is missing (for this user only), and proves by writing that it can
 * hold data.
 * @throws {StoreProblem} `unwritable`.
 */
export const openDataFolder = (folder: string): DataFolder => {
  const path = resolve(folder)
  const at = nearest(path)
  try {
    requireFoldersOnly(path)
    createFolder(path)
    tryWriting(path)
  } catch (error) {
    throw storeProblemOf(error, path, at) ?? error
  }
  return {
    path,
    log: join(path, 'log.db'),
    guests: join(path, 'guests.db'),
    house: join(path, 'house.db'),
  }
}
