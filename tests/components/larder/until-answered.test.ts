import { expect, it } from 'vitest'
import { untilAnswered } from '#components/larder/until-answered.ts'
import type { Answer } from '#lib/protocol/wire.ts'

const BUSY: Answer = { id: 'c', answer: 'not taken', because: { code: 'busy' } }
const NO_SUCH: Answer = { id: 'c', answer: 'not taken', because: { code: 'no-such-service' } }
const DONE: Answer = { id: 'c', answer: 'accepted', position: 7 }

/** Answers in turn; null is none. */
const asked = async (...answers: readonly (Answer | null)[]) => {
  let sends = 0
  let pauses = 0
  const answer = await untilAnswered(
    async () => {
      const next = answers[sends]
      sends += 1
      if (!next) throw new Error('no answer in time')
      return next
    },
    async () => {
      pauses += 1
    },
  )
  return { answer, sends, pauses }
}

it('[LA54] what is answered is sent once, also where it isn’t taken for good', async () => {
  expect(await asked(DONE)).toEqual({ answer: DONE, sends: 1, pauses: 0 })
  expect(await asked(NO_SUCH, DONE)).toEqual({ answer: NO_SUCH, sends: 1, pauses: 0 })
})

it('[LA54] what nobody answered, or a server that was busy, is sent again under the same id', async () => {
  expect(await asked(null, DONE)).toEqual({ answer: DONE, sends: 2, pauses: 1 })
  expect(await asked(BUSY, null, DONE)).toEqual({ answer: DONE, sends: 3, pauses: 2 })
})

it('[LA54] after three tries nobody knows, and no pause comes after the last', async () => {
  expect(await asked(null, BUSY, null, DONE)).toEqual({ answer: null, sends: 3, pauses: 2 })
})
