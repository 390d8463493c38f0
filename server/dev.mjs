/** `npm run dev`: the server from its sources, restarted on a change, with Next's development screens. */
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { root } from './clone.mjs'
import { endWithParent } from './parent.mjs'
import { endWith, ensureReady } from './ready.mjs'

endWithParent()
try {
  await ensureReady({})
} catch (problem) {
  endWith(problem)
}
const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs')
const child = spawn(process.execPath, [tsx, 'watch', '--clear-screen=false', 'server/main.ts'], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, NODE_ENV: 'development', NEXT_TELEMETRY_DISABLED: '1' },
})
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal))
child.on('close', (code) => process.exit(code ?? 1))
