/** npm, as the parent that a server must not outlive. */
import { readOr } from './clone.mjs'

const PARENT_WATCH_MS = 500

/** The shell's parent; null where this process hangs on npm itself, or the system doesn't tell. */
const parentOfShell = (shell) => {
  const stat = readOr(`/proc/${shell}/stat`, '')
  const [, name = '', parent = ''] = /\((.*)\) \S (\d+) /s.exec(stat) ?? []
  return /^(sh|dash|bash|ash|busybox)$/.test(name) ? parent : null
}

/**
 * Ends this process when npm, which started it, is gone: a signal to npm ends at most the shell
 * between them, and would leave the server behind.
 */
export const endWithParent = () => {
  if (!['start', 'dev'].includes(process.env.npm_lifecycle_event) || process.platform === 'win32')
    return
  const parent = process.ppid
  const npm = parentOfShell(parent)
  const watch = setInterval(() => {
    if (process.ppid === parent && parentOfShell(parent) === npm) return
    clearInterval(watch)
    process.kill(process.pid, 'SIGTERM')
  }, PARENT_WATCH_MS)
  watch.unref()
}
