import type { IncomingMessage } from 'node:http'
import { expect, it } from 'vitest'
import type { Label } from '#lib/station/label.ts'
import { larderRows } from '#server/http/larder.ts'
import { coldRice, setAside } from '#tests/support/larder.ts'
import { createLarderRoom } from '#tests/support/larder-room.ts'
import { at } from '#tests/support/readings.ts'

const LABEL: Label = {
  declarations: { milk: 'contains' },
  traits: [],
  claims: {},
  readOn: '2026-09-01',
  readBy: null,
}
const ROWS = [
  { version: 0, label: LABEL, same: true },
  { version: 4, label: null, same: false },
]

const room = async () => {
  const history = { newest: () => ({ rice: 4 }), from: () => ROWS }
  const { larder, append, log } = await createLarderRoom({ at: at('14:30'), labels: history })
  await append(setAside('a', coldRice({ labels: {} })))
  const tried: string[] = []
  const rows = larderRows({
    larder,
    lotLabels: {
      ...history,
      nameOf: () => 'Rice',
      labelOf: () => null,
      allergensOf: () => null,
    },
    labels: { idle: async () => undefined },
    stations: { first: () => null, find: () => null, all: () => [] },
    access: {
      from: () => ({ of: 'one' }) as never,
      adults: {
        proveInCharge: async (passphrase: string) => {
          tried.push(passphrase)
          if (passphrase === 'right') return { code: 'right', adult: { id: 'adult-1' } } as never
          return (
            passphrase === 'often' ? { code: 'too-many-tries', again: 60 } : { code: 'wrong' }
          ) as never
        },
      } as never,
    },
    now: () => at('14:30'),
  })
  const ask = (body: object) => {
    const row = rows.find(({ path }) => path === '/larder/do')
    return row?.act({ request: {} as IncomingMessage, query: () => '', body })
  }
  return { ask, tried, larder, log }
}

const SAID = { type: 'confirmLotLabel', lot: 'a', ingredient: 'rice', pack: 'before', saw: 4 }

it('[LA50] of which pack it was made is said by the passphrase of somebody in charge alone', async () => {
  const { ask, larder, log } = await room()
  expect(await ask({ id: 'c1', command: SAID })).toEqual({ code: 'not-it' })
  const wrong = { id: 'c1', command: SAID, proof: { passphrase: 'guessed' } }
  expect(await ask(wrong)).toEqual({ code: 'not-it' })
  expect(await ask({ ...wrong, proof: { passphrase: 'often' } })).toMatchObject({
    code: 'too-many-tries',
  })
  expect(await log.head(larder.stream)).toBe(1)
  expect(await ask({ ...wrong, proof: { passphrase: 'right' } })).toMatchObject({
    code: 'done',
    answer: { answer: 'accepted' },
    lots: [{ lot: 'a', relabelled: [] }],
  })
  const [, said] = await log.read(larder.stream, 0)
  expect(said).toMatchObject({ type: 'lotLabelConfirmed', adult: 'adult-1', before: [LABEL] })
})

it('[LA50] what anybody who leads may do asks no passphrase', async () => {
  const { ask, tried } = await room()
  expect(await ask({ id: 'c1', command: { type: 'anotherTookLot', lot: 'a' } })).toMatchObject({
    answer: { answer: 'accepted' },
  })
  expect(tried).toEqual([])
})
