import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { beforeAll, describe, expect, onTestFinished, test, vi } from 'vitest'
import { ensureReady } from '#server/ready.mjs'
import { launchServer, launchToEnd, temporaryFolder } from '#tests/support/launch-server.ts'
import { root } from '#tests/support/source-tree.ts'

const start = async (launch: Parameters<typeof launchServer>[0] = {}) => {
  const server = await launchServer({ screens: false, ...launch })
  onTestFinished(async () => {
    await server.kill()
  })
  return server
}

const startToEnd = (launch: Parameters<typeof launchToEnd>[0]) =>
  launchToEnd({ screens: false, ...launch })

const lives = (pid: number): boolean => {
  try {
    return process.kill(pid, 0)
  } catch {
    return false
  }
}

const npmStop = async (env: Record<string, string>) => {
  const { PORT: _, ...inherited } = process.env
  const child = spawn(process.execPath, ['server/shell/stop.mjs'], {
    cwd: root,
    env: { ...inherited, ...env },
  })
  let said = ''
  child.stdout.on('data', (chunk: Buffer) => {
    said += chunk.toString()
  })
  const [code] = await once(child, 'close')
  return { code, said }
}

const statusWithHost = (port: number, host: string, path: string): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, headers: { host } }, (answer) => {
      answer.resume()
      resolve(answer.statusCode)
    })
    asked.on('error', reject)
    asked.end()
  })

beforeAll(() => ensureReady({ screens: true, bundles: ['main'], say: () => {} }), 300_000)

describe('a server that starts', () => {
  test('answers /health with its process number for this machine', async () => {
    const server = await start()
    expect(await server.health()).toMatchObject({
      version: expect.stringMatching(/^\d+\.\d+\.\d+$/),
      protocol: expect.any(Number),
      screens: { start: '/', counter: '/counter', 'hand-over': '/hand-over' },
      commits: expect.any(Number),
      pid: server.pid,
    })
  })

  test('prints its data folder and addresses', async () => {
    const server = await start({ env: { HOST: '0.0.0.0' } })
    const { stdout } = await server.stop()
    expect(stdout).toContain(server.data)
    expect(stdout).toContain(`http://localhost:${server.port}/`)
  })

  test('answers no strange Host, on no path', async () => {
    const { port } = await start()
    for (const path of ['/health', '/addresses', '/counter', '/nowhere']) {
      expect(await statusWithHost(port, 'evil.example', path), path).toBe(421)
    }
    expect(await statusWithHost(port, `station.test:${port}`, '/health')).toBe(200)
  })

  test('only reads at /health', async () => {
    const { url } = await start()
    expect((await fetch(`${url}/health`, { method: 'POST' })).status).toBe(405)
    expect((await fetch(`${url}/health`, { method: 'HEAD' })).status).toBe(200)
  })
})

