import { describe, expect, test } from 'vitest'
import { isAllowedHost, isAllowedOrigin, isLoopback } from '#server/http/allowed.ts'

const own = {
  interfaces: ['127.0.0.1', '192.168.7.20', 'fe80::1', '::1'],
  hostname: 'Laptop',
  extra: ['scoop.school.example', 'forward.example:8080'],
}

describe('the Host header', () => {
  test.each([
    'localhost:4321',
    'LOCALHOST',
    '127.0.0.1:4321',
    '127.8.9.10',
    '[::1]:4321',
    '192.168.7.20:4321',
    '[FE80::1]:4321',
    'laptop:4321',
    'laptop.local',
    'LAPTOP.LOCAL.:4321',
    'station.test:4321',
    'scoop.school.example',
    'scoop.school.example:4321',
    'forward.example:8080',
  ])('%s means this machine', (host) => {
    expect(isAllowedHost(host, own)).toBe(true)
  })

  test.each([
    undefined,
    '',
    'evil.example',
    'localhost.evil.example:4321',
    '192.168.7.21:4321',
    '192.168.7.20.evil.example',
    'station.test.evil.example',
    'forward.example',
    'forward.example:8081',
    'user@localhost',
    'localhost:4321/path',
    'localhost:port',
    'localhost localhost',
    '127.0.0.1.evil.example',
    '128.0.0.1',
  ])('%s does not', (host) => {
    expect(isAllowedHost(host, own)).toBe(false)
  })

  test('a machine without a name is not reached by an empty one', () => {
    expect(isAllowedHost('.local', { ...own, hostname: '' })).toBe(false)
    expect(isAllowedHost('.', { ...own, hostname: '' })).toBe(false)
  })
})

describe('the Origin header', () => {
  const host = '192.168.7.20:4321'
  const plain = { secure: false, extra: own.extra }
  const originIsAllowed = (
    origin: string | undefined,
    asked: string | undefined,
    from: string | undefined,
    names = plain,
  ) => isAllowedOrigin(origin, asked, from, names)

  test('must be of the very host and port that was asked', () => {
    expect(originIsAllowed('http://192.168.7.20:4321', host, '192.168.7.9')).toBe(true)
    expect(originIsAllowed('HTTP://Station.Test:4321', 'station.test:4321', '10.0.0.9')).toBe(true)
    expect(originIsAllowed('http://192.168.7.20:9999', host, '127.0.0.1')).toBe(false)
    expect(originIsAllowed('http://192.168.7.20', host, '127.0.0.1')).toBe(false)
    expect(originIsAllowed('http://evil.example:4321', host, '127.0.0.1')).toBe(false)
  })

  test('leaves away the usual port, as browsers do', () => {
    expect(originIsAllowed('http://station.test', 'station.test', '10.0.0.9')).toBe(true)
  })

  test('may be missing from this machine only', () => {
    expect(originIsAllowed(undefined, host, '127.0.0.1')).toBe(true)
    expect(originIsAllowed(undefined, host, '::ffff:127.0.0.1')).toBe(true)
    expect(originIsAllowed(undefined, host, '::1')).toBe(true)
    expect(originIsAllowed(undefined, host, '192.168.7.9')).toBe(false)
    expect(originIsAllowed(undefined, host, undefined)).toBe(false)
  })

  test('is none where it is "null", a file, nonsense or empty', () => {
    for (const origin of ['null', 'file:///', 'about:blank', 'nonsense', '']) {
      expect(originIsAllowed(origin, host, '127.0.0.1'), origin).toBe(false)
    }
    expect(originIsAllowed('http://192.168.7.20:4321', undefined, '127.0.0.1')).toBe(false)
  })

  test('[EG1] has the scheme that this server speaks', () => {
    const tls = { secure: true, extra: own.extra }
    expect(originIsAllowed('https://192.168.7.20:4321', host, '192.168.7.9', tls)).toBe(true)
    expect(originIsAllowed('http://192.168.7.20:4321', host, '192.168.7.9', tls)).toBe(false)
    expect(originIsAllowed('https://192.168.7.20:4321', host, '192.168.7.9')).toBe(false)
    const named = 'scoop.school.example'
    expect(originIsAllowed(`https://${named}`, named, '10.0.0.9')).toBe(true)
    expect(originIsAllowed(`http://${named}`, named, '10.0.0.9', tls)).toBe(false)
  })

  test('[EG1] is a scheme, a host and a port, and nothing beside', () => {
    for (const more of ['/path', '?a', '#a'])
      expect(originIsAllowed(`http://${host}${more}`, host, '127.0.0.1'), more).toBe(false)
    expect(originIsAllowed(`http://evil@${host}`, host, '127.0.0.1')).toBe(false)
    expect(originIsAllowed(`http://${host}, http://evil.example`, host, '127.0.0.1')).toBe(false)
  })
})

test('only addresses of the loopback are loopback', () => {
  expect(['127.0.0.1', '127.255.0.1', '::1', '::ffff:127.0.0.1'].filter(isLoopback)).toHaveLength(4)
  expect(['128.0.0.1', '::2', '127.0.0.1.example', '', undefined].filter(isLoopback)).toEqual([])
})
