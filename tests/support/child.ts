import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

export interface ChildEnd {
  readonly output: string
  readonly errors: string
  readonly code: number | null
  readonly signal: NodeJS.Signals | null
}

const root = fileURLToPath(new URL('../..', import.meta.url))

/**
 * Runs a TypeScript file in one process of its own, `before` (a tracer, say) in front of it.
 * `onOutput` is told all output so far, each time more arrives.
 */
export const runChild = (
  file: string,
  args: readonly string[],
  options: {
    readonly before?: readonly string[]
    readonly onOutput?: (output: string, kill: () => void) => void
  } = {},
): Promise<ChildEnd> => {
  const line = [...(options.before ?? []), process.execPath, '--import', 'tsx', file, ...args]
  const [command = process.execPath, ...rest] = line
  return new Promise((settle, fail) => {
    const child = spawn(command, rest, { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] })
    let output = ''
    let errors = ''
    child.stdout.on('data', (data: Buffer) => {
      output += data.toString()
      options.onOutput?.(output, () => child.kill('SIGKILL'))
    })
    child.stderr.on('data', (data: Buffer) => {
      errors += data.toString()
    })
    child.on('error', fail)
    child.on('close', (code, signal) => settle({ output, errors, code, signal }))
  })
}
