import { expect, test } from 'vitest'
import { MOST_PROVED_WAITING, MOST_STRANGERS_WAITING } from '#lib/access/tries.ts'
import { createInTurn } from '#server/access/in-turn.ts'

test('[D13] passphrases are compared one at a time, of proved devices first, and few wait', async () => {
  const turns = createInTurn()
  const order: string[] = []
  let running = 0
  let most = 0
  const act = (name: string) => async () => {
    running += 1
    most = Math.max(most, running)
    await new Promise((settle) => setImmediate(settle))
    running -= 1
    order.push(name)
  }
  const first = turns.do(false, act('first'))
  const strangers = Array.from({ length: MOST_STRANGERS_WAITING }, (_, place) =>
    turns.do(false, act(`stranger ${place}`)),
  )
  expect(turns.do(false, act('one too many'))).toBeNull()
  const proved = turns.do(true, act('proved'))
  expect(proved).not.toBeNull()
  await Promise.all([first, ...strangers, proved])
  expect(most).toBe(1)
  expect(order.slice(0, 2)).toEqual(['first', 'proved'])
  expect(order).toHaveLength(MOST_STRANGERS_WAITING + 2)
  const many = Array.from({ length: MOST_PROVED_WAITING + 2 }, () => turns.do(true, act('more')))
  expect(many.filter((one) => one === null)).toHaveLength(1)
  await Promise.all(many)
})

test('[D13] one that fails holds nobody up', async () => {
  const turns = createInTurn()
  const failing = turns.do(true, () => Promise.reject(new Error('no memory')))
  await expect(failing).rejects.toThrow('no memory')
  expect(await turns.do(false, async () => 'after')).toBe('after')
})
