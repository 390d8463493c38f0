/** This clone: its folder, the hashes that say what is stale, and the children that run in it. */
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url)).replace(/[/\\]$/, '')

/** A failure that is told to people in its own words, without a stack. */
export class NotReady extends Error {}

/** Of all parts in order, as hex. */
export const sha256 = (...parts) => {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part).update('\0')
  return hash.digest('hex')
}

/** A file's text, or `otherwise` where it can't be read. */
export const readOr = (file, otherwise) => {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return otherwise
  }
}

/** Runs a child to its end, its words on this process's stderr. Resolves to code and what it said. */
export const run = (args, env) =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      cwd: root,
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    const stopChild = () => child.kill('SIGTERM')
    const signals = ['SIGINT', 'SIGTERM', 'SIGHUP']
    const endBoth = () => {
      stopChild()
      process.exit(1)
    }
    for (const signal of signals) process.once(signal, endBoth)
    process.once('exit', stopChild)
    let said = ''
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (chunk) => {
        said += chunk
        process.stderr.write(chunk)
      })
    }
    child.on('error', reject)
    child.on('close', (code, signal) => {
      for (const each of signals) process.off(each, endBoth)
      process.off('exit', stopChild)
      resolve({ code: code ?? signal, said })
    })
  })
