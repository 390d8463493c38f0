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

  test('must be of the very host and port that was asked', () => {
    expect(isAllowedOrigin('http://192.168.7.20:4321', host, '192.168.7.9')).toBe(true)
    expect(isAllowedOrigin('HTTP://Station.Test:4321', 'station.test:4321', '10.0.0.9')).toBe(true)
    expect(isAllowedOrigin('http://192.168.7.20:9999', host, '127.0.0.1')).toBe(false)
    expect(isAllowedOrigin('http://192.168.7.20', host, '127.0.0.1')).toBe(false)
    expect(isAllowedOrigin('http://evil.example:4321', host, '127.0.0.1')).toBe(false)
  })

  test('leaves away the usual port, as browsers do', () => {
    expect(isAllowedOrigin('http://station.test', 'station.test', '10.0.0.9')).toBe(true)
  })

  test('may be missing from this machine only', () => {
    expect(isAllowedOrigin(undefined, host, '127.0.0.1')).toBe(true)
    expect(isAllowedOrigin(undefined, host, '::ffff:127.0.0.1')).toBe(true)
    expect(isAllowedOrigin(undefined, host, '::1')).toBe(true)
    expect(isAllowedOrigin(undefined, host, '192.168.7.9')).toBe(false)
    expect(isAllowedOrigin(undefined, host, undefined)).toBe(false)
  })

  test('is none where it is "null", a file, nonsense or empty', () => {
    for (const origin of ['null', 'file:///', 'about:blank', 'nonsense', '']) {
      expect(isAllowedOrigin(origin, host, '127.0.0.1'), origin).toBe(false)
    }
    expect(isAllowedOrigin('http://192.168.7.20:4321', undefined, '127.0.0.1')).toBe(false)
  })
})

test('only addresses of the loopback are loopback', () => {
  expect(['127.0.0.1', '127.255.0.1', '::1', '::ffff:127.0.0.1'].filter(isLoopback)).toHaveLength(4)
  expect(['128.0.0.1', '::2', '127.0.0.1.example', '', undefined].filter(isLoopback)).toEqual([])
})
