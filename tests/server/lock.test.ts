import { existsSync, mkdirSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { describe, expect, test } from 'vitest'
import { withLock } from '#server/lock.mjs'
import { temporaryFolder } from '#tests/support/launch-server.ts'

const leave = (folder: string, owner: string, secondsAgo: number): void => {
  mkdirSync(folder)
  const file = join(folder, 'owner')
  writeFileSync(file, owner)
  const then = Date.now() / 1000 - secondsAgo
  utimesSync(file, then, then)
}

const never = () => expect.unreachable('nobody should have had to wait')

describe('the lock of a clone', () => {
  test('lets one work at a time, and is gone afterwards', async () => {
    const folder = join(temporaryFolder(), 'lock')
    const order: string[] = []
    const work = (name: string) => async () => {
      order.push(`${name} begins`)
      await pause(50)
      order.push(`${name} ends`)
    }
    await Promise.all([
      withLock(folder, work('first'), never),
      withLock(folder, work('second'), (pid) => order.push(`waits for ${pid === process.pid}`)),
    ])
    expect(order).toEqual([
      'first begins',
      'waits for true',
      'first ends',
      'second begins',
      'second ends',
    ])
    expect(existsSync(folder)).toBe(false)
  })

  test('is let go when the work fails', async () => {
    const folder = join(temporaryFolder(), 'lock')
    const failing = withLock(folder, () => Promise.reject(new Error('no disk')), never)
    await expect(failing).rejects.toThrow('no disk')
    expect(await withLock(folder, async () => 'worked', never)).toBe('worked')
  })

  test('is taken over from a process that is gone', async () => {
    const folder = join(temporaryFolder(), 'lock')
    leave(folder, '999999999', 0)
    expect(await withLock(folder, async () => 'worked', never)).toBe('worked')
  })

  test('is taken over when nobody touched it for long, whoever has that number now', async () => {
    const folder = join(temporaryFolder(), 'lock')
    leave(folder, String(process.pid), 60)
    expect(await withLock(folder, async () => 'worked', never)).toBe('worked')
  })
})
