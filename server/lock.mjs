/**
 * A lock folder: made whole beside its place and moved there, which succeeds for one process only.
 * It holds its owner's process number and is touched while held; one that wasn't touched for
 * STALE_MS, or whose process is gone, is cleared away by whoever waits.
 */
import {
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'

const STALE_MS = 30_000
const TOUCH_MS = 5_000
const TRY_MS = 200

const lives = (pid) => {
  try {
    process.kill(pid, 0)
    return true
  } catch (problem) {
    return problem.code === 'EPERM'
  }
}

const take = (folder) => {
  const own = mkdtempSync(join(dirname(folder), 'lock-'))
  writeFileSync(join(own, 'owner'), String(process.pid))
  try {
    renameSync(own, folder)
    return true
  } catch {
    rmSync(own, { recursive: true, force: true })
    return false
  }
}

/** Process number of the owner; null where the lock is free, or was left behind and is cleared. */
const holder = (folder) => {
  const owner = join(folder, 'owner')
  try {
    const pid = Number(readFileSync(owner, 'utf8'))
    if (lives(pid) && Date.now() - statSync(owner).mtimeMs < STALE_MS) return pid
    const aside = mkdtempSync(join(dirname(folder), 'lock-stale-'))
    renameSync(folder, join(aside, 'lock'))
    rmSync(aside, { recursive: true, force: true })
  } catch (problem) {
    if (problem.code !== 'ENOENT') throw problem
  }
  return null
}

/**
 * Runs `work` while no other process runs its own under the same folder.
 * @param {string} folder its parent must exist
 * @param {() => Promise<T>} work
 * @param {(pid: number) => void} onWait told once, when another process holds the lock
 * @template T
 * @returns {Promise<T>}
 */
export const withLock = async (folder, work, onWait) => {
  let told = false
  while (!take(folder)) {
    const pid = holder(folder)
    if (pid === null) continue
    if (!told) onWait(pid)
    told = true
    await pause(TRY_MS)
  }
  const owner = join(folder, 'owner')
  const touching = setInterval(() => {
    const now = new Date()
    utimesSync(owner, now, now)
  }, TOUCH_MS)
  const letGo = () =>
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 20 })
  process.once('exit', letGo)
  try {
    return await work()
  } finally {
    clearInterval(touching)
    process.off('exit', letGo)
    letGo()
  }
}