describe('a server that ends', () => {
  test.each(['SIGTERM', 'SIGINT', 'SIGHUP'] as const)('does so in order at %s', async (name) => {
    const server = await start()
    server.signal(name)
    const { code, stderr } = await server.ended
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(readdirSync(server.data)).not.toContain('server.json')
  })

  test('is ended by npm stop, by the port or by the data folder', async () => {
    const first = await start()
    const byData = await npmStop({ LEVEL_SCOOP_DATA: first.data })
    expect(byData).toEqual({ code: 0, said: expect.stringContaining('Stopped') })
    expect((await first.ended).code).toBe(0)
    const second = await start()
    const byPort = await npmStop({ PORT: String(second.port), LEVEL_SCOOP_DATA: first.data })
    expect(byPort).toEqual({ code: 0, said: expect.stringContaining('Stopped') })
    expect((await second.ended).code).toBe(0)
  })

  test('leaves nothing for npm stop to do, which is no failure', async () => {
    const server = await start()
    await server.kill()
    const again = await npmStop({ LEVEL_SCOOP_DATA: server.data })
    expect(again).toEqual({ code: 0, said: expect.stringContaining('Nothing was running') })
  })

  test.skipIf(process.platform === 'win32')('does not outlive the shell of npm start', async () => {
    const data = temporaryFolder()
    const env = { npm_lifecycle_event: 'start', LEVEL_SCOOP_DATA: data, LEVEL_SCOOP_SCREENS: 'off' }
    const shell = spawn('sh', ['-c', `'${process.execPath}' server/start.mjs; true`], {
      cwd: root,
      env: { ...process.env, ...env, PORT: '0', HOST: '127.0.0.1' },
      stdio: 'ignore',
    })
    const note = join(data, 'server.json')
    await vi.waitUntil(() => existsSync(note), { timeout: 25_000, interval: 50 })
    const { pid } = JSON.parse(readFileSync(note, 'utf8')) as { pid: number }
    onTestFinished(() => {
      if (lives(pid)) process.kill(pid, 'SIGKILL')
    })
    shell.kill('SIGKILL')
    await vi.waitUntil(() => !lives(pid), { timeout: 25_000, interval: 50 })
    expect(existsSync(note)).toBe(false)
  })

  test('leaves a stranger on the port alone', async () => {
    const stranger = createServer((socket) => socket.end('HTTP/1.1 200 OK\r\n\r\n{"pid":1}'))
    stranger.listen(0, '127.0.0.1')
    await once(stranger, 'listening')
    onTestFinished(() => void stranger.close())
    const address = stranger.address()
    const port = typeof address === 'object' ? String(address?.port) : ''
    const { code, said } = await npmStop({ PORT: port, LEVEL_SCOOP_DATA: temporaryFolder() })
    expect(code).toBe(1)
    expect(said).toContain('left alone')
  })

  test.each(['exception', 'rejection'])(
    'ends with 1 at an uncaught %s, screens on',
    async (kind) => {
      const server = await start({
        screens: true,
        nodeArguments: ['--import', join(root, 'tests/support/fault-on-signal.mjs')],
        env: { LEVEL_SCOOP_TEST_FAULT: kind },
      })
      expect((await fetch(`${server.url}/counter`)).status).toBe(200)
      server.signal('SIGUSR2')
      const { code, stderr } = await server.ended
      expect(code).toBe(1)
      expect(stderr).toMatch(/thrown|rejected/)
      expect(stderr).toContain('start it again')
    },
  )
})

describe('a server that can not start says why and ends with 1', () => {
  test('the port is in use', async () => {
    const { port } = await start()
    const { code, stderr, stdout } = await startToEnd({ port })
    expect(code).toBe(1)
    expect(stderr).toContain(`Port ${port} is in use`)
    expect(stdout).not.toContain('is running')
  })

  test('the port is in use, with screens', async () => {
    const { port } = await start()
    const { code, stderr } = await startToEnd({ port, screens: true })
    expect(code).toBe(1)
    expect(stderr).toContain(`Port ${port} is in use`)
  })

  test('the data folder is in use, and the first goes on', async () => {
    const server = await start()
    const { code, stderr } = await startToEnd({ data: server.data })
    expect(code).toBe(1)
    expect(stderr).toContain('data folder is in use')
    expect(await server.health()).toMatchObject({ pid: server.pid })
    expect((await npmStop({ LEVEL_SCOOP_DATA: server.data })).code).toBe(0)
  })

  test('the data folder lies below a file', async () => {
    const file = join(temporaryFolder(), 'file')
    writeFileSync(file, '')
    const { code, stderr } = await startToEnd({ data: join(file, 'data') })
    expect(code).toBe(1)
    expect(stderr).toContain(file)
  })

  test('the data folder may not be written', async () => {
    // Root may write wherever a permission says no; the kernel's own folder takes nothing from it.
    const isRoot = process.getuid?.() === 0
    const data = isRoot ? '/proc/level-scoop' : temporaryFolder()
    if (!isRoot) chmodSync(data, 0o500)
    const { code, stderr } = await startToEnd({ data })
    expect(code).toBe(1)
    expect(stderr).toContain(data)
  })

  test('the database is damaged', async () => {
    const data = temporaryFolder()
    mkdirSync(data, { recursive: true })
    writeFileSync(join(data, 'log.db'), 'not a database at all '.repeat(500))
    const { code, stderr } = await startToEnd({ data })
    expect(code).toBe(1)
    expect(stderr).toContain('damaged')
    expect(readFileSync(join(data, 'log.db'), 'utf8')).toContain('not a database at all')
  })

  test('a setting is wrong', async () => {
    const { code, stderr } = await startToEnd({ env: { PORT: 'eighty' } })
    expect(code).toBe(1)
    expect(stderr).toContain('PORT="eighty"')
  })

  test('the address is not of this machine', async () => {
    const { code, stderr } = await startToEnd({ env: { HOST: '203.0.113.1' } })
    expect(code).toBe(1)
    expect(stderr).toContain('203.0.113.1')
  })
})
