import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readConfig } from '#server/config.ts'

const base = resolve('/srv/scoop')

describe('the settings', () => {
  test('have defaults that serve the network from port 4321', () => {
    expect(readConfig({}, base)).toEqual({
      ok: true,
      config: {
        port: 4321,
        host: '0.0.0.0',
        dataFolder: resolve(base, 'data'),
        extraHosts: [],
        certificate: null,
        development: false,
        logLevel: 'warn',
        screens: true,
      },
    })
  })

  test('are read from the environment, an empty one counting as unset', () => {
    const environment = {
      PORT: '0',
      HOST: '',
      LEVEL_SCOOP_DATA: resolve('/tmp/kitchen'),
      LEVEL_SCOOP_HOSTS: ' Scoop.School.example, other.example:8080 ,',
      NODE_ENV: 'development',
      LEVEL_SCOOP_LOG: 'info',
      LEVEL_SCOOP_SCREENS: 'off',
    }
    expect(readConfig(environment, base)).toMatchObject({
      ok: true,
      config: {
        port: 0,
        host: '0.0.0.0',
        dataFolder: resolve('/tmp/kitchen'),
        extraHosts: ['scoop.school.example', 'other.example:8080'],
        development: true,
        logLevel: 'info',
        screens: false,
      },
    })
  })

  test.each([
    ['PORT', '65536'],
    ['PORT', '-1'],
    ['PORT', '4321.5'],
    ['PORT', 'eighty'],
    ['HOST', 'this machine'],
    ['LEVEL_SCOOP_DATA', ' '],
    ['LEVEL_SCOOP_HOSTS', 'http://scoop.example'],
    ['NODE_ENV', 'live'],
    ['LEVEL_SCOOP_LOG', 'loud'],
    ['LEVEL_SCOOP_SCREENS', 'no'],
  ])('%s=%s gets a sentence that names both', (name, value) => {
    const read = readConfig({ [name]: value }, base)
    expect(read.ok ? [] : read.problems).toEqual([
      expect.stringContaining(`${name}=${JSON.stringify(value)}`),
    ])
  })

  test('tell every problem at once', () => {
    const read = readConfig({ PORT: 'x', LEVEL_SCOOP_LOG: 'y' }, base)
    expect(read.ok ? [] : read.problems).toHaveLength(2)
  })
})
