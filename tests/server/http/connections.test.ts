import { EventEmitter } from 'node:events'
import { describe, expect, test } from 'vitest'
import { createConnections } from '#server/http/connections.ts'
import { createRates } from '#server/http/rates.ts'

let port = 1_024

const socketOf = (remoteAddress: string) => {
  port += 1
  const emitter = new EventEmitter()
  const socket = Object.assign(emitter, {
    remoteAddress,
    remotePort: port,
    destroyed: false,
    destroy: () => {
      socket.destroyed = true
      emitter.emit('close')
      return socket
    },
  })
  return socket as unknown as Parameters<ReturnType<typeof createConnections>['admit']>[0] & {
    readonly destroyed: boolean
    readonly remotePort: number
  }
}

const LIMITS = { ofOne: 4, ofLoopback: 8, inAll: 10 }

const roomOf = () => {
  const connections = createConnections(LIMITS)
  const opened = (address: string, count: number) =>
    Array.from({ length: count }, () => {
      const socket = socketOf(address)
      connections.admit(socket)
      return socket
    })
  return { connections, opened }
}

const standing = (sockets: readonly { readonly destroyed: boolean }[]): number =>
  sockets.filter(({ destroyed }) => !destroyed).length

describe('connections', () => {
  test('[EG5] an address holds so many and no more; a closed one makes room', () => {
    const { connections, opened } = roomOf()
    const six = opened('10.0.0.9', 6)
    expect(standing(six)).toBe(4)
    expect(connections.refused()).toBe(2)
    six[0]?.destroy()
    expect(standing(opened('10.0.0.9', 2))).toBe(1)
    expect(standing(opened('::ffff:10.0.0.9', 1))).toBe(0)
    expect(standing(opened('127.0.0.1', 6))).toBe(6)
  })

  test('[EG5] where all are taken, who holds most makes room, and nobody for who holds as many', () => {
    const { connections, opened } = roomOf()
    const greedy = ['10.0.0.1', '10.0.0.2', '10.0.0.3'].flatMap((one) => opened(one, 4))
    expect(connections.count()).toBe(10)
    const honest = opened('10.0.0.9', 2)
    expect(standing(honest)).toBe(2)
    expect(standing(greedy)).toBe(8)
    expect(connections.count()).toBe(10)
    const more = opened('10.0.0.9', 2)
    expect(standing(more), 'a fourth would take from who holds no more').toBeLessThan(2)
    expect(connections.count()).toBe(10)
  })

  test('[EG5] fifty addresses that hold all they may leave room for a fifty-first', () => {
    const connections = createConnections({ ofOne: 64, ofLoopback: 500, inAll: 600 })
    for (let turn = 0; turn < 64; turn += 1)
      for (let address = 1; address <= 50; address += 1)
        connections.admit(socketOf(`10.0.1.${address}`))
    expect(connections.count()).toBe(600)
    const tablet = Array.from({ length: 7 }, () => socketOf('10.0.0.9'))
    expect(tablet.map((socket) => connections.admit(socket))).toEqual(tablet.map(() => true))
    for (let address = 1; address <= 50; address += 1)
      connections.admit(socketOf(`10.0.1.${address}`))
    expect(standing(tablet)).toBe(7)
  })

  test('[EG5] a proved device isn’t closed to make room', () => {
    const { connections, opened } = roomOf()
    const proved = opened('10.0.0.1', 4)
    for (const socket of proved) connections.keep(socket)
    opened('10.0.0.2', 3)
    opened('10.0.0.3', 3)
    const late = opened('10.0.0.4', 2)
    expect(standing(proved)).toBe(4)
    expect(standing(late)).toBeGreaterThan(0)
  })
})

describe('requests', () => {
  const limits = { windowS: 10, ofOne: 5, ofLoopback: 20, inAll: 12, fewOf: 2 }

  test('[EG5] an address asks so often and no more, and is told when it may again', async () => {
    const rates = createRates(limits)
    for (let asked = 0; asked < 5; asked += 1) expect(await rates.take('10.0.0.9')).toBe(0)
    const again = await rates.take('10.0.0.9')
    expect(again).toBeGreaterThan(0)
    expect(again).toBeLessThanOrEqual(10_000)
    expect(await rates.take('::ffff:10.0.0.9'), 'the same in its other form').toBeGreaterThan(0)
    expect(await rates.take('10.0.0.8')).toBe(0)
  })

  test('[EG5] where all together ask too often, who asks little is still answered', async () => {
    const rates = createRates(limits)
    for (const address of ['10.0.0.1', '10.0.0.2', '10.0.0.3'])
      for (let asked = 0; asked < 4; asked += 1) await rates.take(address)
    expect(await rates.take('10.0.0.1')).toBeGreaterThan(0)
    expect([await rates.take('10.0.0.9'), await rates.take('10.0.0.9')]).toEqual([0, 0])
    expect(await rates.take('10.0.0.9')).toBeGreaterThan(0)
  })
})
