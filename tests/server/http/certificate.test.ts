import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync, writeFileSync } from 'node:fs'
import { request } from 'node:https'
import { join } from 'node:path'
import { io } from 'socket.io-client'
import { describe, expect, onTestFinished, test } from 'vitest'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { readConfig } from '#server/config.ts'
import { readCertificate } from '#server/http/certificate.ts'
import { contentSecurityPolicy, headersOf } from '#server/http/security-headers.ts'
import { root } from '#server/root.ts'
import { launchServer, launchToEnd, temporaryFolder } from '#tests/support/launch-server.ts'
import { hasOpenssl, ownCertificate } from '#tests/support/own-certificate.ts'

const NOW = Date.now()
const DAY = 86_400_000

const settings = (cert: string, key: string) => ({ LEVEL_SCOOP_CERT: cert, LEVEL_SCOOP_KEY: key })

describe.skipIf(!hasOpenssl)('a certificate and its key', () => {
  const folder = temporaryFolder()
  const own = ownCertificate(folder, 'own')
  const other = ownCertificate(folder, 'other')
  const locked = ownCertificate(folder, 'locked', 'left of the grill')
  const nonsense = join(folder, 'nonsense.pem')
  writeFileSync(nonsense, 'nonsense')

  test('[EG8] that belong together will do', () => {
    const read = readCertificate(own, NOW)
    expect(read).toMatchObject({ ok: true, certificate: { warnings: [] } })
  })

  test('[EG8] that ran out or isn’t valid yet is told, and used', () => {
    for (const [now, words] of [
      [NOW + 3 * DAY, 'ran out'],
      [NOW - DAY, 'valid only from'],
    ] as const)
      expect(readCertificate(own, now)).toMatchObject({
        ok: true,
        certificate: { warnings: [expect.stringContaining(words)] },
      })
  })

  test.each([
    ['a certificate that is missing', { ...own, cert: join(folder, 'none') }, 'no such file'],
    ['a key that is missing', { ...own, key: join(folder, 'none') }, 'LEVEL_SCOOP_KEY'],
    ['a folder', { ...own, key: folder }, 'a folder, not a file'],
    ['no certificate', { ...own, cert: nonsense }, 'no certificate in PEM form'],
    ['no key', { ...own, key: nonsense }, 'no private key in PEM form'],
    ['the certificate for the key', { ...own, key: own.cert }, 'no private key in PEM form'],
    ['the two the wrong way round', { cert: own.key, key: own.cert }, 'the wrong way round'],
    ['a key that is locked', locked, 'locked with a passphrase'],
    ['the key of another', { cert: own.cert, key: other.key }, 'doesn’t belong'],
  ])('[EG8] %s is said in words, and nothing is started', (_, files, words) => {
    const read = readCertificate(files, NOW)
    const said = read.ok ? '' : read.problem.replaceAll("'", '’')
    expect(said).toContain(words)
    expect(said).toContain('Nothing was started.')
  })

  test('[EG8] that this account may not read is said so', () => {
    const read = readCertificate(own, NOW, (path) => {
      if (path === own.cert) return readFileSync(path, 'utf8')
      throw Object.assign(new Error('no'), { code: 'EACCES' })
    })
    expect(read).toEqual({ ok: false, problem: expect.stringContaining('may not read it') })
  })

  test('[EG8] are set both or neither', () => {
    for (const one of [settings(own.cert, ''), settings('', own.key)]) {
      const read = readConfig(one, '/')
      expect(read.ok ? [] : read.problems).toEqual([expect.stringContaining('https needs both')])
    }
    expect(readConfig(settings('a.pem', 'b.pem'), '/srv')).toMatchObject({
      config: { certificate: { cert: '/srv/a.pem', key: '/srv/b.pem' } },
    })
  })

  test('[EG8] that won’t do end a start with the sentence and nothing else', async () => {
    const ended = await launchToEnd({ screens: false, env: settings(own.cert, other.key) })
    expect(ended).toMatchObject({ code: 1, stdout: '' })
    expect(ended.stderr).toMatch(/^The key .* doesn't belong to the certificate .*\n$/)
  })
})

describe.skipIf(!hasOpenssl)('a server with a certificate', () => {
  const start = async () => {
    const own = ownCertificate(temporaryFolder(), 'own')
    const server = await launchServer({
      screens: false,
      env: { ...settings(own.cert, own.key), HOST: '0.0.0.0' },
    })
    onTestFinished(async () => {
      await server.kill()
    })
    const ca = readFileSync(own.cert, 'utf8')
    const ask = (path: string, headers: Readonly<Record<string, string>> = {}, method = 'GET') =>
      new Promise<{ status: number; text: string; headers: Record<string, unknown> }>(
        (settle, fail) => {
          const options = { host: '127.0.0.1', port: server.port, path, ca, method, headers }
          const asked = request(options, async (answer) => {
            let text = ''
            for await (const part of answer) text += String(part)
            settle({ status: answer.statusCode ?? 0, text, headers: { ...answer.headers } })
          })
          asked.on('error', fail)
          asked.end()
        },
      )
    const letIn = (origin: string) =>
      new Promise<boolean>((settle) => {
        const socket = io(`wss://127.0.0.1:${server.port}`, {
          transports: ['websocket'],
          forceNew: true,
          reconnection: false,
          ca,
          auth: { protocol: PROTOCOL, role: 'lead', device: 'one' },
          extraHeaders: { origin },
        })
        onTestFinished(() => {
          socket.disconnect()
        })
        socket.once('connect', () => settle(true))
        socket.once('connect_error', (error) => settle(error.message === 'not-joined'))
      })
    return { server, ask, letIn }
  }

  test('[EG8] answers https and wss only, to https pages only', async () => {
    const { server, ask, letIn } = await start()
    const health = await ask('/health')
    expect(health.status).toBe(200)
    expect(health.headers).toMatchObject(
      Object.fromEntries(
        Object.entries(headersOf(true)).map(([name, value]) => [name.toLowerCase(), value]),
      ),
    )
    expect(health.headers['content-security-policy']).toContain(`wss://127.0.0.1:${server.port}`)
    await expect(fetch(`${server.url}/health`), 'plain http').rejects.toThrow()
    expect(await letIn(`https://127.0.0.1:${server.port}`)).toBe(true)
    expect(await letIn(`http://127.0.0.1:${server.port}`)).toBe(false)
    const foreign = { origin: `http://127.0.0.1:${server.port}` }
    expect((await ask('/health', foreign)).status).toBe(403)
  })

  test('[EG8] prints and tells https addresses, and is ended by npm stop', async () => {
    const { server, ask } = await start()
    const told: { addresses: { url: string }[] } = JSON.parse((await ask('/addresses')).text)
    expect(told.addresses.filter(({ url }) => !url.startsWith('https://'))).toEqual([])
    const stopping = spawn(process.execPath, ['server/shell/stop.mjs'], {
      cwd: root,
      env: { ...process.env, PORT: String(server.port), LEVEL_SCOOP_DATA: temporaryFolder() },
    })
    const [code] = await once(stopping, 'close')
    expect(code).toBe(0)
    const { stdout } = await server.ended
    expect(stdout).toContain(`https://localhost:${server.port}/`)
    expect(stdout).not.toContain('http://')
  })
})

test('[EG7][EG8] a page’s policy and headers have no word of plain http under TLS, and none of TLS under plain http', () => {
  const policy = (secure: boolean) =>
    contentSecurityPolicy([], 'station.test:1', { secure, development: false })
  expect(policy(true)).toContain("connect-src 'self' wss://station.test:1;")
  expect(policy(false)).toContain("connect-src 'self' ws://station.test:1;")
  expect(policy(false)).toMatch(/^default-src 'none';/)
  for (const secure of [true, false]) {
    expect(policy(secure)).not.toMatch(/unsafe|\*|https?:|data:|blob:/)
    expect(Object.keys(headersOf(secure))).not.toContain('Strict-Transport-Security')
  }
  expect(Object.keys(headersOf(false)).join()).not.toMatch(/Opener|Embedder/)
  expect(headersOf(true)).toMatchObject({ 'Cross-Origin-Opener-Policy': 'same-origin' })
})
